"""A set without a number: 'as many as possible', and what must be left when it ends.

``leave`` is required beside it, since a set that goes on until nothing is left is another exercise; ``up_to`` ends it
in any case.
"""

import re
from collections.abc import Iterable
from typing import Annotated, Any, Final

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.load import Effort, Load, Reserve
from setwright.model.slips import effort_meant
from setwright.model.span import Open, Span
from setwright.model.units import as_text, shown

WRITTEN: Final = "as many as possible"
_LEFT = re.compile(r"(?P<n>[0-9]{1,2}) +reps?")
_MOST_LEFT: Final = 10


def parse_leave(value: Any) -> int:
    """Return the repetitions that must be left: ``2 reps``, from 1 to 10."""
    hint = "write '2 reps'"
    text = as_text(value, "not-left", "repetitions to leave", hint)
    found = _LEFT.fullmatch(text)
    if found is None:
        meant = re.match(r"[0-9]{1,2}", effort_meant(text) if "reserve" in effort_meant(text) else text)
        if re.fullmatch("[0-9]{1,2}", text) or "reserve" in effort_meant(text):
            hint = f"write '{meant[0] if meant else 2} {'rep' if meant and meant[0] == '1' else 'reps'}'"
        refuse("not-left", f"{shown(text)} does not say how many reps must be left", hint)
    count = int(found["n"])
    if not 1 <= count <= _MOST_LEFT:
        said = "nothing is left" if count == 0 else f"{count} reps are more than anyone can count"
        refuse("not-left", said, f"leave from 1 to {_MOST_LEFT}: 'leave: 2 reps'")
    return count


def refuse_open(
    start: Iterable[Span], later: Iterable[Span], leave: int | None, up_to: int | None, loads: Iterable[Load]
) -> None:
    """Refuse an open end without what must be left, and what must be left without an open end.

    Args:
        start: the first week's repetitions, one for each set or one for all.
        later: those of weeks that are listed.
        leave: what must be left.
        up_to: where a set ends in any case.
        loads: every load that is written.
    """
    first = any(isinstance(one, Open) for one in start)
    if not first and not any(isinstance(one, Open) for one in later):
        if leave is not None:
            hint = f"write 'reps: {WRITTEN}', or 'feels_like: {leave} reps in reserve' beside a load"
            refuse("end-unclear", "every set here ends at its number of reps", hint, at=("leave",))
        if up_to is not None:
            hint = f"write a range, such as 'reps: 8 to {up_to}', or a progression with 'add' and 'up_to'"
            refuse("end-unclear", f"'up_to' ends a set of '{WRITTEN}', and there is none", hint, at=("up_to",))
        return
    at = ("reps",) if first else ("progress", "reps")
    if leave is None:
        refuse("end-unclear", f"{WRITTEN}, leaving how many?", "write 'leave: 2 reps' beside it", at=at)
    for load in loads:
        if isinstance(load, Effort | Reserve):
            said = f"'leave' says how the set ends, and 'load: {load}' says it once more"
            refuse("effort-unclear", said, "give the load a weight, a share or a band, or leave it out", at=("load",))


Leave = Annotated[
    int,
    PlainValidator(lambda v: parse_leave(v)),
    WithJsonSchema({"type": "string", "pattern": "^[0-9]+ +reps?$", "examples": ["2 reps"]}),
]
"""Repetitions that must be left at the end of a set."""
