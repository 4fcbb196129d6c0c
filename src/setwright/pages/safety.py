"""The safety page and the sources page."""

from collections.abc import Iterator

from setwright.outline.addresses import SAFETY, SOURCES
from setwright.outline.site import Site
from setwright.pages.page import Page
from setwright.wording.notice import notice


def pages(site: Site) -> Iterator[Page]:
    """Yield the safety page and the sources page."""
    say = site.language.say
    yield Page(
        path=SAFETY,
        title=say("Safety"),
        description=say("Before you start, when to stop, and whom to ask."),
        template="safety.md.jinja",
        context={"notice": notice(site.language)},
        kind="safety",
        written_in="club.yml",
    )
    cited: dict[str, list[str]] = {}
    for ident, exercise in sorted(site.programme.exercises.items()):
        for source in exercise.sources:
            cited.setdefault(source, []).append(ident)
    yield Page(
        path=SOURCES,
        title=say("Sources"),
        description=say("The published sources that exercises cite."),
        template="sources.md.jinja",
        context={"references": sorted(site.programme.references.items()), "cited": cited},
        kind="sources",
        written_in="references.yml",
    )
