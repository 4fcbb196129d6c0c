"""The difference between two doses of the same exercise, as what differs and by how much."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from setwright.dose.dose import Clock, Dose, Set
from setwright.model.load import Band, Load, magnitude, same_kind
from setwright.model.prescription import Measure
from setwright.model.span import Open, Span
from setwright.model.tempo import Tempo


@dataclass(frozen=True, slots=True)
class CountChange:
    """More or fewer sets; rounds in a superset or circuit."""

    by: int
    rounds: bool


@dataclass(frozen=True, slots=True)
class LastsChange:
    """Another time for as many rounds as possible, in seconds, or another end of them."""

    before: Clock | None
    now: Clock | None


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
class RestsChange:
    """Other rests, not by the same after every set: each of them, in seconds, or a single one of all."""

    before_s: tuple[int, ...]
    now_s: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class FeelChange:
    """Another effort, or other repetitions in reserve, that a set with its load should feel like."""

    now: Load


@dataclass(frozen=True, slots=True)
class SameWeight:
    """Another load on paper, for which the member takes the same weights as before."""


@dataclass(frozen=True, slots=True)
class AmountsChange:
    """Other amounts, not by the same in every set: one of each set, or a single one of all."""

    measure: Measure
    before: tuple[Span, ...]
    now: tuple[Span, ...]


@dataclass(frozen=True, slots=True)
class LoadsChange:
    """Other loads, likewise; None is the body alone."""

    before: tuple[Load | None, ...]
    now: tuple[Load | None, ...]


@dataclass(frozen=True, slots=True)
class TemposChange:
    """Other tempos, likewise."""

    before: tuple[Tempo | None, ...]
    now: tuple[Tempo | None, ...]


Difference = (
    CountChange
    | LastsChange
    | AmountChange
    | AmountsChange
    | LoadChange
    | LoadsChange
    | SameWeight
    | FeelChange
    | TempoChange
    | TemposChange
    | RestChange
    | RestsChange
)

T = TypeVar("T")


def changes_between(
    before: Dose, now: Dose, rounds: bool = False, in_hand: tuple[Dose, Dose] | None = None
) -> tuple[Difference, ...]:
    """Return what changed since the last time, most important first; nothing where all is the same.

    Args:
        before: the dose of the last week in which the session stood in the plan.
        now: this week's dose.
        rounds: True in a superset or circuit, where sets are rounds.
        in_hand: both doses with the weights that a member takes for their loads, where those are known.
    """
    return (*_count(before, now, rounds), *own_changes(before, now, in_hand), *_rest(before, now))


def round_changes(before: Dose, now: Dose) -> tuple[Difference, ...]:
    """Return what changed about the rounds and the rest between them, which a whole superset or circuit shares."""
    return (*_count(before, now, rounds=True), *_rest(before, now))


def own_changes(before: Dose, now: Dose, in_hand: tuple[Dose, Dose] | None = None) -> tuple[Difference, ...]:
    """Return what changed about the exercise itself: amount, load and tempo.

    Sets that differ among themselves are compared one by one: where each has changed alike, that is the change. Loads
    are compared ``in_hand`` where it is given, as in ``changes_between``.
    """
    loads = _loads(*(in_hand or (before, now)))
    return (
        *_amounts(before, now),
        *(loads or ((SameWeight(),) if _loads(before, now) else ())),
        *_feels(before, now),
        *_tempos(before, now),
    )


def _amounts(before: Dose, now: Dose) -> tuple[Difference, ...]:
    pair = _differing([_asked(one) for one in before.working], [_asked(one) for one in now.working])
    if pair is None:
        return ()
    was, is_ = pair
    if any(isinstance(span, Open) for span in (*was, *is_)):
        return (AmountsChange(now.measure, was, is_),)
    if len(was) == len(is_) and len({(b.low - a.low, b.high - a.high) for a, b in zip(was, is_, strict=True)}) == 1:
        return (AmountChange(now.measure, was[0], is_[0]),)
    return (AmountsChange(now.measure, was, is_),)


def _asked(one: Set) -> Span:
    """Return what a set asks for: of an open one, not what it is counted as."""
    return replace(one.amount, low=1, high=1) if isinstance(one.amount, Open) else one.amount


def _loads(before: Dose, now: Dose) -> tuple[Difference, ...]:
    pair = _differing([one.load for one in before.working], [one.load for one in now.working])
    if pair is None:
        return ()
    was, is_ = pair
    if len(was) == len(is_):
        steps = {_step(a, b) for a, b in zip(was, is_, strict=True)}
        if len(was) == 1 or (len(steps) == 1 and None not in steps):
            return (LoadChange(was[0], is_[0]),)
    return (LoadsChange(was, is_),)


def _tempos(before: Dose, now: Dose) -> tuple[Difference, ...]:
    pair = _differing([one.tempo for one in before.working], [one.tempo for one in now.working])
    if pair is None:
        return ()
    was, is_ = pair
    return (TempoChange(was[0], is_[0]),) if len(was) == len(is_) == 1 else (TemposChange(was, is_),)


def _feels(before: Dose, now: Dose) -> tuple[Difference, ...]:
    # Where nothing is said any more, the load is an effort by now, or none: that is said.
    return (FeelChange(now.feels),) if now.feels is not None and now.feels != before.feels else ()


def _differing(before: Sequence[T], now: Sequence[T]) -> tuple[tuple[T, ...], tuple[T, ...]] | None:
    """Return the numbers of each set, before and now, one alone where all sets have the same.

    None where no set has another than before: the last ones may be left out, which their count says.
    """
    was, is_ = (tuple(each)[: 1 if len(set(each)) == 1 else None] for each in (before, now))
    return None if was == is_ or tuple(before[: len(now)]) == tuple(now) else (was, is_)


def _step(was: Load | None, is_: Load | None) -> tuple[object, ...] | None:
    """Return by how much a load changed, to compare with another set's; None where that says nothing."""
    if was is None or is_ is None or isinstance(is_, Band) or not same_kind(was, is_):
        return None
    return type(is_), magnitude(is_) - magnitude(was)


def _count(before: Dose, now: Dose, rounds: bool) -> tuple[Difference, ...]:
    if before.open_rounds or now.open_rounds:
        return (LastsChange(before.clock, now.clock),) if before.clock != now.clock else ()
    return (CountChange(now.count - before.count, rounds),) if now.count != before.count else ()


def _rest(before: Dose, now: Dose) -> tuple[Difference, ...]:
    if now.clock is not None and now.clock.every_s is not None:
        return ()  # it is what is left of every minute
    was_s, is_s = before.rests_s, now.rests_s
    if len(was_s) == len(is_s) == 1:
        by_s = is_s[0] - was_s[0]
        return (RestChange(by_s),) if by_s else ()
    # Fewer sets have fewer rests: those that stay are compared.
    both = min(before.count, now.count) - 1
    kept = [tuple(one.rest_s for one in dose.working[:both]) for dose in (before, now)]
    return () if both > 0 and kept[0] == kept[1] else (RestsChange(was_s, is_s),)
