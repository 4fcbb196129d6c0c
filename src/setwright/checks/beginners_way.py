"""A way for beginners that is heavier than the usual one.

Looks at what a session offers under `instead` to members whose choice says that they are new to strength work or come
back to it. It is heavier where it is a jump and the usual one is none, where the exercise that it stands for names it
as a harder way, where its sets are to feel harder, or where it is the same exercise with more load, or with more
repetitions or sets at the same load.

Why it matters: who ticks such a choice expects less. A slip of a number makes the most careful member lift the most.
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
from setwright.wording.choices import speaks_of_beginning

ID = "beginners-way-heavier"
SEVERITY = "warning"
SOURCE = COMMON

_CLUB = "choices: {new: This is my first season of lifting}"
_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8, load: 10 %% bodyweight, instead: [{for: [new], %s}]}
"""
BAD: Example = {
    "club": _CLUB,
    "sessions/legs": _SESSION % "exercise: goblet-squat, reps: 8, load: 15 % bodyweight",
}
GOOD: Example = {
    "club": _CLUB,
    "sessions/legs": _SESSION % "exercise: goblet-squat, reps: 8, load: 8 % bodyweight",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each such way of a session, at the first week in which it is heavier."""
    told: set[tuple[str, tuple[int, ...]]] = set()
    said = subject.programme.club.choices
    for plan in subject.plans:
        for session in plan.sessions:
            for item in session.items:
                for way in item.instead:
                    new = [said[one] for one in way.choices if speaks_of_beginning(said[one])]
                    why = _heavier(subject, item, way) if new else None
                    if why is None or (session.session, way.slot) in told:
                        continue
                    told.add((session.session, way.slot))
                    yield Doubt(
                        subject.at(*place_in_session(session.session, way.slot)),
                        f"{way.exercise}: {why}, in week {session.week} of {plan.ident}, for '{new[0]}'",
                        "offer them the same or less",
                        subject.accepted_at(session.session, way.slot),
                    )


def _heavier(subject: Subject, item: ResolvedItem, way: ResolvedItem) -> str | None:
    """Return why a way asks for more than what it stands for; None where it does not, or nobody can compare them."""
    exercises = subject.programme.exercises
    if is_jump(exercises[way.exercise]) and not is_jump(exercises[item.exercise]):
        return "this is a jump, and the usual way is none"
    if way.exercise in {one.exercise for one in exercises[item.exercise].harder}:
        return f"this is a harder way of {item.exercise}"
    if 0 < hardest_of(item.dose) < hardest_of(way.dose):
        return "its sets are to feel harder than the usual ones"
    if way.exercise == item.exercise and _more(item.dose, way.dose):
        return "this is the same exercise, and more of it"
    return None


def _more(usual: Dose, now: Dose) -> bool:
    """Say whether a dose of one exercise has a heavier load than another, or the same and more repetitions or sets."""
    was, is_now = usual.heaviest, now.heaviest
    if was is not None and is_now is not None and same_kind(was, is_now) and effort_of(was) is None and was != is_now:
        return demand(is_now) > demand(was)
    if was != is_now or now.measure != usual.measure:
        return False  # nobody can compare the two
    fewer = now.amount.high < usual.amount.high or now.most_count < usual.most_count
    more = now.amount.high > usual.amount.high or now.most_count > usual.most_count
    return more and not fewer
