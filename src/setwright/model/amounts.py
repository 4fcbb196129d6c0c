"""How much of an exercise a coach asks for: one amount for every set, a range of amounts, or one for each set.

| written | means |
| --- | --- |
| ``8`` | 8 in every set |
| ``8 to 12``, ``30 to 45 s`` | from the first to the last, both included, in every set |
| ``[12, 10, 8]`` | a set of 12, one of 10, one of 8; in a superset or circuit, a round of each |

An entry of a list may be a range. What is read is a tuple of spans: one for every set, or one for each set.
"""

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Annotated, Any, Final, TypeVar

from pydantic import PlainValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

from setwright.model.base import refuse
from setwright.model.load import LOAD_SCHEMA, Load, parse_load
from setwright.model.span import Span
from setwright.model.units import parse_count, parse_length_cm, parse_work_s, shown

Amounts = tuple[Span, ...]
"""The amount of every set, or of each set."""

Loads = tuple[Load, ...]
"""The load of every set, or of each set."""

T = TypeVar("T")

MOST_SETS: Final = 20
"""A list of more sets than this is a slip: nobody could read it on a phone."""

_RANGE = re.compile(r"(?P<low>\S.*?)\s+to\s+(?P<high>\S.*)")
_DASHED = re.compile(r"(?P<low>[0-9.]+)\s*[-‐‑–—]\s*(?P<high>[0-9.]+)\s*(?P<unit>[a-z]*)", re.IGNORECASE)
_UNIT = re.compile(r"[0-9.]+\s*(?P<unit>[a-z]+)", re.IGNORECASE)
_IN_A_ROW = re.compile(r"[0-9]+(?:\s*[/;,]\s*[0-9]+)+")
_TIMES = re.compile(r"(?P<sets>[0-9]+)\s*[x×*]\s*(?P<each>[0-9]+)", re.IGNORECASE)
_SIDED = re.compile(r"(?P<each>[0-9]+)\s*(?:reps?\s+)?(?:per|each|a|/)\s*(?:side|leg|arm)", re.IGNORECASE)


def per_set(value: Any, parse: Callable[[Any], T], example: str) -> tuple[T, ...]:
    """Return what one value says of every set, or a list of each set.

    Args:
        value: as the coach wrote it.
        parse: reads one entry.
        example: a list of two, for the message.

    Raises:
        PydanticCustomError: for an entry that cannot be read, a list of one, or a list without an end in sight.
    """
    if not isinstance(value, list):
        return (parse(value),)
    if len(value) < 2:
        refuse("list-of-one", "a list says what each set is, and this one has fewer than two", f"such as {example}")
    if len(value) > MOST_SETS:
        refuse("too-many-sets", f"a list of {len(value)} sets", f"{MOST_SETS} sets are the most", at=(MOST_SETS,))
    read: list[T] = []
    for index, one in enumerate(value):
        try:
            read.append(parse(one))
        except PydanticCustomError as error:
            said = error.context or {}
            refuse(said["rule"], said["message"], said["hint"], at=(index, *said["at"]))
    return tuple(read)


def parse_reps(value: Any) -> Amounts:
    """Return repetitions: ``8``, ``8 to 12``, ``[12, 10, 8]``."""
    return per_set(value, lambda one: _span(_as_reps(one), parse_count), "'[12, 10, 8]'")


def parse_times_s(value: Any) -> Amounts:
    """Return times in seconds: ``30 s``, ``30 to 45 s``, ``[45 s, 30 s]``."""
    return per_set(value, lambda one: _span(one, parse_work_s), "'[45 s, 30 s]'")


def parse_distances_cm(value: Any) -> Amounts:
    """Return distances in centimetres: ``20 m``, ``20 to 30 m``, ``[30 m, 20 m]``."""
    return per_set(value, lambda one: _span(one, parse_length_cm), "'[30 m, 20 m]'")


def parse_loads(value: Any) -> Loads:
    """Return loads: ``60 % 1RM``, ``[60 % 1RM, 70 % 1RM]``."""
    return per_set(value, parse_load, "'[60 % 1RM, 70 % 1RM]'")


def _span(value: Any, parse: Callable[[Any], int] | Callable[[Any], Fraction]) -> Span:
    text = str(value).strip()
    if dashed := _DASHED.fullmatch(text):
        hint = f"write it as '{dashed['low']} to {dashed['high']}{_space(dashed['unit'])}'"
        refuse("not-a-range", f"{shown(text)} is not a range", hint)
    found = _RANGE.fullmatch(text) if isinstance(value, str) else None
    if not found:
        return Span.of(parse(value))
    low_text, unit = found["low"], _UNIT.fullmatch(found["high"])
    if unit and not _UNIT.fullmatch(low_text):
        low_text = f"{low_text} {unit['unit']}"
    low, high = parse(low_text), parse(found["high"])
    if low >= high:
        refuse("range-upside-down", f"{shown(text)} does not go up", "write the smaller one first, and two that differ")
    return Span(low, high)


def _as_reps(value: Any) -> Any:
    """Return a value that may be repetitions; refuse what says sets or sides in the same breath, with what to write."""
    text = str(value).strip()
    if _IN_A_ROW.fullmatch(text):
        sets = ", ".join(re.findall("[0-9]+", text))
        refuse("not-a-count", f"{shown(text)} is not a whole number", f"one for each set is a list: '[{sets}]'")
    if times := _TIMES.fullmatch(text):
        hint = f"write 'sets: {times['sets']}' and 'reps: {times['each']}'"
        refuse("not-a-count", f"{shown(text)} is not a whole number", hint)
    if sided := _SIDED.fullmatch(text):
        hint = f"write {sided['each']}: the exercise's own page says whether that is for each side"
        refuse("not-a-count", f"{shown(text)} is not a whole number", hint)
    return value


def _space(unit: str) -> str:
    return f" {unit}" if unit else ""


def _schema(one: dict[str, Any], pattern: str, example: str) -> WithJsonSchema:
    span = {"type": "string", "pattern": pattern, "examples": [example]}
    each = {"anyOf": [one, span]}
    return WithJsonSchema(
        {"anyOf": [one, span, {"type": "array", "items": each, "minItems": 2, "maxItems": MOST_SETS}]}
    )


_N = r"[0-9]+(\.[0-9]+)?"
_TIME = rf"({_N} *h)? *({_N} *min)? *({_N} *s)?"

Reps = Annotated[
    Amounts,
    PlainValidator(lambda v: parse_reps(v)),
    _schema({"type": "integer", "minimum": 1, "maximum": 1000}, r"^[0-9]+ +to +[0-9]+$", "8 to 12"),
]
"""Repetitions of every set, or of each."""

Times = Annotated[
    Amounts,
    PlainValidator(lambda v: parse_times_s(v)),
    _schema({"type": "string", "pattern": f"^{_TIME}$"}, rf"^({_N}|{_TIME}) +to +{_TIME}$", "30 to 45 s"),
]
"""Seconds of every set, or of each."""

Distances = Annotated[
    Amounts,
    PlainValidator(lambda v: parse_distances_cm(v)),
    _schema(
        {"type": "string", "pattern": f"^{_N} *(cm|m|km)$"}, rf"^{_N} *(cm|m|km)? +to +{_N} *(cm|m|km)$", "20 to 30 m"
    ),
]
"""Centimetres of every set, or of each."""

LoadsField = Annotated[
    Loads,
    PlainValidator(lambda v: parse_loads(v)),
    WithJsonSchema(
        {"anyOf": [LOAD_SCHEMA, {"type": "array", "items": LOAD_SCHEMA, "minItems": 2, "maxItems": MOST_SETS}]}
    ),
]
"""How heavy every set is, or each."""
