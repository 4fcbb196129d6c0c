"""What changed since the last time, in words and numbers."""

from collections.abc import Iterable
from fractions import Fraction

from setwright.dose.change import (
    AmountChange,
    CountChange,
    Difference,
    LoadChange,
    PatternChange,
    RestChange,
    TempoChange,
)
from setwright.dose.dose import metres
from setwright.model.load import Band, BodyWeightShare, Effort, OneRepMaxShare, Reserve, Weight, magnitude, same_kind
from setwright.model.units import KG_PER_LB, plain_number
from setwright.wording.words import dose_in_words, load_in_words

_SMALL = {1: "one", 2: "two", 3: "three", 4: "four"}


def in_words(changes: Iterable[Difference]) -> tuple[str, ...]:
    """Return each change in words: one round more, 2 more reps, 1.5 % of body weight heavier."""
    return tuple(change_in_words(change) for change in changes)


def change_in_words(change: Difference) -> str:
    """Return one change in words."""
    match change:
        case CountChange(by=by, rounds=rounds):
            return _more(by, "round" if rounds else "set")
        case AmountChange():
            return _amount(change)
        case LoadChange():
            return _load(change)
        case TempoChange(before=before, now=now):
            return (f"tempo {now}" if now else "no set tempo") + (f" instead of {before}" if before else "")
        case RestChange(by_s=by_s):
            return f"{abs(by_s)} s {'more' if by_s > 0 else 'less'} rest"
        case PatternChange(before=was, now=is_):
            return f"{dose_in_words(is_)} instead of {dose_in_words(was)}"


def _more(difference: int, noun: str) -> str:
    count = abs(difference)
    plural = noun if count == 1 else f"{noun}s"
    return f"{_SMALL.get(count, str(count))} {plural} {'more' if difference > 0 else 'fewer'}"


def _amount(change: AmountChange) -> str:
    difference: int | Fraction
    # Of a range, the upper end says how far it went; where that stays, the lower one.
    higher = Fraction(change.now.high - change.before.high)
    difference = higher or Fraction(change.now.low - change.before.low)
    if change.measure == "reps":
        count = abs(int(difference))
        return f"{count} {'more' if difference > 0 else 'fewer'} {'rep' if count == 1 else 'reps'}"
    if change.measure == "distance":
        return f"{plain_number(metres(abs(difference)))} m {'farther' if difference > 0 else 'less far'}"
    return f"{abs(int(difference))} s {'longer' if difference > 0 else 'shorter'}"


def _load(change: LoadChange) -> str:
    before, now = change.before, change.now
    if before is None:
        return f"now with {load_in_words(now)}"
    if now is None:
        return "without weight"
    if isinstance(now, Band) or not same_kind(before, now):
        return f"{load_in_words(now)} instead of {load_in_words(before)}"
    difference = magnitude(now) - magnitude(before)
    number, heavier = abs(difference), "heavier" if difference > 0 else "lighter"
    match now:
        case BodyWeightShare():
            return f"{plain_number(number)} % of body weight {heavier}{' in each hand' if now.per_hand else ''}"
        case OneRepMaxShare():
            return f"{plain_number(number)} % of 1RM {heavier}"
        case Weight():
            shown = number if now.unit == "kg" else number / KG_PER_LB
            return f"{plain_number(shown)} {now.unit} {heavier}{' in each hand' if now.per_hand else ''}"
        case Effort():
            return f"effort {plain_number(number)} {'higher' if difference > 0 else 'lower'}"
        case Reserve():
            noun = "rep" if number == 1 else "reps"
            return f"{plain_number(number)} {noun} {'more' if difference > 0 else 'less'} in reserve"
