"""A limb inside a box.

Looks at every position of every figure, and at the way from each to the next: no leg, foot or arm may pass through a
box, a step, or the seat of a bench or a chair. A side of the body that stands next to one says so there:
`beside: near`.

Why it matters: nobody can copy it, and on the way from a box it hides how the foot gets over the edge.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.poses import doubts
from setwright.checks.rule import Doubt, Subject

ID = "limb-inside-prop"
SEVERITY = "warning"
SOURCE = "A rule of this tool."

BAD: Example = {
    "exercises/step-down": """
figure:
  props: {box: {height: 40 cm, at: 0 cm}}
  poses: [{touch: {feet: {to: floor, at: 0 cm}}, trunk: 0, knee: 0}]
""",
}
GOOD: Example = {
    "exercises/step-down": """
figure:
  props: {box: {height: 40 cm, at: 50 cm}}
  poses: [{touch: {feet: {to: floor, at: 0 cm}}, trunk: 0, knee: 0}]
""",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each limb that passes through a prop."""
    yield from doubts(subject, ID)
