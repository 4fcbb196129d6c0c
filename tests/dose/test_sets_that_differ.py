"""Sets that differ, and ranges: what a coach writes for each set is what a member does in it."""

from fractions import Fraction

import pytest

from setwright.dose.dose import Dose
from setwright.dose.prescribing import lightened
from setwright.dose.week_kind import Remains
from setwright.model.load import magnitude
from setwright.wording.doses import big_amount, dose_in_words
from setwright.wording.language import ENGLISH
from support import make
from support.make import dose as dose_of
from support.make import in_week, one_exercise


def dose(written: str, exercise: str = "") -> Dose:
    """Return a dose of straight sets whose number the block leaves open."""
    return dose_of(written, exercise, "{kind: straight}")


LIGHTER = Remains("lighter", sets=Fraction(60))
TAPER = Remains("taper", sets=Fraction(50))


@pytest.mark.parametrize(
    ("written", "amounts", "loads"),
    [
        ("{sets: 3, reps: 8 to 12}", [(8, 12)] * 3, []),
        ("{reps: [12, 10, 8]}", [(12, 12), (10, 10), (8, 8)], []),
        ("{reps: 5, load: [60 % 1RM, 70 % 1RM, 80 % 1RM, 80 % 1RM]}", [(5, 5)] * 4, [60, 70, 80, 80]),
        ("{reps: [5, 8, 8], load: [80 % 1RM, 70 % 1RM, 70 % 1RM]}", [(5, 5), (8, 8), (8, 8)], [80, 70, 70]),
        ("{hold: [45 s, 30 to 45 s]}", [(45, 45), (30, 45)], []),
        ("{distance: 20 to 30 m, sets: 2}", [(2000, 3000)] * 2, []),
    ],
)
def test_each_set_is_what_the_coach_wrote(written: str, amounts: list[tuple[int, int]], loads: list[int]) -> None:
    """A range stands for every set; a list gives the sets one by one, and says how many there are."""
    found = dose(written)

    assert [(one.amount.low, one.amount.high) for one in found.sets] == amounts
    assert [magnitude(one.load) for one in found.sets if one.load] == loads


@pytest.mark.parametrize(
    ("written", "weeks"),
    [
        (
            "{reps: [12, 10, 8], progress: {reps: {weeks: [[12, 10, 8], 10, [8, 8, 8]]}}}",
            ["12, 10, 8", "10, 10, 10", "8, 8, 8", "8, 8, 8"],
        ),
        ("{reps: 10, progress: {reps: {weeks: [10, [8, 8]], again: true}}}", ["10, 10", "8, 8", "10, 10"]),
        ("{reps: 10, load: [8 kg, 10 kg], progress: {load: {weeks: [[8 kg, 10 kg], 12 kg]}}}", ["10, 10", "10, 10"]),
        ("{sets: 2, reps: 10, progress: {reps: {weeks: [10, [8, 6]]}}}", ["10, 10", "8, 6"]),
    ],
)
def test_one_number_in_a_week_stands_for_every_set(written: str, weeks: list[str]) -> None:
    """Where some weeks list their sets one by one, a plain number in another week is that of each of as many sets."""
    made = one_exercise(written, "{kind: straight}")
    items = [in_week(made, week) for week in range(1, len(weeks) + 1)]

    assert [", ".join(str(one.amount.low) for one in item.dose.sets) for item in items if item] == weeks


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("{sets: 3, reps: 8 to 12}", "3 sets of 8 to 12 reps"),
        ("{reps: [12, 10, 8], load: 12 kg}", "3 sets of 12, 10, 8 reps, 12 kg"),
        ("{reps: [8 to 10, 6]}", "2 sets of 8 to 10, 6 reps"),
        (
            "{reps: 5, load: [60 % 1RM, 70 % 1RM, 70 % 1RM]}",
            "1 set of 5 reps, 60 % of 1RM; then 2 sets of 5 reps, 70 % of 1RM",
        ),
        ("{sets: 3, reps: 5, load: 60 kg, feels_like: RPE 8}", "3 sets of 5 reps, 60 kg, effort 8 of 10"),
        ("{sets: 2, hold: 30 to 45 s}", "2 sets of 30 s to 45 s hold"),
        ("{sets: 2, distance: 20 to 30 m}", "2 sets of 20 to 30 m"),
    ],
)
def test_sets_in_words(written: str, said: str) -> None:
    """Sets that differ in their amount alone are one list; equal neighbours are said together."""
    assert dose_in_words(ENGLISH, dose(written)) == said


def test_a_listed_week_by_effort_feels_like_nothing_else() -> None:
    """Where a list of weeks comes to an effort as the load, that alone says how hard the sets are."""
    weeks = "[10 kg, RPE 6, [12 kg, 14 kg, 14 kg]]"
    made = make.one_exercise(f"{{reps: 8, load: 10 kg, feels_like: RPE 8, progress: {{load: {{weeks: {weeks}}}}}}}")
    felt = [[str(one.feels) for one in item.dose.sets] for week in (1, 2, 3) if (item := make.in_week(made, week))]

    assert felt == [["RPE 8"] * 3, ["None"] * 3, ["RPE 8"] * 3]


@pytest.mark.parametrize(
    ("written", "number", "unit"),
    [
        ("{sets: 3, reps: 8 to 12}", "8–12", "reps"),
        ("{reps: [12, 10, 8]}", "12, 10, 8", "reps"),
        ("{sets: 2, hold: 2 to 3 min}", "2–3", "min hold"),
        ("{hold: [2 min, 90 s]}", "120, 90", "s hold"),
    ],
)
def test_sets_in_large_type(written: str, number: str, unit: str) -> None:
    """Large type has one unit for all sets."""
    assert big_amount(ENGLISH, dose(written)) == (number, unit)


@pytest.mark.parametrize(
    ("loads", "remains", "left"),
    [
        ("60 % 1RM, 70 % 1RM, 80 % 1RM, 80 % 1RM", LIGHTER, [60, 70]),
        ("80 % 1RM, 80 % 1RM, 70 % 1RM, 60 % 1RM", LIGHTER, [80, 80]),
        ("60 % 1RM, 70 % 1RM, 80 % 1RM, 80 % 1RM", TAPER, [80, 80]),
        ("80 % 1RM, 70 % 1RM, 80 % 1RM, 60 % 1RM", TAPER, [80, 80]),
    ],
)
def test_which_sets_are_left_out(loads: str, remains: Remains, left: list[int]) -> None:
    """Of four sets, 60 % or half are two: a lighter week leaves out the last ones, a taper the lightest ones."""
    whole = dose(f"{{reps: 5, load: [{loads}]}}")

    assert [magnitude(one.load) for one in lightened(whole, remains).sets if one.load] == left


def test_the_volume_of_a_range_has_two_ends() -> None:
    """3 sets of 8 to 12 on both sides are 48 to 72 repetitions (computed)."""
    found = dose("{sets: 3, reps: 8 to 12}", "sides: one at a time")

    assert (found.total_reps.low, found.total_reps.high) == (48, 72)
