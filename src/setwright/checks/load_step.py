"""A load grows faster than ten percent a week.

Looks at the same exercise of the same session in two trained weeks that follow each other. Lighter weeks and tapers are
passed over, so that coming back from one is no step. A load that begins, or that changes its kind, is not compared.

Why it matters: tissue adapts more slowly than willingness. Smaller steps, or more repetitions first, reach the same
load with less risk.
"""

from collections.abc import Iterator
from fractions import Fraction

from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.model.load import BodyWeightShare, Load, OneRepMaxShare, Weight, magnitude
from setwright.model.units import plain_number

ID = "load-step-too-large"
SEVERITY = "warning"
SOURCE = "Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708: 2 to 10 %."
LARGEST_PERCENT = Fraction(10)


def step_percent(before: Load | None, now: Load | None) -> Fraction | None:
    """Return how much heavier a load is, in percent of the one before; None where the two cannot be compared."""
    weighed = BodyWeightShare | OneRepMaxShare | Weight
    if not isinstance(before, weighed) or not isinstance(now, weighed) or type(before) is not type(now):
        return None
    return (magnitude(now) / magnitude(before) - 1) * 100


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at its first step that is too large."""
    for (session, slot), uses in subject.slots.items():
        before = None
        for plan, where, item in uses:
            if where.remains.kind != "normal":
                continue
            if before is not None and before[0] is plan:
                step = step_percent(before[1], item.dose.load)
                if step is not None and step > LARGEST_PERCENT:
                    yield Doubt(
                        subject.at(*place_in_session(session, slot), "progress"),
                        f"{item.exercise}: {before[1]} to {item.dose.load} in week {where.week} of {plan.ident} "
                        f"is {plain_number(step, 1)} % more",
                        f"10 % a week is the most: take a smaller step, or more repetitions first "
                        f"(up to {_largest(before[1])})",
                        subject.accepted_at(session, slot),
                    )
                    break
            before = (plan, item.dose.load)


def _largest(load: Load | None) -> str:
    if load is None or not isinstance(load, BodyWeightShare | OneRepMaxShare | Weight):
        return "the same"
    unit = " kg" if isinstance(load, Weight) else " %"
    return f"{plain_number(magnitude(load) * (1 + LARGEST_PERCENT / 100))}{unit}"
