"""Loads and weights in words."""

from fractions import Fraction

from setwright.dose.loads import Choice
from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight
from setwright.model.units import KG_PER_LB
from setwright.wording.language import Language


def load(language: Language, one: Load) -> str:
    """Return a load: 15 % of body weight, 12 kg in each hand, effort 7 of 10."""
    match one:
        case BodyWeightShare(percent=percent, per_hand=True):
            return language.say("%(percent)s %% of body weight in each hand", percent=language.number(percent))
        case BodyWeightShare(percent=percent):
            return language.say("%(percent)s %% of body weight", percent=language.number(percent))
        case OneRepMaxShare(percent=percent):
            return language.say("%(percent)s %% of 1RM", percent=language.number(percent))
        case Weight(kg=kg, unit=unit):
            weight = _weight(language, kg if unit == "kg" else kg / KG_PER_LB, unit, 2)
            return language.say("%(weight)s in each hand", weight=weight) if one.per_hand else weight
        case Effort(rpe=rpe):
            return language.say("effort %(effort)s of 10", effort=language.number(rpe))
        case Reserve(reps=reps):
            return language.many("%(num)s rep in reserve", "%(num)s reps in reserve", reps)
        case Band(name=name):
            return language.say("%(name)s band", name=name)


def mass(language: Language, kg: Fraction, unit: str) -> str:
    """Return a weight in the club's unit: 12 kg, 26.5 lb."""
    return _weight(language, kg if unit == "kg" else kg / KG_PER_LB, unit, 2 if unit == "kg" else 1)


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


def _weight(language: Language, number: Fraction, unit: str, places: int) -> str:
    said = language.number(number, places)
    return language.say("%(number)s kg", number=said) if unit == "kg" else language.say("%(number)s lb", number=said)
