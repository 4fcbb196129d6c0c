"""An exercise: everything about a movement that does not change from week to week."""

import re
from typing import Any

from pydantic import ConfigDict, Field, model_validator

from setwright.model.acceptance import Acceptance
from setwright.model.base import CoachModel, refuse
from setwright.model.figure import Figure
from setwright.model.limits import Limits
from setwright.model.media import Medium
from setwright.model.region import RegionName
from setwright.model.tempo import TempoField
from setwright.model.text import ID_PATTERN, Id, Name, Prose
from setwright.model.units import shown
from setwright.model.vocabulary import Pattern, Sides


class Regions(CoachModel):
    """Which regions of the body work."""

    main: list[RegionName] = Field(min_length=1, max_length=6, description="Regions that do most of the work.")
    also: list[RegionName] = Field(default=[], max_length=8, description="Regions that help.")


class Fault(CoachModel):
    """A common fault and what to do about it."""

    sign: Prose = Field(description="What it looks like.")
    fix: Prose = Field(description="What to change.")


def _or_an_id(schema: dict[str, Any]) -> None:
    """Let editors take an exercise's id alone for a variation."""
    whole = dict(schema)
    schema.clear()
    schema.update(title=whole.pop("title"), anyOf=[{"type": "string", "pattern": f"^{ID_PATTERN}$"}, whole])


class Variation(CoachModel):
    """An easier or harder way: another exercise, or a change in words."""

    model_config = ConfigDict(json_schema_extra=_or_an_id)

    exercise: Id | None = Field(default=None, description="Id of the other exercise.")
    how: Prose | None = Field(default=None, description="What to change.")

    @model_validator(mode="before")
    @classmethod
    def _id_alone(cls, value: Any) -> Any:
        if not isinstance(value, str):
            return value
        if not re.fullmatch(ID_PATTERN, value.strip()):
            hint = "write an exercise's id, or words as {how: ...}"
            refuse("not-an-id", f"{shown(value)} is not an exercise's id", hint)
        return {"exercise": value}

    @model_validator(mode="after")
    def _says_something(self) -> "Variation":
        if self.exercise is None and self.how is None:
            refuse("variation-empty", "this variation says nothing", "write an exercise's id, or {how: ...}")
        return self


class AtHome(CoachModel):
    """What to use at home instead of the club's kit."""

    use: Prose = Field(description="The thing to use.")
    how: Prose | None = Field(default=None, description="What changes with it.")


class Exercise(CoachModel):
    """One exercise, as members learn it and a physiotherapist reviews it."""

    name: Name = Field(description="The exercise's name.")
    pattern: Pattern = Field(description="The movement pattern.")
    regions: Regions = Field(description="Which regions of the body work.")
    sides: Sides = Field(default="both together", description="How the sides share the work.")
    kit: list[Id] = Field(default=[], max_length=24, description="Kit that it needs, by its name in club.yml.")
    tempo: TempoField | None = Field(default=None, description="The usual pace of a repetition.")
    why: Prose = Field(description="What it gives this sport, in a sentence or two.")
    set_up: list[Prose] = Field(min_length=1, max_length=12, description="How to get into position.")
    steps: list[Prose] = Field(min_length=1, max_length=12, description="How to do it, in order.")
    breathing: Prose | None = Field(default=None, description="When to breathe in and out.")
    feel: Prose | None = Field(default=None, description="Where the work should be felt.")
    cues: list[Prose] = Field(
        default=[], max_length=6, description="Short reminders; the first three show in a session."
    )
    faults: list[Fault] = Field(default=[], max_length=8, description="What goes wrong, and what to do about it.")
    easier: list[Variation] = Field(default=[], max_length=4, description="Easier ways: ids, or {how: ...}.")
    harder: list[Variation] = Field(default=[], max_length=4, description="Harder ways: ids, or {how: ...}.")
    at_home: AtHome | None = Field(default=None, description="What to use instead of the club's kit.")
    cautions: list[Prose] = Field(default=[], max_length=8, description="Who should take care, and how.")
    stop_if: list[Prose] = Field(default=[], max_length=8, description="Signs to stop, added to the club's own list.")
    figure: Figure | None = Field(default=None, description="The picture: poses to draw and to move between.")
    media: list[Medium] = Field(default=[], max_length=4, description="Photos and films of the club's own.")
    limits: Limits | None = Field(default=None, description="What the physiotherapist allows at most.")
    sources: list[Id] = Field(default=[], max_length=60, description="Ids from references.yml.")
    accept: list[Acceptance] = Field(default=[], max_length=60, description="Warnings that the coach stands by.")
