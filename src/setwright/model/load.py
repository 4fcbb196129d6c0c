"""Loads: how heavy, in any of the ways a coach prescribes it.

| written | means |
| --- | --- |
| ``15 % bodyweight`` | all the weight held, as a share of body weight |
| ``5 % bodyweight per hand`` | the weight in each hand, as a share of body weight |
| ``70 % 1RM`` | a share of the weight that can be lifted once |
| ``12 kg``, ``25 lb``, ``12 kg per hand`` | a weight |
| ``RPE 7`` | the member's own effort, 0 to 10 |
| ``3 reps in reserve`` | stop with so many reps left |
| ``medium band`` | an elastic band that the club owns |
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.units import KG_PER_LB, as_text, of_what, parse_mass_kg, plain_number, shown


@dataclass(frozen=True, slots=True)
class BodyWeightShare:
    """A percentage of body weight, in all or in each hand."""

    percent: Fraction
    per_hand: bool = False

    def __str__(self) -> str:
        return f"{plain_number(self.percent)} % of body weight{' in each hand' if self.per_hand else ''}"


@dataclass(frozen=True, slots=True)
class OneRepMaxShare:
    """A percentage of the one-repetition maximum."""

    percent: Fraction

    def __str__(self) -> str:
        return f"{plain_number(self.percent)} % of 1RM"


@dataclass(frozen=True, slots=True)
class Weight:
    """A fixed weight, in all or in each hand; ``unit`` is the one that the coach wrote."""

    kg: Fraction
    per_hand: bool = False
    unit: Literal["kg", "lb"] = "kg"

    def __str__(self) -> str:
        number = self.kg if self.unit == "kg" else self.kg / KG_PER_LB
        return f"{plain_number(number)} {self.unit}{' in each hand' if self.per_hand else ''}"


@dataclass(frozen=True, slots=True)
class Effort:
    """A rating of perceived exertion, 0 to 10 in halves."""

    rpe: Fraction

    def __str__(self) -> str:
        return f"effort {plain_number(self.rpe)} of 10"


@dataclass(frozen=True, slots=True)
class Reserve:
    """Repetitions left undone when a set ends."""

    reps: int

    def __str__(self) -> str:
        return f"{self.reps} {'rep' if self.reps == 1 else 'reps'} in reserve"


@dataclass(frozen=True, slots=True)
class Band:
    """A named elastic band."""

    name: str

    def __str__(self) -> str:
        return f"{self.name} band"


Load = BodyWeightShare | OneRepMaxShare | Weight | Effort | Reserve | Band

_SHARE = re.compile(r"(?P<n>[0-9]{1,3}(?:\.[0-9]{1,3})?)\s*%\s*(?P<of>body ?weight|1RM)?(?P<hand>\s+per hand)?")
_WEIGHT = re.compile(r"(?P<mass>[0-9]{1,4}(?:\.[0-9]{1,4})?\s*(?P<unit>kg|lb))(?P<hand>\s+per hand)?")
_EFFORT = re.compile(r"RPE\s*(?P<n>[0-9]{1,2}(?:\.[0-9])?)")
_RESERVE = re.compile(r"(?P<n>[0-9]{1,2})\s+reps? in reserve")
_BAND = re.compile(r"(?P<name>[a-z][a-z -]{0,30})\s+band")
_HINT = (
    "write '15 % bodyweight', '5 % bodyweight per hand', '70 % 1RM', '12 kg', '12 kg per hand', 'RPE 7', "
    "'3 reps in reserve' or 'medium band'"
)


def parse_load(value: Any) -> Load:
    """Return the load that a coach wrote in one of the ways above."""
    if isinstance(value, Load):
        return value
    text = as_text(value, "not-a-load", "a load", _HINT)
    if match := _SHARE.fullmatch(text):
        return _share(text, match)
    if match := _WEIGHT.fullmatch(text):
        unit: Literal["kg", "lb"] = "lb" if match["unit"] == "lb" else "kg"
        return Weight(parse_mass_kg(match["mass"]), bool(match["hand"]), unit)
    if match := _EFFORT.fullmatch(text):
        rpe = Fraction(match["n"])
        if rpe > 10 or (rpe * 2).denominator != 1:
            refuse("not-a-load", f"{shown(text)}: effort runs from 0 to 10, in halves", "write 'RPE 7' or 'RPE 7.5'")
        return Effort(rpe)
    if match := _RESERVE.fullmatch(text):
        return Reserve(int(match["n"]))
    if match := _BAND.fullmatch(text):
        return Band(match["name"])
    refuse("not-a-load", f"{shown(text)} is not a load", of_what(text, "kg", "% bodyweight") or _HINT)


def magnitude(load: Load) -> Fraction:
    """Return a load's number: a percentage, kilograms, an effort, or reps in reserve."""
    match load:
        case BodyWeightShare(percent=number) | OneRepMaxShare(percent=number) | Weight(kg=number) | Effort(rpe=number):
            return number
        case Reserve(reps=reps):
            return Fraction(reps)
        case Band():
            raise ValueError("a band has a name, not a number")


def _share(text: str, match: re.Match[str]) -> Load:
    percent = Fraction(match["n"])
    if match["of"] is None:
        refuse("not-a-load", f"{shown(text)} of what?", f"write '{match['n']} % bodyweight' or '{match['n']} % 1RM'")
    if percent == 0 or percent > 200:
        refuse("not-a-load", f"{shown(text)} is outside 0 to 200 %", "check the number")
    if match["of"] == "1RM":
        if match["hand"]:
            refuse("not-a-load", "a share of 1RM is of all the weight, not per hand", f"write '{match['n']} % 1RM'")
        return OneRepMaxShare(percent)
    return BodyWeightShare(percent, bool(match["hand"]))


LoadField = Annotated[
    Load,
    PlainValidator(lambda v: parse_load(v)),
    WithJsonSchema(
        {
            "type": "string",
            "pattern": (
                r"^([0-9.]+ *% *(body ?weight( per hand)?|1RM)|[0-9.]+ *(kg|lb)( per hand)?"
                r"|RPE *[0-9.]+|[0-9]+ reps? in reserve|[a-z][a-z -]* band)$"
            ),
            "examples": ["15 % bodyweight", "12 kg per hand", "RPE 7"],
        }
    ),
]
"""How heavy: a share of body weight or of 1RM, a weight, an effort, reps in reserve, or a named band."""
