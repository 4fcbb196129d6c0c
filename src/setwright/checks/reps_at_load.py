"""More repetitions than that share of 1RM usually allows.

Looks at loads written as a share of 1RM: the repetition table says how many repetitions go with it at most.

Why it matters: a set that cannot be finished ends in failed or ugly repetitions.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.repetitions import most_reps
from setwright.model.load import OneRepMaxShare

ID = "reps-beyond-load"
SEVERITY = "warning"
SOURCE = "Baechle TR, Earle RW (eds), Essentials of Strength Training and Conditioning, NSCA / Human Kinetics."

BAD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 12, load: 75 % 1RM}]
"""
}
GOOD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 10, load: 75 % 1RM}]
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session that asks for too many repetitions in some week."""
    for (session, slot), uses in subject.slots.items():
        for plan, where, item in uses:
            load = item.dose.load
            if not isinstance(load, OneRepMaxShare) or item.dose.measure != "reps":
                continue
            most = most_reps(load.percent)
            if most is not None and item.dose.amount > most:
                yield Doubt(
                    subject.at(*place_in_session(session, slot), "reps"),
                    f"{item.exercise}: {item.dose.amount} reps at {load} in week {where.week} of {plan.ident}",
                    f"at {load} most people manage {most}: fewer reps or a lighter load",
                    subject.accepted_at(session, slot),
                )
                break
