"""Many more landings than the week before.

Counts every landing of a week, over all its sessions. Compares each week with the last full one before it; lighter
weeks, tapers and weeks that a change made lighter are passed over. Fewer than 40 landings count as 40, so that jumps
may begin, with up to 60. The first week of a plan follows nothing.

Why it matters: shins, heels and kneecaps feel the sum of landings, days later than the legs feel the work.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import contacts_in_week
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.checks.weeks import week_pairs
from setwright.model.units import plain_number

ID = "jump-contacts-step-too-large"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "%", 50, (10, 200), "the largest step of a week's landings")
THRESHOLDS = (MOST,)
FEWEST: Final = 40
"""Fewer landings count as so many."""

_SESSION = """
blocks:
  - {kind: straight, sets: 2, exercises: [{exercise: hop, reps: 20, progress: {reps: {weeks: [20, %s]}}}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
"""
BAD: Example = {**JUMPS, "sessions/legs": _SESSION % "40"}
GOOD: Example = {**JUMPS, "sessions/legs": _SESSION % "25"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan, at its first week that grows too much."""
    most = subject.value(MOST)
    for plan in subject.plans:
        for before, week in week_pairs(plan):
            was, now = contacts_in_week(subject, before), contacts_in_week(subject, week)
            step = (Fraction(now, max(was, FEWEST)) - 1) * 100
            if step > most:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"{now} landings in week {week.number}, {was} in week {before.number}: "
                    f"{plain_number(step, 1)} % more than {max(was, FEWEST)}",
                    f"{MOST.said(most)} more is the most: begin with fewer jumps, or let one kind of them wait",
                    plan.plan.accept,
                )
                break
