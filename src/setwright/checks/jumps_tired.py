"""Jumps on tired legs.

Counts the sets for the legs that come before a jump: in earlier blocks, and in the same block where it is a circuit or
the exercises are done one after the other. A superset of a lift and a jump is left to the coach. Mobility and balance
do not count.

Why it matters: a landing asks for strength at once. After hard sets the knee is caught later and less well.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import first_with_jumps, tires_legs
from setwright.checks.rule import COMMON, Doubt, Subject, place_in_session
from setwright.checks.threshold import threshold
from setwright.dose.resolved import ResolvedItem, ResolvedSession

ID = "jumps-on-tired-legs"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "count", 3, (1, 20), "the most sets for the legs before a jump")
THRESHOLDS = (MOST,)

_SESSION = """
blocks:
  - {kind: straight, sets: %s, exercises: [{exercise: goblet-squat, reps: 8}]}
  - {kind: straight, sets: 2, exercises: [{exercise: hop, reps: 5}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
"""
BAD: Example = {**JUMPS, "sessions/legs": _SESSION % "5"}
GOOD: Example = {**JUMPS, "sessions/legs": _SESSION % "2"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each session, at its first jump that comes too late. The last block is another check's."""
    most = subject.value(MOST)
    for _, session, jumps in first_with_jumps(subject):
        for jump in jumps:
            sets = sum(item.dose.count for item in _before(session, jump) if tires_legs(subject, item))
            is_last = jump.slot[0] == session.blocks[-1].index and len(session.blocks) > 1
            if sets > most and not is_last:
                yield Doubt(
                    subject.at(*place_in_session(session.session, jump.slot)),
                    f"{jump.exercise} comes after {sets} sets for the legs in {session.session}",
                    "move it to the front, straight after the warm-up",
                    subject.accepted_at(session.session, jump.slot),
                )
                break


def _before(session: ResolvedSession, jump: ResolvedItem) -> Iterator[ResolvedItem]:
    block, place = jump.slot[:2]
    for item in session.items:
        same = item.slot[0] == block and item.slot[1] != place
        together = same and (session.blocks[block].kind == "circuit" or item.slot[1] < place)
        if item.slot[0] < block or (together and session.blocks[block].kind != "superset"):
            yield item
