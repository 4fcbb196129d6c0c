"""Finding an exercise: all of them by name, and by region, pattern and kit."""

from collections.abc import Iterator
from typing import get_args

from setwright.model.region import REGIONS
from setwright.model.vocabulary import Pattern
from setwright.outline.addresses import EXERCISES, FIND
from setwright.outline.site import Site
from setwright.pages.page import Page


def pages(site: Site) -> Iterator[Page]:
    """Yield the list by name and the page that finds by region, pattern and kit."""
    say = site.language.say
    exercises = sorted(site.programme.exercises.items(), key=lambda pair: pair[1].name)
    yield Page(
        path=EXERCISES,
        title=say("Exercises"),
        description=say("All exercises of the programme, by name."),
        template="exercises.md.jinja",
        context={"exercises": exercises},
        kind="exercises",
    )
    regions = {
        region: (
            [ident for ident, e in exercises if region in e.regions.main],
            [ident for ident, e in exercises if region in e.regions.also],
        )
        for region in (*REGIONS, *site.programme.club.regions)
    }
    patterns = {p: [ident for ident, e in exercises if e.pattern == p] for p in get_args(Pattern)}
    kit = {name: [ident for ident, e in exercises if name in e.kit] for name in site.programme.club.kit}
    bare = [ident for ident, e in exercises if not e.kit]
    yield Page(
        path=FIND,
        title=say("Find an exercise"),
        description=say("Exercises by region of the body, by pattern of movement and by kit."),
        template="find.md.jinja",
        context={
            "regions": {name: both for name, both in regions.items() if any(both)},
            "patterns": {name: ids for name, ids in patterns.items() if ids},
            "kit": {name: ids for name, ids in kit.items() if ids},
            "bare": bare,
        },
        kind="find",
    )
