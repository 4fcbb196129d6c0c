"""Regions of the body: the trade's own words, and those that a club adds, each under one of them."""

import re
from typing import Annotated, Any, Final, get_args

from pydantic import PlainValidator, WithJsonSchema

from setwright.model.base import refuse
from setwright.model.units import as_text, shown
from setwright.model.vocabulary import Region

REGIONS: Final[tuple[Region, ...]] = get_args(Region)
"""The regions that every club knows."""

_WORDS: Final = r"[a-z][a-z0-9]*(?:[ -][a-z0-9]+)*"
_LONGEST: Final = 40


def parse_region(value: Any) -> str:
    """Return a region's name: small letters, words apart by a space or a dash. Whether it exists, the club says."""
    hint = "write it in small letters, such as 'lower back'"
    text = " ".join(as_text(value, "not-a-choice", "a region of the body", hint).split())
    if not re.search("[^A-Za-z0-9 -]", text):
        hint = f"write it in small letters: '{text.lower()}'"
    if not re.fullmatch(_WORDS, text) or len(text) > _LONGEST:
        refuse("not-a-choice", f"{shown(text)} is not known here", hint)
    return text


def parse_own_region(value: Any) -> str:
    """Return the name of a region that a club adds."""
    name = parse_region(value)
    if name in REGIONS:
        refuse("region-known", f"{shown(name)} is a region already", "delete the line, and use it as it is")
    return name


RegionName = Annotated[
    str,
    PlainValidator(lambda v: parse_region(v)),
    WithJsonSchema({"anyOf": [{"enum": list(REGIONS)}, {"type": "string", "pattern": f"^{_WORDS}$"}]}),
]
"""A region of the body, of the trade's or of the club's own."""

OwnRegion = Annotated[
    str, PlainValidator(lambda v: parse_own_region(v)), WithJsonSchema({"type": "string", "pattern": f"^{_WORDS}$"})
]
"""A region that a club adds."""
