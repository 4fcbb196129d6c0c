"""Blocks that run by the clock: a set on every full minute, or as many rounds as possible in a time."""

from typing import TYPE_CHECKING, Annotated, Any, Final, Literal

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.open_end import WRITTEN
from setwright.model.slips import is_endless
from setwright.model.units import parse_count, shown

if TYPE_CHECKING:
    from setwright.model.session import Block

OpenRounds = Literal["as many as possible"]
OPEN_ROUNDS: Final[OpenRounds] = "as many as possible"


def parse_rounds(value: Any) -> int | OpenRounds:
    """Return a number of rounds, or ``as many as possible``."""
    text = value.strip() if isinstance(value, str) else ""
    if text == WRITTEN:
        return OPEN_ROUNDS
    if is_endless(text):
        hint = f"write 'rounds: {WRITTEN}', and 'for: 12 min' beside it"
        refuse("not-a-count", f"{shown(text)} is not a whole number", hint)
    return parse_count(value)


Rounds = Annotated[
    int | OpenRounds,
    PlainValidator(lambda v: parse_rounds(v)),
    WithJsonSchema({"anyOf": [{"type": "integer", "minimum": 1, "maximum": 1000}, {"const": WRITTEN}]}),
]
"""A number of rounds, or as many as possible."""


def refuse_clock(block: "Block") -> None:
    """Refuse what does not go with a clock, or what a clock does not go with."""
    if block.every is not None:
        _refuse_every(block)
    if block.rounds == OPEN_ROUNDS:
        _refuse_open_rounds(block)
        return
    for key, value in (("for", block.lasts), ("up_to", block.up_to)):
        if value is not None:
            hint = f"write 'rounds: {WRITTEN}' beside it"
            if key == "for" and block.every is not None:
                hint = "with 'every', 'sets' or 'rounds' say how long it goes on"
            refuse("clock-unclear", f"'{key}' ends rounds without a number, and there are none", hint, at=(key,))
    if block.progress is not None and block.progress.lasts is not None:
        said = "'for' grows where rounds have no number, and there are none"
        refuse("clock-unclear", said, f"write 'rounds: {WRITTEN}' and 'for' on the block", at=("progress", "for"))


def _refuse_every(block: "Block") -> None:
    if block.kind == "superset":
        hint = "write 'kind: circuit', where the exercises take turns, one each time"
        refuse("clock-unclear", "'every' goes with straight sets or a circuit", hint, at=("every",))
    said, hint = "with 'every', the rest is what is left until the next start", "leave it out"
    for key in ("rest", "change_over"):
        if getattr(block, key) is not None:
            refuse("clock-unclear", said, hint, at=(key,))
    if block.progress is not None and block.progress.rest is not None:
        refuse("clock-unclear", said, hint, at=("progress", "rest"))
    for index, written in enumerate(block.exercises):
        if written.rest is not None:
            refuse("clock-unclear", said, hint, at=("exercises", index, "rest"))
        if written.progress is not None and written.progress.rest is not None:
            refuse("clock-unclear", said, hint, at=("exercises", index, "progress", "rest"))
        if written.ramp is not None:
            hint = "write them as a block of straight sets before this one"
            refuse("clock-unclear", "warm-up sets keep no clock", hint, at=("exercises", index, "ramp"))


def _refuse_open_rounds(block: "Block") -> None:
    if block.kind != "circuit":
        refuse("clock-unclear", "as many rounds as possible are a circuit", "write 'kind: circuit'", at=("kind",))
    if block.every is not None:
        hint = "write how many rounds, or leave 'every' out"
        refuse("clock-unclear", "'every' gives the pace, so the rounds have a number", hint, at=("rounds",))
    if block.lasts is None:
        refuse("clock-unclear", "as many rounds as possible in how long?", "write 'for: 12 min'", at=("rounds",))
    if block.progress is not None and block.progress.rounds is not None:
        said = "as many as possible has no steps"
        refuse("clock-unclear", said, "let 'for', the reps or the load climb", at=("progress", "rounds"))
    for index, written in enumerate(block.exercises):
        if written.listed_sets is not None:
            said = "nobody knows how many rounds there are, so how many entries"
            refuse("clock-unclear", said, "write one number", at=("exercises", index, written.listed_by))
