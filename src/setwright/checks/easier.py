"""An exercise without an easier variation.

Looks for `easier` on every exercise.

Why it matters: on the day that it is too hard, a member needs something to do instead.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "missing-easier-variation"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {"exercises/step-down": "easier: []"}
GOOD: Example = {"exercises/step-down": "easier: [{how: Hold a rail.}]"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise without one."""
    for ident, exercise in subject.programme.exercises.items():
        if not exercise.easier:
            yield Doubt(
                subject.at(f"exercises/{ident}.yml"),
                f"{ident} has no easier variation",
                "add 'easier: [an-exercise]' or 'easier: [{how: ...}]'",
                exercise.accept,
            )
