"""Loads and weights in words."""

from collections.abc import Sequence
from fractions import Fraction

from setwright.dose.loads import Choice
from setwright.model.load import (
    AddedWeight,
    Band,
    BodyWeightShare,
    Effort,
    HelpShare,
    HelpWeight,
    Load,
    OneRepMaxShare,
    Reserve,
    Weight,
    magnitude,
)
from setwright.model.units import KG_PER_LB
from setwright.wording.language import Language


def load(language: Language, one: Load, least: Load | None = None) -> str:
    """Return a load: 15 % of body weight, 12 kg in each hand, effort 7 of 10.

    With ``least``, a lighter load of the same kind, it is said as a range: 12 to 15 % of body weight.
    """
    if isinstance(one, Band):
        if one.helps:
            return language.say("%(name)s band as help", name=one.name)
        return language.say("%(name)s band", name=one.name)
    number = _number(language, one)
    if least is not None and not isinstance(least, Band):
        number = language.say("%(first)s to %(last)s", first=_number(language, least), last=number)
    match one:
        case BodyWeightShare(per_hand=True):
            return language.say("%(percent)s %% of body weight in each hand", percent=number)
        case BodyWeightShare():
            return language.say("%(percent)s %% of body weight", percent=number)
        case OneRepMaxShare():
            return language.say("%(percent)s %% of 1RM", percent=number)
        case HelpShare():
            return language.say("%(percent)s %% of body weight as help", percent=number)
        case HelpWeight(unit=unit):
            return language.say("%(weight)s of help", weight=_weight(language, number, unit))
        case AddedWeight(unit=unit):
            return language.say("%(weight)s added to your own weight", weight=_weight(language, number, unit))
        case Weight(unit=unit):
            weight = _weight(language, number, unit)
            return language.say("%(weight)s in each hand", weight=weight) if one.per_hand else weight
        case Effort():
            return language.say("effort %(effort)s of 10", effort=number)
        case Reserve(reps=reps):
            return language.many("%(number)s rep in reserve", "%(number)s reps in reserve", reps, number=number)


def loads(language: Language, each: Sequence[Load | None]) -> str:
    """Return the load of each set: 40, 45, 50 kg; light band, medium band; None is said as no weight."""
    alike = all(one is not None and one.weighed and _unit(one) == _unit(each[0]) for one in each)
    if alike:
        *others, last = (one for one in each if one is not None)
        return language.listed(
            (*(_number(language, one) for one in others if not isinstance(one, Band)), load(language, last))
        )
    return language.listed(language.say("without weight") if one is None else load(language, one) for one in each)


def _unit(one: Load | None) -> object:
    return type(one), one is not None and one.per_hand, one.unit if isinstance(one, Weight | HelpWeight) else None


def _number(language: Language, one: Load) -> str:
    return language.number(one.number if isinstance(one, Weight | HelpWeight) else magnitude(one))


def mass(language: Language, kg: Fraction, unit: str) -> str:
    """Return a weight in the club's unit: 12 kg, 26.5 lb."""
    number, places = (kg, 2) if unit == "kg" else (kg / KG_PER_LB, 1)
    return _weight(language, language.number(number, places), unit)


def to_take(language: Language, choice: Choice, unit: str) -> str:
    """Return what a member takes: a weight, or the easier option, and whether it is the limit that says so."""
    if choice.weight_kg is not None:
        return mass(language, choice.weight_kg, unit)
    if choice.fit == "none-light-enough":
        return language.say("easier option")
    return language.say("limit: easier option")


def unit(language: Language, one: Load, of_club: str) -> str:
    """Return what a member writes down of a load: a weight in the club's unit, or which band."""
    if isinstance(one, Band):
        return language.say("band")
    return unit_of_weight(language, of_club)


def unit_of_weight(language: Language, unit: str) -> str:
    """Return the short name of a unit of weight, ``kg`` or ``lb``."""
    return language.say("kg") if unit == "kg" else language.say("lb")


def _weight(language: Language, number: str, unit: str) -> str:
    return (
        language.say("%(number)s kg", number=number) if unit == "kg" else language.say("%(number)s lb", number=number)
    )
