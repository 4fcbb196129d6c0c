"""More repetitions than that share of 1RM usually allows.

Looks at loads written as a share of 1RM: the repetition table says how many repetitions go with it at most.

Why it matters: a set that cannot be finished ends in failed or ugly repetitions.
"""

from collections.abc import Iterator
from fractions import Fraction

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.dose import Dose
from setwright.dose.repetitions import most_reps
from setwright.model.load import Load, OneRepMaxShare
from setwright.model.span import Open

ID = "reps-beyond-load"
SEVERITY = "warning"
SOURCE = "Baechle TR, Earle RW (eds), Essentials of Strength Training and Conditioning, NSCA / Human Kinetics."

BAD: Example = {
    "plans/spring": "experience: trained",
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 12, load: 75 % 1RM}]
""",
}
GOOD: Example = {
    "plans/spring": "experience: trained",
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 10, load: 75 % 1RM}]
""",
}


def _beyond(dose: Dose) -> tuple[int | Fraction, Load, int] | None:
    """Return the repetitions, the load and the most that people manage, of the first set that asks for more."""
    for one in dose.working:
        most = most_reps(one.load.percent) if isinstance(one.load, OneRepMaxShare) and dose.measure == "reps" else None
        asked = one.amount.high + (one.amount.leave if isinstance(one.amount, Open) else 0)
        if one.load is not None and most is not None and asked > most:
            return asked, one.load, most
    return None


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session that asks for too many repetitions in some week."""
    for (session, slot), uses in subject.slots.items():
        for plan, where, item in uses:
            beyond = _beyond(item.dose)
            if beyond is not None:
                reps, load, most = beyond
                yield Doubt(
                    subject.at(*place_in_session(session, slot), "reps"),
                    f"{item.exercise}: {reps} reps at {load} in week {where.week} of {plan.ident}",
                    f"at {load} most people manage {most}: fewer reps or a lighter load",
                    subject.accepted_at(session, slot),
                )
                break
