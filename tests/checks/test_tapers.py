"""A taper cuts 41 to 60 % of the sets.

Sources: Bosquet L et al., Med Sci Sports Exerc 2007;39:1358-1365; Wang Z et al., PLoS ONE 2023;18:e0282838. The figure
is what is cut, not what remains. It comes from endurance-type training: for strength sets it is an extrapolation.
"""

import pytest

from setwright.checks.taper import LEAST, MOST, cut_percent
from support import make


def test_45_sets_may_become_18_to_26() -> None:
    """Of 45 sets a week 18 (60.0 % fewer) to 26 (42.2 % fewer) are in range (computed)."""
    allowed = [sets for sets in range(46) if LEAST.default <= cut_percent(45, sets) <= MOST.default]

    assert allowed == list(range(18, 27))


@pytest.mark.parametrize(
    ("before", "now", "percent", "inside"),
    [
        (45, 27, 40.00, False),
        (45, 26, 42.22, True),
        (45, 18, 60.00, True),
        (45, 17, 62.22, False),
        (100, 59, 41.00, True),
    ],
)
def test_cut(before: int, now: int, percent: float, inside: bool) -> None:
    """A cut is counted from the full week, and both ends of the range belong to it."""
    cut = cut_percent(before, now)

    assert round(float(cut), 2) == percent
    assert (LEAST.default <= cut <= MOST.default) is inside


FULL = "{name: Full, aim: To build., weeks: 2, sessions: {monday: only}}"
LIGHTER = "{name: Lighter, aim: To rest., weeks: 1, sessions: {monday: only}, lighter: {weeks: [1], sets: 20 %}}"
TAPERS = [
    # what comes before, what remains week by week, the doubt; ten sets a week
    (FULL, "[50 %]", None),
    (FULL, "[80 %, 50 %]", None),  # the week with the fewest sets counts
    (FULL, "[60 %]", "the taper goes from 10 sets a week to 6: 40 % fewer"),
    (FULL, "[50 %, 30 %]", "the taper goes from 10 sets a week to 3: 70 % fewer"),
    (f"{FULL}, {LIGHTER}", "[50 %]", None),  # a lighter week is not the full week
]


@pytest.mark.parametrize(("before", "sets", "doubt"), TAPERS)
def test_taper_of_a_plan(before: str, sets: str, doubt: str | None) -> None:
    """The last full week is compared with the taper week that has the fewest sets."""
    weeks = sets.count("%")
    shares = f"{{name: Taper, aim: To be fresh., weeks: {weeks}, sessions: {{monday: only}}, taper: {{sets: {sets}}}}}"
    phases = f"[{before}, {shares}]"
    found = make.verdict(make.one_exercise("{reps: 8}", "{kind: straight, sets: 10}", phases)).findings

    assert [f.message for f in found] == ([doubt] if doubt else [])


def test_taper_is_compared_with_the_last_full_week() -> None:
    """Where the sets grew from 10 to 20, half of them is 10: half of the last full week, not all of the first."""
    phases = (
        f"[{FULL}, {{name: Taper, aim: To be fresh., weeks: 1, sessions: {{monday: only}}, taper: {{sets: [50 %]}}}}]"
    )
    block = "{kind: straight, sets: 10, progress: {sets: {weeks: [10, 20]}}}"

    found = make.verdict(make.one_exercise("{reps: 8}", block, phases)).findings

    assert [f for f in found if f.rule == "taper-outside-range"] == []


def test_taper_without_a_full_week_is_not_judged() -> None:
    """A plan that is all taper has nothing to compare with."""
    phases = "[{name: Taper, aim: To be fresh., weeks: 1, sessions: {monday: only}, taper: {sets: [90 %]}}]"

    assert make.verdict(make.one_exercise("{reps: 8}", phases=phases)).findings == ()


STARTS = [
    # what remains week by week of two sets, whether the first week takes something off
    ("[100 %, 50 %]", False),
    ("[80 %, 50 %]", False),  # 1.6 sets are two
    ("[75 %, 50 %]", True),  # 1.5 are one
]


@pytest.mark.parametrize(("sets", "begins"), STARTS)
def test_a_taper_begins_in_its_first_week(sets: str, begins: bool) -> None:
    """Sets are whole numbers, a half goes to the smaller: what counts is what members do."""
    taper = f"{{name: Taper, aim: To be fresh., weeks: 2, sessions: {{monday: only}}, taper: {{sets: {sets}}}}}"
    found = make.verdict(make.one_exercise("{reps: 8}", "{kind: straight, sets: 2}", f"[{FULL}, {taper}]")).findings

    assert [f.rule for f in found] == ([] if begins else ["taper-without-cut"])


def test_a_taper_is_compared_with_the_last_week_as_planned() -> None:
    """A week cut short by a change is not what a taper takes its share of."""
    taper = "{name: Taper, aim: To be fresh., weeks: 1, sessions: {monday: only}, taper: {sets: [50 %]}}"
    short = "[{week: 2, session: only, exercise: lift, sets: 4, why: Camp.}]"
    made = make.one_exercise("{reps: 8}", "{kind: straight, sets: 10}", f"[{FULL}, {taper}]", changes=short)

    assert make.verdict(made).findings == ()
