"""Published sources that exercises and routines cite."""

import re
from typing import Annotated, Any

from pydantic import Field, PlainValidator, WithJsonSchema

from setwright.model.base import CoachModel, refuse
from setwright.model.text import Prose
from setwright.model.units import shown


def parse_doi(value: Any) -> str:
    """Return a digital object identifier (ISO 26324), without an address in front."""
    text = str(value).strip()
    if not re.fullmatch(r"10\.[0-9]{4,9}/[A-Za-z0-9._;()/:-]+", text):
        refuse("not-a-doi", f"{shown(text)} is not a DOI", "write it as it is printed, such as 10.1000/182")
    return text


def parse_year(value: Any) -> int:
    """Return a year from 1800 to 2200."""
    text = str(value).strip()
    if not re.fullmatch(r"[0-9]{4}", text) or not 1800 <= int(text) <= 2200:
        refuse("not-a-year", f"{shown(text)} is not a year", "write four digits, such as 2018")
    return int(text)


Year = Annotated[int, PlainValidator(lambda v: parse_year(v)), WithJsonSchema({"type": "integer", "minimum": 1800})]

Doi = Annotated[
    str,
    PlainValidator(lambda v: parse_doi(v)),
    WithJsonSchema({"type": "string", "pattern": r"^10\.[0-9]{4,9}/[A-Za-z0-9._;()/:-]+$"}),
]


class Reference(CoachModel):
    """One published source."""

    authors: Prose = Field(description="Who wrote it.")
    year: Year | None = Field(default=None, description="The year.")
    title: Prose = Field(description="Its title.")
    where: Prose = Field(description="Journal, volume and pages, or publisher.")
    doi: Doi | None = Field(default=None, description="Its DOI.")
    note: Prose | None = Field(default=None, description="What it is cited for.")
    studied: Prose | None = Field(
        default=None, description="Whom and what it studied, and how that differs from this programme."
    )
    from_memory: Prose | None = Field(
        default=None, description="What of this entry, or of the note, nobody has held against the paper yet."
    )
