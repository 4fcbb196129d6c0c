"""A long stretch just before jumps.

Looks at the warm-ups that a session with jumps offers, and at its blocks before the jumps, for mobility that is held.

Why it matters: a muscle that was stretched for long springs less for a while, and a landing needs it at once. The long
holds belong after the session.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import first_with_jumps
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.checks.threshold import threshold
from setwright.dose.resolved import ResolvedItem, ResolvedSession
from setwright.model.routine import RoutinePart
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

ID = "stretch-before-jumps"
SEVERITY = "warning"
SOURCE = (
    "Kay AD, Blazevich AJ, Med Sci Sports Exerc 2012;44:154-164: no loss from stretches of less than 30 s, more often "
    "one from 60 s upwards (from memory)."
)
MOST: Final = threshold(ID, "most", "time", 30, (5, 120), "the longest hold of a stretch before jumps")
THRESHOLDS = (MOST,)

_SESSION = """
blocks:
  - {kind: straight, sets: 2, exercises: [{exercise: hop, reps: 5}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
"""
_WARM_UP = "{takes: 10 min, exercises: [{do: Walk., work: 8 min}, {exercise: stretch, hold: %s}]}"
_STRETCH = "{pattern: mobility, regions: {main: [calf]}}"
BAD: Example = {
    **JUMPS,
    "exercises/stretch": _STRETCH,
    "sessions/legs": _SESSION,
    "routines/warm-up": _WARM_UP % "90 s",
}
GOOD: Example = {**BAD, "routines/warm-up": _WARM_UP % "20 s"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each long stretch in a warm-up of a session with jumps, or in a block before them."""
    most_s = subject.value(MOST)
    hint = f"hold for {MOST.said(most_s)} at most, swing or rock instead, or stretch after the session"
    seen: set[str] = set()
    for _, session, jumps in first_with_jumps(subject):
        written = subject.programme.sessions[session.session]
        for ident in written.warm_up:
            for index, part in enumerate(subject.programme.routines[ident].exercises):
                if part.hold is None or part.hold <= most_s or not _stretches(subject, part) or ident in seen:
                    continue
                seen.add(ident)
                yield Doubt(
                    subject.at(f"routines/{ident}.yml", "exercises", index, "hold"),
                    f"{ident} holds a stretch for {duration(ENGLISH, part.hold)} before the jumps of {session.session}",
                    hint,
                    written.accept,
                )
        for item in _held_before(subject, session, jumps[0]):
            if item.dose.amount.high > most_s:
                yield Doubt(
                    subject.at(*place_in_session(session.session, item.slot)),
                    f"{item.exercise} is held for {duration(ENGLISH, int(item.dose.amount.high))} before the jumps of "
                    f"{session.session}",
                    hint,
                    subject.accepted_at(session.session, item.slot),
                )


def _stretches(subject: Subject, part: RoutinePart) -> bool:
    if part.exercise is None:
        return "stretch" in (part.do or "").casefold()
    return subject.programme.exercises[part.exercise].pattern == "mobility"


def _held_before(subject: Subject, session: ResolvedSession, jump: ResolvedItem) -> Iterator[ResolvedItem]:
    for item in session.all_items:
        mobility = subject.programme.exercises[item.exercise].pattern == "mobility"
        if item.slot[:2] < jump.slot[:2] and mobility and item.dose.measure == "hold":
            yield item
