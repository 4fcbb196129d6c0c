"""How many of each kind of kit a club has: how many members can use it at once."""

from typing import Annotated, Any

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.units import parse_count

KitCount = int | dict[str, int]
"""So many of each, or so many by which: ``{12 kg: 2, 16 kg: 1}``."""

MOST_OF_A_KIND = 60
"""Nobody tells more sizes apart."""


def parse_kit_count(value: Any) -> KitCount:
    """Return a count of each, or counts by weight, size or name, as they are written."""
    if not isinstance(value, dict):
        return parse_count(value)
    if len(value) > MOST_OF_A_KIND:
        refuse("kit-count-unknown", f"more than {MOST_OF_A_KIND} of one kind", "write one number for all of them")
    return {str(which): parse_count(count) for which, count in value.items()}


KitCountField = Annotated[
    KitCount,
    PlainValidator(lambda v: parse_kit_count(v)),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "integer", "minimum": 1, "maximum": 1000},
                {
                    "type": "object",
                    "additionalProperties": {"type": "integer", "minimum": 1, "maximum": 1000},
                },
            ],
            "examples": [6],
        }
    ),
]
"""How many there are."""
