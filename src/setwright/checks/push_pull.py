"""Much more pushing than pulling, or the other way round.

Counts the sets of the patterns push and pull in each phase of three exercises or more, lighter weeks and tapers aside.

Why it matters: shoulders that are pressed and never pulled tend to end up stiff at the front and weak behind.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.balance import doubts
from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold

ID = "push-pull-imbalance"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "count", 2, (1, 10), "how many times the sets of the other")
THRESHOLDS = (MOST,)

_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: plank, hold: 30 s}
      - {exercise: press, reps: 8, sets: %s}
      - {exercise: row, reps: 8, sets: %s}
"""
_THREE = {
    "exercises/press": "pattern: push",
    "exercises/row": "pattern: pull",
    "exercises/plank": "pattern: trunk",
}
BAD: Example = {**_THREE, "sessions/legs": _SESSION % (5, 2)}
GOOD: Example = {**_THREE, "sessions/legs": _SESSION % (3, 3)}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each phase out of balance."""
    yield from doubts(subject, MOST, ("pushing", frozenset({"push"})), ("pulling", frozenset({"pull"})))
