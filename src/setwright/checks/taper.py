"""A taper that cuts too little or too much.

Compares the fewest sets of a taper week with the last full week before the taper. In range are 41 to 60 % fewer.

Why it matters: less of a cut leaves the legs tired on the day, more of it may lose what was built. The evidence is from
endurance-type training; using it for strength sets is an extrapolation.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.checks.weeks import last_full
from setwright.dose.resolved import ResolvedWeek
from setwright.model.units import plain_number

ID = "taper-outside-range"
SEVERITY = "warning"
SOURCE = "Bosquet L et al., Med Sci Sports Exerc 2007;39:1358-1365; Wang Z et al., PLoS ONE 2023;18:e0282838."
LEAST: Final = threshold(ID, "least", "%", 41, (10, 90), "the least that a taper takes off the sets")
MOST: Final = threshold(ID, "most", "%", 60, (10, 90), "the most that a taper takes off the sets")
THRESHOLDS = (LEAST, MOST)

_TWO_PHASES = """
phases:
  - {name: Full, aim: To build., weeks: 3, sessions: {monday: legs}}
  - {name: Taper, aim: To be fresh., weeks: 1, sessions: {monday: legs}, taper: {sets: [%s]}}
"""
BAD: Example = {"plans/spring": _TWO_PHASES % "80 %"}
GOOD: Example = {
    "plans/spring": _TWO_PHASES % "50 %",
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 4                                           # four sets to two: 50 % fewer
    exercises:
      - {exercise: goblet-squat, reps: 8}
      - {exercise: step-down, reps: 8}
""",
}


def cut_percent(before: int, now: int) -> Fraction:
    """Return by how many percent the sets fell."""
    return Fraction(before - now, before) * 100


def sets_in(week: ResolvedWeek) -> int:
    """Return all sets of a week, warm-ups excluded."""
    return sum(item.dose.count for session in week.sessions for item in session.items)


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each taper out of range."""
    least_cut, most_cut = subject.value(LEAST), subject.value(MOST)
    for plan in subject.plans:
        for index, phase in enumerate(plan.plan.phases):
            taper = [w for w in plan.weeks if w.phase == index and w.remains.kind == "taper"]
            full = last_full(plan, index)
            if not phase.taper or not taper or full is None:
                continue
            before, least = sets_in(full), min(map(sets_in, taper))
            cut = cut_percent(before, least)
            if not least_cut <= cut <= most_cut:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", index, "taper", key=True),
                    f"the taper goes from {before} sets a week to {least}: {plain_number(cut, 1)} % fewer",
                    f"{plain_number(least_cut)} to {MOST.said(most_cut)} fewer are in range; sets are whole numbers, "
                    "so try another percentage",
                    plan.plan.accept,
                )
