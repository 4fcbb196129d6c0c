"""Sign-offs: who reviewed an exercise, when, and what exactly was there to be read."""

from typing import Annotated, Any

from pydantic import Field, PlainValidator, WithJsonSchema

from setwright.model.base import CoachModel, refuse
from setwright.model.plan import Day
from setwright.model.text import Id, Name, Prose
from setwright.model.units import as_text, shown

NO_DIGEST = "none"
"""Stands for a part that the exercise did not have, such as a figure."""

_LETTERS = 12


def parse_digest(value: Any) -> str:
    """Return the digest of one reviewed part: twelve letters from a to p, or 'none' for a part that is not there."""
    hint = "copy the line from the review page, or run 'setwright sign'"
    text = as_text(value, "not-a-digest", "a digest", hint)
    if text != NO_DIGEST and not (len(text) == _LETTERS and set(text) <= set("abcdefghijklmnop")):
        refuse("not-a-digest", f"{shown(text)} is not a digest", hint)
    return text


Digest = Annotated[
    str,
    PlainValidator(lambda v: parse_digest(v)),
    WithJsonSchema({"type": "string", "pattern": f"^({NO_DIGEST}|[a-p]{{{_LETTERS}}})$"}),
]
"""What a reviewed part came to, in twelve letters."""


class SignOff(CoachModel):
    """One sign-off of one exercise. Entries stand in any order; a later one does not delete an earlier one."""

    exercise: Id = Field(description="Id of the exercise.")
    who: Name = Field(description="Who reviewed it.")
    role: Prose = Field(description="In which role, such as physiotherapist of the club.")
    date: Day = Field(description="The day of the review.")
    note: Prose | None = Field(default=None, description="What the reviewer wants readers to know.")
    text: Digest = Field(description="Digest of the description: set-up, steps, faults, variations and the rest.")
    cues: Digest = Field(description="Digest of the cues.")
    cautions: Digest = Field(description="Digest of the cautions and the signs to stop.")
    limits: Digest = Field(description="Digest of the limits.")
    figure: Digest = Field(default=NO_DIGEST, description="Digest of the figure.")
    dosage: Prose = Field(description="The lowest to the highest dose that was in use, in words.")


class SignOffs(CoachModel):
    """The file sign-offs.yml: a list."""

    sign_offs: list[SignOff] = Field(max_length=5000)
