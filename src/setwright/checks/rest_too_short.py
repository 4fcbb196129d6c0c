"""A rest that is too short for how heavy the set is.

Looks at sets of 80 % of 1RM and more, of effort 8 and more, or with two repetitions or fewer in reserve. What counts is
the time until the same exercise comes round again: in a superset or a circuit, the other exercises are part of it. A
few seconds less are no matter: up to a tenth passes. Sets of 70 % of 1RM and more, of effort 7 and more, or with three
repetitions or fewer in reserve want half a minute at least.

Why it matters: without the rest, the next set is lighter or worse than planned, and it is the technique that gives way.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.limit_open import left
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.checks.threshold import threshold
from setwright.dose.timing import seconds_until_again
from setwright.model.load import Effort, Load, OneRepMaxShare, Reserve
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

ID = "rest-too-short"
SEVERITY = "warning"
SOURCE = (
    "Grgic J et al., Sports Med 2018;48:137-151: trained people gain from more than 2 min, for others 60 to 120 s are "
    "enough. Where heavy begins is common practice."
)
LEAST: Final = threshold(ID, "least", "time", 120, (30, 600), "the least time between two heavy sets of one exercise")
THRESHOLDS = (LEAST,)
HEAVY_PERCENT: Final = Fraction(80)
HEAVY_RPE: Final = Fraction(8)
HEAVY_RESERVE: Final = 2
HARD_PERCENT: Final = Fraction(70)
HARD_RPE: Final = Fraction(7)
HARD_RESERVE: Final = 3
LEAST_HARD_S: Final = Fraction(30)
"""The least time, in seconds, between two sets that are hard and not heavy yet. Common practice, no source."""
SLACK: Final = Fraction(1, 10)
"""What may lack of a rest without a word. Common practice, no source: nobody rests to the second."""

BAD: Example = {
    "plans/spring": "experience: trained",
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    rest: 60 s
    exercises: [{exercise: goblet-squat, reps: 5, load: 85 % 1RM}]
""",
}
GOOD: Example = {
    "plans/spring": "experience: trained",
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    rest: 2 min 30 s
    exercises: [{exercise: goblet-squat, reps: 5, load: 85 % 1RM}]
""",
}


def is_heavy(load: Load | None) -> bool:
    """Say whether a load is near what can be done at most."""
    return _reaches(load, HEAVY_PERCENT, HEAVY_RPE, HEAVY_RESERVE)


def is_hard(load: Load | None) -> bool:
    """Say whether a load is hard, heavy or not."""
    return _reaches(load, HARD_PERCENT, HARD_RPE, HARD_RESERVE)


def _reaches(load: Load | None, percent: Fraction, rpe: Fraction, reserve: int) -> bool:
    match load:
        case OneRepMaxShare():
            return load.percent >= percent
        case Effort():
            return load.rpe >= rpe
        case Reserve():
            return load.reps <= reserve
    return False


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at the first week that rests too little."""
    least = subject.value(LEAST)
    for (session, slot), uses in subject.slots.items():
        for plan, where, item in uses:
            steps, items = where.blocks[slot[0]].course_with(item)
            said = [load for one in item.dose.working for load in (one.load, one.feels, left(one.amount))]
            hard = next((load for load in said if is_heavy(load)), next((load for load in said if is_hard(load)), None))
            asked = least if is_heavy(hard) else min(least, LEAST_HARD_S)
            between_s = seconds_until_again(steps, [other.dose for other in items], slot[1])
            if hard is not None and between_s is not None and between_s < asked * (1 - SLACK):
                yield Doubt(
                    subject.at(*place_in_session(session, slot), "load"),
                    f"{item.exercise}: {duration(ENGLISH, between_s)} between sets at {hard}, "
                    f"in week {where.week} of {plan.ident}",
                    f"rest for {LEAST.said(asked)} or more, or take a lighter load",
                    subject.accepted_at(session, slot),
                )
                break
