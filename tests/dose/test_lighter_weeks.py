"""Lighter weeks, tapers and skipped weeks: what remains of a dose, and where the progression stands afterwards.

A lighter week holds a progression, which goes on from where it stood; a skipped week does not count. A rule of this
tool. A taper keeps loads and cuts sets: Bosquet L et al., Med Sci Sports Exerc 2007;39:1358-1365.
"""

from fractions import Fraction
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.dose import Dose, Set
from setwright.dose.prescribing import lightened
from setwright.dose.resolve import resolve
from setwright.dose.week_kind import Remains, share_of_count
from setwright.model.load import Band, Effort, Reserve, Weight, in_all, magnitude, same_kind
from setwright.model.span import Span
from setwright.wording.doses import dose_in_words
from setwright.wording.language import ENGLISH
from support import make
from support.strategies import doses, remains, shares

CLIMB = "{reps: 8, load: 20 kg, progress: {reps: {add: 1, up_to: 20}}}"
LIGHTER = (
    "{name: All, aim: To go on., weeks: 6, sessions: {monday: only}, lighter: {weeks: [3], sets: 60 %, load: 90 %}}"
)
LESS_LOAD, FEWER_REPS = (LIGHTER.replace("sets: 60 %, load: 90 %", what) for what in ("load: 90 %", "reps: 50 %"))
FULL = "{name: Full, aim: To build., weeks: 2, sessions: {monday: only}}"
TAPER = "{name: Taper, aim: To be fresh., weeks: 2, sessions: {monday: only}, taper: {sets: [60 %, 45 %]}}"
FIRST_WEEK = "{name: All, aim: To begin., weeks: 3, sessions: {monday: only}, lighter: {weeks: [1], sets: 60 %}}"
SKIP = "[{week: 2, day: monday, skip: true, why: The hut is let.}]"

CASES = [
    # phases, changes, week of the plan, dose
    (f"[{LIGHTER}]", "[]", 2, "3 sets of 9 reps, 20 kg"),
    (f"[{LIGHTER}]", "[]", 3, "2 sets of 9 reps, 18 kg"),  # the lighter week holds
    (f"[{LIGHTER}]", "[]", 4, "3 sets of 10 reps, 20 kg"),  # and it goes on from where it stood
    (f"[{LIGHTER}]", "[]", 6, "3 sets of 12 reps, 20 kg"),
    (f"[{LESS_LOAD}]", "[]", 3, "3 sets of 9 reps, 18 kg"),  # what the coach does not name stays whole
    (f"[{FEWER_REPS}]", "[]", 3, "3 sets of 4 reps, 20 kg"),  # 50 % of 9 is 4.5
    (f"[{FIRST_WEEK}]", "[]", 1, "2 sets of 8 reps, 20 kg"),  # a lighter first week is the first dose, lighter
    (f"[{FIRST_WEEK}]", "[]", 2, "3 sets of 8 reps, 20 kg"),
    (f"[{FULL}, {TAPER}]", "[]", 3, "2 sets of 9 reps, 20 kg"),  # 60 % of 3 is 1.8
    (f"[{FULL}, {TAPER}]", "[]", 4, "1 set of 9 reps, 20 kg"),  # 45 % of 3 is 1.35; the taper holds to its end
    (f"[{FULL}, {TAPER}, {FULL}]", "[]", 5, "3 sets of 10 reps, 20 kg"),
    (f"[{FULL}, {FULL}]", SKIP, 2, None),
    (f"[{FULL}, {FULL}]", SKIP, 3, "3 sets of 9 reps, 20 kg"),  # the skipped week did not count
    (f"[{FULL}, {FULL}]", SKIP, 4, "3 sets of 10 reps, 20 kg"),
]


@pytest.mark.parametrize(("phases", "changes", "week", "expected"), CASES)
def test_week(phases: str, changes: str, week: int, expected: str | None) -> None:
    """A climb of one repetition a week, in a plan with lighter, taper and skipped weeks, is this dose."""
    item = make.in_week(make.one_exercise(CLIMB, phases=phases, changes=changes), week)

    assert (dose_in_words(ENGLISH, item.dose) if item else None) == expected


SHARES = [
    # a half goes to the smaller, and at least one stays
    (3, 60, 2),
    (4, 60, 2),
    (5, 50, 2),
    (3, 50, 1),
    (1, 50, 1),
    (2, 20, 1),
    (10, 85, 8),
    (30, 66, 20),
    (3, 100, 3),
    (200, 100, 200),
]


@pytest.mark.parametrize(("count", "percent", "left"), SHARES)
def test_share_of_a_count(count: int, percent: int, left: int) -> None:
    """A share of sets or repetitions is rounded, a half to the smaller, and never to nothing. A rule of this tool."""
    assert share_of_count(count, Fraction(percent)) == left


@given(doses, remains)
def test_lighter_week_never_raises_a_number(dose: Dose, share: Remains) -> None:
    """Sets, amount and load of a lighter week are at most what they were, and at least one set and repetition stay."""
    lighter = lightened(dose, share)

    assert 1 <= lighter.count <= dose.count
    for was, now in zip(dose.sets, lighter.sets, strict=False):
        assert 1 <= now.amount.low <= was.amount.low
        assert 1 <= now.amount.high <= was.amount.high
        if was.load is not None and now.load is not None and not isinstance(was.load, Band):
            assert magnitude(now.load) <= magnitude(was.load)


AMOUNTS = [
    # what is written, and what is left of it in a week of 60 % of the repetitions
    ("{reps: 10}", Span.of(6)),
    ("{hold: 30 s}", Span.of(18)),
    ("{work: 45 s}", Span.of(27)),
    ("{distance: 20.55 m}", Span.of(2055)),  # the way across the hall is as long as ever
]


@pytest.mark.parametrize(("written", "left"), AMOUNTS)
def test_share_of_repetitions_is_one_of_times_too(written: str, left: Span) -> None:
    """Repetitions, holds and work shrink; a distance stays. A rule of this tool."""
    assert lightened(make.dose(written), Remains("lighter", reps=Fraction(60))).amount == left


LEFT = [
    # the week, the loads of the sets, those of the two sets that are left
    ("lighter", [20, 24, 22], [20, 24]),  # a lighter week ends earlier
    ("taper", [20, 24, 22], [24, 22]),  # a taper keeps what is heavy, in its order
    ("taper", [20, 24, 20], [20, 24]),  # and of two equally light sets the first
    ("taper", [20, None, 24], [20, None]),  # a set without a weight is not lighter or heavier than one with
]


@pytest.mark.parametrize(("kind", "loads", "left"), LEFT)
def test_which_sets_are_left_of_a_pyramid(
    kind: Literal["lighter", "taper"], loads: list[int | None], left: list[int | None]
) -> None:
    """Two of three sets stay, and the ramp that leads up to them. A rule of this tool."""
    ramp = Set(Span.of(5), Weight(Fraction(10)), kind="ramp")
    working = tuple(Set(Span.of(8), None if kg is None else Weight(Fraction(kg))) for kg in loads)
    lighter = lightened(Dose("reps", "both together", (ramp, *working)), Remains(kind, sets=Fraction(60)))

    assert lighter.sets[0] == ramp
    assert [one.load.kg if isinstance(one.load, Weight) else None for one in lighter.working] == left


UNWEIGHED = [
    # the loads of the sets, those of the two sets that a taper leaves; the club's bands: light, medium, heavy
    ("light band, medium band, heavy band", "medium band, heavy band"),
    ("heavy band, light band, medium band", "heavy band, medium band"),
    ("light band, heavy band, light band", "light band, heavy band"),
    ("RPE 6, RPE 7, RPE 8", "RPE 7, RPE 8"),
    ("4 reps in reserve, 3 reps in reserve, 2 reps in reserve", "3 reps in reserve, 2 reps in reserve"),
]


@pytest.mark.parametrize(("loads", "left"), UNWEIGHED)
def test_a_taper_keeps_the_heavy_bands_and_the_hard_sets(loads: str, left: str) -> None:
    """What nobody weighs has an order, too: bands in the club's list, efforts by how hard they are."""
    taper = "[{name: Taper, aim: Fresh., weeks: 1, sessions: {monday: only}, taper: {sets: [60 %]}}]"
    made = make.one_exercise(f"{{reps: 8, load: [{loads}]}}", "{kind: straight}", taper, lift="kit: [band]")
    item = make.in_week(made, 1)

    assert item is not None
    assert ", ".join(str(one.load) for one in item.dose.working) == left


def test_a_lighter_week_leaves_out_the_last_bands() -> None:
    """It ends earlier, whatever is last."""
    lighter = "[{name: All, aim: On., weeks: 2, sessions: {monday: only}, lighter: {weeks: [1], sets: 60 %}}]"
    written = "{reps: 8, load: [light band, medium band, heavy band]}"
    item = make.in_week(make.one_exercise(written, "{kind: straight}", lighter, lift="kit: [band]"), 1)

    assert item is not None
    assert [str(one.load) for one in item.dose.working] == ["light band", "medium band"]


@given(doses, shares)
def test_a_taper_keeps_the_heaviest_sets_as_they_are(dose: Dose, share: Fraction) -> None:
    """A taper leaves out whole sets and changes none: those that stay are the heaviest, in the order they had."""
    left = lightened(dose, Remains("taper", sets=share))
    weighed = [one.load for one in dose.sets if one.load is not None and one.load.weighed]

    assert 1 <= left.count <= dose.count
    assert [one for one in dose.sets if one in left.sets][:1] == [left.sets[0]]
    if len(weighed) == dose.count and all(same_kind(weighed[0], load) for load in weighed):
        heaviest = sorted((in_all(load) for load in weighed), reverse=True)[: left.count]
        assert sorted((in_all(one.load) for one in left.sets if one.load), reverse=True) == heaviest


@given(doses, remains)
def test_lighter_week_leaves_efforts_and_bands_alone(dose: Dose, share: Remains) -> None:
    """Efforts, repetitions in reserve and bands follow the member anyway: they stay, and so do tempo and rest."""
    lighter = lightened(dose, share)

    assert lighter.sides == dose.sides
    for was, now in zip(dose.sets, lighter.sets, strict=False):
        assert now.load == was.load or not isinstance(was.load, Effort | Reserve | Band | None)
        assert (now.tempo, now.rest_s) == (was.tempo, was.rest_s)


@given(doses)
def test_whole_share_changes_nothing(dose: Dose) -> None:
    """100 % of everything is everything."""
    assert lightened(dose, Remains("lighter")) == dose


@given(st.lists(st.sampled_from(["train", "lighter", "skip"]), min_size=1, max_size=16))
def test_progression_counts_the_weeks_that_were_trained(kinds: list[str]) -> None:
    """A progression stands at the number of trained weeks before; a lighter week repeats the last trained one."""
    weeks = list(enumerate(kinds, start=1))
    lighter = [week for week, kind in weeks if kind == "lighter"]
    keep = f", lighter: {{weeks: {lighter}, sets: 50 %}}" if lighter else ""
    phases = f"[{{name: All, aim: To go on., weeks: {len(kinds)}, sessions: {{monday: only}}{keep}}}]"
    skips = ", ".join(f"{{week: {week}, day: monday, skip: true, why: No.}}" for week, kind in weeks if kind == "skip")
    plan = resolve(make.one_exercise(CLIMB, phases=phases, changes=f"[{skips}]"))[0]
    before = [kinds[: week - 1].count("train") for week, _ in weeks]
    expected = [
        max(0, count - 1) if kind == "lighter" else count
        for count, kind in zip(before, kinds, strict=True)
        if kind != "skip"
    ]

    assert [session.trained for session in plan.sessions] == expected
