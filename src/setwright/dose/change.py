"""The difference between two doses of the same exercise, as what differs and by how much."""

from dataclasses import dataclass

from setwright.dose.dose import Dose
from setwright.dose.span import Span
from setwright.model.load import Load
from setwright.model.prescription import Measure
from setwright.model.tempo import Tempo


@dataclass(frozen=True, slots=True)
class CountChange:
    """More or fewer sets; rounds in a superset or circuit."""

    by: int
    rounds: bool


@dataclass(frozen=True, slots=True)
class AmountChange:
    """Another amount in every set: a count, seconds or centimetres, as ``measure`` says."""

    measure: Measure
    before: Span
    now: Span


@dataclass(frozen=True, slots=True)
class LoadChange:
    """Another load in every set; None is the body alone."""

    before: Load | None
    now: Load | None


@dataclass(frozen=True, slots=True)
class TempoChange:
    """Another tempo in every set."""

    before: Tempo | None
    now: Tempo | None


@dataclass(frozen=True, slots=True)
class RestChange:
    """More or less rest after a set or a round."""

    by_s: int


@dataclass(frozen=True, slots=True)
class PatternChange:
    """Sets that differ among themselves, and not in the same way as before."""

    before: Dose
    now: Dose


Difference = CountChange | AmountChange | LoadChange | TempoChange | RestChange | PatternChange


def changes_between(before: Dose, now: Dose, rounds: bool = False) -> tuple[Difference, ...]:
    """Return what changed since the last time, most important first; nothing where all is the same.

    Args:
        before: the dose of the last week in which the session stood in the plan.
        now: this week's dose.
        rounds: True in a superset or circuit, where sets are rounds.
    """
    return (*_count(before, now, rounds), *own_changes(before, now), *_rest(before, now))


def round_changes(before: Dose, now: Dose) -> tuple[Difference, ...]:
    """Return what changed about the rounds and the rest between them, which a whole superset or circuit shares."""
    return (*_count(before, now, rounds=True), *_rest(before, now))


def own_changes(before: Dose, now: Dose) -> tuple[Difference, ...]:
    """Return what changed about the exercise itself: amount, load and tempo."""
    was, is_ = before.first, now.first
    if not (before.same_throughout and now.same_throughout):
        return (PatternChange(before, now),) if before.sets != now.sets else ()
    changes: list[Difference] = []
    if is_.amount != was.amount:
        changes.append(AmountChange(now.measure, was.amount, is_.amount))
    if is_.load != was.load:
        changes.append(LoadChange(was.load, is_.load))
    if is_.tempo != was.tempo:
        changes.append(TempoChange(was.tempo, is_.tempo))
    return tuple(changes)


def _count(before: Dose, now: Dose, rounds: bool) -> tuple[Difference, ...]:
    return (CountChange(now.count - before.count, rounds),) if now.count != before.count else ()


def _rest(before: Dose, now: Dose) -> tuple[Difference, ...]:
    by_s = now.first.rest_s - before.first.rest_s
    return (RestChange(by_s),) if by_s else ()
