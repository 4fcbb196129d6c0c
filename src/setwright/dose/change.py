"""The difference between two doses of the same exercise, in words and numbers."""

from fractions import Fraction

from setwright.dose.dose import Dose
from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight, magnitude
from setwright.model.units import KG_PER_LB, plain_number

_SMALL = {1: "one", 2: "two", 3: "three", 4: "four"}


def changes_between(before: Dose, now: Dose, rounds: bool = False) -> tuple[str, ...]:
    """Return what changed since the last time, most important first; nothing where all is the same.

    Args:
        before: the dose of the last week in which the session stood in the plan.
        now: this week's dose.
        rounds: True in a superset or circuit, where sets are rounds.
    """
    return (*_sets(before, now, rounds), *own_changes(before, now), *_rest(before, now))


def round_changes(before: Dose, now: Dose) -> tuple[str, ...]:
    """Return what changed about the rounds and the rest between them, which a whole superset or circuit shares."""
    return (*_sets(before, now, rounds=True), *_rest(before, now))


def own_changes(before: Dose, now: Dose) -> tuple[str, ...]:
    """Return what changed about the exercise itself: amount, load and tempo."""
    words = []
    if now.amount != before.amount:
        words.append(_amount(before, now))
    words.extend(_load(before.load, now.load))
    if now.tempo != before.tempo:
        words.append(
            (f"tempo {now.tempo}" if now.tempo else "no set tempo")
            + (f" instead of {before.tempo}" if before.tempo else "")
        )
    return tuple(words)


def _sets(before: Dose, now: Dose, rounds: bool) -> tuple[str, ...]:
    if now.sets == before.sets:
        return ()
    return (_more(now.sets - before.sets, "round" if rounds else "set"),)


def _rest(before: Dose, now: Dose) -> tuple[str, ...]:
    if now.rest_s == before.rest_s:
        return ()
    return (f"{abs(now.rest_s - before.rest_s)} s {'more' if now.rest_s > before.rest_s else 'less'} rest",)


def _more(difference: int, noun: str) -> str:
    count = abs(difference)
    plural = noun if count == 1 else f"{noun}s"
    return f"{_SMALL.get(count, str(count))} {plural} {'more' if difference > 0 else 'fewer'}"


def _amount(before: Dose, now: Dose) -> str:
    difference = now.amount - before.amount
    if now.measure == "reps":
        count = abs(int(difference))
        return f"{count} {'more' if difference > 0 else 'fewer'} {'rep' if count == 1 else 'reps'}"
    if now.measure == "distance":
        return f"{plain_number(abs(Fraction(difference)) / 100)} m {'farther' if difference > 0 else 'less far'}"
    return f"{abs(int(difference))} s {'longer' if difference > 0 else 'shorter'}"


def _load(before: Load | None, now: Load | None) -> list[str]:
    if before == now:
        return []
    if before is None:
        return [f"now with {now}"]
    if now is None:
        return ["without weight"]
    if isinstance(now, Band) or isinstance(before, Band) or type(before) is not type(now):
        return [f"{now} instead of {before}"]
    if getattr(before, "per_hand", None) != getattr(now, "per_hand", None):
        return [f"{now} instead of {before}"]
    difference = magnitude(now) - magnitude(before)
    number, heavier = abs(difference), "heavier" if difference > 0 else "lighter"
    match now:
        case BodyWeightShare():
            return [f"{plain_number(number)} % of body weight {heavier}{' in each hand' if now.per_hand else ''}"]
        case OneRepMaxShare():
            return [f"{plain_number(number)} % of 1RM {heavier}"]
        case Weight():
            shown = number if now.unit == "kg" else number / KG_PER_LB
            return [f"{plain_number(shown)} {now.unit} {heavier}{' in each hand' if now.per_hand else ''}"]
        case Effort():
            return [f"effort {plain_number(number)} {'higher' if difference > 0 else 'lower'}"]
        case Reserve():
            noun = "rep" if number == 1 else "reps"
            return [f"{plain_number(number)} {noun} {'more' if difference > 0 else 'less'} in reserve"]
