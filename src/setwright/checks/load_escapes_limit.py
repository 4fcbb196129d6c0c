"""A load that a limit in kilograms or in body weight cannot hold.

Looks at exercises whose load the physiotherapist limited, and at doses of them by effort, by reps in reserve, by a
share of 1RM, or with a band. What those weigh differs from member to member, or cannot be weighed, so that the limit
would stand there and bind nobody. They are allowed where the limits also name the hardest effort (`top_effort`) or the
fewest reps in reserve (`least_reserve`); the limit is then printed beside every such dose. It cannot be accepted away.

Why it matters: a limit that a way of writing the dose gets round is no limit.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.limit_crossing import dose_place, limit_place
from setwright.checks.rule import Doubt, Subject
from setwright.dose.bounding import is_open

ID = "load-escapes-limit"
SEVERITY = "error"
SOURCE = "The physiotherapist of the club."

_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 8, load: RPE 7}]
"""
BAD: Example = {"exercises/goblet-squat": "limits: {load: 20 % bodyweight}", "sessions/legs": _SESSION}
GOOD: Example = {
    "exercises/goblet-squat": "limits: {load: 20 % bodyweight, top_effort: RPE 7}",
    "sessions/legs": _SESSION,
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at the first week with such a load."""
    for (_, slot), uses in subject.slots.items():
        ident = uses[0][2].exercise
        limits = subject.programme.exercises[ident].limits
        if limits is None or limits.load is None or limits.top_effort or limits.least_reserve:
            continue
        for plan, where, item in uses:
            load = next((load for load in item.dose.loads if is_open(load)), None)
            if load is not None:
                yield Doubt(
                    dose_place(subject, plan, where, item, slot, "load"),
                    f"{ident}: {load} in week {where.week} of {plan.ident} may weigh more than the limit of "
                    f"{limits.load}",
                    f"the limit is in {limit_place(subject, ident, 'load')}; write the load as a weight or a share of "
                    "body weight, or ask the physiotherapist for 'top_effort' or 'least_reserve'",
                )
                break
