"""What a coach says, how it is written, and the sets that come of it: one row for each form of the language.

The numbers are computed by hand from what is written: no source is needed for a sum.
"""

import pytest

from setwright.dose.dose import Clock, Dose, Set
from setwright.dose.resolved import ResolvedBlock, ResolvedItem, ResolvedSession
from setwright.model.span import Open
from support.make import in_week, one_exercise, resolved


def said(one: Set) -> str:
    """Return one set in a few plain words: the amount, the load, how it should feel."""
    amount = one.amount
    number = str(amount.low) if amount.is_one else f"{amount.low} to {amount.high}"
    open_end = f"leave {amount.leave}" if isinstance(amount, Open) else number
    words = [open_end, *([str(one.load)] if one.load else []), *([f"feels {one.feels}"] if one.feels else [])]
    return ("ramp " if one.kind == "ramp" else "") + ", ".join(words)


def sets_of(dose: Dose) -> list[str]:
    """Return every set of a dose in order."""
    return [said(one) for one in dose.sets]


def item(written: str, week: int = 1, block: str = "{kind: straight, sets: 3}") -> ResolvedItem:
    """Return the one exercise of a small programme in a week."""
    found = in_week(one_exercise(written, block), week)
    assert found is not None
    return found


WAVES = (
    "{sets: 2, reps: 5, load: [65 % 1RM, 75 % 1RM], progress: {load: {weeks: [[65 % 1RM, 75 % 1RM], "
    "[70 % 1RM, 80 % 1RM], [75 % 1RM, 85 % 1RM]], again: true}}}"
)
SETS = [
    ("8 to 12 reps", "{reps: 8 to 12}", 1, ["8 to 12"] * 3),
    ("12, 10, 8", "{reps: [12, 10, 8]}", 1, ["12", "10", "8"]),
    (
        "60, 70, 80, 80 %",
        "{sets: 4, reps: 5, load: [60 % 1RM, 70 % 1RM, 80 % 1RM, 80 % 1RM]}",
        1,
        ["5, 60 % 1RM", "5, 70 % 1RM", "5, 80 % 1RM", "5, 80 % 1RM"],
    ),
    (
        "a heavy set, then lighter ones",
        "{reps: [5, 8, 8], load: [80 % 1RM, 70 % 1RM, 70 % 1RM]}",
        1,
        ["5, 80 % 1RM", "8, 70 % 1RM", "8, 70 % 1RM"],
    ),
    ("as many as you can, leaving two", "{reps: as many as possible, leave: 2 reps}", 1, ["leave 2"] * 3),
    ("60 kg, and it should feel like 8", "{reps: 5, load: 60 kg, feels_like: RPE 8}", 1, ["5, 60 kg, feels RPE 8"] * 3),
    (
        "warm-up sets by the table",
        "{reps: 5, load: 20 kg, ramp: 3}",
        1,
        ["ramp 5, 8 kg", "ramp 3, 12 kg", "ramp 2, 16 kg", *["5, 20 kg"] * 3],
    ),
    (
        "warm-up sets of one's own",
        "{reps: 5, load: 20 kg, ramp: [{reps: 5, of_load: 40 %}]}",
        1,
        ["ramp 5, 8 kg", *["5, 20 kg"] * 3],
    ),
    *(
        (
            f"three-week waves, week {week}",
            WAVES,
            week,
            wave,
        )
        for week, wave in (
            (1, ["5, 65 % 1RM", "5, 75 % 1RM"]),
            (3, ["5, 75 % 1RM", "5, 85 % 1RM"]),
            (4, ["5, 65 % 1RM", "5, 75 % 1RM"]),
        )
    ),
    *(
        (
            f"2.5 kg more in every set, week {week}",
            "{sets: 2, reps: 5, load: [70 kg, 85 kg], progress: {load: {add: 2.5 kg, up_to: 90 kg}}}",
            week,
            loads,
        )
        for week, loads in (
            (2, ["5, 72.5 kg", "5, 87.5 kg"]),
            (3, ["5, 75 kg", "5, 90 kg"]),
            (4, ["5, 75 kg", "5, 90 kg"]),
        )
    ),
    ("help in kg", "{reps: 5, load: 15 kg of help}", 1, ["5, 15 kg of help"] * 3),
    ("help as a share", "{reps: 5, load: 20 % bodyweight of help}", 1, ["5, 20 % bodyweight of help"] * 3),
    ("weight added to the body", "{reps: 5, load: bodyweight + 5 kg}", 1, ["5, bodyweight + 5 kg"] * 3),
]


@pytest.mark.parametrize(("row", "written", "week", "expected"), SETS, ids=[row for row, *_ in SETS])
def test_a_row_resolves_to_its_sets(row: str, written: str, week: int, expected: list[str]) -> None:
    """Every set stands there with its amount and its load, warm-up sets first."""
    assert sets_of(item(written, week).dose) == expected


def session_of(blocks: str, club: str = "") -> ResolvedSession:
    """Return the first session of a programme whose only session holds these blocks."""
    files = {"sessions/only": f"blocks: [{blocks}]", **({"club": club} if club else {})}
    return resolved(files).weeks[0].sessions[0]


LIFT = "{exercise: lift, reps: 5, tempo: 2-0-2-0}"
ROUNDS = (
    "{kind: circuit, rounds: as many as possible, for: 12 min, change_over: 10 s, exercises: "
    f"[{LIFT}, {{exercise: lift, work: 30 s}}]}}"
)
CLOCKS = [
    (
        "a set on every full minute",
        f"{{kind: straight, every: 1 min, sets: 10, exercises: [{LIFT}]}}",
        Clock(every_s=60),
        10,
    ),
    (
        "as many rounds as possible in 12 min",
        ROUNDS,
        Clock(lasts_s=720),
        12,  # a round takes five repetitions of 4 s, 10 s to change over and 30 s of work: a minute
    ),
]


@pytest.mark.parametrize(("row", "written", "clock", "count"), CLOCKS, ids=[row for row, *_ in CLOCKS])
def test_a_row_by_the_clock(row: str, written: str, clock: Clock, count: int) -> None:
    """The block keeps to its clock, and its sets are those that are written or that fit."""
    [block] = session_of(written).blocks

    assert (block.clock, block.items[0].dose.count) == (clock, count)
    assert sets_of(block.items[0].dose) == ["5"] * count


def rests_of(block: ResolvedBlock) -> list[int]:
    """Return the seconds of every rest between sets, in order."""
    return [step.seconds for step in block.steps if step.kind == "rest"]


def test_a_longer_rest_before_the_last_round() -> None:
    """Four rounds have three rests between them, the last of which is two minutes."""
    written = f"{{kind: superset, rounds: 4, rest: [60 s, 60 s, 2 min], exercises: [{LIFT}, {LIFT}]}}"

    assert session_of(written).blocks[0].rests_s == (60, 60, 120)


def test_a_rest_on_one_exercise_of_a_round() -> None:
    """It is rested before the next exercise of the round, in each of two rounds; and between rounds as written."""
    own = LIFT.replace("reps: 5", "reps: 5, rest: 45 s")
    [block] = session_of(f"{{kind: superset, rounds: 2, rest: 90 s, exercises: [{own}, {LIFT}]}}").blocks

    assert block.items[0].own_rest_s == 45
    assert rests_of(block).count(90) == 1


CLUB = "choices: {new: This is my first season}"


def test_choices_are_whole_prescriptions() -> None:
    """The other way has its own dose, and nothing of the first; what is optional says so."""
    way = "{for: [new], exercise: lift, sets: 2, hold: 20 s}"
    written = (
        f"{{kind: straight, sets: 3, exercises: [{{exercise: lift, reps: 5 to 8, load: 8 kg, instead: [{way}]}}, "
        "{exercise: lift, reps: 12, optional: true}]}"
    )
    first, second = session_of(written, CLUB).blocks[0].items
    [other] = first.instead

    assert sets_of(first.dose) == ["5 to 8, 8 kg"] * 3
    assert (other.choices, other.dose.measure, sets_of(other.dose)) == (("new",), "hold", ["20"] * 2)
    assert (first.optional, second.optional) == (False, True)


def test_a_block_may_be_optional() -> None:
    """The whole of it, and no other."""
    blocks = (
        f"{{kind: straight, sets: 3, exercises: [{LIFT}]}}, "
        f"{{kind: straight, sets: 3, optional: true, exercises: [{LIFT}]}}"
    )

    assert [block.optional for block in session_of(blocks).blocks] == [False, True]
