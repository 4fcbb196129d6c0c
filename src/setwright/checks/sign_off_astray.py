"""A sign-off of an exercise that is not there.

Looks at the ids in sign-offs.yml.

Why it matters: an exercise that was given a new name has lost its review, and nobody would notice.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.sign_off_due import SQUAT, STEP_DOWN
from setwright.source.suggest import did_you_mean

ID = "sign-off-astray"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {"sign-offs": SQUAT + STEP_DOWN.replace("step-down", "step-up") + STEP_DOWN}
GOOD: Example = {"sign-offs": SQUAT + STEP_DOWN}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each sign-off that leads nowhere."""
    exercises = subject.programme.exercises
    for index, sign_off in enumerate(subject.programme.sign_offs):
        if sign_off.exercise not in exercises:
            yield Doubt(
                subject.at("sign-offs.yml", index),
                f"there is no exercise '{sign_off.exercise}' for this sign-off",
                did_you_mean(sign_off.exercise, exercises, "delete the line, or give the exercise its old name"),
            )
