"""A way for sore members that is no easier.

Looks at what a session offers under `instead` to members whose choice speaks of pain, an injury or an illness. It is no
easier where it is a jump, where the exercise that it stands for names it as a harder way, or where it is the same
exercise with as much or more: its load, its effort or its repetitions.

Why it matters: who ticks such a choice trusts that somebody thought of them, and does what stands there.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.felt import hardest_of
from setwright.checks.rule import COMMON, Doubt, Subject, place_in_session
from setwright.dose.bounding import effort_of
from setwright.dose.contacts import is_jump
from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem
from setwright.model.load import demand, same_kind
from setwright.wording.choices import speaks_of_illness

ID = "sore-way-no-easier"
SEVERITY = "warning"
SOURCE = COMMON

_CLUB = "choices: {sore: My knee hurts}"
_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8, load: 10 %% bodyweight, instead: [{for: [sore], %s}]}
"""
BAD: Example = {
    "club": _CLUB,
    "sessions/legs": _SESSION % "exercise: goblet-squat, reps: 8, load: 12 % bodyweight",
}
GOOD: Example = {
    "club": _CLUB,
    "sessions/legs": _SESSION % "exercise: goblet-squat, reps: 6, load: 8 % bodyweight",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each such way of a session, at the first week in which it is no easier."""
    seen: set[tuple[str, tuple[int, ...]]] = set()
    for plan in subject.plans:
        for session in plan.sessions:
            for item in session.items:
                for way in item.instead:
                    sore = [one for one in way.choices if speaks_of_illness(subject.programme.club.choices[one])]
                    why = _no_easier(subject, item, way) if sore else None
                    if why is None or (session.session, way.slot) in seen:
                        continue
                    seen.add((session.session, way.slot))
                    yield Doubt(
                        subject.at(*place_in_session(session.session, way.slot)),
                        f"{way.exercise}: {why}, in week {session.week} of {plan.ident}, for members who say "
                        f"'{subject.programme.club.choices[sore[0]]}'",
                        "offer another movement, or the same one lighter",
                        subject.accepted_at(session.session, way.slot),
                    )


def _no_easier(subject: Subject, item: ResolvedItem, way: ResolvedItem) -> str | None:
    """Return why a way is no easier than what it stands for; None where it may be."""
    exercises = subject.programme.exercises
    if is_jump(exercises[way.exercise]):
        return "this is a jump"
    if way.exercise in {one.exercise for one in exercises[item.exercise].harder}:
        return f"this is a harder way of {item.exercise}"
    if way.exercise == item.exercise and way.dose.measure == item.dose.measure and _as_much(item.dose, way.dose):
        return "this is the same exercise, and no less of it"
    return None


def _as_much(usual: Dose, now: Dose) -> bool:
    """Say whether a dose is in nothing less than another: load, effort, amount of a set, number of sets."""
    was, is_now = usual.heaviest, now.heaviest
    if was is not None and (is_now is None or not same_kind(was, is_now)):
        return False  # nobody can compare the two
    by_effort = was is not None and effort_of(was) is not None
    if was is not None and is_now is not None and not by_effort and demand(is_now) < demand(was):
        return False
    less = now.amount.high < usual.amount.high or now.most_count < usual.most_count
    return not (hardest_of(now) < hardest_of(usual) or (less and was == is_now))
