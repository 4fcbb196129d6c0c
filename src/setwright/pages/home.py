"""The home page: what to do today and this week, and where everything is."""

from collections.abc import Iterator

from setwright.outline.addresses import HOME
from setwright.outline.site import Site
from setwright.pages.page import Page


def pages(site: Site) -> Iterator[Page]:
    """Yield the home page."""
    club, say = site.programme.club, site.language.say
    yield Page(
        path=HOME,
        title=club.name,
        description=club.about or say("Strength training at %(club)s.", club=club.name),
        template="home.md.jinja",
        context={"plans": site.plans},
        kind="home",
    )
