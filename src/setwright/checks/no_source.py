"""An exercise that names no source.

Looks for `sources` on every exercise. Much good practice was never studied: then say so, by accepting this warning with
the reason, which the physiotherapist reads.

Why it matters: a reviewer has to know whether a claim rests on a study or on habit.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "missing-source"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {"exercises/step-down": "sources: []"}
GOOD: Example = {
    "exercises/step-down": """
sources: []
accept: [{rule: missing-source, why: Common practice; nobody has studied it.}]
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise without one."""
    for ident, exercise in subject.programme.exercises.items():
        if not exercise.sources:
            yield Doubt(
                subject.at(f"exercises/{ident}.yml"),
                f"{ident} names no source",
                "add 'sources: [an-id]' from references.yml, or accept this with the reason, such as common practice",
                exercise.accept,
            )
