"""Rests that differ: between rounds, between sets, and before the next exercise of a round."""

import pytest

from setwright.dose.change import changes_between
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedBlock
from setwright.model.programme import Programme
from setwright.wording import blocks
from setwright.wording.changes import in_a_line
from setwright.wording.language import ENGLISH
from setwright.wording.pieces import plainly
from support.make import dose, programme

PLAN = "phases: [{name: First, aim: To begin., weeks: 3, sessions: {monday: only}, lighter: {weeks: [3], sets: 60 %}}]"


def made(block: str, change: str = "[]") -> Programme:
    """Return a programme whose one session holds one block, with a lighter third week."""
    return programme({"sessions/only": f"blocks: [{block}]", "plans/plan": f"{PLAN}\nchanges: {change}"})


def block(written: str, week: int = 1, change: str = "[]") -> ResolvedBlock:
    """Return the block in a week."""
    return resolve(made(written, change))[0].weeks[week - 1].sessions[0].blocks[0]


def pauses(found: ResolvedBlock) -> list[tuple[str, int]]:
    """Return every pause of a block, in order."""
    return [(step.kind, step.seconds) for step in found.steps if step.kind != "set"]


ROUNDS = (
    "{kind: superset, rounds: 4, rest: [60 s, 60 s, 2 min], change_over: 10 s, "
    "exercises: [{exercise: lift, reps: 8}, {exercise: lift, reps: 6}]}"
)
OWN = (
    "{kind: circuit, rounds: 2, rest: 2 min, change_over: 10 s, "
    "exercises: [{exercise: lift, reps: 8, rest: 45 s}, {exercise: lift, reps: 6, rest: 0 s}, "
    "{exercise: lift, reps: 4}]}"
)
SETS = "{kind: straight, sets: 3, rest: [60 s, 2 min], exercises: [{exercise: lift, reps: 8}]}"


def test_each_round_has_its_rest() -> None:
    """Before the last of four rounds, the rest is two minutes."""
    rests = [seconds for kind, seconds in pauses(block(ROUNDS)) if kind == "rest"]

    assert rests == [60, 60, 120]


def test_fewer_rounds_keep_the_first_rests() -> None:
    """60 % of four rounds are two, with one rest between them."""
    assert [seconds for kind, seconds in pauses(block(ROUNDS, 3)) if kind == "rest"] == [60]


def test_an_exercise_of_a_round_has_its_own_rest_before_the_next() -> None:
    """It stands in the place of the change-over; none at all goes straight on."""
    assert pauses(block(OWN)) == [("rest", 45), ("rest", 120), ("rest", 45)]


def test_rests_between_sets() -> None:
    """The first rest is a minute, the second two."""
    assert pauses(block(SETS)) == [("rest", 60), ("rest", 120)]


def test_a_change_of_one_week_is_one_rest_for_all() -> None:
    """Without an exercise, it changes every rest of the session."""
    change = "[{week: 2, session: only, rest: 30 s, why: Heat.}]"

    assert pauses(block(SETS, 2, change)) == [("rest", 30), ("rest", 30)]


def test_in_words() -> None:
    """Rests that differ are listed in their order."""
    rounds, own, sets = block(ROUNDS), block(OWN), block(SETS)

    assert plainly(blocks.rest_after_round(ENGLISH, rounds)) == (
        "Rest 1 min, 1 min, 2 min, round after round, each time from 1 again: 4 rounds in all"
    )
    assert blocks.how_with_rest(ENGLISH, rounds) == (
        "4 rounds of 1, then 2, then rest 1 min, 1 min, 2 min. 10 s to change over."
    )
    assert blocks.before_next(ENGLISH, own, 2) == "Rest 45 s, then 2"
    assert blocks.before_next(ENGLISH, own, 3) is None
    assert blocks.own_rest(ENGLISH, own.items[0]) == "then rest 45 s"
    assert plainly(blocks.rest_after_set(ENGLISH, sets.items[0])) == (
        "Rest 1 min, 2 min between the sets, one after the other"
    )


@pytest.mark.parametrize(
    ("before", "now", "said"),
    [
        (
            "{sets: 3, reps: 8, rest: 60 s}",
            "{sets: 3, reps: 8, rest: [60 s, 2 min]}",
            "rest 1 min, 2 min instead of 1 min",
        ),
        ("{sets: 3, reps: 8, rest: [60 s, 2 min]}", "{sets: 2, reps: 8, rest: 60 s}", "one set fewer"),
        ("{sets: 3, reps: 8, rest: [60 s, 2 min]}", "{sets: 3, reps: 8, rest: [60 s, 2 min]}", ""),
    ],
)
def test_what_changed(before: str, now: str, said: str) -> None:
    """Rests of sets that are left out are no change of the rest."""
    was, is_ = (dose(written, block="{kind: straight}") for written in (before, now))

    assert in_a_line(ENGLISH, changes_between(was, is_)) == said
