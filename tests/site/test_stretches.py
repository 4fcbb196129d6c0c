"""Where an exercise stands, week by week: a range of weeks holds every week that it names."""

import re

import pytest

from setwright.dose.resolve import resolve
from setwright.handouts.exercise import sheets
from setwright.handouts.writing import Desk
from setwright.model.programme import Programme
from setwright.outline import paper
from setwright.outline.addresses import exercise_path
from setwright.outline.site import Site
from setwright.outline.training import appearances
from setwright.pages import tree
from support import make

SKIPPED = {"plans/plan": "changes: [{week: 3, day: monday, skip: true, why: The hut is let.}]"}


@pytest.fixture
def skipped() -> Programme:
    """Four weeks with the same dose, the third without its session."""
    return make.programme(SKIPPED)


def test_a_week_without_the_session_is_in_no_range(skipped: Programme) -> None:
    """On the exercise's page and on the sheet for the physiotherapist: weeks 1, 2 and 4, and not 1 to 4."""
    plans = tuple(resolve(skipped))
    page = tree.render(skipped, plans)[exercise_path("lift")].decode()
    review = next(s for s in sheets(Desk(Site(skipped, plans))) if s.path == paper.review_sheet("lift"))

    assert re.search(r">Weeks 1, 2 and 4</a>", page)
    assert [weeks for weeks, _, _ in review.data["doses"][0]["stretches"]] == ["Weeks 1, 2 and 4"]


def test_every_stretch_names_the_weeks_that_it_stands_in(example: Programme) -> None:
    """Over all stretches of an exercise in one session: the weeks of the plan that have it, and no other."""
    plans = tuple(resolve(example))
    site = Site(example, plans)
    for ident in example.exercises:
        for found in appearances(site, ident):
            named = [week for stretch in found.stretches for week in stretch.weeks]
            trained = [number for number, work in enumerate(found.work, 1) if work]

            assert sorted(set(named)) == trained, (ident, found.session)
