"""A limit that is crossed: in words, and where the coach finds the dose and the limit."""

from dataclasses import dataclass

from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.model.session import Slot
from setwright.source.finding import Position


@dataclass(frozen=True, slots=True)
class Crossing:
    """A limit's key, the limit, and the dose beyond it, in words; ``written`` is the key of the dose to change."""

    key: str
    limit: str
    actual: str
    written: str


def dose_place(
    subject: Subject, plan: ResolvedPlan, where: ResolvedSession, item: ResolvedItem, slot: Slot, key: str
) -> Position:
    """Return where the number stands that a coach would change: in a change of that week, a progression or the dose."""
    for index, change in enumerate(plan.plan.changes):
        about = change.exercise in (None, item.exercise)
        if change.week == where.week and about and key in change.doses:
            return subject.at(f"plans/{plan.ident}.yml", "changes", index, key)
    path = place_in_session(where.session, slot)
    progress = subject.programme.sessions[where.session].written(slot).progress
    if where.trained and progress is not None:
        if getattr(progress, key, None) is not None:
            return subject.at(*path, "progress", key)
        if key == "load" and progress.then is not None:
            return subject.at(*path, "progress", "then", key)
    return subject.at(*path, key)


def limit_place(subject: Subject, exercise: str, key: str) -> Position:
    """Return where a limit of an exercise stands."""
    return subject.at(f"exercises/{exercise}.yml", "limits", key)


def doubt(subject: Subject, place: Position, exercise: str, crossing: Crossing, when: str) -> Doubt:
    """Return the doubt about a crossed limit: the message names the dose, the hint the limit's place."""
    return Doubt(
        place,
        f"{exercise}: {crossing.actual} {when} is beyond the limit of {crossing.limit}",
        f"the limit is in {limit_place(subject, exercise, crossing.key)}; lower the dose, or ask the physiotherapist",
    )
