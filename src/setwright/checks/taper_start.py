"""A taper that does not begin.

Compares the sets of a taper's first week with the last full week before it. Sets are whole numbers, so that 80 % of two
rounds is still two.

Why it matters: a week called a taper that asks for everything takes a week away from resting, and tells members
something else.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject
from setwright.checks.taper import sets_in
from setwright.checks.weeks import last_full

ID = "taper-without-cut"
SEVERITY = "warning"
SOURCE = "Bosquet L et al., Med Sci Sports Exerc 2007;39:1358-1365: a taper cuts the volume from its first week on."

_PHASES = """
phases:
  - {name: Full, aim: To build., weeks: 3, sessions: {monday: legs}}
  - {name: Taper, aim: To be fresh., weeks: 2, sessions: {monday: legs}, taper: {sets: [%s, 50 %%]}}
"""
_LEGS = """
blocks:
  - {kind: straight, sets: 4, exercises: [{exercise: goblet-squat, reps: 8}, {exercise: step-down, reps: 8}]}
"""
BAD: Example = {"sessions/legs": _LEGS, "plans/spring": _PHASES % "100 %"}
GOOD: Example = {"sessions/legs": _LEGS, "plans/spring": _PHASES % "75 %"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each taper whose first week takes nothing off."""
    for plan in subject.plans:
        for index, phase in enumerate(plan.plan.phases):
            taper = [w for w in plan.weeks if w.phase == index and w.remains.kind == "taper" and w.sessions]
            full = last_full(plan, index)
            if not phase.taper or len(taper) < 2 or full is None:
                continue
            before, first = sets_in(full), sets_in(taper[0])
            if first >= before:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", index, "taper", "sets", 0),
                    f"week {taper[0].number}, the first of the taper, has {first} sets, the last full week {before}",
                    "let the first week keep less, such as 60 %; sets are whole numbers",
                    plan.plan.accept,
                )
