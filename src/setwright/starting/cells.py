"""Cells of a coach's table as the programme's own words. What cannot be read for sure is not read."""

import re
from dataclasses import dataclass
from typing import Final

from pydantic_core import PydanticCustomError

from setwright.model.amounts import parse_loads
from setwright.model.tempo import parse_tempo
from setwright.model.units import parse_duration_s

_SIDES: Final = re.compile(
    r"(?:/| per | each | ea(?:ch)? ?| a )\s*(?:side|leg|arm|hand|foot|way)s?\b\.?|\be/s\b|\bea(?:ch)?\.?$"
)
_TIMES: Final = re.compile(r"(?P<sets>\d{1,2})\s*(?:x|×|\*|sets? of)\s*(?P<amount>.+)")
_RANGE: Final = re.compile(r"(\d+)\s*(?:-|–|—|to)\s*(\d+)")
_SECONDS: Final = re.compile(r"(\d+)\s*(?:s|secs?|seconds?|\"|'')")
_MINUTES: Final = re.compile(r"(\d+(?:\.\d+)?)\s*(?:min|mins|minutes?|')")
_CLOCK: Final = re.compile(r"(\d{1,2}):(\d{2})")
_METRES: Final = re.compile(r"(\d+)\s*(?:m|metres?|meters?)")
_NUMBER: Final = r"\d+(?:\.\d+)?"


@dataclass(frozen=True)
class Amount:
    """How much of a set, as the programme writes it: reps, a distance, a hold, work, or a time of either kind.

    ``each`` is whether it is of each side.
    """

    what: str
    written: str | list[str]
    each: bool = False


def looks_like_a_dose(text: str) -> bool:
    """Say whether a cell holds sets and an amount, such as 3x8."""
    return _TIMES.fullmatch(plain(text)) is not None


def plain(text: str) -> str:
    """Return a cell in small letters, with points for decimal commas and one kind of space."""
    text = " ".join(text.replace("\u00a0", " ").casefold().split())
    return re.sub(r"(?<=\d),(?=\d{1,2}(?!\d)\s*(?:kg|lb|%|$))", ".", text)


def split_dose(text: str) -> tuple[str, str, str]:
    """Return sets, amount and load of a cell such as ``3x8 @ 20 kg``; empty where it says nothing of one."""
    text = plain(text)
    body, _, load = (
        (part.strip() for part in re.split(r"(@|\bat\b)", text, maxsplit=1))
        if re.search(r"@|\bat\b", text)
        else (text, "", "")
    )
    match = _TIMES.fullmatch(body)
    return (match["sets"], match["amount"].strip(), load) if match else ("", body, load)


def amount(text: str, unit: str = "") -> Amount | None:
    """Return an amount of a set, or nothing where it cannot be read for sure."""
    text = plain(text)
    bare = _SIDES.sub("", text).strip(" .")
    each = bare != text.strip(" .")
    bare = re.sub(r"\s*(?:reps?|repetitions?)$", "", bare)
    if unit in ("s", "min", "m") and re.fullmatch(_NUMBER, bare):
        bare = f"{bare} {unit}"
    if re.fullmatch(r"\d{1,3}", bare):
        return Amount("reps", bare, each) if int(bare) else None
    if match := _RANGE.fullmatch(bare):
        return Amount("reps", f"{match[1]} to {match[2]}", each) if 0 < int(match[1]) < int(match[2]) else None
    if re.fullmatch(r"\d{1,3}(?:\s*[,/;]\s*\d{1,3})+", bare):
        return Amount("reps", re.split(r"\s*[,/;]\s*", bare), each)
    if match := _METRES.fullmatch(bare):
        return Amount("distance", f"{match[1]} m", each)
    said = re.fullmatch(r"(.*\d.*?)\s*(hold|work)|(hold|work)\s+(?:for\s+)?(.*)", bare)
    seconds = time((said[1] or said[4]) if said else bare)
    return Amount((said[2] or said[3]) if said else "time", seconds, each) if seconds else None


def time(text: str, unit: str = "") -> str | None:
    """Return a time as the programme writes it, or nothing."""
    text = plain(text)
    if unit in ("s", "min") and re.fullmatch(_NUMBER, text):
        text = f"{text} {unit}"
    if match := _SECONDS.fullmatch(text):
        return _duration(int(match[1]))
    if match := _MINUTES.fullmatch(text):
        return _duration(round(float(match[1]) * 60))
    if match := _CLOCK.fullmatch(text):
        return _duration(int(match[1]) * 60 + int(match[2]))
    try:
        return _duration(parse_duration_s(text))
    except PydanticCustomError:
        return None


def times(text: str, unit: str = "") -> str | list[str] | None:
    """Return a time, or several with commas between, or nothing where one of them cannot be read."""
    if "," not in text:
        return time(text, unit)
    each = [time(part, unit) for part in text.split(",")]
    return [one for one in each if one] if all(each) else None


def _duration(seconds: int) -> str:
    minutes, rest = divmod(seconds, 60)
    if seconds < 120 and rest:
        return f"{seconds} s"
    return f"{minutes} min {rest} s" if rest and minutes else f"{minutes} min" if minutes else f"{rest} s"


NONE: Final = "none"
"""The body alone."""


def load(text: str, unit: str = "") -> str | None:
    """Return a load as the programme writes it, ``none`` for the body alone, or nothing where it cannot be read.

    A share without what it is of ('70 %') is not read, unless the column's head says it.
    """
    text = plain(text)
    if text in ("bw", "bodyweight", "body weight", "-", "–", "0", "none", "no load"):
        return NONE
    hand = bool(re.search(r"\b(?:per|in each|each|/) ?(?:hand|side)\b|^2\s*[x×]\s*\d", text))
    text = re.sub(r"\s*(?:\b(?:per|in each|each)\b|/)\s*(?:hand|side)\b|^2\s*[x×]\s*", "", text).strip()
    if re.fullmatch(_NUMBER, text) and unit:
        text = f"rpe {text}" if unit == "rpe" else f"{text} rir" if unit == "in reserve" else f"{text} {unit.lower()}"
    written = None
    if match := re.fullmatch(rf"({_NUMBER})\s*(kgs?|lbs?|pounds?)", text):
        written = f"{match[1]} {'kg' if match[2].startswith('k') else 'lb'}{' per hand' if hand else ''}"
    elif match := re.fullmatch(rf"({_NUMBER})\s*%\s*(?:of\s*)?(1rm|bw|bodyweight|body weight)?", text):
        of = match[2] or ("1rm" if unit == "% 1RM" else "")
        if of:
            written = (
                f"{match[1]} % {'1RM' if of == '1rm' else 'bodyweight'}{' per hand' if hand and of != '1rm' else ''}"
            )
    elif match := re.fullmatch(rf"rpe\s*({_NUMBER})|({_NUMBER})\s*rpe", text):
        written = f"RPE {match[1] or match[2]}"
    elif match := re.fullmatch(r"(\d)\s*(?:rir|reps? in reserve)|rir\s*(\d)", text):
        left = match[1] or match[2]
        written = f"{left} {'rep' if left == '1' else 'reps'} in reserve"
    elif match := re.fullmatch(r"([a-z]+) band", text):
        written = text
    try:
        return written if written and parse_loads(written) else None
    except PydanticCustomError:
        return None


def tempo(text: str) -> str | None:
    """Return a tempo of four numbers (3-1-1-0, 3110, 3/1/1/0), or nothing."""
    digits = re.sub(r"[\s./-]+", "-", plain(text).upper())
    if re.fullmatch(r"[0-9X]{4}", digits):
        digits = "-".join(digits)
    try:
        parse_tempo(digits)
    except PydanticCustomError:
        return None
    return digits
