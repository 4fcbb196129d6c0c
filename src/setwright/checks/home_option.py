"""An exercise that needs kit, without anything to use at home.

Looks for `at_home` on every exercise whose kit is more than a wall or a mat.

Why it matters: members train at home too, and improvise if nobody tells them how.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "missing-home-option"
SEVERITY = "warning"
SOURCE = COMMON
EVERY_HOME_HAS = frozenset({"wall", "mat", "floor", "chair"})

BAD: Example = {"exercises/step-down": "kit: [box]"}
GOOD: Example = {
    "exercises/step-down": """
kit: [box]
at_home: {use: the bottom stair, how: Hold the rail at first.}
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise without one."""
    for ident, exercise in subject.programme.exercises.items():
        kit = [name for name in exercise.kit if name not in EVERY_HOME_HAS]
        if kit and exercise.at_home is None:
            yield Doubt(
                subject.at(f"exercises/{ident}.yml", "kit"),
                f"{ident} needs {' and '.join(kit)}, and says nothing for members at home",
                "add 'at_home: {use: ..., how: ...}'",
                exercise.accept,
            )
