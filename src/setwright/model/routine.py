"""Warm-ups and cool-downs: short routines that a member picks from."""

from typing import Literal, Self

from pydantic import Field, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.prescription import MEASURES
from setwright.model.text import Id, Name, Prose
from setwright.model.units import Count, Distance, WorkTime


class RoutinePart(CoachModel):
    """An exercise with its time or reps, or a short step in words."""

    exercise: Id | None = Field(default=None, description="Id of an exercise.")
    do: Prose | None = Field(default=None, description="A step in words, where no exercise page is needed.")
    reps: Count | None = Field(default=None, description="Repetitions; a side, where it is one side at a time.")
    hold: WorkTime | None = Field(default=None, description="Time to hold still.")
    work: WorkTime | None = Field(default=None, description="Time to keep moving.")
    distance: Distance | None = Field(default=None, description="Distance to cover.")
    note: Prose | None = Field(default=None, description="What matters here.")

    @model_validator(mode="after")
    def _one_of_each(self) -> Self:
        if (self.exercise is None) == (self.do is None):
            refuse("measure-unclear", "a step is an exercise or words", "write 'exercise: id' or 'do: what to do'")
        if len([m for m in MEASURES if getattr(self, m) is not None]) != 1:
            refuse("measure-unclear", "a step takes one of reps, hold, work and distance", "such as 'work: 1 min'")
        return self


class Routine(CoachModel):
    """A warm-up or a cool-down."""

    name: Name = Field(description="The routine's name.")
    kind: Literal["warm-up", "cool-down"] = Field(description="When it is done.")
    why: Prose = Field(description="What it is for, and whom it suits.")
    takes: WorkTime = Field(description="How long it takes.")
    when: Prose | None = Field(default=None, description="For a cool-down: straight away, or in the evening.")
    rounds: Count = Field(default=1, description="How often to go through it.")
    exercises: list[RoutinePart] = Field(min_length=1, max_length=20, description="What to do, in order.")
    cautions: list[Prose] = Field(default=[], max_length=8, description="Who should take care, and how.")
    sources: list[Id] = Field(default=[], max_length=60, description="Ids from references.yml.")
