"""The safety page and the sources page."""

from collections.abc import Iterator

from setwright.pages.notice import NOTICE
from setwright.pages.page import SAFETY, SOURCES, Page
from setwright.pages.site import Site


def pages(site: Site) -> Iterator[Page]:
    """Yield the safety page and the sources page."""
    yield Page(
        path=SAFETY,
        title="Safety",
        description="Before you start, when to stop, and whom to ask.",
        template="safety.md.jinja",
        context={"notice": NOTICE},
        kind="safety",
    )
    cited: dict[str, list[str]] = {}
    for ident, exercise in sorted(site.programme.exercises.items()):
        for source in exercise.sources:
            cited.setdefault(source, []).append(ident)
    yield Page(
        path=SOURCES,
        title="Sources",
        description="The published sources that exercises cite.",
        template="sources.md.jinja",
        context={"references": sorted(site.programme.references.items()), "cited": cited},
        kind="sources",
    )
