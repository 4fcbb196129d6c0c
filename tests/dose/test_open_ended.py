"""As many repetitions as possible: what the tool counts, what it says, and what a limit does with it."""

from fractions import Fraction

import pytest

from setwright.dose.change import changes_between
from setwright.dose.dose import Dose
from setwright.dose.exposure import lifted
from setwright.dose.prescribing import lightened
from setwright.dose.week_kind import Remains
from setwright.model.span import Open
from setwright.review.state import state_of
from setwright.review.written_state import from_json, to_json
from setwright.wording.changes import in_a_line
from setwright.wording.doses import big_amount, dose_in_words
from setwright.wording.language import ENGLISH
from support.make import dose as dose_of
from support.make import in_week, one_exercise, programme, resolved, verdict

OPEN = "reps: as many as possible, leave: 2 reps"


def dose(written: str) -> Dose:
    """Return a dose of straight sets whose number the block leaves open."""
    return dose_of(written, "", "{kind: straight}")


@pytest.mark.parametrize(
    ("written", "counted"),
    [
        (f"{{sets: 1, {OPEN}}}", [(5, 15)]),
        (f"{{sets: 1, {OPEN}, up_to: 12, load: 12 kg}}", [(5, 12)]),
        (f"{{sets: 1, {OPEN}, up_to: 20}}", [(5, 20)]),
        (f"{{sets: 1, {OPEN}, up_to: 3}}", [(3, 3)]),
        # Of 10 that the table allows at 75 %, two are left (Baechle and Earle, seen in works that reprint the table).
        (f"{{sets: 1, {OPEN}, load: 75 % 1RM}}", [(5, 8)]),
        (f"{{sets: 1, {OPEN}, load: 75 % 1RM, up_to: 6}}", [(3, 6)]),
        (f"{{sets: 1, {OPEN}, load: 60 % 1RM}}", [(5, 15)]),
        ("{reps: [5, 5, as many as possible], leave: 1 rep, load: 85 % 1RM}", [(5, 5), (5, 5), (2, 5)]),
    ],
)
def test_what_an_open_set_counts_as(written: str, counted: list[tuple[int, int]]) -> None:
    """5 to 15, or as many as the repetition table allows less what is left; never more than where the coach ends it."""
    assert [(one.amount.low, one.amount.high) for one in dose(written).sets] == counted


@pytest.mark.parametrize(
    ("written", "said", "number", "unit"),
    [
        (
            f"{{sets: 2, {OPEN}, load: 12 kg}}",
            "2 sets of as many reps as possible (leave 2), 12 kg",
            "as many as possible",
            "reps (leave 2)",
        ),
        (
            f"{{sets: 2, {OPEN}, up_to: 12}}",
            "2 sets of as many reps as possible (leave 2, 12 at most)",
            "as many as possible",
            "reps (leave 2, 12 at most)",
        ),
        (
            "{reps: [5, as many as possible], leave: 1 rep}",
            "2 sets of 5, as many reps as possible (leave 1)",
            "5, as many as possible",
            "reps (leave 1)",
        ),
    ],
)
def test_open_sets_in_words(written: str, said: str, number: str, unit: str) -> None:
    """What must be left is said wherever the set is."""
    assert dose_in_words(ENGLISH, dose(written)) == said
    assert big_amount(ENGLISH, dose(written)) == (number, unit)


def test_totals_take_the_upper_end() -> None:
    """Two sets that count as up to 15 repetitions with 10 kg are 300 kg (computed)."""
    assert lifted(dose(f"{{sets: 2, {OPEN}, load: 10 kg}}")).fixed_kg == 300


@pytest.mark.parametrize("remains", [Remains("lighter", load=Fraction(90)), Remains("lighter", reps=Fraction(60))])
def test_a_lighter_week_ends_an_open_set(remains: Remains) -> None:
    """With less weight, more would be possible: nobody does more in a lighter week than in a full one."""
    whole = dose(f"{{sets: 2, {OPEN}, load: 75 % 1RM}}")
    left = lightened(whole, remains)

    for before, now in zip(whole.sets, left.sets, strict=True):
        assert isinstance(now.amount, Open)
        assert now.amount.up_to is not None
        assert now.amount.high <= now.amount.up_to <= before.amount.high


def test_a_taper_leaves_an_open_set_as_it_is() -> None:
    """A taper leaves out sets; each that stays is what it was."""
    whole = dose(f"{{sets: 2, {OPEN}, load: 75 % 1RM}}")

    assert lightened(whole, Remains("taper", sets=Fraction(50))).sets == whole.sets[:1]


@pytest.mark.parametrize(
    ("before", "now", "said"),
    [
        ("{sets: 2, reps: 8}", f"{{sets: 2, {OPEN}}}", "as many reps as possible (leave 2) instead of 8"),
        (f"{{sets: 2, {OPEN}}}", "{sets: 2, reps: 8}", "8 reps instead of as many as possible"),
        (
            f"{{sets: 2, {OPEN}}}",
            "{sets: 2, reps: as many as possible, leave: 1 rep}",
            "as many reps as possible (leave 1) instead of as many as possible",
        ),
        (f"{{sets: 2, {OPEN}, load: 70 % 1RM}}", f"{{sets: 2, {OPEN}, load: 75 % 1RM}}", "5 % of 1RM heavier"),
    ],
)
def test_what_changed(before: str, now: str, said: str) -> None:
    """What an open set is counted as is no change of it."""
    assert in_a_line(ENGLISH, changes_between(dose(before), dose(now))) == said


@pytest.mark.parametrize(
    ("limits", "written", "crossed"),
    [
        ("{reps: 12}", OPEN, "as many reps as possible, with no 'up_to' to end them, in week 1"),
        ("{reps: 12}", f"{OPEN}, up_to: 15", "15 reps in week 1"),
        ("{reps: 12}", f"{OPEN}, up_to: 12", ""),
        ("{hold: 60 s}", OPEN, "as many reps as possible, with no 'up_to' to end them, in week 1"),
        ("{top_effort: RPE 7}", OPEN, "2 reps in reserve in week 1"),
        ("{least_reserve: 2 reps in reserve}", OPEN, ""),
        ("{least_reserve: 3 reps in reserve}", OPEN, "2 reps in reserve in week 1"),
        ("{weekly_sets: 12}", OPEN, ""),
    ],
)
def test_a_limit_bounds_an_open_set(limits: str, written: str, crossed: str) -> None:
    """Under a limit of repetitions it needs an end, and what it leaves is held against a limit of effort."""
    made = programme(
        {
            "exercises/lift": f"limits: {limits}",
            "sessions/only": f"blocks: [{{kind: straight, sets: 2, exercises: [{{exercise: lift, {written}}}]}}]",
        }
    )
    found = [one.message for one in verdict(made).findings if one.rule == "dose-beyond-limit"]

    assert len(found) == bool(crossed)
    assert all(crossed in message for message in found)


def test_a_jump_without_an_end_crosses_a_limit_of_landings() -> None:
    """However many landings a limit allows, a set without an end may come to more."""
    made = programme(
        {
            "exercises/lift": "{pattern: jump, limits: {contacts: 500}}",
            "sessions/only": f"blocks: [{{kind: straight, sets: 2, exercises: [{{exercise: lift, {OPEN}}}]}}]",
        }
    )

    assert "dose-beyond-limit" in {one.rule for one in verdict(made).findings}


def test_too_heavy_for_what_must_be_left() -> None:
    """At 95 % the table allows two: nobody does one and leaves two."""
    made = one_exercise(f"{{{OPEN}, load: 95 % 1RM}}")

    assert "reps-beyond-load" in {one.rule for one in verdict(made).findings}


def test_one_week_of_a_plan() -> None:
    """A change of one week may open a set, or end it."""
    changes = (
        "[{week: 2, day: monday, exercise: lift, reps: as many as possible, leave: 1 rep, up_to: 9, why: A test.}]"
    )
    made = one_exercise("{reps: 8}", changes=changes)
    items = [in_week(made, week) for week in (1, 2, 3)]

    assert [str(item.dose.amount.high) for item in items if item] == ["8", "9", "8"]


def test_a_state_keeps_what_must_be_left() -> None:
    """Written down and read again, an open set is the same."""
    files = {"sessions/only": f"blocks: [{{kind: straight, sets: 2, exercises: [{{exercise: lift, {OPEN}}}]}}]"}
    state = state_of(programme(files), (resolved(files),))

    assert from_json(to_json(state)) == state
