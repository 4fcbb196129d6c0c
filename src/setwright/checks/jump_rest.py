"""Jumps without a rest between the sets.

Looks at the time until the same jump comes round again; in a superset or a circuit, the other exercises are part of it.

Why it matters: jumps are for springing well, not for tiring. Without a rest each set is lower and lands harder.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import first_with_jumps
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.checks.threshold import threshold
from setwright.dose.timing import seconds_until_again
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
    for _, session, jumps in first_with_jumps(subject):
        for jump in jumps:
            steps, items = session.blocks[jump.slot[0]].course_with(jump)
            between_s = seconds_until_again(steps, [item.dose for item in items], jump.slot[1])
            if between_s is not None and between_s < least:
                yield Doubt(
                    subject.at(*place_in_session(session.session, jump.slot)),
                    f"{jump.exercise}: {duration(ENGLISH, between_s)} between sets in {session.session}",
                    f"rest for {LEAST.said(least)} or more between sets of jumps",
                    subject.accepted_at(session.session, jump.slot),
                )
