"""Much more work from the knees than from the hips, or the other way round.

Counts the sets of the patterns squat and lunge against those of the pattern hinge, in each phase of three exercises or
more, lighter weeks and tapers aside. Jumps, carries and calves count for neither.

Why it matters: the thigh's front and back, and the hips, share every step downhill. Training one of them alone leaves
the other to strain.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.balance import doubts
from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold

ID = "knee-hip-imbalance"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "count", 3, (1, 10), "how many times the sets of the other")
THRESHOLDS = (MOST,)

BAD: Example = {
    "exercises/bridge": "pattern: hinge",
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8}
      - {exercise: step-down, reps: 8}
      - {exercise: bridge, reps: 8, sets: 1}
""",
}
GOOD: Example = {
    "exercises/bridge": "pattern: hinge",
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8}
      - {exercise: step-down, reps: 8}
      - {exercise: bridge, reps: 8}
""",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each phase out of balance."""
    knee = ("squats and lunges", frozenset({"squat", "lunge"}))
    yield from doubts(subject, MOST, knee, ("hinges", frozenset({"hinge"})))
