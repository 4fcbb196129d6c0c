"""A pose that says too little.

Looks for trunks, hips and knees that nothing in the pose decides and that ended up bent.

Why it matters: where nothing is written, the picture shows a position that the tool picked and nobody checked.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.poses import doubts
from setwright.checks.rule import Doubt, Subject

ID = "pose-not-settled"
SEVERITY = "warning"
SOURCE = "A rule of this tool."

BAD: Example = {
    "exercises/step-down": """
figure:
  props: {box: {height: 40 cm}}
  poses: [{touch: {near foot: {to: box, at: 24 cm}, far foot: {to: floor, at: -20 cm}}, trunk: 16, knee: {far: 8}}]
""",
}
GOOD: Example = {
    "exercises/step-down": """
figure:
  props: {box: {height: 40 cm}}
  poses:
    - touch: {near foot: {to: box, at: 24 cm}, far foot: {to: floor, at: -20 cm}}
      trunk: 16
      knee: {near: 96, far: 8}
""",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each pose that leaves the body to chance."""
    yield from doubts(subject, ID)
