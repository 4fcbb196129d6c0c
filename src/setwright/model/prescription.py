"""A prescription: what the coach wrote for one exercise in one session."""

from collections.abc import Sequence
from typing import Any, Literal, Self

from pydantic import Field, model_validator

from setwright.model.acceptance import Acceptance
from setwright.model.base import CoachModel, refuse
from setwright.model.load import (
    Band,
    BodyWeightShare,
    Effort,
    Load,
    LoadField,
    OneRepMaxShare,
    Reserve,
    Weight,
    magnitude,
    same_kind,
)
from setwright.model.progress import Climb, LoadClimb, Progress
from setwright.model.tempo import TempoField
from setwright.model.text import Id, Prose
from setwright.model.units import Count, Duration, Length, WorkTime

Measure = Literal["reps", "hold", "work", "distance"]
MEASURES: tuple[Measure, ...] = ("reps", "hold", "work", "distance")


class Prescription(CoachModel):
    """An exercise with its dose and its progression. What is left out, the exercise's own page says."""

    exercise: Id = Field(description="Id of the exercise.")
    sets: Count | None = Field(default=None, description="Sets, in a block of straight sets.")
    reps: Count | None = Field(
        default=None, description="Repetitions; a side, where the exercise is one side at a time."
    )
    hold: WorkTime | None = Field(default=None, description="Time to hold still; a side, likewise.")
    work: WorkTime | None = Field(default=None, description="Time to keep moving; a side, likewise.")
    distance: Length | None = Field(default=None, description="Distance to cover.")
    load: LoadField | None = Field(default=None, description="How heavy; left out, the body alone.")
    height: Length | None = Field(default=None, description="Height of the box or step, to stand on or to drop from.")
    tempo: TempoField | None = Field(default=None, description="Pace of a repetition, if not the exercise's usual one.")
    kit: list[Id] | None = Field(
        default=None, min_length=1, max_length=24, description="Kit, if not the exercise's usual one."
    )
    rest: Duration | None = Field(default=None, description="Rest after each set (straight sets only).")
    note: Prose | None = Field(default=None, description="What matters here, in this session.")
    progress: Progress | None = Field(default=None, description="How the dose changes over the trained weeks.")
    accept: list[Acceptance] = Field(default=[], max_length=60, description="Warnings that the coach stands by.")

    @property
    def measure(self) -> Measure:
        """Which of reps, hold, work and distance this prescription counts."""
        return next(m for m in MEASURES if getattr(self, m) is not None)

    @model_validator(mode="after")
    def _one_measure(self) -> Self:
        given = [m for m in MEASURES if getattr(self, m) is not None]
        if len(given) != 1:
            said = f"both '{given[0]}' and '{given[1]}'" if given else "neither reps, hold, work nor distance"
            refuse("measure-unclear", f"this exercise has {said}", "write just one, such as 'reps: 8' or 'hold: 30 s'")
        return self

    @model_validator(mode="after")
    def _progress_fits(self) -> Self:
        if self.progress is None:
            return self
        for measure in MEASURES:
            if getattr(self.progress, measure) is not None and getattr(self, measure) is None:
                refuse(
                    "progress-without-start",
                    f"'{measure}' progresses, but this exercise counts {self.measure}",
                    f"progress '{self.measure}', or write where '{measure}' starts",
                    at=("progress", measure),
                )
        climb = self.progress.then.load if self.progress.then else self.progress.load
        where = ("progress", "then", "load") if self.progress.then else ("progress", "load")
        if climb is not None:
            _load_climb_fits(self.load, climb, where)
        _stays_on_course(self, self.progress)
        return self


def _load_climb_fits(load: Load | None, climb: LoadClimb, where: tuple[str | int, ...]) -> None:
    """Refuse a step or an end that is not in the load's own unit."""
    if load is None:
        if climb.weeks is None:
            refuse("progress-without-start", "the load progresses from nothing", "write 'load' first", at=where)
        return
    for key in ("add", "take", "up_to", "down_to"):
        part = getattr(climb, key)
        if part is not None and not same_kind(load, part):
            refuse(
                "load-units-differ",
                f"the load is {load}, this is {part}",
                f"write it in the load's own unit, such as '{_example_step(load)}'",
                at=(*where, key),
            )
    if not isinstance(load, Band) and climb.weeks is None:
        ends = {"up_to": climb.up_to, "down_to": climb.down_to}
        given = {key: magnitude(end) for key, end in ends.items() if end is not None}
        refuse_passed_end(magnitude(load), given.get("up_to"), given.get("down_to"), where)
    if climb.weeks is not None:
        refuse_other_start(load, climb.weeks, where)
    if isinstance(load, Band) and climb.weeks is None:
        refuse("progress-unclear", "bands have no steps", "list them: 'weeks: [light band, medium band]'", at=where)


def _example_step(load: Load) -> str:
    hand = " per hand" if load.per_hand else ""
    match load:
        case BodyWeightShare():
            return f"2.5 % bodyweight{hand}"
        case OneRepMaxShare():
            return "2.5 % 1RM"
        case Weight():
            return f"2 {load.unit}{hand}"
        case Effort():
            return "RPE 0.5"
        case Reserve():
            return "1 rep in reserve"
        case Band():
            return f"{load.name} band"


def _stays_on_course(written: Prescription, progress: Progress) -> None:
    """Refuse an end that the start has already passed."""
    for key in (*MEASURES, "sets", "rest"):
        start, climb = getattr(written, key, None), getattr(progress, key)
        if start is not None and climb is not None:
            refuse_off_course(start, climb, ("progress", key))


def refuse_off_course(start: Any, climb: Climb[Any], where: tuple[str | int, ...]) -> None:
    """Refuse a climb whose start lies beyond its end, and a list that starts elsewhere."""
    refuse_passed_end(start, climb.up_to, climb.down_to, where)
    if climb.weeks is not None:
        refuse_other_start(start, climb.weeks, where)


def refuse_passed_end(start: Any, up_to: Any, down_to: Any, where: tuple[str | int, ...]) -> None:
    """Refuse an end that the start has already passed."""
    if up_to is not None and start > up_to:
        refuse("progress-past-its-end", "the start is already above 'up_to'", "raise 'up_to'", at=(*where, "up_to"))
    if down_to is not None and start < down_to:
        refuse("progress-past-its-end", "the start is already below 'down_to'", "lower it", at=(*where, "down_to"))


def refuse_other_start(start: object, weeks: Sequence[object], where: tuple[str | int, ...]) -> None:
    """Refuse a list of weeks whose first entry is not the first dose: one of the two must be a slip."""
    if weeks[0] != start:
        refuse(
            "progress-unclear",
            "the list's first week is not the dose written beside it",
            "make the two the same",
            at=(*where, "weeks", 0),
        )
