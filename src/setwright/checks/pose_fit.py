"""A pose that a body cannot take.

Looks at every pose of every figure: contacts that are out of reach, bends that the other contacts and bends leave no
room for, limbs below the floor, and contacts that miss the box or the bench.

Why it matters: the picture would show something else than the coach wrote, or something that nobody can do.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.poses import doubts
from setwright.checks.rule import Doubt, Subject

ID = "pose-does-not-fit"
SEVERITY = "warning"
SOURCE = "Lengths of Drillis R and Contini R, New York University, technical report 1166-03, 1966."

BAD: Example = {"exercises/step-down": "figure: {poses: [{trunk: 60, hip: 0, knee: 0, ankle: 0}]}"}
GOOD: Example = {"exercises/step-down": "figure: {poses: [{trunk: 30, knee: 110}]}"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each thing that a pose asks for and a body cannot do."""
    yield from doubts(subject, ID)
