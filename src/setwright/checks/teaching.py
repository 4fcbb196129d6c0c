"""An exercise page that leaves out something a member or a physiotherapist looks for.

Looks for the breathing, where to feel it, three cues, common faults and cautions on every exercise.

Why it matters: these are what a coach would say beside the member. A page without them sends people to guess.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "missing-teaching-point"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {"exercises/step-down": "cautions: []"}
GOOD: Example = {"exercises/step-down": "cautions: [Ask a physiotherapist first if a knee hurts.]"}
_WANTED = {
    "breathing": "when to breathe",
    "feel": "where the work should be felt",
    "cues": "a cue",
    "faults": "a common fault",
    "cautions": "a caution",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise that lacks any of them."""
    for ident, exercise in subject.programme.exercises.items():
        missing = [key for key in _WANTED if not getattr(exercise, key)]
        if missing:
            yield Doubt(
                subject.at(f"exercises/{ident}.yml"),
                f"{ident} does not say {', '.join(_WANTED[key] for key in missing)}",
                f"add {', '.join(repr(key) for key in missing)}",
                exercise.accept,
            )
