"""Sign-offs: who reviewed an exercise, when, and what exactly was there to be read."""

from typing import Annotated, Any, Self

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.dates import Day
from setwright.model.load import LoadField
from setwright.model.tempo import TempoField
from setwright.model.text import Id, Name, Prose
from setwright.model.units import Count, Flag, Length, WorkTime, as_text, parse_count, shown

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


Tally = Annotated[
    int,
    PlainValidator(lambda v: parse_count(v, most=100_000)),
    WithJsonSchema({"type": "integer", "minimum": 1, "maximum": 100_000}),
]
"""A sum of counts."""


class InRoutines(CoachModel):
    """What warm-ups and cool-downs ask for: from the least to the most of each measure."""

    reps: tuple[Count, Count] | None = Field(default=None, description="Repetitions, least and most.")
    hold: tuple[WorkTime, WorkTime] | None = Field(default=None, description="Hold, least and most.")
    work: tuple[WorkTime, WorkTime] | None = Field(default=None, description="Work time, least and most.")
    distance: tuple[Length, Length] | None = Field(default=None, description="Distance, least and most.")


class SignedDosage(InRoutines):
    """The doses that were in use when someone signed: from the least to the most of everything."""

    sets: tuple[Count, Count] | None = Field(default=None, description="Sets of a session, least and most.")
    load: list[LoadField] = Field(default=[], description="The lightest and the heaviest load of each kind.")
    without_weight: Flag = Field(default=False, description="true where some sets are done without any of these loads.")
    tempo: list[TempoField] = Field(default=[], description="Every tempo.")
    weekly_sets: Tally | None = Field(default=None, description="The most sets of a week.")
    routines: InRoutines | None = Field(default=None, description="What warm-ups and cool-downs ask for.")


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
    words: Digest | None = Field(
        default=None,
        description="Digest of what sessions and warm-ups say of it in words or kit of their own; older lines lack it.",
    )
    doses: SignedDosage | None = Field(default=None, description="The lowest to the highest dose that was in use.")
    dosage: Prose | None = Field(default=None, description="The same as a sentence, in lines of the first form.")

    @model_validator(mode="after")
    def _one_form(self) -> Self:
        if (self.doses is None) == (self.dosage is None):
            refuse("sign-off-unclear", "a sign-off keeps the doses in use once", "sign again: 'setwright sign'")
        return self


class SignOffs(CoachModel):
    """The file sign-offs.yml: a list."""

    sign_offs: list[SignOff] = Field(max_length=5000)
