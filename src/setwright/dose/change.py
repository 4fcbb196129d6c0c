"""The difference between two doses of the same exercise, as what differs and by how much."""

from dataclasses import dataclass

from setwright.dose.dose import Dose, Set
from setwright.model.load import Band, Load, magnitude, same_kind
from setwright.model.prescription import Measure
from setwright.model.span import Span
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
    """Return what changed about the exercise itself: amount, load and tempo.

    Sets that differ among themselves are compared one by one: where each has changed alike, that is the change.
    """
    if not (before.same_throughout and now.same_throughout) and before.count != now.count:
        return (PatternChange(before, now),)
    found = {_of_set(now.measure, was, is_) for was, is_ in zip(before.working, now.working, strict=False)}
    if len(found) > 1:
        shifts = {tuple(_shift(change) for change in changes) for changes in found}
        if len(shifts) > 1 or None in next(iter(shifts)):
            return (PatternChange(before, now),)
    return _of_set(now.measure, before.first, now.first)


def _of_set(measure: Measure, was: Set, is_: Set) -> tuple[Difference, ...]:
    changes: list[Difference] = []
    if is_.amount != was.amount:
        changes.append(AmountChange(measure, was.amount, is_.amount))
    if is_.load != was.load:
        changes.append(LoadChange(was.load, is_.load))
    if is_.tempo != was.tempo:
        changes.append(TempoChange(was.tempo, is_.tempo))
    return tuple(changes)


def _shift(change: Difference) -> tuple[object, ...] | None:
    """Return by how much an amount or a load changed, to compare with another set's; None where that says nothing."""
    match change:
        case AmountChange(before=was, now=is_):
            return "amount", is_.low - was.low, is_.high - was.high
        case LoadChange(before=was, now=is_):
            if was is None or is_ is None or isinstance(is_, Band) or not same_kind(was, is_):
                return None
            return "load", type(is_), magnitude(is_) - magnitude(was)
        case _:
            return None


def _count(before: Dose, now: Dose, rounds: bool) -> tuple[Difference, ...]:
    return (CountChange(now.count - before.count, rounds),) if now.count != before.count else ()


def _rest(before: Dose, now: Dose) -> tuple[Difference, ...]:
    by_s = now.first.rest_s - before.first.rest_s
    return (RestChange(by_s),) if by_s else ()
