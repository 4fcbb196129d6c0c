"""A prescription: what the coach wrote for one exercise in one session."""

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any, Literal, NoReturn, Self

from pydantic import Field, model_validator
from pydantic_core import PydanticCustomError

from setwright.model.acceptance import Acceptance
from setwright.model.amounts import Amounts, Distances, Loads, LoadsField, Reps, Rests, RestsField, Times, parse_loads
from setwright.model.base import CoachModel, refuse
from setwright.model.load import (
    AddedWeight,
    Band,
    BodyWeightShare,
    Effort,
    EffortField,
    HelpShare,
    HelpWeight,
    Load,
    OneRepMaxShare,
    Reserve,
    Weight,
    magnitude,
    same_kind,
)
from setwright.model.open_end import Leave, refuse_open
from setwright.model.progress import Climb, LoadClimb, Progress
from setwright.model.ramp import RampField, refuse_ramp
from setwright.model.span import Open, Span
from setwright.model.tempo import TempoField
from setwright.model.text import Id, Prose
from setwright.model.units import Count, Length, plain_number

Measure = Literal["reps", "hold", "work", "distance"]
MEASURES: tuple[Measure, ...] = ("reps", "hold", "work", "distance")


class Prescription(CoachModel):
    """An exercise with its dose and its progression. What is left out, the exercise's own page says."""

    exercise: Id = Field(description="Id of the exercise.")
    sets: Count | None = Field(default=None, description="Sets, in a block of straight sets.")
    reps: Reps | None = Field(
        default=None,
        description="Repetitions, a range, 'as many as possible', or a list of each set; on each side, likewise.",
    )
    leave: Leave | None = Field(default=None, description="Reps left at the end of 'as many as possible': '2 reps'.")
    up_to: Count | None = Field(default=None, description="Reps at which 'as many as possible' ends in any case.")
    hold: Times | None = Field(default=None, description="Time to hold still; a side, likewise.")
    work: Times | None = Field(default=None, description="Time to keep moving; a side, likewise.")
    distance: Distances | None = Field(default=None, description="Distance to cover.")
    load: LoadsField | None = Field(
        default=None, description="How heavy, or a list of each set; left out, the body alone."
    )
    ramp: RampField | None = Field(
        default=None, description="Warm-up sets of this exercise (straight sets only): how many, or a list of each."
    )
    feels_like: EffortField | None = Field(
        default=None, description="How hard a set with that load should feel: 'RPE 8', '2 reps in reserve'."
    )
    height: Length | None = Field(default=None, description="Height of the box or step, to stand on or to drop from.")
    tempo: TempoField | None = Field(default=None, description="Pace of a repetition, if not the exercise's usual one.")
    kit: list[Id] | None = Field(
        default=None, min_length=1, max_length=24, description="Kit, if not the exercise's usual one."
    )
    rest: RestsField | None = Field(
        default=None,
        description="Rest after each set, or a list of each rest; in a round, the rest before the next exercise.",
    )
    note: Prose | None = Field(default=None, description="What matters here, in this session.")
    progress: Progress | None = Field(default=None, description="How the dose changes over the trained weeks.")
    accept: list[Acceptance] = Field(default=[], max_length=60, description="Warnings that the coach stands by.")

    @property
    def measure(self) -> Measure:
        """Which of reps, hold, work and distance this prescription counts."""
        return next(m for m in MEASURES if getattr(self, m) is not None)

    @model_validator(mode="before")
    @classmethod
    def _step_is_no_share(cls, value: Any) -> Any:
        """Refuse a step such as '5 %', which does not say of what, in the unit of the load beside it."""
        progress = value.get("progress") if isinstance(value, dict) else None
        if isinstance(progress, dict):
            then = progress.get("then")
            _refuse_bare_share(value.get("load"), progress.get("load"), ("progress", "load"))
            if isinstance(then, dict):
                _refuse_bare_share(value.get("load"), then.get("load"), ("progress", "then", "load"))
        return value

    @model_validator(mode="after")
    def _one_measure(self) -> Self:
        given = [m for m in MEASURES if getattr(self, m) is not None]
        if len(given) != 1:
            said = f"both '{given[0]}' and '{given[1]}'" if given else "neither reps, hold, work nor distance"
            refuse("measure-unclear", f"this exercise has {said}", "write just one, such as 'reps: 8' or 'hold: 30 s'")
        return self

    @model_validator(mode="after")
    def _feels_like_an_effort(self) -> Self:
        if self.feels_like is not None:
            refuse_unfelt(self.feels_like, self.load)
        return self

    @model_validator(mode="after")
    def _open_ends(self) -> Self:
        progress = self.progress or Progress()
        listed = [one for week in (progress.reps.weeks if progress.reps else None) or () for one in week]
        weeks = [one for week in (progress.load.weeks if progress.load else None) or () for one in week]
        refuse_open(self.reps or (), listed, self.leave, self.up_to, (*(self.load or ()), *weeks))
        if progress.reps is not None and any(isinstance(one, Open) for one in self.reps or ()) and not listed:
            said = "as many as possible has no steps"
            refuse("progress-unclear", said, "list the weeks, or let the load climb", at=("progress", "reps"))
        return self

    @model_validator(mode="after")
    def _ramp_leads_up(self) -> Self:
        if self.ramp is not None:
            climb = self.progress.load if self.progress else None
            weeks = [load for week in (climb.weeks if climb else None) or () for load in week]
            refuse_ramp(self.ramp, self.measure, (*(self.load or ()), *weeks))
        return self

    @property
    def listed_sets(self) -> int | None:
        """How many sets the coach listed one by one; None where all are alike, or where the lists disagree."""
        lengths = {len(value) for _, value in self._lists()}
        return lengths.pop() if len(lengths) == 1 else None

    @property
    def most_listed(self) -> int:
        """The most sets that any list of this prescription holds; none where all are alike."""
        return max((len(value) for _, value in self._lists()), default=0)

    @property
    def listed_by(self) -> str:
        """The key of the first list of sets."""
        return str(next(self._lists())[0][0])

    def _lists(self) -> Iterator[tuple[tuple[str | int, ...], Amounts | Loads]]:
        """Yield every list of sets, and where it stands: the first dose's, and those of single weeks."""
        for key in (self.measure, "load"):
            yield from (((key,), value) for value in (getattr(self, key),) if value is not None and len(value) > 1)
            climb: Climb[Any, Any] | None = getattr(self.progress, key, None)
            for week, value in enumerate((climb.weeks if climb else None) or ()):
                if len(value) > 1:
                    yield ("progress", key, "weeks", week), value

    @model_validator(mode="after")
    def _lists_agree(self) -> Self:
        lists = [(where, len(value)) for where, value in self._lists()]
        for where, count in lists:
            if self.sets is not None and count != self.sets:
                hint = f"leave 'sets' out, and the list says how many; or write {self.sets} entries"
                refuse_other_length(count, f"'sets' says {self.sets}", hint, where)
            if count != lists[0][1]:
                first = lists[0][1]
                said, hint = f"the list of '{self.listed_by}' has {first}", f"one entry for each set: write {first}"
                refuse_other_length(count, said, hint, where)
        if self.listed_sets is not None and self.progress is not None and self.progress.sets is not None:
            refuse_growing_list(("progress", "sets"))
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


def refuse_unfelt(feels_like: Load, loads: Loads | None) -> None:
    """Refuse how a set should feel where the load is none, or an effort itself."""
    if loads is None or any(isinstance(load, Effort | Reserve) for load in loads):
        hint = f"write 'load: {feels_like}' alone, or give the load a weight, a share or a band"
        refuse("effort-unclear", "there is no load beside which this could be felt", hint, at=("feels_like",))


def refuse_other_length(count: int, other: str, hint: str, where: tuple[str | int, ...]) -> NoReturn:
    """Refuse a list of sets that is not as long as something else says."""
    refuse("list-length-differs", f"this list has {count} entries, {other}", hint, at=where)


def refuse_growing_list(where: tuple[str | int, ...], what: str = "sets") -> NoReturn:
    """Refuse a count of sets or rounds that grows beside a list of each of them."""
    said, hint = f"the {what} grow, and a list of each of them does not", f"let the {what} stay, or write no list"
    refuse("list-length-differs", said, hint, at=where)


def _refuse_bare_share(load: Any, climb: Any, where: tuple[str | int, ...]) -> None:
    if not isinstance(climb, dict):
        return
    for key in ("add", "take", "up_to", "down_to"):
        share = re.fullmatch(r"([0-9]{1,3}(?:\.[0-9]{1,4})?)\s*%", str(climb.get(key, "")).strip())
        if share is None:
            continue
        try:
            start = parse_loads(load)[0]
        except PydanticCustomError:
            return  # the load is refused for itself
        if isinstance(start, Band):
            return  # a band has no steps at all
        if start.of is not None:
            step = f"{share[1]} {str(start).partition(' ')[2]}"
        elif isinstance(start, Weight) and key in ("add", "take"):
            part = start.number * Fraction(share[1]) / 100
            step = f"{plain_number(part)} {start.unit}{' per hand' if start.per_hand else ''}"
        else:
            step = _example_step(start)
        refuse(
            "load-units-differ",
            f"the load is {start}, this is '{share[0]}' of nothing named",
            f"write it in the load's own unit, such as '{step}'",
            at=(*where, key),
        )


def _load_climb_fits(loads: Loads | None, climb: LoadClimb, where: tuple[str | int, ...]) -> None:
    """Refuse a step or an end that is not in the load's own unit."""
    if climb.weeks is not None:
        if loads is not None:
            refuse_other_start(loads, climb.weeks, where)
        return
    if loads is None:
        refuse("progress-without-start", "the load progresses from nothing", "write 'load' first", at=where)
    for load in loads:
        if isinstance(load, Band):
            refuse("progress-unclear", "bands have no steps", "list them: 'weeks: [light band, medium band]'", at=where)
        for key in ("add", "take", "up_to", "down_to"):
            part = getattr(climb, key)
            if (
                part is not None
                and not same_kind(load, part)
                and not (key in ("add", "take") and _is_added(load, part))
            ):
                refuse(
                    "load-units-differ",
                    f"the load is {load}, this is {part}",
                    f"write it in the load's own unit, such as '{_example_step(load)}'",
                    at=(*where, key),
                )
    ends = {"up_to": climb.up_to, "down_to": climb.down_to}
    given = {key: magnitude(end) for key, end in ends.items() if end is not None}
    numbers = [magnitude(load) for load in loads]
    refuse_passed_end(min(numbers), max(numbers), given.get("up_to"), given.get("down_to"), where)


def _is_added(load: Load, step: Load) -> bool:
    """Say whether a plain weight is a step of one that is added to the body: '2.5 kg' of 'bodyweight + 5 kg'."""
    return isinstance(load, AddedWeight) and type(step) is Weight and not step.per_hand


def _example_step(load: Load) -> str:
    hand = " per hand" if load.per_hand else ""
    match load:
        case BodyWeightShare():
            return f"2.5 % bodyweight{hand}"
        case OneRepMaxShare():
            return "2.5 % 1RM"
        case AddedWeight():
            return f"2 {load.unit}"
        case Weight():
            return f"2 {load.unit}{hand}"
        case HelpShare():
            return "2.5 % bodyweight of help"
        case HelpWeight():
            return f"2 {load.unit} of help"
        case Effort():
            return "RPE 0.5"
        case Reserve():
            return "1 rep in reserve"
        case Band():
            return str(load)


def _stays_on_course(written: Prescription, progress: Progress) -> None:
    """Refuse an end that the start has already passed."""
    for key in (*MEASURES, "sets", "rest"):
        start, climb = getattr(written, key, None), getattr(progress, key)
        if key == "rest":
            start = refuse_list_of_rests(start, climb, ("progress", key))
        if start is not None and climb is not None:
            refuse_off_course(start, climb, ("progress", key))


def refuse_off_course(start: Amounts | int, climb: Climb[Any, Any], where: tuple[str | int, ...]) -> None:
    """Refuse a climb whose start lies beyond its end, and a list that starts elsewhere."""
    spans = (Span.of(start),) if isinstance(start, int) else start
    refuse_passed_end(min(one.low for one in spans), max(one.high for one in spans), climb.up_to, climb.down_to, where)
    if climb.weeks is not None:
        refuse_other_start(start, climb.weeks, where)


def refuse_list_of_rests(rests: Rests | None, climb: object, where: tuple[str | int, ...]) -> int | None:
    """Return the one rest that there is, and refuse several of them that would have to shrink."""
    if rests is not None and len(rests) > 1 and climb is not None:
        refuse(
            "list-of-rests", "a list of rests has no steps", "write one rest that shrinks, or a list that stays", where
        )
    return rests[0] if rests else None


def refuse_rests(rests: Rests | None, count: int | None, what: str, where: tuple[str | int, ...]) -> None:
    """Refuse a list of rests that is not as long as there are rests between so many sets or rounds."""
    if rests is None or len(rests) < 2 or (count is not None and len(rests) == count - 1):
        return
    if count is None:
        said, hint = f"nobody knows how many {what} there are, so how many rests", "write one rest for all"
        refuse("list-of-rests", said, hint, where)
    hint = f"one between each two: {count - 1}" if count > 2 else "write one rest"
    refuse(
        "list-of-rests", f"{count} {what} have {count - 1} rests between them, this list has {len(rests)}", hint, where
    )


def refuse_passed_end(low: Any, high: Any, up_to: Any, down_to: Any, where: tuple[str | int, ...]) -> None:
    """Refuse an end that the start, from its low end to its high one, has already passed."""
    if up_to is not None and high > up_to:
        refuse("progress-past-its-end", "the start is already above 'up_to'", "raise 'up_to'", at=(*where, "up_to"))
    if up_to is not None and high == up_to:
        hint = "raise 'up_to', or leave this progression out"
        refuse("progress-past-its-end", "the start already reaches 'up_to'", hint, at=(*where, "up_to"))
    if down_to is not None and low < down_to:
        refuse("progress-past-its-end", "the start is already below 'down_to'", "lower it", at=(*where, "down_to"))
    if down_to is not None and low == down_to:
        hint = "lower 'down_to', or leave this progression out"
        refuse("progress-past-its-end", "the start already reaches 'down_to'", hint, at=(*where, "down_to"))


def refuse_other_start(start: object, weeks: Sequence[object], where: tuple[str | int, ...]) -> None:
    """Refuse a list of weeks whose first entry is not the first dose: one of the two must be a slip."""
    if isinstance(start, tuple) and len(start) > 1 and all(isinstance(w, tuple) and len(w) == 1 for w in weeks):
        said = "the dose beside it is a list of sets, and this is one list for all weeks"
        first = "..." if isinstance(start[0], Span) else ", ".join(str(load) for load in start)
        refuse("progress-unclear", said, f"write a list for each week: '[[{first}], [...]]'", at=(*where, "weeks"))
    if weeks[0] != start:
        refuse(
            "progress-unclear",
            "the list's first week is not the dose written beside it",
            "make the two the same",
            at=(*where, "weeks", 0),
        )
