"""A phase too short to count.

Looks at exercises that may not come before a phase of a plan (`earliest_phase`), where the limits name no week as well
(`earliest_week`): how many weeks do the phases before it last? A phase of a single week is a phase to the limit, and no
time to a tendon.

Why it matters: a physiotherapist who says "not in the first phase" means the weeks of getting used to the work.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.limit_crossing import limit_place
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold

ID = "phase-too-short"
SEVERITY = "warning"
SOURCE = COMMON
LEAST: Final = threshold(ID, "least", "weeks", 2, (1, 12), "the shortest phase that counts before a limited exercise")
THRESHOLDS = (LEAST,)

_PLAN = """
experience: trained
phases:
  - {name: First, aim: To begin., weeks: %s, sessions: {monday: legs}}
  - {name: Second, aim: To go on., weeks: 2, sessions: {monday: hops}}
"""
_HOPS = {
    **JUMPS,
    "exercises/hop": "{name: Hop, pattern: jump, regions: {main: [calf]}, limits: {earliest_phase: 2}}",
    "sessions/hops": """
name: Hops
blocks:
  - {kind: straight, sets: 2, rest: 2 min, exercises: [{exercise: hop, reps: 5}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
""",
}
BAD: Example = {**_HOPS, "plans/spring": _PLAN % 1}
GOOD: Example = {**_HOPS, "plans/spring": _PLAN % 2}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan and phase, with the first exercise that waits for a later one."""
    least = subject.value(LEAST)
    for plan in subject.plans:
        held: set[str] = set()
        for session in plan.sessions:
            held |= {item.exercise for item in session.all_items}
        for index, phase in enumerate(plan.plan.phases):
            waiting = [ident for ident in sorted(held) if index + 1 < (_first(subject, ident) or 0)]
            if phase.weeks < least and waiting:
                place = subject.at(f"plans/{plan.ident}.yml", "phases", index, "weeks")
                where = limit_place(subject, waiting[0], "earliest_phase")
                yield Doubt(
                    place,
                    f"{waiting[0]} waits for phase {_first(subject, waiting[0])}, and phase {index + 1} ({phase.name}) "
                    f"of {plan.ident} lasts {phase.weeks} {'week' if phase.weeks == 1 else 'weeks'}",
                    f"{LEAST.said(least)} or more count as a phase; the limit is in {where}: ask the physiotherapist, "
                    "who may name an 'earliest_week'",
                    plan.plan.accept,
                )


def _first(subject: Subject, ident: str) -> int | None:
    """Return the phase that an exercise waits for, where its limits count no weeks."""
    limits = subject.programme.exercises[ident].limits
    return limits.earliest_phase if limits is not None and limits.earliest_week is None else None
