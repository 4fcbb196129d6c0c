"""Quantities as a coach writes them, and as plain numbers: seconds, kilograms, centimetres, shares.

A value carries its unit (``30 s``, ``12 kg``, ``40 cm``, ``15 %``); a bare number is a count. Weights and shares
are exact fractions, so that a threshold that falls on a tie is seen as one.
"""

import re
from fractions import Fraction
from typing import Annotated, Any, Final

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse

KG_PER_LB: Final = Fraction(45359237, 100000000)
"""The international pound, exactly (international yard and pound agreement, 1959)."""

_NUMBER = r"[0-9]{1,6}(?:\.[0-9]{1,4})?"
_DURATION = re.compile(rf"(?:(?P<h>{_NUMBER})\s*h)?\s*(?:(?P<min>{_NUMBER})\s*min)?\s*(?:(?P<s>{_NUMBER})\s*s)?")
_MASS = re.compile(r"(?P<number>[0-9]{1,6}(?:\.[0-9]{1,12})?)\s*(?P<unit>kg|lb)")
_LENGTH = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>cm|m|km)")
_PERCENT = re.compile(rf"(?P<number>{_NUMBER})\s*%")
_WEEKS = re.compile(r"(?P<number>[0-9]{1,3})\s*weeks?")
_COUNT = re.compile(r"[0-9]{1,6}")
_CM_PER: Final = {"cm": 1, "m": 100, "km": 100_000}

_MOST_PLACES: Final = 18

LONGEST_VALUE: Final = 80
"""No quantity, range or load takes more signs than this."""

LONGEST_S: Final = 6 * 3600
"""No time in a session is longer than six hours: a longer one is a slip of the keyboard."""


def as_text(value: Any, rule: str, wanted: str, hint: str) -> str:
    """Return the text of a single value; refuse a list or a mapping in its place."""
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        refuse(rule, f"expected {wanted} here", hint)
    text = str(value).strip()
    if len(text) > LONGEST_VALUE:  # before any pattern is tried on it: a long row of spaces would take minutes
        refuse(rule, f"{shown(text)} is too long to be {wanted}", hint)
    return text


def printable(text: str) -> str:
    """Return a text with a question mark for every sign that does not print, such as a space of no width."""
    return "".join(sign if sign.isprintable() else "?" for sign in text)


def shown(text: str) -> str:
    """Quote what the coach wrote on one line, shortened to fit a message; what does not print is a question mark."""
    text = printable(" ".join(text.split()))
    return f"'{text}'" if len(text) <= 40 else f"'{text[:37]}...'"


def of_what(text: str, *units: str) -> str:
    """Return a hint for a number that lacks its unit, or that has a comma for its point; nothing otherwise."""
    if re.fullmatch(_NUMBER, text):
        ways = " or ".join(f"'{text} {unit}'" for unit in units)
        return f"{text} of what? write {ways}"
    pointed = re.sub(r"(?<=[0-9]),(?=[0-9])", ".", text)
    return f"write a point, not a comma: '{pointed}'" if pointed != text and len(text) <= 40 else ""


def parse_duration_s(value: Any) -> int:
    """Return whole seconds from a time such as ``30 s``, ``1 min 30 s`` or ``1 h``."""
    hint = "write it with h, min or s, such as '30 s' or '1 min 30 s'"
    text = as_text(value, "not-a-time", "a time", hint)
    if clock := re.fullmatch(r"([0-9]{1,6}):([0-9]{2})", text):
        hint = f"write it as '{int(clock[1])} min {int(clock[2])} s'"
    match = _DURATION.fullmatch(text)
    if not match or not any(match.groups()):
        refuse("not-a-time", f"{shown(text)} is not a time", of_what(text, "s", "min") or hint)
    seconds = sum(Fraction(match[unit] or 0) * size for unit, size in (("h", 3600), ("min", 60), ("s", 1)))
    if seconds.denominator != 1:
        refuse("not-a-time", f"{shown(text)} is not a whole number of seconds", "round it to a second")
    if not 0 <= seconds <= LONGEST_S:
        refuse("not-a-time", f"{shown(text)} is longer than six hours", "check the unit")
    return int(seconds)


def parse_work_s(value: Any) -> int:
    """Return whole seconds of a time in which something is done: one second or more."""
    seconds = parse_duration_s(value)
    if seconds == 0:
        refuse("not-a-time", "this takes some time, not 0 s", "write how long, such as '30 s'")
    return seconds


def parse_mass_kg(value: Any) -> Fraction:
    """Return kilograms, exactly, from ``12 kg`` or ``25 lb``."""
    hint = "write it with kg or lb, such as '12 kg' or '25 lb'"
    text = as_text(value, "not-a-weight", "a weight", hint)
    match = _MASS.fullmatch(text)
    if not match:
        refuse("not-a-weight", f"{shown(text)} is not a weight", of_what(text, "kg", "lb") or hint)
    refuse_shown_as_nothing(text, Fraction(match["number"]), match["unit"], "not-a-weight")
    kilograms = Fraction(match["number"]) * (KG_PER_LB if match["unit"] == "lb" else 1)
    if kilograms == 0:
        refuse("not-a-weight", f"{shown(text)} is no weight", f"write more than 0 {match['unit']}")
    if not 0 < kilograms <= 1000:
        refuse("not-a-weight", f"{shown(text)} is outside 0 to 1000 kg", "check the number and the unit")
    return kilograms


def parse_length_cm(value: Any) -> Fraction:
    """Return centimetres, exactly, from ``40 cm``, ``20 m`` or ``1 km``."""
    hint = "write it with cm, m or km, such as '40 cm' or '20 m'"
    text = as_text(value, "not-a-length", "a length", hint)
    match = _LENGTH.fullmatch(text)
    if not match:
        refuse("not-a-length", f"{shown(text)} is not a length", of_what(text, "cm", "m") or hint)
    length = Fraction(match["number"]) * _CM_PER[match["unit"]]
    refuse_shown_as_nothing(text, length, "cm", "not-a-length")
    if not 0 < length <= 100 * _CM_PER["km"]:
        refuse("not-a-length", f"{shown(text)} is outside 0 to 100 km", "check the number and the unit")
    return length


def parse_distance_cm(value: Any) -> Fraction:
    """Return a distance to cover, in whole centimetres, which is what pages show of one in metres."""
    distance = parse_length_cm(value)
    if distance.denominator != 1:
        refuse("not-a-length", f"{shown(str(value))} is not a whole number of centimetres", "round it to a centimetre")
    return distance


def refuse_shown_as_nothing(text: str, number: Fraction, unit: str, rule: str) -> None:
    """Refuse an amount that is more than nothing and so little that pages would show it as 0."""
    if number and plain_number(number) == "0":
        refuse(rule, f"{shown(text)} is so little that pages would show 0 {unit}", "check the number and the unit")


def parse_percent(value: Any) -> Fraction:
    """Return the number before the sign from ``15 %``, exactly: 15, not 0.15."""
    hint = "write the sign too, such as '15 %'"
    text = as_text(value, "not-a-percentage", "a percentage", hint)
    match = _PERCENT.fullmatch(text)
    if not match:
        if re.fullmatch(_NUMBER, text):
            share = Fraction(text) * (100 if Fraction(text) <= 1 else 1)
            hint = f"write '{plain_number(share)} %'"
        refuse("not-a-percentage", f"{shown(text)} is not a percentage", hint)
    percent = Fraction(match["number"])
    refuse_shown_as_nothing(text, percent, "%", "not-a-percentage")
    if percent > 300:
        refuse("not-a-percentage", f"{shown(text)} is over 300 %", "check the number")
    return percent


def parse_weeks(value: Any) -> int:
    """Return the number of weeks from ``1 week`` or ``2 weeks``."""
    hint = "write it as '1 week' or '2 weeks'"
    text = as_text(value, "not-weeks", "a number of weeks", hint)
    match = _WEEKS.fullmatch(text)
    if not match or not 1 <= int(match["number"]) <= 104:
        refuse("not-weeks", f"{shown(text)} is not a number of weeks", of_what(text, "weeks") or hint)
    return int(match["number"])


def parse_count(value: Any, most: int = 1000) -> int:
    """Return a whole number of one or more, such as sets or reps, up to a bound."""
    hint = "write a whole number, such as 8"
    text = as_text(value, "not-a-count", "a whole number", hint)
    if not _COUNT.fullmatch(text):
        if without := re.fullmatch(r"([0-9]+)\s*(reps?|sets?|rounds?|weeks?|x)", text):
            hint = f"a bare number is enough: {without[1]}"
        refuse("not-a-count", f"{shown(text)} is not a whole number", hint)
    if not 1 <= int(text) <= most:
        refuse("not-a-count", f"{text} is outside 1 to {most}", hint)
    return int(text)


def parse_flag(value: Any) -> bool:
    """Return a yes-or-no value, written ``true`` or ``false``."""
    if isinstance(value, bool):
        return value
    text = as_text(value, "not-true-or-false", "true or false", "write true or false")
    if text not in ("true", "false"):
        hint = f"write {_YES_OR_NO.get(text.lower(), 'true or false')}"
        refuse("not-true-or-false", f"{shown(text)} is neither true nor false", hint)
    return text == "true"


_YES_OR_NO: Final = {"true": "true", "yes": "true", "on": "true", "false": "false", "no": "false", "off": "false"}


def plain_number(number: Fraction | int, places: int = 2) -> str:
    """Write an exact number for people: no trailing zeros, at most so many places, halves rounded to even."""
    rounded = round(Fraction(number), places)
    text = f"{float(rounded):.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def exact_number(number: Fraction | int) -> str:
    """Write an exact number without rounding it: ``13.95``, or ``40/3`` where no decimal ends."""
    exact = Fraction(number)
    places = 0
    while (exact * 10**places).denominator != 1:
        places += 1
        if places > _MOST_PLACES:
            return f"{exact.numerator}/{exact.denominator}"
    whole, sign = abs(exact * 10**places).numerator, "-" if exact < 0 else ""
    digits = f"{whole:0{places + 1}d}"
    return f"{sign}{digits[:-places]}.{digits[-places:]}" if places else f"{sign}{digits}"


def _text_schema(pattern: str, example: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "pattern": f"^{pattern}$", "examples": [example]})


_N = r"[0-9]+(\.[0-9]+)?"

Duration = Annotated[
    int,
    PlainValidator(lambda v: parse_duration_s(v)),
    _text_schema(rf"({_N} *h)? *({_N} *min)? *({_N} *s)?", "1 min 30 s"),
]
"""A time, in whole seconds."""

WorkTime = Annotated[
    int,
    PlainValidator(lambda v: parse_work_s(v)),
    _text_schema(rf"({_N} *h)? *({_N} *min)? *({_N} *s)?", "1 min 30 s"),
]
"""A time in which something is done, in whole seconds; never none."""

Mass = Annotated[Fraction, PlainValidator(lambda v: parse_mass_kg(v)), _text_schema(rf"{_N} *(kg|lb)", "12 kg")]
"""A weight, in kilograms."""

Length = Annotated[Fraction, PlainValidator(lambda v: parse_length_cm(v)), _text_schema(rf"{_N} *(cm|m|km)", "40 cm")]
"""A length, in centimetres."""

Distance = Annotated[
    Fraction, PlainValidator(lambda v: parse_distance_cm(v)), _text_schema(rf"{_N} *(cm|m|km)", "20 m")
]
"""A distance to cover, in whole centimetres."""

Percent = Annotated[Fraction, PlainValidator(lambda v: parse_percent(v)), _text_schema(rf"{_N} *%", "15 %")]
"""A share, as the number before the sign."""

Weeks = Annotated[int, PlainValidator(lambda v: parse_weeks(v)), _text_schema("[0-9]+ *weeks?", "2 weeks")]
"""A number of weeks, with its word."""

Count = Annotated[
    int, PlainValidator(lambda v: parse_count(v)), WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 1000})
]
"""A whole number from 1 to 1000."""

Flag = Annotated[bool, PlainValidator(lambda v: parse_flag(v)), WithJsonSchema({"type": "boolean"})]
"""``true`` or ``false``."""
