"""A session in which most sets go on until nothing is left.

Looks, in every week, at the sets that count of all exercises of a session, warm-up sets and optional exercises left
out. To failure are sets of effort 9.5 and more, with nothing in reserve, and as many reps as possible that leave none.
One or two of them are no matter.

Why it matters: such sets tire far more than they train. Technique gives way in the last repetitions, breath is held,
and the next days pay for it. Nothing is gained by them that a repetition or two in reserve does not give as well.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.felt import efforts_of
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.checks.threshold import threshold
from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem, ResolvedSession

ID = "most-sets-to-failure"
SEVERITY = "warning"
SOURCE = (
    "Davies T et al., Sports Med 2016;46:487-502, from memory: strength grows as much without sets to failure. The "
    "share is common practice."
)
MOST: Final = threshold(ID, "most", "%", 33, (10, 100), "the largest share of a session's sets to failure")
THRESHOLDS = (MOST,)
FAILURE: Final = Fraction(19, 2)
"""The effort, 0 to 10, at which less than one more repetition would have been possible. Common practice, no source."""
NO_MATTER: Final = 2

_SESSION = """
blocks:
  - kind: straight
    sets: 3
    rest: 3 min
    exercises: [{exercise: goblet-squat, reps: 8, load: %s}, {exercise: step-down, reps: 8}]
"""
BAD: Example = {"plans/spring": "experience: trained", "sessions/legs": _SESSION % "RPE 10"}
GOOD: Example = {"plans/spring": "experience: trained", "sessions/legs": _SESSION % "RPE 8"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each such session, at the first week in which it is one."""
    most, told = subject.value(MOST), set[str]()
    for plan in subject.plans:
        for session in plan.sessions:
            whole = sum(len(item.dose.working) for item in _counted(session))
            hard = [(item, _to_failure(item.dose)) for item in _counted(session)]
            count = sum(sets for _, sets in hard)
            if session.session in told or count <= NO_MATTER or Fraction(100 * count, whole) <= most:
                continue
            told.add(session.session)
            first = next(item for item, sets in hard if sets)
            yield Doubt(
                subject.at(*place_in_session(session.session, first.slot), "load"),
                f"{session.session}: {count} of {whole} sets leave nothing, in week {session.week} of {plan.ident}",
                f"leave a repetition or two in most of them; {MOST.said(most)} is the most",
                [*subject.accepted_at(session.session, first.slot), *plan.plan.accept],
            )


def _counted(session: ResolvedSession) -> list[ResolvedItem]:
    """Return the way of each exercise with the most sets to failure, since nobody does both."""
    return [
        max((item, *item.instead), key=lambda way: _to_failure(way.dose)) for item in session.items if not item.optional
    ]


def _to_failure(dose: Dose) -> int:
    """Return how many of the working sets of a dose leave nothing."""
    return sum(1 for effort in efforts_of(dose) if effort is not None and effort >= FAILURE)
