"""Tempo: the seconds of lowering, pause, lifting, pause of one repetition.

The first number is the lowering phase even when the movement starts by lifting; ``X`` in third place means as fast
as control allows. Order and ``X`` as used by Wilk M, Zajac A, Tufano JJ, Sports Med 2021;51:1629-1650.
"""

import re
from dataclasses import dataclass
from typing import Annotated, Any, Final

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.units import as_text, shown

FAST_LIFT_S: Final = 1
"""What an ``X`` counts in a session's time. No published duration exists: a house rule, said on the page."""

_PATTERN = re.compile(r"([0-9]{1,2})-([0-9]{1,2})-([0-9]{1,2}|X)-([0-9]{1,2})")


@dataclass(frozen=True, slots=True)
class Tempo:
    """One repetition's pace. ``lifting_s`` is None for "as fast as control allows"."""

    lowering_s: int
    pause_low_s: int
    lifting_s: int | None
    pause_high_s: int

    @property
    def rep_s(self) -> int:
        """Seconds of one repetition, a fast lift counted as one."""
        lifting_s = FAST_LIFT_S if self.lifting_s is None else self.lifting_s
        return self.lowering_s + self.pause_low_s + lifting_s + self.pause_high_s

    def __str__(self) -> str:
        lifting = "X" if self.lifting_s is None else str(self.lifting_s)
        return f"{self.lowering_s}-{self.pause_low_s}-{lifting}-{self.pause_high_s}"


def parse_tempo(value: Any) -> Tempo:
    """Return the tempo from four numbers with hyphens, such as ``3-0-1-0`` or ``2-0-X-0``."""
    if isinstance(value, Tempo):
        return value
    hint = "write four numbers with hyphens: lowering-pause-lifting-pause, such as 3-0-1-0"
    text = as_text(value, "not-a-tempo", "a tempo", hint)
    match = _PATTERN.fullmatch(text)
    if not match and _PATTERN.fullmatch(text.upper()):
        hint = f"write a capital X: {text.upper()}"
    if not match:
        refuse("not-a-tempo", f"{shown(text)} is not a tempo", hint)
    lowering, low, lifting, high = match.groups()
    tempo = Tempo(int(lowering), int(low), None if lifting == "X" else int(lifting), int(high))
    if tempo.rep_s == 0:
        refuse("not-a-tempo", "a repetition takes some time: not all four numbers can be 0", hint)
    return tempo


TempoField = Annotated[
    Tempo,
    PlainValidator(lambda v: parse_tempo(v)),
    WithJsonSchema(
        {"type": "string", "pattern": "^[0-9]{1,2}-[0-9]{1,2}-([0-9]{1,2}|X)-[0-9]{1,2}$", "examples": ["3-0-1-0"]}
    ),
]
"""A tempo as four numbers: lowering-pause-lifting-pause, in seconds."""
