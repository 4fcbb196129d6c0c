"""A week with many more sets than the one before.

Adds up all working sets of a week, and compares it with the last full week before it. Lighter weeks and tapers are
passed over, so that coming back from one is no step; so is a week in which a session was left out or made lighter.

Why it matters: loads may stay as they are and the week can still be too much. Sets are the part of a plan that grows
unnoticed, a round here and an exercise there.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.taper import sets_in
from setwright.checks.threshold import threshold
from setwright.checks.weeks import week_pairs
from setwright.model.units import plain_number

ID = "volume-step-too-large"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "%", 20, (5, 100), "the largest step of a week's sets")
THRESHOLDS = (MOST,)
FEWEST_SETS: Final = 6
"""Weeks of fewer sets are not compared: there, one set more is always a large step."""

BAD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    progress: {sets: {weeks: [3, 4]}}         # six sets, then eight
    exercises:
      - {exercise: goblet-squat, reps: 8}
      - {exercise: step-down, reps: 8}
"""
}
GOOD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8, progress: {sets: {weeks: [3, 4]}}, sets: 3}
      - {exercise: step-down, reps: 8}
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan, at its first week that grows too much."""
    most = subject.value(MOST)
    for plan in subject.plans:
        for full, week in week_pairs(plan):
            before, now = sets_in(full), sets_in(week)
            step = Fraction(now - before, before) * 100 if before >= FEWEST_SETS else Fraction(0)
            if step > most:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"week {week.number} has {now} sets, the full week before it {before}: "
                    f"{plain_number(step, 1)} % more",
                    f"{MOST.said(most)} a week is the most: let fewer exercises grow at once",
                    plan.plan.accept,
                )
                break
