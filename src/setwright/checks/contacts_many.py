"""Too many landings in a session.

Counts every landing of a session: repetitions of jumps, hops and drops, on both sides.

Why it matters: each landing is several times the body's weight. A number that is fine in one set adds up in five.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import contacts_in_session
from setwright.checks.rule import Doubt, Subject
from setwright.checks.threshold import threshold

ID = "too-many-jump-contacts"
SEVERITY = "warning"
SOURCE = (
    "Potach DH, Chu DA, in Baechle TR, Earle RW (eds), Essentials of Strength Training and Conditioning: 80 to 100 "
    "contacts a session for beginners (from memory)."
)
MOST: Final = threshold(ID, "most", "count", 100, (10, 300), "the most landings in a session")
THRESHOLDS = (MOST,)

_SESSION = """
blocks:
  - {kind: straight, sets: %s, exercises: [{exercise: hop, reps: 30}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
"""
BAD: Example = {**JUMPS, "sessions/legs": _SESSION % "4"}
GOOD: Example = {**JUMPS, "sessions/legs": _SESSION % "2"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each session, at its first week with too many."""
    most, seen = subject.value(MOST), set[str]()
    for plan in subject.plans:
        for session in plan.sessions:
            landings = contacts_in_session(subject, session)
            if landings > most and session.session not in seen:
                seen.add(session.session)
                yield Doubt(
                    subject.at(f"sessions/{session.session}.yml"),
                    f"{landings} landings in week {session.week} of {plan.ident}",
                    f"{MOST.said(most)} are the most: fewer sets, or shorter ones",
                    subject.programme.sessions[session.session].accept,
                )
