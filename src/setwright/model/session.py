"""A session: blocks of exercises, written once and progressed by the tool."""

import re
from collections.abc import Iterator
from typing import Any, Final, Literal, Self

from pydantic import Field, model_validator

from setwright.model.acceptance import Acceptance
from setwright.model.amounts import RestsField
from setwright.model.base import CoachModel, refuse
from setwright.model.choices import MOST_CHOICES_OF_A_BLOCK, Entry
from setwright.model.clock import OPEN_ROUNDS, Rounds, refuse_clock
from setwright.model.dates import ClockTime
from setwright.model.film import SessionFilm
from setwright.model.prescription import (
    Prescription,
    refuse_growing_list,
    refuse_list_of_rests,
    refuse_off_course,
    refuse_other_length,
    refuse_rests,
)
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
    rounds: Rounds | None = Field(
        default=None, description="Rounds (superset and circuit); a circuit may have 'as many as possible', with 'for'."
    )
    lasts: WorkTime | None = Field(
        default=None, alias="for", description="How long 'rounds: as many as possible' go on: '12 min'."
    )
    up_to: Count | None = Field(
        default=None, description="Rounds at which 'rounds: as many as possible' end in any case."
    )
    every: WorkTime | None = Field(
        default=None, description="A set starts every so often: '1 min'; the rest is what is left (straight, circuit)."
    )
    rest: RestsField | None = Field(
        default=None, description="Rest after a set, or after the last exercise of a round; or a list of each rest."
    )
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
    def _keeps_its_clock(self) -> Self:
        refuse_clock(self)
        return self

    @property
    def counted_rounds(self) -> int | None:
        """The rounds that the coach counted; None where there are none, or as many as possible."""
        return None if self.rounds == OPEN_ROUNDS else self.rounds

    @model_validator(mode="after")
    def _stays_on_course(self) -> Self:
        for key in ("sets", "rounds", "lasts", "rest"):
            start, climb = getattr(self, key), getattr(self.progress, key, None)
            where: tuple[str | int, ...] = ("progress", "for" if key == "lasts" else key)
            if key == "rest":
                start = refuse_list_of_rests(start, climb, where)
            elif key == "rounds":
                start = self.counted_rounds
            if climb is not None and start is None and climb.weeks is None and key != "lasts":
                refuse(
                    "progress-without-start",
                    f"'{key}' progresses from nothing",
                    f"write '{key}' first",
                    at=where,
                )
            if climb is not None and start is not None:
                refuse_off_course(start, climb, where)
        for place, written in self.prescriptions():
            for key in ("sets", "rest"):
                climb, start = getattr(written.progress, key, None), getattr(self, key)
                where = (*path_in_block(place), "progress", key)
                if climb is None or getattr(written, key) is not None:
                    continue
                if key == "rest":
                    start = refuse_list_of_rests(start, climb, where)
                if start is not None:
                    refuse_off_course(start, climb, where)
        return self

    @model_validator(mode="after")
    def _rests_lie_between(self) -> Self:
        if self.kind != "straight":
            grows = self.progress is not None and self.progress.rounds is not None
            refuse_rests(self.rest, None if grows else self.counted_rounds, "rounds", ("rest",))
            return self
        for place, written in self.prescriptions():
            climbs = (
                self.progress.sets if self.progress else None,
                written.progress.sets if written.progress else None,
            )
            count = None if any(climbs) else written.sets or written.listed_sets or self.sets
            if written.rest is not None:
                refuse_rests(written.rest, count, "sets", (*path_in_block(place), "rest"))
            else:
                refuse_rests(self.rest, count, "sets", ("rest",))
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
            if listed is not None and listed != self.rounds and self.rounds != OPEN_ROUNDS:
                hint = f"write {self.rounds} entries, or 'rounds: {listed}'"
                refuse_other_length(
                    listed,
                    f"the {self.kind} has {self.rounds} rounds",
                    hint,
                    (*path_in_block(place), written.listed_by),
                )
            if listed is not None and self.progress and self.progress.rounds:
                refuse_growing_list(("progress", "rounds"), "rounds")
            if written.ramp is not None:
                hint = "write 'kind: straight', or a block of straight sets before this one"
                said = f"warm-up sets have no place in a {self.kind}"
                refuse("ramp-unclear", said, hint, (*path_in_block(place), "ramp"))
            self._rest_in_a_round(place, written)
            if written.sets is not None or getattr(written.progress, "sets", None) is not None:
                said = f"'sets' belongs to the whole {self.kind}"
                refuse("sets-in-rounds", said, "write 'rounds' on the block", (*path_in_block(place), "sets"))

    def _rest_in_a_round(self, place: tuple[int, ...], written: Prescription) -> None:
        """Refuse a rest of one exercise that is not the one before the next exercise of its round."""
        here = path_in_block(place)
        if getattr(written.progress, "rest", None) is not None:
            said, hint = f"a rest that progresses belongs to the whole {self.kind}", "write it on the block"
            refuse("sets-in-rounds", said, hint, (*here, "progress", "rest"))
        if written.rest is None:
            return
        if len(written.rest) > 1:
            said = "the rest before the next exercise is the same in every round"
            refuse("list-of-rests", said, "write one rest here, or a list on the block", (*here, "rest"))
        if place[0] == len(self.exercises) - 1:
            said = "after the last exercise of a round comes the rest of the round"
            refuse("sets-in-rounds", said, "write it on the block", (*here, "rest"))


def path_in_block(place: tuple[int, ...]) -> tuple[str | int, ...]:
    """Return where a prescription of a block stands in its file, as keys and indexes."""
    return ("exercises", place[0], *(("instead", place[1]) if len(place) > 1 else ()))


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
    films: list[SessionFilm] = Field(default=[], max_length=4, description="Films of the session, of the club's own.")
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
