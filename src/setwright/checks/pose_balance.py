"""A held position that would fall over.

Looks at every pose that stands on level ground alone: its centre of mass, with what it holds, must stand over the feet,
knees and hands that carry it, seen from the side or from the front. A pose in motion says `balance: false`.

Why it matters: members copy the picture. A position that falls over teaches the wrong one.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.poses import doubts
from setwright.checks.rule import Doubt, Subject

ID = "pose-out-of-balance"
SEVERITY = "warning"
SOURCE = "Masses of de Leva P, J Biomech 1996;29:1223-1230."

BAD: Example = {
    "exercises/step-down": "figure: {poses: [{touch: {shins: floor}, trunk: 60, hip: 60}]}",
}
GOOD: Example = {
    "exercises/step-down": "figure: {poses: [{touch: {shins: floor}, trunk: 0, hip: 0}]}",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each pose that would fall."""
    yield from doubts(subject, ID)
