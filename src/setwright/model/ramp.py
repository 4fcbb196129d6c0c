"""Warm-up sets of one exercise: lighter ones that lead up to its first working set.

| written | means |
| --- | --- |
| ``ramp: 3`` | three of them, from the table below |
| ``ramp: [{reps: 5, of_load: 40 %}, {reps: 3, of_load: 70 %}]`` | these, each with a share of the first set's load |
"""

from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import Annotated, Any, Final

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.load import Load
from setwright.model.units import Count, Percent, parse_count, shown

TABLE: Final[Mapping[int, tuple[tuple[int, int], ...]]] = {
    1: ((5, 60),),
    2: ((5, 50), (3, 75)),
    3: ((5, 40), (3, 60), (2, 80)),
    4: ((5, 40), (4, 55), (3, 70), (2, 85)),
}
"""Repetitions and percent of the first working set's load, by how many warm-up sets there are: more weight each time,
and fewer repetitions, so that they tire nobody. Common practice, no source."""


class RampSet(CoachModel):
    """One warm-up set."""

    reps: Count = Field(description="Repetitions.")
    of_load: Percent = Field(description="Share of the first working set's load: '40 %'.")

    @model_validator(mode="after")
    def _is_lighter(self) -> "RampSet":
        if not 0 < self.of_load < 100:
            said = f"a warm-up set is lighter than the set it leads to, and more than nothing: not {self.of_load} %"
            refuse("ramp-unclear", said, "write a share such as 'of_load: 60 %'", at=("of_load",))
        return self


def _spelled_out(value: Any) -> Any:
    """Return a number of warm-up sets as the sets that the table gives for it."""
    if isinstance(value, list):
        return value
    hint = f"write how many, from 1 to {max(TABLE)}, or a list: '[{{reps: 5, of_load: 40 %}}, ...]'"
    if not isinstance(value, str | int):
        refuse("ramp-unclear", "this does not say which warm-up sets", hint)
    text = str(value).strip()
    if not text.isdecimal():
        refuse("ramp-unclear", f"{shown(text)} does not say how many warm-up sets", hint)
    count = parse_count(text)
    if count not in TABLE:
        refuse("ramp-unclear", f"there is no table of {count} warm-up sets", hint)
    return [{"reps": str(reps), "of_load": f"{percent} %"} for reps, percent in TABLE[count]]


def refuse_ramp(ramp: list[RampSet], measure: str, loads: Iterable[Load]) -> None:
    """Refuse warm-up sets that go down, or that lead up to something without a weight.

    Args:
        ramp: the warm-up sets.
        measure: what the working sets count.
        loads: every load that is written.
    """
    if measure != "reps":
        said, hint = f"this exercise counts {measure}", "a ramp leads up to sets of reps: leave it out"
        refuse("ramp-unclear", f"warm-up sets count reps, and {said}", hint, at=("ramp",))
    written = list(loads)
    if not written or any(not load.weighed for load in written):
        said = f"'{next(load for load in written if not load.weighed)}' is no weight" if written else "there is no load"
        hint = "give the load a weight or a share, or leave the ramp out"
        refuse("ramp-unclear", f"warm-up sets take a share of the load, and {said}", hint, at=("ramp",))
    for index, (one, after) in enumerate(pairwise(ramp)):
        if after.of_load < one.of_load:
            said = f"a ramp goes up, and {after.of_load} % comes after {one.of_load} %"
            refuse("ramp-unclear", said, "write the lightest first", at=("ramp", index + 1, "of_load"))


RampField = Annotated[
    list[RampSet],
    Field(min_length=1, max_length=5),
    BeforeValidator(_spelled_out),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "integer", "minimum": 1, "maximum": max(TABLE)},
                {
                    "type": "array",
                    "minItems": 1,
                    "maxItems": 5,
                    "items": {
                        "type": "object",
                        "additionalProperties": False,
                        "required": ["reps", "of_load"],
                        "properties": {
                            "reps": {"type": "integer", "minimum": 1, "maximum": 1000},
                            "of_load": {"type": "string", "pattern": r"^[0-9]+(\.[0-9]+)? *%$"},
                        },
                    },
                },
            ]
        }
    ),
]
"""Warm-up sets: how many, or each of them."""
