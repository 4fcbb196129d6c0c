"""A load grows faster than ten percent a week.

Looks at the same exercise of the same session in two trained weeks that follow each other. Lighter weeks and tapers are
passed over, so that coming back from one is no step; so is a week that a change made lighter. A load that begins, or
that changes its kind, is not compared; weights in each hand are, with both hands together.

Why it matters: tissue adapts more slowly than willingness. Smaller steps, or more repetitions first, reach the same
load with less risk.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.checks.threshold import threshold
from setwright.dose.progression import with_magnitude
from setwright.dose.resolved import ResolvedItem
from setwright.model.load import Load, in_all, magnitude
from setwright.model.units import plain_number

ID = "load-step-too-large"
SEVERITY = "warning"
SOURCE = "Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708: 2 to 10 %."
MOST: Final = threshold(ID, "most", "%", 10, (1, 50), "the largest step of a load in a week")
THRESHOLDS = (MOST,)

BAD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - exercise: goblet-squat
        reps: 8
        load: 12 kg
        progress: {load: {add: 4 kg, up_to: 16 kg}}
"""
}
GOOD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - exercise: goblet-squat
        reps: 6
        load: 15 % bodyweight
        progress:
          reps: {add: 1, up_to: 8}
          then: {load: {add: 1.5 % bodyweight, up_to: 16.5 % bodyweight}}
"""
}


def step_percent(before: Load | None, now: Load | None) -> Fraction | None:
    """Return how much heavier a load is, in percent of the one before; None where the two cannot be compared."""
    if before is None or now is None or not before.weighed or type(before) is not type(now):
        return None
    return (in_all(now) / in_all(before) - 1) * 100


def lightened_once(item: ResolvedItem, step: Fraction | None) -> bool:
    """Say whether a change made this week's load lighter, so that the next week is compared with the one before."""
    return bool(item.reasons) and step is not None and step < 0


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at its first step that is too large."""
    most = subject.value(MOST)
    for (session, slot), uses in subject.slots.items():
        before = None
        for plan, where, item in uses:
            if where.remains.kind != "normal":
                continue
            was: Load | None = before[1] if before is not None and before[0] is plan else None
            step = step_percent(was, item.dose.heaviest)
            if was is not None and step is not None and step > most:
                largest = with_magnitude(was, magnitude(was) * (1 + most / 100))
                yield Doubt(
                    subject.at(*place_in_session(session, slot), "progress"),
                    f"{item.exercise}: {was} to {item.dose.heaviest} in week {where.week} of {plan.ident} "
                    f"is {plain_number(step, 1)} % more",
                    f"{MOST.said(most)} a week is the most: take a smaller step, or more repetitions first "
                    f"(up to {largest})",
                    subject.accepted_at(session, slot),
                )
                break
            if not lightened_once(item, step):
                before = (plan, item.dose.heaviest)
