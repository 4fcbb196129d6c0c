"""More than one kind of jump begins in a week.

Looks at the first week of a plan in which each jump stands. The first phase of a plan for trained members is passed
over: they know their jumps.

Why it matters: whoever gets sore should know from what. Landings, hops and jumps load the knee, the calf and the shin
each in its own way, and each of them wants a week or two alone.
"""

from collections.abc import Iterator

from setwright.checks.example import HOP, JUMPS, Example
from setwright.checks.jumping import jumps_of
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "jumps-begin-together"
SEVERITY = "warning"
SOURCE = COMMON

_SESSION = "blocks: [{kind: straight, sets: 2, exercises: [%s]}]"
_PHASES = """
phases:
  - {name: First, aim: To begin., weeks: 2, sessions: {monday: legs}}
  - {name: Second, aim: To hop., weeks: 2, sessions: {monday: hops}}
  - {name: Third, aim: To land., weeks: 2, sessions: {monday: %s}}
"""
_HOP, _BOTH = "{exercise: hop, reps: 5}", "{exercise: hop, reps: 5}, {exercise: drop, reps: 3}"
_USUAL = {
    "exercises/hop": HOP,
    "exercises/drop": HOP.replace("Hop", "Drop"),
    "routines/warm-up": JUMPS["routines/warm-up"],
    "sessions/both": _SESSION % _BOTH,
}
BAD: Example = {**_USUAL, "sessions/hops": _SESSION % _BOTH, "plans/spring": _PHASES % "both"}
GOOD: Example = {**_USUAL, "sessions/hops": _SESSION % _HOP, "plans/spring": _PHASES % "both"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each week in which several jumps are new to the plan."""
    for plan in subject.plans:
        known: set[str] = set()
        for week in plan.weeks:
            stand = dict.fromkeys(item.exercise for s in week.sessions for item in jumps_of(subject, s))
            new = [exercise for exercise in stand if exercise not in known]
            known.update(new)
            if len(new) > 1 and not (week.phase == 0 and plan.plan.experience == "trained"):
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"{' and '.join(new)} begin together in week {week.number} of {plan.ident}",
                    "let one begin a week or two later: in another session, or by a change of that week",
                    plan.plan.accept,
                )
