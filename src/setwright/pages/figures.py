"""The contact sheet: every figure at one glance, for coach and physiotherapist, and what the model is held against."""

from collections.abc import Iterator

from setwright.figure.published import LOW_ON_KNEES_POINTS, MOVING_POINTS, PUBLISHED, STILL_POINTS
from setwright.figure.support import ROUGH_ABOVE_CM, RULES, SHOWN
from setwright.outline.addresses import FIGURES
from setwright.outline.site import Site
from setwright.pages.page import Page


def pages(site: Site) -> Iterator[Page]:
    """Yield the one page."""
    say = site.language.say
    exercises = sorted(site.programme.exercises.items(), key=lambda pair: pair[1].name)
    yield Page(
        path=FIGURES,
        title=say("Figures"),
        description=say("Every figure of the programme at one glance, and the numbers that its poses give."),
        template="figures.md.jinja",
        context={
            "drawn": [(ident, exercise) for ident, exercise in exercises if exercise.figure],
            "missing": [ident for ident, exercise in exercises if not exercise.figure],
            "published": PUBLISHED,
            "support_rules": RULES,
            "shown_rule": SHOWN,
            "rough_above_cm": ROUGH_ABOVE_CM,
            "still_points": STILL_POINTS,
            "moving_points": MOVING_POINTS,
            "low_on_knees_points": LOW_ON_KNEES_POINTS,
        },
        kind="figures",
    )
