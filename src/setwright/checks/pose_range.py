"""A joint that bends farther than joints usually do.

Looks at hips, knees, ankles, shoulders and elbows of every pose; from the front, at how far they open sideways. A limb
that points at the viewer (`seen`) is left alone.

Why it matters: members copy the picture, and few can follow it there.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.poses import doubts
from setwright.checks.rule import Doubt, Subject

ID = "pose-beyond-range"
SEVERITY = "warning"
SOURCE = "After American Academy of Orthopaedic Surgeons, Joint Motion, 1965 (from memory), with some degrees to spare."

BAD: Example = {"exercises/step-down": "figure: {poses: [{shoulder: 215}]}"}
GOOD: Example = {"exercises/step-down": "figure: {poses: [{shoulder: 170}]}"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each joint beyond its usual range."""
    yield from doubts(subject, ID)
