"""Jumps without a rest between the sets.

Looks, in every week, at the time until the same jump comes round again; in a superset or a circuit, the other exercises
are part of it.

Why it matters: jumps are for springing well, not for tiring. Without a rest each set is lower and lands harder.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.checks.threshold import threshold
from setwright.dose.contacts import is_jump
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.timing import seconds_until_again
from setwright.source.finding import Position
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

ID = "no-rest-between-jumps"
SEVERITY = "warning"
SOURCE = (
    "Potach DH, Chu DA, in Baechle TR, Earle RW (eds), Essentials of Strength Training and Conditioning: five to ten "
    "times the time of the work (from memory). A minute at least is common practice."
)
LEAST: Final = threshold(ID, "least", "time", 60, (15, 600), "the least time between two sets of a jump")
THRESHOLDS = (LEAST,)

_SESSION = """
blocks:
  - {kind: straight, sets: 3, rest: %s, exercises: [{exercise: hop, reps: 5}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
"""
BAD: Example = {**JUMPS, "sessions/legs": _SESSION % "20 s"}
GOOD: Example = {**JUMPS, "sessions/legs": _SESSION % "90 s"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each jump of a session that comes round too soon."""
    least = subject.value(LEAST)
    for (ident, slot), uses in subject.slots.items():
        if not is_jump(subject.programme.exercises[uses[0][2].exercise]):
            continue
        for plan, session, jump in uses:
            steps, items = session.blocks[slot[0]].course_with(jump)
            between_s = seconds_until_again(steps, [item.dose for item in items], slot[1])
            if between_s is not None and between_s < least:
                yield Doubt(
                    _place(subject, plan, session, jump),
                    f"{jump.exercise}: {duration(ENGLISH, between_s)} between sets in {ident}, in week {session.week} "
                    f"of {plan.ident}",
                    f"rest for {LEAST.said(least)} or more between sets of jumps",
                    [*subject.accepted_at(ident, slot), *plan.plan.accept],
                )
                break


def _place(subject: Subject, plan: ResolvedPlan, session: ResolvedSession, jump: ResolvedItem) -> Position:
    """Return where a change of the week shortens the rest, or else the jump's place in its session."""
    for index, change in enumerate(plan.plan.changes):
        if change.week == session.week and change.rest is not None:
            return subject.at(f"plans/{plan.ident}.yml", "changes", index, "rest")
    return subject.at(*place_in_session(session.session, jump.slot))
