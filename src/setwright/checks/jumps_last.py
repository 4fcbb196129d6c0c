"""Jumps at the end of a session.

Looks at sessions whose last block holds a jump, after any block that takes strength.

Why it matters: landing well is a skill, and quick. At the end of a session neither legs nor attention are what they
were, and a tired landing is the one that turns a knee.
"""

from collections.abc import Iterator

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import first_with_jumps, tires
from setwright.checks.rule import Doubt, Subject, place_in_session

ID = "jumps-last"
SEVERITY = "warning"
SOURCE = (
    "Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708, for fast work before slow; for jumps, common practice."
)

_SQUATS = """
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 8}]
"""
_HOPS = """
  - kind: straight
    sets: 2
    exercises: [{exercise: hop, reps: 5}]
"""
BAD: Example = {**JUMPS, "sessions/legs": f"blocks:{_SQUATS}{_HOPS.lstrip(chr(10))}"}
GOOD: Example = {**JUMPS, "sessions/legs": f"blocks:{_HOPS}{_SQUATS.lstrip(chr(10))}"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each session that ends with jumps."""
    for _, session, jumps in first_with_jumps(subject):
        last, earlier = session.blocks[-1], session.blocks[:-1]
        if not any(tires(subject, item) for block in earlier for item in block.items):
            continue
        late = next((item for item in jumps if item.slot[0] == last.index), None)
        if late is not None:
            yield Doubt(
                subject.at(*place_in_session(session.session, late.slot)),
                f"{late.exercise} stands in the last block of {session.session}",
                "move jumps to the first block, straight after the warm-up",
                subject.accepted_at(session.session, late.slot),
            )
