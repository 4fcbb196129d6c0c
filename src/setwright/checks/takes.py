"""A warm-up or cool-down that takes another time than its steps.

Adds up a routine's steps: repetitions at their tempo (4 s where there is none), holds and work, on both sides, and up
to 15 s from one step to the next. What `takes` says may lie a quarter outside of that, and a minute.

Why it matters: session times and budgets are made from it, and a warm-up that cannot be done in its time is cut short.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.dose.dose import CARRY_CM_PER_S, USUAL_TEMPO
from setwright.dose.timing import QUICKER_FREE_REPS
from setwright.model.routine import Routine, RoutinePart
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

ID = "takes-disagrees-with-steps"
SEVERITY = "warning"
SOURCE = COMMON
BETWEEN_S: Final = 15
"""The longest from one step of a routine to the next."""
SLACK: Final = Fraction(1, 4)
SLACK_S: Final = 60

_WARM_UP = "{takes: %s, exercises: [{do: Walk., work: 5 min}, {exercise: step-down, reps: 8}]}"
BAD: Example = {"routines/warm-up": _WARM_UP % "3 min"}
GOOD: Example = {"routines/warm-up": _WARM_UP % "6 min"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each routine whose time and steps disagree. Accepted on a session that offers it."""
    for ident, routine in subject.programme.routines.items():
        low_s, high_s = routine_time_s(subject, routine)
        if low_s * (1 - SLACK) - SLACK_S <= routine.takes <= high_s * (1 + SLACK) + SLACK_S:
            continue
        yield Doubt(
            subject.at(f"routines/{ident}.yml", "takes"),
            f"{ident} takes {duration(ENGLISH, routine.takes)}, its steps {_minutes(low_s)} to {_minutes(high_s)}",
            "correct 'takes', or the steps",
            [a for s in subject.programme.sessions.values() if ident in (*s.warm_up, *s.cool_down) for a in s.accept],
        )


def routine_time_s(subject: Subject, routine: Routine) -> tuple[int, int]:
    """Return how long a routine's steps take, in seconds, from quick to slow."""
    steps = [_step_s(subject, part) for part in routine.exercises]
    between = BETWEEN_S * (len(steps) * routine.rounds - 1)
    return (
        sum(low for low, _ in steps) * routine.rounds,
        sum(high for _, high in steps) * routine.rounds + between,
    )


def _step_s(subject: Subject, part: RoutinePart) -> tuple[int, int]:
    exercise = subject.programme.exercises[part.exercise] if part.exercise is not None else None
    sides = 2 if exercise is not None and exercise.sides == "one at a time" else 1
    if part.reps is not None:
        tempo = exercise.tempo if exercise is not None else None
        whole = part.reps * sides * (tempo or USUAL_TEMPO).rep_s
        return int(whole if tempo else whole * QUICKER_FREE_REPS), int(whole * (1 + SLACK))
    seconds = part.hold or part.work or int((part.distance or 0) / CARRY_CM_PER_S)
    return seconds * sides, seconds * sides


def _minutes(seconds: int) -> str:
    return duration(ENGLISH, 60 * max(1, round(seconds / 60)))
