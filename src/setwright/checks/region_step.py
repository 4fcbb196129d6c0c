"""A region or a movement with many more sets than the week before.

Adds up a week's sets by region (a half for regions that help) and by movement pattern, over all sessions. Compares each
week with the last full one before it, across sessions and phases; lighter weeks, tapers and weeks that a change made
lighter are passed over. Fewer than eight sets count as eight, so that a region may begin with ten. Jumps are judged by
their landings, in a check of their own.

Why it matters: the week's sum may stay as it is while one calf gets half as much again, most of all where a new phase
brings new sessions.
"""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.checks.weeks import week_pairs
from setwright.dose.contacts import JUMP
from setwright.dose.exposure import week_exposure
from setwright.dose.resolved import ResolvedWeek
from setwright.model.units import plain_number

ID = "region-step-too-large"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "%", 33, (10, 100), "the largest step of a region's or a movement's sets in a week")
THRESHOLDS = (MOST,)
FEWEST_SETS: Final = 8
"""Fewer sets count as so many: there, one set more is always a large step."""

_SESSION = """
blocks:
  - kind: straight
    sets: 9
    exercises:
      - {exercise: goblet-squat, reps: 8, sets: 14}
      - {exercise: step-down, reps: 8, progress: {sets: {weeks: [9, %s]}}}
"""
BAD: Example = {"sessions/legs": _SESSION % "13"}
GOOD: Example = {"sessions/legs": _SESSION % "11, 13"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each week in which something grows too much, with all that does."""
    most = subject.value(MOST)
    for plan in subject.plans:
        for before, week in week_pairs(plan):
            was, now = _sets(subject, before), _sets(subject, week)
            grown = [
                f"{what} from {_said(was.get(what))} to {_said(now[what])}"
                for what in now
                if _step(was, now, what) > most
            ]
            if grown:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"week {week.number} has many more sets than week {before.number}: {', '.join(grown)}",
                    f"{MOST.said(most)} more is the most: begin with fewer sets, or let something else go",
                    plan.plan.accept,
                )


def _step(was: Mapping[str, Fraction], now: Mapping[str, Fraction], what: str) -> Fraction:
    before = max(was.get(what, Fraction(0)), Fraction(FEWEST_SETS))
    return (now[what] - before) / before * 100


def _sets(subject: Subject, week: ResolvedWeek) -> dict[str, Fraction]:
    """Return a week's sets by region, and by pattern where that is another word."""
    whole = week_exposure(week, subject.programme)
    patterns = {f"{pattern} movements": Fraction(n) for pattern, n in whole.by_pattern.items() if pattern != JUMP}
    return {**whole.by_region, **patterns}


def _said(sets: Fraction | None) -> str:
    return plain_number(sets or Fraction(0), 1)
