"""Jumps after a short warm-up, or after none.

Looks at every warm-up that a session with jumps offers: the member picks any of them.

Why it matters: tendons and attention want some minutes before the first landing, and the member who is late picks the
shortest.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import first_with_jumps
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

ID = "jumps-hardly-warm"
SEVERITY = "warning"
SOURCE = COMMON
LEAST: Final = threshold(ID, "least", "time", 8 * 60, (60, 3600), "the shortest warm-up before jumps")
THRESHOLDS = (LEAST,)

_SESSION = """
blocks:
  - {kind: straight, sets: 2, exercises: [{exercise: hop, reps: 5}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
"""
BAD: Example = {
    **JUMPS,
    "sessions/legs": _SESSION,
    "routines/warm-up": "{takes: 4 min, exercises: [{do: Walk., work: 4 min}]}",
}
GOOD: Example = {**JUMPS, "sessions/legs": _SESSION}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each session with jumps that offers no warm-up, or a short one."""
    least_s = subject.value(LEAST)
    for _, session, jumps in first_with_jumps(subject):
        written = subject.programme.sessions[session.session]
        hint = f"offer warm-ups of {LEAST.said(least_s)} or more before jumps"
        if not written.warm_up:
            message = f"{session.session} begins with no warm-up, and holds {jumps[0].exercise}"
            yield Doubt(subject.at(f"sessions/{session.session}.yml"), message, hint, written.accept)
        for index, ident in enumerate(written.warm_up):
            takes_s = subject.programme.routines[ident].takes
            if takes_s < least_s:
                yield Doubt(
                    subject.at(f"sessions/{session.session}.yml", "warm_up", index),
                    f"{ident} takes {duration(ENGLISH, takes_s)}, and {session.session} holds {jumps[0].exercise}",
                    hint,
                    written.accept,
                )
