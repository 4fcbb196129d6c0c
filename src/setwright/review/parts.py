"""The parts of an exercise that a physiotherapist reviews, line by line, and their digests.

A digest stands for what a reader sees: it is taken over the values as the tool understood them, so that spaces, line
breaks, comments and the order of keys in the file change nothing, and one other word changes it.
"""

import hashlib
import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Final, Literal, get_args

from pydantic import BaseModel

from setwright.model.exercise import Exercise
from setwright.model.sign_off import NO_DIGEST
from setwright.model.units import plain_number

Part = Literal["text", "cues", "cautions", "limits", "figure"]
PARTS: Final[tuple[Part, ...]] = get_args(Part)

FIELDS: Final[dict[Part, tuple[str, ...]]] = {
    "text": (
        "name", "pattern", "regions", "sides", "kit", "tempo", "why", "set_up", "steps", "breathing", "feel", "faults",
        "easier", "harder", "at_home", "sources",
    ),
    "cues": ("cues",),
    "cautions": ("cautions", "stop_if"),
    "limits": ("limits",),
    "figure": ("figure", "media"),
}  # fmt: skip
"""Which keys of an exercise's file make up each part. ``accept`` is the coach's word, not the reviewer's."""

Writer = Callable[[str, Any], str]
"""Writes a value of a key as text."""

LETTERS: Final = 12
"""How long a digest is."""
_IN_LETTERS: Final = str.maketrans("0123456789", "ghijklmnop")
_UNITS: Final = {
    "limits weekly_step": " %",
    "limits hold": " s",
    "limits rep_time": " s",
    "limits height": " cm",
    "limits distance": " cm",
}


@dataclass(frozen=True, slots=True)
class Line:
    """One value of a part. ``key`` is its place in the file, such as ``steps 2``; ``field`` the key without numbers."""

    key: str
    text: str
    field: str


def lines_of(exercise: Exercise, part: Part, write: Writer | None = None) -> tuple[Line, ...]:
    """Return everything in a part of an exercise, one line a value, in the order of the language.

    Args:
        exercise: the exercise.
        part: one of its parts.
        write: how a value is written, where it is not in the coach's own form.
    """
    return tuple(line for name in FIELDS[part] for line in lines_at((name,), getattr(exercise, name), write or written))


def digest_of(exercise: Exercise, part: Part, write: Writer | None = None) -> str:
    """Return the digest of a part: the first 48 bits of SHA-256 (FIPS 180-4) in letters, or 'none' if it is empty.

    Letters alone, since some YAML readers take ``063122195527`` or ``12e345678901`` for a number. Twelve of them tell
    versions of one text apart; they are no protection against someone who wants to deceive, who could as well write a
    sign-off by hand.
    """
    lines = lines_of(exercise, part, write)
    if not lines:
        return NO_DIGEST
    text = json.dumps([[line.key, line.text] for line in lines], ensure_ascii=False)
    return in_letters(hashlib.sha256(text.encode()).hexdigest()[:LETTERS])


def in_letters(digits: str) -> str:
    """Return hexadecimal digits in letters from a to p."""
    return digits.translate(_IN_LETTERS)


def written(key: str, value: Any) -> str:
    """Return a value as a coach writes it, whatever words pages use for it."""
    if isinstance(value, Fraction):
        return plain_number(value, 4) + _UNITS.get(key, "")
    if isinstance(value, int) and key in _UNITS:
        return f"{value}{_UNITS[key]}"
    return " ".join(str(value).split())


def lines_at(path: tuple[str, ...], value: Any, write: Writer = written) -> Iterator[Line]:
    """Yield every value inside a value of the language, one line each; nothing for what is left out.

    Args:
        path: where it stands in its file.
        value: a text, a number, a list, a mapping or a model.
        write: how a single value is written.
    """
    if value is None:
        return
    if isinstance(value, BaseModel):
        for name, info in type(value).model_fields.items():
            inner = getattr(value, name)
            # A default left out and a default written down are the same to a reader.
            if len(path) > 1 and not info.is_required() and inner == info.get_default(call_default_factory=True):
                continue
            yield from lines_at((*path, info.alias or name), inner, write)
    elif isinstance(value, dict):
        for name in sorted(value):
            yield from lines_at((*path, str(name)), value[name], write)
    elif isinstance(value, list | tuple) and not hasattr(value, "_fields"):
        for number, inner in enumerate(value, 1):
            yield from lines_at((*path, str(number)), inner, write)
    else:
        field = " ".join(step.replace("_", " ") for step in path if not step.isdecimal())
        key = f"limits {path[-1]}" if path[0] == "limits" else path[-1]
        yield Line(" ".join(step.replace("_", " ") for step in path), write(key, value), field)
