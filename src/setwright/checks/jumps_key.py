"""Jumps or heavy sets just before a key session or the event.

Looks at sessions on the day of `other_training` with `hard: true` or of the event, and on the day before. Heavy is 80 %
of 1RM and more, effort 8 and more, or two repetitions or fewer in reserve. Sessions with three sets or more for the
legs are told of by another check already.

Why it matters: a few jumps or heavy sets are soon done and take a day to leave the legs, and a stumble on tired legs
costs more than the session was worth.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import jumps_of
from setwright.checks.key_session import LEGS, ahead
from setwright.checks.regions_too_close import ENOUGH_SETS, sets_by_region
from setwright.checks.rest_too_short import is_heavy
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.dose.resolved import ResolvedSession

ID = "jumps-before-key-session"
SEVERITY = "warning"
SOURCE = COMMON
LEAST: Final = threshold(ID, "least", "time", 48 * 3600, (0, 168 * 3600), "the least time before a key session")
THRESHOLDS = (LEAST,)

_SESSION = """
blocks:
  - {kind: straight, sets: 2, exercises: [{exercise: hop, reps: 5}, {exercise: goblet-squat, reps: 8}]}
"""
BAD: Example = {
    **JUMPS,
    "sessions/legs": _SESSION,
    "plans/spring": """
experience: trained
other_training: [{day: tuesday, what: Hill intervals., hard: true}]      # the hops are on Monday
""",
}
GOOD: Example = {
    **JUMPS,
    "sessions/legs": _SESSION,
    "plans/spring": """
experience: trained
other_training: [{day: thursday, what: Hill intervals., hard: true}]
""",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each session and each thing that it comes too close to, at the first week."""
    least_s = subject.value(LEAST)
    for plan in subject.plans:
        seen: set[tuple[str, str]] = set()
        for session in plan.sessions:
            sets, why = sets_by_region(subject, session), _sharp(subject, session)
            if why is None or max((sets[region] for region in LEGS), default=0) >= ENOUGH_SETS:
                continue
            for what, hours, path in ahead(plan, session):
                if hours * 3600 < least_s and (session.session, what) not in seen:
                    seen.add((session.session, what))
                    when = "on the same day as" if hours == 0 else f"{hours} h before"
                    yield Doubt(
                        subject.at(f"plans/{plan.ident}.yml", *path),
                        f"{session.session} in week {session.week} holds {why}, {when} {what}",
                        f"leave {LEAST.said(least_s)}: move one of them, or leave these out that day",
                        plan.plan.accept,
                    )


def _sharp(subject: Subject, session: ResolvedSession) -> str | None:
    """Return what of a session takes a day to leave the legs: jumps, or heavy sets."""
    jumps = jumps_of(subject, session)
    if jumps:
        return f"jumps ({jumps[0].exercise})"
    heavy = next((item for item in session.all_items if is_heavy(item.dose.heaviest)), None)
    return f"heavy sets ({heavy.exercise} at {heavy.dose.heaviest})" if heavy is not None else None
