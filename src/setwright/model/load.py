"""Loads: how heavy, in any of the ways a coach prescribes it.

A load answers the questions that anyone has about it: ``of`` what its number is a share, whether it is ``weighed``,
and whether it is ``per_hand``. As text it is its written form, the one that a coach writes and ``parse_load`` reads:
digests and messages stand on that. Words for members are in the room ``wording``.

| written | means |
| --- | --- |
| ``15 % bodyweight`` | all the weight held, as a share of body weight |
| ``5 % bodyweight per hand`` | the weight in each hand, as a share of body weight |
| ``70 % 1RM`` | a share of the weight that can be lifted once |
| ``12 kg``, ``25 lb``, ``12 kg per hand`` | a weight |
| ``RPE 7`` | the member's own effort, 0 to 10 |
| ``3 reps in reserve`` | stop with so many reps left |
| ``medium band`` | an elastic band that the club owns |
| ``15 kg of help``, ``20 % bodyweight of help``, ``medium band of help`` | weight off the body: less is harder |
| ``bodyweight + 5 kg`` | a weight added to a movement that lifts the body |
"""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Final, Literal

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.slips import NO_RANGE_OF_EFFORTS, effort_meant, help_meant, is_range_of_loads
from setwright.model.units import (
    KG_PER_LB,
    as_text,
    exact_number,
    of_what,
    parse_mass_kg,
    refuse_shown_as_nothing,
    shown,
)

Base = Literal["body weight", "1RM"]
"""What a percentage is a percentage of."""


@dataclass(frozen=True, slots=True)
class BodyWeightShare:
    """A percentage of body weight, in all or in each hand."""

    percent: Fraction
    per_hand: bool = False
    of: ClassVar[Base | None] = "body weight"
    weighed: ClassVar[bool] = True

    def __str__(self) -> str:
        return f"{exact_number(self.percent)} % bodyweight{' per hand' if self.per_hand else ''}"


@dataclass(frozen=True, slots=True)
class OneRepMaxShare:
    """A percentage of the one-repetition maximum."""

    percent: Fraction
    of: ClassVar[Base | None] = "1RM"
    weighed: ClassVar[bool] = True
    per_hand: ClassVar[bool] = False

    def __str__(self) -> str:
        return f"{exact_number(self.percent)} % 1RM"


@dataclass(frozen=True, slots=True)
class Weight:
    """A fixed weight, in all or in each hand; ``unit`` is the one that the coach wrote."""

    kg: Fraction
    per_hand: bool = False
    unit: Literal["kg", "lb"] = "kg"
    of: ClassVar[Base | None] = None
    weighed: ClassVar[bool] = True

    @property
    def number(self) -> Fraction:
        """The weight in its own unit."""
        return self.kg if self.unit == "kg" else self.kg / KG_PER_LB

    def __str__(self) -> str:
        return f"{exact_number(self.number)} {self.unit}{' per hand' if self.per_hand else ''}"


@dataclass(frozen=True, slots=True)
class AddedWeight(Weight):
    """A fixed weight that is lifted together with the body."""

    def __str__(self) -> str:
        return f"bodyweight + {exact_number(self.number)} {self.unit}"


@dataclass(frozen=True, slots=True)
class HelpShare:
    """A percentage of body weight that a counterweight takes off the body."""

    percent: Fraction
    of: ClassVar[Base | None] = "body weight"
    weighed: ClassVar[bool] = True
    per_hand: ClassVar[bool] = False

    def __str__(self) -> str:
        return f"{exact_number(self.percent)} % bodyweight of help"


@dataclass(frozen=True, slots=True)
class HelpWeight:
    """A fixed weight that a counterweight takes off the body; ``unit`` is the one that the coach wrote."""

    kg: Fraction
    unit: Literal["kg", "lb"] = "kg"
    of: ClassVar[Base | None] = None
    weighed: ClassVar[bool] = True
    per_hand: ClassVar[bool] = False

    @property
    def number(self) -> Fraction:
        """The weight in its own unit."""
        return self.kg if self.unit == "kg" else self.kg / KG_PER_LB

    def __str__(self) -> str:
        return f"{exact_number(self.number)} {self.unit} of help"


@dataclass(frozen=True, slots=True)
class Effort:
    """A rating of perceived exertion, 0 to 10 in halves."""

    rpe: Fraction
    of: ClassVar[Base | None] = None
    weighed: ClassVar[bool] = False
    per_hand: ClassVar[bool] = False

    def __str__(self) -> str:
        return f"RPE {exact_number(self.rpe)}"


@dataclass(frozen=True, slots=True)
class Reserve:
    """Repetitions left undone when a set ends."""

    reps: int
    of: ClassVar[Base | None] = None
    weighed: ClassVar[bool] = False
    per_hand: ClassVar[bool] = False

    def __str__(self) -> str:
        return f"{self.reps} {'rep' if self.reps == 1 else 'reps'} in reserve"


@dataclass(frozen=True, slots=True)
class Band:
    """A named elastic band: one to work against, or, where it ``helps``, one that takes weight off the body."""

    name: str
    helps: bool = False
    of: ClassVar[Base | None] = None
    weighed: ClassVar[bool] = False
    per_hand: ClassVar[bool] = False

    def __str__(self) -> str:
        return f"{self.name} band{' of help' if self.helps else ''}"


Load = BodyWeightShare | OneRepMaxShare | Weight | AddedWeight | HelpShare | HelpWeight | Effort | Reserve | Band

_DECIMALS = r"(?:\.[0-9]{1,12})?"
"""More than a coach writes: what a lighter week leaves of a load is written exactly, and has to be read again."""
_SHARE = re.compile(rf"(?P<n>[0-9]{{1,3}}{_DECIMALS})\s*%\s*(?P<of>body ?weight|1RM)?(?P<hand>\s+per hand|\s+of help)?")
_WEIGHT = re.compile(rf"(?P<mass>[0-9]{{1,4}}{_DECIMALS}\s*(?P<unit>kg|lb))(?P<hand>\s+per hand|\s+of help)?")
_ADDED = re.compile(rf"body ?weight\s*\+\s*(?P<mass>[0-9]{{1,4}}{_DECIMALS}\s*(?P<unit>kg|lb))")
_EFFORT = re.compile(r"RPE\s*(?P<n>[0-9]{1,2}(?:\.[0-9])?)")
_RESERVE = re.compile(r"(?P<n>[0-9]{1,2})\s+reps? in reserve")
_BAND = re.compile(r"(?P<name>[a-z][a-z -]{0,30})\s+band(?P<helps>\s+of help)?")
_HINT = (
    "write '15 % bodyweight', '5 % bodyweight per hand', '70 % 1RM', '12 kg', '12 kg per hand', 'RPE 7', "
    "'3 reps in reserve', 'medium band', '15 kg of help' or 'bodyweight + 5 kg'"
)


def parse_load(value: Any) -> Load:
    """Return the load that a coach wrote in one of the ways above."""
    if isinstance(value, Load):
        return value
    text = as_text(value, "not-a-load", "a load", _HINT)
    if match := _SHARE.fullmatch(text):
        return _share(text, match)
    if match := _WEIGHT.fullmatch(text):
        if _helps(match):
            return HelpWeight(parse_mass_kg(match["mass"]), _unit(match))
        return Weight(parse_mass_kg(match["mass"]), bool(match["hand"]), _unit(match))
    if match := _ADDED.fullmatch(text):
        return AddedWeight(parse_mass_kg(match["mass"]), unit=_unit(match))
    if effort := _effort(text):
        return effort
    if match := _BAND.fullmatch(text):
        return Band(match["name"], bool(match["helps"]))
    meant = help_meant(text)
    if re.fullmatch("(?:body ?weight|bw|none|no weight)", text.lower()):
        refuse("not-a-load", f"{shown(text)} is no load", "leave 'load' out: that is the body alone")
    hint = f"write '{meant}'" if meant else of_what(text, "kg", "% bodyweight") or _HINT
    refuse("not-a-load", f"{shown(text)} is not a load", hint)


def _unit(match: re.Match[str]) -> Literal["kg", "lb"]:
    return "lb" if match["unit"] == "lb" else "kg"


def _helps(match: re.Match[str]) -> bool:
    return (match["hand"] or "").endswith("help")


def _effort(text: str) -> Effort | Reserve | None:
    if match := _EFFORT.fullmatch(text):
        rpe = Fraction(match["n"])
        if rpe > 10 or (rpe * 2).denominator != 1:
            refuse("not-a-load", f"{shown(text)}: effort runs from 0 to 10, in halves", "write 'RPE 7' or 'RPE 7.5'")
        return Effort(rpe)
    match = _RESERVE.fullmatch(text)
    return Reserve(int(match["n"])) if match else None


def parse_effort(value: Any) -> Effort | Reserve:
    """Return how hard a set should feel: ``RPE 8`` or ``2 reps in reserve``."""
    if isinstance(value, Effort | Reserve):
        return value
    if isinstance(value, list):
        said, hint = "one effort stands for every set here", "write the hardest, such as 'RPE 8'"
        refuse("effort-unclear", said, hint)
    hint = "write 'RPE 8' or '2 reps in reserve'"
    text = as_text(value, "effort-unclear", "an effort", hint)
    if effort := _effort(text):
        return effort
    if is_range_of_loads(text):
        hint = NO_RANGE_OF_EFFORTS
    elif meant := effort_meant(text, bare=True):
        hint = f"write '{meant}'"
    refuse("effort-unclear", f"{shown(text)} is not how a set feels", hint)


def same_kind(one: Load, other: Load) -> bool:
    """Say whether two loads are counted in the same way, so that their numbers can be compared."""
    return type(one) is type(other) and one.per_hand == other.per_hand


def in_all(load: Load) -> Fraction:
    """Return a load's number for both hands together."""
    return magnitude(load) * (2 if load.per_hand else 1)


def demand(load: Load) -> Fraction:
    """Return a number by which loads of one kind are in order of how much they ask for: less help asks for more."""
    return -magnitude(load) if isinstance(load, HelpShare | HelpWeight) else in_all(load)


def magnitude(load: Load) -> Fraction:
    """Return a load's number: a percentage, kilograms, an effort, or reps in reserve."""
    match load:
        case BodyWeightShare(percent=number) | OneRepMaxShare(percent=number) | HelpShare(percent=number):
            return number
        case Weight(kg=number) | HelpWeight(kg=number) | Effort(rpe=number):
            return number
        case Reserve(reps=reps):
            return Fraction(reps)
        case Band():
            raise ValueError("a band has a name, not a number")


def _share(text: str, match: re.Match[str]) -> Load:
    percent = Fraction(match["n"])
    if match["of"] is None:
        hint = f"write '{match['n']} % bodyweight' or '{match['n']} % 1RM'"
        if _helps(match):
            hint = f"write '{match['n']} % bodyweight of help'"
        refuse("not-a-load", f"{shown(text)} of what?", hint)
    if percent == 0:
        refuse("not-a-load", f"{shown(text)} is no load", "write more than 0 %")
    refuse_shown_as_nothing(text, percent, "%", "not-a-load")
    if percent > 200:
        refuse("not-a-load", f"{shown(text)} is outside 0 to 200 %", "check the number")
    if _helps(match):
        if match["of"] == "1RM":
            hint = f"write '{match['n']} % bodyweight of help'"
            refuse("not-a-load", "help is a share of body weight, not of 1RM", hint)
        if percent >= 100:
            refuse("not-a-load", f"{shown(text)} would lift all of the member", "write less than 100 %")
        return HelpShare(percent)
    if match["of"] == "1RM":
        if match["hand"]:
            refuse("not-a-load", "a share of 1RM is of all the weight, not per hand", f"write '{match['n']} % 1RM'")
        return OneRepMaxShare(percent)
    return BodyWeightShare(percent, bool(match["hand"]))


EFFORT_SCHEMA: Final[dict[str, Any]] = {
    "type": "string",
    "pattern": r"^(RPE *[0-9.]+|[0-9]+ reps? in reserve)$",
    "examples": ["RPE 8", "2 reps in reserve"],
}
"""What an editor knows of an effort."""

EffortField = Annotated[Effort | Reserve, PlainValidator(lambda v: parse_effort(v)), WithJsonSchema(EFFORT_SCHEMA)]
"""How hard a set should feel."""

LOAD_SCHEMA: Final[dict[str, Any]] = {
    "type": "string",
    "pattern": (
        r"^([0-9.]+ *% *(body ?weight( per hand| of help)?|1RM)|[0-9.]+ *(kg|lb)( per hand| of help)?"
        r"|body ?weight *\+ *[0-9.]+ *(kg|lb)"
        r"|RPE *[0-9.]+|[0-9]+ reps? in reserve|[a-z][a-z -]* band( of help)?)$"
    ),
    "examples": ["15 % bodyweight", "12 kg per hand", "RPE 7", "15 kg of help", "bodyweight + 5 kg"],
}
"""What an editor knows of a load."""

LoadField = Annotated[Load, PlainValidator(lambda v: parse_load(v)), WithJsonSchema(LOAD_SCHEMA)]
"""How heavy: a share of body weight or of 1RM, a weight, help, an effort, reps in reserve, or a named band."""
