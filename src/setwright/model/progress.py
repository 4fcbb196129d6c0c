"""Progressions: how a dose grows, week over week.

A progression counts the weeks in which its session is really trained. Every climb names where it stops.
"""

from typing import Any, Generic, Self, TypeVar

from pydantic import Field, model_validator

from setwright.model.amounts import Distances, LoadsField, Reps, Times
from setwright.model.base import CoachModel, refuse
from setwright.model.load import Band, Load, LoadField, magnitude
from setwright.model.tempo import TempoField
from setwright.model.units import Count, Distance, Duration, Flag, Weeks, WorkTime

T = TypeVar("T")
W = TypeVar("W")


class Climb(CoachModel, Generic[T, W]):
    """A value that grows by a step, shrinks by a step, or is listed week by week.

    ``T`` is a step and its end, ``W`` what a week of the list says.
    """

    add: T | None = Field(default=None, description="The step up.")
    take: T | None = Field(default=None, description="The step down, as for rest.")
    every: Weeks = Field(default=1, description="How many trained weeks a step lasts.")
    up_to: T | None = Field(default=None, description="Where 'add' stops.")
    down_to: T | None = Field(default=None, description="Where 'take' stops.")
    weeks: list[W] | None = Field(
        default=None, min_length=1, max_length=104, description="The value in each trained week; the last one stays."
    )
    again: Flag = Field(default=False, description="true starts the list of weeks over when it has ended.")

    def listed(self, trained: int) -> W:
        """Return what the list of weeks says after so many trained weeks."""
        if self.weeks is None:
            raise ValueError("this climb goes by steps")
        count = len(self.weeks)
        return self.weeks[trained % count if self.again else min(trained, count - 1)]

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        given = [key for key in ("add", "take", "weeks") if getattr(self, key) is not None]
        if len(given) != 1:
            said = f"both '{given[0]}' and '{given[1]}'" if given else "neither 'add', 'take' nor 'weeks'"
            refuse("progress-unclear", f"this progression has {said}", "write just one of add, take and weeks")
        if _is_nothing(self.add) or _is_nothing(self.take):
            refuse("progress-unclear", "this step is nothing at all", "write how much it is", at=(given[0],))
        if self.add is not None and self.up_to is None:
            refuse("progress-without-end", "this climb names no end", "add where it stops, such as 'up_to: 12'")
        if self.take is not None and self.down_to is None:
            refuse("progress-without-end", "this descent names no end", "add where it stops, such as 'down_to: 60 s'")
        ends = (("up_to", "add"), ("down_to", "take"), ("again", "weeks"))
        if self.again and self.weeks is not None and len(self.weeks) < 2:
            refuse("progress-unclear", "a list of one week has nothing to start over", "add weeks", at=("again",))
        unused = [k for k, way in ends if getattr(self, k) and way not in given]
        if unused:
            refuse("progress-unclear", f"'{unused[0]}' does not go with '{given[0]}'", "leave it out", at=(unused[0],))
        return self


def _is_nothing(step: Any) -> bool:
    """Say whether a step is zero, such as 0 s or RPE 0."""
    return step == 0 or (isinstance(step, Load) and not isinstance(step, Band) and magnitude(step) == 0)


class CountClimb(Climb[Count, Count]):
    """Sets or rounds that grow."""


class RepsClimb(Climb[Count, Reps]):
    """Repetitions that grow, in every set alike."""


class TimeClimb(Climb[WorkTime, Times]):
    """A time to hold or to work that grows: '5 s'."""


class DurationClimb(Climb[WorkTime, WorkTime]):
    """How long as many rounds as possible go on, and how that grows: '1 min'."""


class RestClimb(Climb[Duration, Duration]):
    """A rest that shrinks, down to none at all."""


class DistanceClimb(Climb[Distance, Distances]):
    """A distance that grows: '5 m'."""


class LoadClimb(Climb[LoadField, LoadsField]):
    """A load that grows in its own unit: '2.5 % bodyweight', '2 kg', 'RPE 0.5', '1 rep in reserve'."""


class Then(CoachModel):
    """What grows when the first climb has reached its end; the first climb then starts again."""

    load: LoadClimb = Field(description="The load's step.")

    @model_validator(mode="after")
    def _steps(self) -> Self:
        if self.load.weeks is not None:
            refuse("progress-unclear", "'then' grows by steps, not by a list", "write 'add' and 'up_to'", at=("load",))
        if self.load.every != 1:
            refuse(
                "progress-unclear",
                "the load after 'then' rises whenever the climb beside it has reached its end",
                "leave out 'every' here",
                at=("load", "every"),
            )
        return self


class TempoList(CoachModel):
    """A tempo listed week by week."""

    weeks: list[TempoField] = Field(min_length=1, max_length=104, description="The tempo in each trained week.")


class Progress(CoachModel):
    """How one exercise's dose changes over its trained weeks."""

    sets: CountClimb | None = Field(default=None, description="Sets of this exercise (straight sets only).")
    reps: RepsClimb | None = Field(default=None, description="Repetitions.")
    hold: TimeClimb | None = Field(default=None, description="Seconds held.")
    work: TimeClimb | None = Field(default=None, description="Seconds of work.")
    distance: DistanceClimb | None = Field(default=None, description="Distance covered.")
    load: LoadClimb | None = Field(default=None, description="How heavy.")
    rest: RestClimb | None = Field(default=None, description="Rest between sets (straight sets only).")
    tempo: TempoList | None = Field(default=None, description="Pace of a repetition, week by week.")
    then: Then | None = Field(default=None, description="What grows when the climb beside it has reached its end.")

    @model_validator(mode="after")
    def _then_follows_one_climb(self) -> Self:
        if self.then is None:
            return self
        climbs = [k for k in ("reps", "hold", "work", "distance") if (c := getattr(self, k)) and c.add is not None]
        if len(climbs) != 1:
            refuse(
                "progress-unclear",
                "'then' follows exactly one climb of reps, hold, work or distance",
                "such as {reps: {add: 1, up_to: 10}, then: {load: {add: 2 kg, up_to: 20 kg}}}",
                at=("then",),
            )
        if self.load is not None:
            refuse("progress-unclear", "the load is in 'then' and beside it", "keep one of the two", at=("load",))
        return self


class BlockProgress(CoachModel):
    """How a block's own numbers change over its trained weeks."""

    sets: CountClimb | None = Field(default=None, description="Sets of every exercise (straight sets only).")
    rounds: CountClimb | None = Field(default=None, description="Rounds of a superset or circuit.")
    lasts: DurationClimb | None = Field(
        default=None, alias="for", description="How long 'rounds: as many as possible' go on."
    )
    rest: RestClimb | None = Field(default=None, description="Rest after a set or a round.")
