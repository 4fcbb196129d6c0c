"""A session: blocks of exercises, written once and progressed by the tool."""

import re
from typing import Any, Final, Literal, Self

from pydantic import Field, model_validator

from setwright.model.acceptance import Acceptance
from setwright.model.base import CoachModel, refuse
from setwright.model.dates import ClockTime
from setwright.model.prescription import Prescription, refuse_growing_list, refuse_off_course, refuse_other_length
from setwright.model.progress import BlockProgress
from setwright.model.text import Id, Name, Prose
from setwright.model.units import Count, Duration, WorkTime

BlockKind = Literal["straight", "superset", "circuit"]

MOST_EXERCISES: Final = 48
"""Nobody trains more than this in one session; a page of it could not be read."""


class Block(CoachModel):
    """A group of exercises done together."""

    kind: BlockKind = Field(description="straight: all sets of one, then the next; superset, circuit: round by round.")
    name: Name | None = Field(default=None, description="A name, if 'Superset 1' and so on is not enough.")
    sets: Count | None = Field(default=None, description="Sets of each exercise (straight sets only).")
    rounds: Count | None = Field(default=None, description="Rounds (superset and circuit).")
    rest: Duration | None = Field(default=None, description="Rest after a set, or after the last exercise of a round.")
    change_over: Duration | None = Field(default=None, description="Time to get from one exercise to the next.")
    exercises: list[Prescription] = Field(min_length=1, max_length=12, description="The exercises, in order.")
    note: Prose | None = Field(default=None, description="What matters in this block.")
    progress: BlockProgress | None = Field(default=None, description="How rounds, sets and rest change.")

    @model_validator(mode="after")
    def _fits_its_kind(self) -> Self:
        if self.kind == "straight":
            self._straight()
        else:
            self._in_rounds()
        return self

    @model_validator(mode="after")
    def _stays_on_course(self) -> Self:
        for key in ("sets", "rounds", "rest"):
            start, climb = getattr(self, key), getattr(self.progress, key, None)
            if climb is not None and start is None and climb.weeks is None:
                refuse(
                    "progress-without-start",
                    f"'{key}' progresses from nothing",
                    f"write '{key}' first",
                    at=("progress", key),
                )
            if climb is not None and start is not None:
                refuse_off_course(start, climb, ("progress", key))
        for index, written in enumerate(self.exercises):
            for key in ("sets", "rest"):
                climb = getattr(written.progress, key, None)
                if climb is not None and getattr(written, key) is None and getattr(self, key) is not None:
                    refuse_off_course(getattr(self, key), climb, ("exercises", index, "progress", key))
        return self

    def _straight(self) -> None:
        if self.rounds is not None or (self.progress and self.progress.rounds):
            refuse("rounds-in-straight-sets", "straight sets have sets, not rounds", "write 'sets'", at=("rounds",))
        for index, written in enumerate(self.exercises):
            listed = written.listed_sets
            if listed is not None and written.sets is None and self.sets not in (None, listed):
                hint = f"write {self.sets} entries, or 'sets: {listed}' beside the list"
                refuse_other_length(
                    listed, f"the block's 'sets' says {self.sets}", hint, ("exercises", index, written.listed_by)
                )
            if listed is not None and self.progress and self.progress.sets:
                refuse_growing_list(("progress", "sets"))
            if self.sets is None and written.sets is None and listed is None:
                refuse(
                    "sets-missing", "how many sets?", "write 'sets: 3' here or on the block", at=("exercises", index)
                )

    def _in_rounds(self) -> None:
        if self.sets is not None:
            refuse("sets-in-rounds", f"a {self.kind} has rounds, not sets", "write 'rounds'", at=("sets",))
        if self.rounds is None:
            refuse("rounds-missing", f"how many rounds has this {self.kind}?", "write 'rounds: 3'")
        if len(self.exercises) < 2:
            refuse("block-too-short", f"a {self.kind} needs two exercises or more", "write 'kind: straight'")
        for index, written in enumerate(self.exercises):
            listed = written.listed_sets
            if listed is not None and listed != self.rounds:
                hint = f"write {self.rounds} entries, or 'rounds: {listed}'"
                refuse_other_length(
                    listed, f"the {self.kind} has {self.rounds} rounds", hint, ("exercises", index, written.listed_by)
                )
            if listed is not None and self.progress and self.progress.rounds:
                refuse_growing_list(("progress", "rounds"), "rounds")
            for key in ("sets", "rest"):
                if getattr(written, key) is not None or getattr(written.progress, key, None) is not None:
                    refuse(
                        "sets-in-rounds",
                        f"'{key}' belongs to the whole {self.kind}",
                        "write it on the block" if key == "rest" else "write 'rounds' on the block",
                        at=("exercises", index, key),
                    )


class Session(CoachModel):
    """One session, done once in a week or more often."""

    name: Name = Field(description="The session's name.")
    aim: Prose = Field(description="What it is for, in a sentence.")
    time_budget: WorkTime | None = Field(default=None, description="The longest it may take, warm-up included.")
    effort: Count | None = Field(default=None, description="Effort that the whole session should feel like, 1 to 10.")
    at: ClockTime | None = Field(default=None, description="When it begins on the club's clock, such as 18:30.")
    warm_up: list[Id] = Field(default=[], max_length=6, description="Ids of warm-ups; the member picks one.")
    cool_down: list[Id] = Field(default=[], max_length=6, description="Ids of cool-downs; the member picks one.")
    blocks: list[Block] = Field(min_length=1, max_length=12, description="The blocks, in order.")
    note: Prose | None = Field(default=None, description="What matters in this session.")
    accept: list[Acceptance] = Field(default=[], max_length=60, description="Warnings that the coach stands by.")

    @model_validator(mode="before")
    @classmethod
    def _effort_in_range(cls, value: Any) -> Any:
        effort = value.get("effort") if isinstance(value, dict) else None
        if isinstance(effort, str) and re.fullmatch("[0-9]{1,6}", effort) and not 1 <= int(effort) <= 10:
            refuse("not-a-count", f"effort runs from 1 to 10, not {effort}", "write 1 to 10", at=("effort",))
        return value

    @model_validator(mode="after")
    def _can_be_done(self) -> Self:
        count = sum(len(block.exercises) for block in self.blocks)
        if count > MOST_EXERCISES:
            said = f"this session holds {count} exercises, {MOST_EXERCISES} are the most"
            refuse("too-many-exercises", said, "make two sessions of it", at=("blocks",))
        return self
