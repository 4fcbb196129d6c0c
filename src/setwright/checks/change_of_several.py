"""A change of one week that changes several entries of an exercise at once.

Looks at changes with `exercise`, and at sessions in which that exercise stands more than once, as a heavy set and
lighter ones for example, or as another way for members with a choice. The change sets the same number in all of them.

Why it matters: a heavy set and the lighter ones after it become alike, and nobody sees it in the plan.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "change-of-several"
SEVERITY = "warning"
SOURCE = COMMON

_SESSION = """
blocks:
  - kind: straight
    rest: 2 min
    exercises:
      - {exercise: goblet-squat, sets: 1, reps: 5}
      - {exercise: %s, sets: 2, reps: 8}
      - {exercise: step-down, sets: 3, reps: 8}
"""
_PLAN = """
changes: [{week: 2, day: monday, exercise: goblet-squat, reps: 4, why: A race on Sunday.}]
"""
BAD: Example = {"sessions/legs": _SESSION % "goblet-squat", "plans/spring": _PLAN}
GOOD: Example = {"sessions/legs": _SESSION % "step-down", "plans/spring": _PLAN}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each change and session in which it changes more than one entry."""
    for plan in subject.plans:
        for index, change in enumerate(plan.plan.changes):
            if change.exercise is None:
                continue
            week = plan.weeks[change.week - 1]
            held = {one.session for one in week.sessions if change.session in (None, one.session)}
            if change.day is not None:
                moved = {one.session for one in week.sessions for why in one.reasons if why.moved_from == change.day}
                held &= {one.session for one in week.sessions if one.day == change.day} | moved
            for ident in sorted(held):
                blocks = subject.programme.sessions[ident].blocks
                entries = [
                    one for block in blocks for _, one in block.prescriptions() if one.exercise == change.exercise
                ]
                if len(entries) > 1:
                    yield Doubt(
                        subject.at(f"plans/{plan.ident}.yml", "changes", index, "exercise"),
                        f"this changes {len(entries)} entries of {change.exercise} in {ident}, all alike",
                        "for one of them alone, write a session that says it, and 'do_instead'; or accept this",
                        plan.plan.accept,
                    )
