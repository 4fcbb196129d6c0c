"""A session: blocks of exercises, written once and progressed by the tool."""

import re
from collections.abc import Iterator
from typing import Any, Final, Literal, Self

from pydantic import Field, model_validator

from setwright.model.acceptance import Acceptance
from setwright.model.base import CoachModel, refuse
from setwright.model.choices import MOST_CHOICES_OF_A_BLOCK, Entry
from setwright.model.prescription import Prescription, refuse_growing_list, refuse_off_course, refuse_other_length
from setwright.model.progress import BlockProgress
from setwright.model.text import Id, Name, Prose
from setwright.model.units import Count, Duration, Flag, WorkTime

BlockKind = Literal["straight", "superset", "circuit"]

Slot = tuple[int, ...]
"""Where a prescription stands in its session: block and place in the block; then, for what is done instead, which way.
All from 0."""

MOST_EXERCISES: Final = 48
"""Nobody trains more than this in one session; a page of it could not be read."""


MOST_LISTED: Final = 240
"""Sets of a session that are listed one by one: twelve each for twenty exercises. Each takes a line on pages."""


class Block(CoachModel):
    """A group of exercises done together."""

    kind: BlockKind = Field(description="straight: all sets of one, then the next; superset, circuit: round by round.")
    name: Name | None = Field(default=None, description="A name, if 'Superset 1' and so on is not enough.")
    sets: Count | None = Field(default=None, description="Sets of each exercise (straight sets only).")
    rounds: Count | None = Field(default=None, description="Rounds (superset and circuit).")
    rest: Duration | None = Field(default=None, description="Rest after a set, or after the last exercise of a round.")
    change_over: Duration | None = Field(default=None, description="Time to get from one exercise to the next.")
    exercises: list[Entry] = Field(min_length=1, max_length=12, description="The exercises, in order.")
    optional: Flag = Field(default=False, description="true: a member may leave the whole block out.")
    note: Prose | None = Field(default=None, description="What matters in this block.")
    progress: BlockProgress | None = Field(default=None, description="How rounds, sets and rest change.")

    def prescriptions(self) -> Iterator[tuple[tuple[int, ...], Prescription]]:
        """Yield every prescription and its place: of each exercise, its own first, then what may be done instead."""
        for index, written in enumerate(self.exercises):
            yield (index,), written
            yield from (((index, way), other) for way, other in enumerate(written.instead))

    @property
    def choices(self) -> tuple[str, ...]:
        """The choices that change anything in this block, in the order in which they stand."""
        return tuple(dict.fromkeys(one for written in self.exercises for way in written.instead for one in way.for_))

    @model_validator(mode="after")
    def _few_choices(self) -> Self:
        if len(self.choices) > MOST_CHOICES_OF_A_BLOCK:
            said = f"this block has ways for {len(self.choices)} choices, {MOST_CHOICES_OF_A_BLOCK} are the most"
            refuse("too-many-choices", said, "split the block, or let one way be for several choices")
        return self

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
        for place, written in self.prescriptions():
            for key in ("sets", "rest"):
                climb = getattr(written.progress, key, None)
                if climb is not None and getattr(written, key) is None and getattr(self, key) is not None:
                    refuse_off_course(getattr(self, key), climb, (*path_in_block(place), "progress", key))
        return self

    def _straight(self) -> None:
        if self.rounds is not None or (self.progress and self.progress.rounds):
            refuse("rounds-in-straight-sets", "straight sets have sets, not rounds", "write 'sets'", at=("rounds",))
        for place, written in self.prescriptions():
            listed = written.listed_sets
            if listed is not None and written.sets is None and self.sets not in (None, listed):
                hint = f"write {self.sets} entries, or 'sets: {listed}' beside the list"
                refuse_other_length(
                    listed, f"the block's 'sets' says {self.sets}", hint, (*path_in_block(place), written.listed_by)
                )
            if listed is not None and self.progress and self.progress.sets:
                refuse_growing_list(("progress", "sets"))
            if self.sets is None and written.sets is None and listed is None:
                refuse(
                    "sets-missing", "how many sets?", "write 'sets: 3' here or on the block", at=path_in_block(place)
                )

    def _in_rounds(self) -> None:
        if self.sets is not None:
            refuse("sets-in-rounds", f"a {self.kind} has rounds, not sets", "write 'rounds'", at=("sets",))
        if self.rounds is None:
            refuse("rounds-missing", f"how many rounds has this {self.kind}?", "write 'rounds: 3'")
        if len(self.exercises) < 2:
            refuse("block-too-short", f"a {self.kind} needs two exercises or more", "write 'kind: straight'")
        for place, written in self.prescriptions():
            listed = written.listed_sets
            if listed is not None and listed != self.rounds:
                hint = f"write {self.rounds} entries, or 'rounds: {listed}'"
                refuse_other_length(
                    listed,
                    f"the {self.kind} has {self.rounds} rounds",
                    hint,
                    (*path_in_block(place), written.listed_by),
                )
            if listed is not None and self.progress and self.progress.rounds:
                refuse_growing_list(("progress", "rounds"), "rounds")
            for key in ("sets", "rest"):
                if getattr(written, key) is not None or getattr(written.progress, key, None) is not None:
                    refuse(
                        "sets-in-rounds",
                        f"'{key}' belongs to the whole {self.kind}",
                        "write it on the block" if key == "rest" else "write 'rounds' on the block",
                        at=(*path_in_block(place), key),
                    )


def path_in_block(place: tuple[int, ...]) -> tuple[str | int, ...]:
    """Return where a prescription of a block stands in its file, as keys and indexes."""
    return ("exercises", place[0], *(("instead", place[1]) if len(place) > 1 else ()))


class Session(CoachModel):
    """One session, done once in a week or more often."""

    name: Name = Field(description="The session's name.")
    aim: Prose = Field(description="What it is for, in a sentence.")
    time_budget: WorkTime | None = Field(default=None, description="The longest it may take, warm-up included.")
    effort: Count | None = Field(default=None, description="Effort that the whole session should feel like, 1 to 10.")
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
        listed = sum(written.most_listed for block in self.blocks for written in block.exercises)
        if listed > MOST_LISTED:
            said = f"this session lists {listed} sets one by one, {MOST_LISTED} are the most"
            refuse("too-many-sets", said, "write one number for sets that are alike", at=("blocks",))
        return self

    @model_validator(mode="after")
    def _has_a_core(self) -> Self:
        if all(block.optional or all(one.optional for one in block.exercises) for block in self.blocks):
            refuse("all-optional", "everything in this session is optional", "take 'optional' off what is its core")
        return self

    def written(self, slot: Slot) -> Prescription:
        """Return the prescription at a place."""
        written = self.blocks[slot[0]].exercises[slot[1]]
        return written.instead[slot[2]] if len(slot) > 2 else written
