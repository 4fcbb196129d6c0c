"""The home page: the one thing to do today; and the page of everything that is not within a thumb's reach."""

from collections.abc import Iterator

from setwright.outline.addresses import HOME, MORE
from setwright.outline.site import Site
from setwright.pages.page import Page
from setwright.phone.days import days_path


def pages(site: Site) -> Iterator[Page]:
    """Yield the home page, and the page behind "More"."""
    club, say = site.programme.club, site.language.say
    yield Page(
        path=HOME,
        title=club.name,
        description=club.about or say("Strength training at %(club)s.", club=club.name),
        template="home.md.jinja",
        context={"plans": site.plans, "days_path": days_path},
        kind="home",
    )
    yield Page(
        path=MORE,
        title=say("More"),
        description=say(
            "Everything else on these pages: for your training, for the coach and for the physiotherapist."
        ),
        template="more.md.jinja",
        context={},
        kind="more",
    )
