"""A load that a limit in kilograms or in body weight cannot hold.

Looks at exercises whose load the physiotherapist limited, and at doses of them by effort, by reps in reserve, by a
share of 1RM, or with a band. What those weigh differs from member to member, or cannot be weighed, so that the limit
would stand there and bind nobody. They are allowed where the limits also name the hardest effort (`top_effort`) or the
fewest reps in reserve (`least_reserve`); the limit is then printed beside every such dose. It cannot be accepted away.

A dose that says no load at all leaves it to the member, where its kit comes in weights or bands: under a limit it says
which, or uses kit without any. So does a step of a warm-up, which can say none. Where no weight is allowed, no such kit
stands beside the dose.

Why it matters: a limit that a way of writing the dose gets round is no limit.
"""

from collections.abc import Iterator

from setwright.checks.chosen import chosen_in, in_routines
from setwright.checks.example import Example
from setwright.checks.limit_crossing import dose_place, limit_place
from setwright.checks.rule import Doubt, Subject
from setwright.dose.bounding import is_open
from setwright.dose.dose import Dose
from setwright.model.limits import Limits, NoWeight

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
    """Yield one doubt for each exercise of a session, at the first week with such a load, and for each warm-up."""
    for (_, slot), uses in subject.slots.items():
        ident = uses[0][2].exercise
        limits = subject.programme.exercises[ident].limits
        if limits is None or limits.load is None:
            continue
        for plan, where, item in uses:
            escape = _escape(item.dose, limits, chosen_in(subject, where.session, slot))
            if escape is not None:
                key, what, hint = escape
                yield Doubt(
                    dose_place(subject, plan, where, item, slot, key),
                    f"{ident}: {what} in week {where.week} of {plan.ident} {_may_weigh_more(limits)}",
                    f"the limit is in {limit_place(subject, ident, 'load')}; {hint}",
                )
                break
    for ident, exercise, kit, routine, place in in_routines(subject):
        if exercise.limits is not None and exercise.limits.load is not None:
            yield Doubt(
                place,
                f"{ident}: a {kit} without a load in {routine} {_may_weigh_more(exercise.limits)}",
                f"the limit is in {limit_place(subject, ident, 'load')}; take an exercise without weights here",
            )


def _may_weigh_more(limits: Limits) -> str:
    if isinstance(limits.load, NoWeight):
        return "is a weight, and the limit allows none"
    return f"may weigh more than the limit of {limits.load}"


def _escape(dose: Dose, limits: Limits, kit: str | None) -> tuple[str, str, str] | None:
    """Return the key to change, what may weigh more, and what to write instead; None where the limit holds."""
    bare = isinstance(limits.load, NoWeight)
    if kit is not None and any(one.load is None for one in dose.working):
        instead = "leave that kit out" if bare else "write the load"
        return "kit" if bare else "load", f"a {kit} without a load", f"{instead}, or 'kit' that comes in no weights"
    open_load = next((load for load in dose.loads if is_open(load)), None)
    if open_load is None:
        return None
    if bare and kit is not None:
        return "kit", f"a {kit} at {open_load}", "leave that kit out"
    if not bare and limits.top_effort is None and limits.least_reserve is None:
        hint = (
            "write the load as a weight or a share of body weight, or ask the physiotherapist for 'top_effort' or "
            "'least_reserve'"
        )
        return "load", str(open_load), hint
    return None
