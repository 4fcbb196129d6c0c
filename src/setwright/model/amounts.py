"""How much of an exercise a coach asks for: one amount for every set, a range of amounts, or one for each set.

| written | means |
| --- | --- |
| ``8`` | 8 in every set |
| ``8 to 12``, ``30 to 45 s`` | from the first to the last, both included, in every set |
| ``[12, 10, 8]`` | a set of 12, one of 10, one of 8; in a superset or circuit, a round of each |
| ``as many as possible`` | repetitions until as many are left as ``leave`` says |

An entry of a list may be a range. What is read is a tuple of spans: one for every set, or one for each set.
"""

import re
from collections.abc import Callable
from fractions import Fraction
from typing import Annotated, Any, Final, TypeVar

from pydantic import PlainValidator, WithJsonSchema
from pydantic_core import PydanticCustomError

from setwright.model.base import refuse
from setwright.model.load import LOAD_SCHEMA, Load, magnitude, parse_load, same_kind
from setwright.model.open_end import WRITTEN
from setwright.model.slips import (
    NO_RANGE_OF_EFFORTS,
    effort_meant,
    endless,
    in_a_row,
    is_endless,
    is_half_range,
    is_range_of_loads,
    range_meant,
    says_reps,
    sets_times,
)
from setwright.model.span import AS_WRITTEN, Span
from setwright.model.units import LONGEST_VALUE, parse_count, parse_distance_cm, parse_duration_s, parse_work_s, shown

Amounts = tuple[Span, ...]
"""The amount of every set, or of each set."""

Loads = tuple[Load, ...]
"""The load of every set, or of each set."""

Rests = tuple[int, ...]
"""The rest after every set or round in seconds, or after each but the last."""

LEAST_LOAD: Final = Fraction(1, 10)
"""The least load that is prescribed, in kg or percent, so that a share of it in a lighter week is still shown."""

T = TypeVar("T")

MOST_SETS: Final = 20
"""A list of more sets than this is a slip: nobody could read it on a phone."""

_RANGE = re.compile(r"(?P<low>\S.*?)\s+to\s+(?P<high>\S.*)")
_UNIT = re.compile(r"[0-9.]+\s*(?P<unit>[a-z]+)", re.IGNORECASE)
_SIDED = re.compile(r"(?P<each>[0-9]+)\s*(?:reps?\s+)?(?:per|each|a|/)\s*(?:side|leg|arm)", re.IGNORECASE)


def per_set(value: Any, parse: Callable[[Any], T], example: str, meant: Callable[[str], str]) -> tuple[T, ...]:
    """Return what one value says of every set, or a list of each set.

    Args:
        value: as the coach wrote it.
        parse: reads one entry.
        example: a list of two, for the message.
        meant: a better hint for a text that cannot be read, or nothing.

    Raises:
        PydanticCustomError: for an entry that cannot be read, a list of one, or a list without an end in sight.
    """
    if not isinstance(value, list):
        return (_read(value, parse, meant),)
    crowded = any(in_a_row(one) for one in value)
    if len(value) < 2 and not crowded:
        refuse("list-of-one", "a list says what each set is, and this one has fewer than two", f"such as {example}")
    if len(value) > MOST_SETS:
        refuse("too-many-sets", f"a list of {len(value)} sets", f"{MOST_SETS} sets are the most", at=(MOST_SETS,))
    spread = ", ".join(each for one in value for each in in_a_row(one) or [str(one)])
    read: list[T] = []
    for index, one in enumerate(value):
        following = value[index + 1] if index + 1 < len(value) else None

        def in_list(text: str, following: Any = following) -> str:
            if in_a_row(text):
                return f"commas between: '[{spread}]'" if len(spread) <= 120 else "put a comma between two entries"
            return _decimal_meant(text, following, parse) or meant(text)

        read.append(_read(one, parse, in_list, at=(index,)))
    return tuple(read)


def _read(value: Any, parse: Callable[[Any], T], meant: Callable[[str], str], at: tuple[int, ...] = ()) -> T:
    """Return one entry; where it cannot be read, say what was likely meant."""
    try:
        return parse(value)
    except PydanticCustomError as error:
        said = error.context or {}
        hint = meant(str(value).strip()) if isinstance(value, str | int) else ""
        refuse(said["rule"], said["message"], hint or said["hint"], at=(*at, *said["at"]))


def _decimal_meant(text: str, following: Any, parse: Callable[[Any], Any]) -> str:
    """Return a hint where a comma that stands for a point has cut an entry of a list in two."""
    if not (re.fullmatch("[0-9]+", text) and re.match("[0-9]", str(following))):
        return ""
    try:
        parse(f"{text}.{following}")
    except PydanticCustomError:
        return ""
    return f"a decimal has a point, not a comma: '{text}.{following}'; if it is a set of its own, give it its unit"


def parse_reps(value: Any) -> Amounts:
    """Return repetitions: ``8``, ``8 to 12``, ``[12, 10, 8]``, ``as many as possible``."""
    return per_set(value, _reps, "'[12, 10, 8]'", _reps_meant)


def _reps(value: Any) -> Span:
    if isinstance(value, str) and value.strip() == WRITTEN:
        return AS_WRITTEN
    return _span(value, parse_count, "8 to 12")


def parse_times_s(value: Any) -> Amounts:
    """Return times in seconds: ``30 s``, ``30 to 45 s``, ``[45 s, 30 s]``."""
    return per_set(value, lambda one: _span(one, parse_work_s, "30 to 45 s"), "'[45 s, 30 s]'", _time_meant)


def parse_distances_cm(value: Any) -> Amounts:
    """Return distances in centimetres: ``20 m``, ``20 to 30 m``, ``[30 m, 20 m]``."""
    return per_set(value, lambda one: _span(one, parse_distance_cm, "20 to 30 m"), "'[30 m, 20 m]'", _distance_meant)


def parse_loads(value: Any) -> Loads:
    """Return loads: ``60 % 1RM``, ``[60 % 1RM, 70 % 1RM]``; a list holds loads of one kind."""
    loads = per_set(value, parse_load, "'[60 % 1RM, 70 % 1RM]'", _load_meant)
    for index, load in enumerate(loads):
        if load.weighed and magnitude(load) < LEAST_LOAD:
            said = f"{load} is less than anybody weighs out"
            refuse("not-a-load", said, "check the number and the unit", at=(index,) if len(loads) > 1 else ())
        if not same_kind(loads[0], load):
            said = f"this list begins with {loads[0]}, this is {load}"
            refuse("load-units-differ", said, "write the load of every set in the same way", at=(index,))
    return loads


def parse_rests_s(value: Any) -> Rests:
    """Return rests in seconds: ``90 s``, ``[60 s, 60 s, 2 min]``; there is one fewer than sets or rounds."""
    return per_set(value, parse_duration_s, "'[60 s, 2 min]'", _time_meant)


def _span(value: Any, parse: Callable[[Any], int] | Callable[[Any], Fraction], example: str) -> Span:
    text = str(value).strip() if isinstance(value, str) else ""
    if len(text) > LONGEST_VALUE:  # refused below, before any pattern is tried on it
        return Span.of(parse(value))
    found = _RANGE.fullmatch(text)
    near = range_meant(text)
    if near and (found is None or says_reps(text)):
        refuse("not-a-range", f"{shown(text)} is not a range", f"write it as '{near}'")
    if is_half_range(text):
        refuse("not-a-range", f"{shown(text)} is not a range", f"write both ends, such as '{example}'")
    if not found:
        return Span.of(parse(value))
    low_text, unit = found["low"], _UNIT.fullmatch(found["high"])
    if unit and not _UNIT.fullmatch(low_text):
        low_text = f"{low_text} {unit['unit']}"
    low, high = parse(low_text), parse(found["high"])
    if low >= high:
        refuse("range-upside-down", f"{shown(text)} does not go up", "write the smaller one first, and two that differ")
    return Span(low, high)


def _time_meant(text: str) -> str:
    return _amount_meant(text, "30 to 45 s")


def _distance_meant(text: str) -> str:
    return _amount_meant(text, "20 to 30 m")


def _amount_meant(text: str, example: str, decimals: bool = True) -> str:
    """Return a hint for a text that says several sets, or one without an end."""
    if row := in_a_row(text, decimals):
        return f"one for each set is a list: '[{', '.join(row)}]'"
    if times := sets_times(text):
        return f"write '{times[1]}' here, and 'sets: {times[0]}', or 'rounds: {times[0]}' on a superset or circuit"
    return endless(text, example)


def _reps_meant(text: str) -> str:
    """Return a hint for repetitions that say sets or sides in the same breath."""
    if sided := _SIDED.fullmatch(text):
        return f"write {sided['each']}: the exercise's own page says whether that is for each side"
    if is_endless(text):
        return f"write '{WRITTEN}', and 'leave: 2 reps' beside it; or a range, such as '8 to 12'"
    return _amount_meant(text, "8 to 12", decimals=False)


def _load_meant(text: str) -> str:
    """Return a hint for a text that says several loads, a range of them, or an effort in other words."""
    if row := in_a_row(text):
        return f"one for each set is a list: '[{', '.join(row)}]'"
    if is_range_of_loads(text) and text.lower().startswith("rpe"):
        return NO_RANGE_OF_EFFORTS
    if is_range_of_loads(text):
        return "loads have no ranges: write a list with one for each set, or one load and 'feels_like: RPE 8'"
    effort = effort_meant(text)
    return f"write '{effort}'" if effort else ""


def _schema(one: dict[str, Any], pattern: str, example: str, *words: str) -> WithJsonSchema:
    span = {"type": "string", "pattern": pattern, "examples": [example]}
    said = [one, span, *({"const": word} for word in words)]
    each = {"anyOf": said}
    return WithJsonSchema({"anyOf": [*said, {"type": "array", "items": each, "minItems": 2, "maxItems": MOST_SETS}]})


_N = r"[0-9]+(\.[0-9]+)?"
_TIME = rf"({_N} *h)? *({_N} *min)? *({_N} *s)?"

Reps = Annotated[
    Amounts,
    PlainValidator(lambda v: parse_reps(v)),
    _schema({"type": "integer", "minimum": 1, "maximum": 1000}, r"^[0-9]+ +to +[0-9]+$", "8 to 12", WRITTEN),
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

_TIME_SCHEMA = {"type": "string", "pattern": f"^{_TIME}$", "examples": ["90 s"]}
RestsField = Annotated[
    Rests,
    PlainValidator(lambda v: parse_rests_s(v)),
    WithJsonSchema(
        {"anyOf": [_TIME_SCHEMA, {"type": "array", "items": _TIME_SCHEMA, "minItems": 2, "maxItems": MOST_SETS}]}
    ),
]
"""The rest after every set or round, or after each but the last."""
