"""When a plan runs: its start or starts, the breaks that weeks move behind, and the day that it leads up to."""

import re
from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from fractions import Fraction
from typing import Annotated, Any, Final, Self

from pydantic import BeforeValidator, Discriminator, Field, Tag, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.dates import Day
from setwright.model.text import Name, Prose
from setwright.model.units import Count, Percent
from setwright.model.vocabulary import Weekday

_LONGEST_BREAK: Final = timedelta(weeks=26)

LEAST_KEPT: Final = 10
"""Less than this share, in percent, is no week of training."""


def refuse_unlighter(shares: Mapping[str, Fraction | None]) -> None:
    """Refuse shares of which none is written, or one is no share of what there is."""
    written = {key: share for key, share in shares.items() if share is not None}
    if not written:
        refuse("lighter-of-what", "what gets lighter?", "write 'sets: 60 %', 'reps: 80 %' or 'load: 90 %'")
    for key, share in written.items():
        if not LEAST_KEPT <= share <= 100:
            refuse(
                "lighter-of-what",
                f"a lighter week keeps from {LEAST_KEPT} to 100 %",
                "write what remains, such as 60 %",
                at=(key,),
            )


class ComingBack(CoachModel):
    """What remains of each number in the week after a break. Progressions wait."""

    sets: Percent | None = Field(default=None, description="Share of the sets and rounds that remains.")
    reps: Percent | None = Field(default=None, description="Share of reps, hold and work time that remains.")
    load: Percent | None = Field(default=None, description="Share of the load that remains.")

    @model_validator(mode="after")
    def _is_lighter(self) -> Self:
        refuse_unlighter({"sets": self.sets, "reps": self.reps, "load": self.load})
        return self


class Break(CoachModel):
    """Days without training: each week that they touch begins behind them."""

    from_: Day = Field(alias="from", description="Its first day.")
    to: Day = Field(description="Its last day.")
    why: Prose = Field(description="The reason; members read it.")
    coming_back: ComingBack | None = Field(default=None, description="What remains in the week after it.")

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if self.to < self.from_:
            refuse("range-upside-down", "this break ends before it begins", "swap the two days", at=("to",))
        if self.to - self.from_ > _LONGEST_BREAK:
            said = "this break is longer than half a year"
            refuse("break-too-long", said, "write a plan for the time after it", at=("to",))
        return self


class Event(CoachModel):
    """The day that the plan leads up to: a date, or a day of one of the plan's weeks."""

    name: Name = Field(description="The event's name.")
    date: Day | None = Field(default=None, description="Its day.")
    week: Count | None = Field(default=None, description="Instead of a date: the week of the plan that it falls into.")
    day: Weekday | None = Field(default=None, description="With 'week': the day of that week.")

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if self.date is not None and (self.week or self.day):
            key = "week" if self.week else "day"
            refuse("event-unclear", "a date says the week and the day already", "write one of the two", at=(key,))
        if self.date is None and (self.week is None or self.day is None):
            lacking = "'date'" if self.week is None and self.day is None else "'day'" if self.day is None else "'week'"
            refuse(
                "event-unclear",
                f"when is it? {lacking} is missing",
                "write 'date: 2027-09-26', or 'week: 12' with 'day: sunday'",
            )
        return self


def _not_listed(value: Any) -> Any:
    if isinstance(value, list):
        hint = "write a name for each: '{Monday group: 2027-01-04, Thursday group: 2027-01-14}'"
        refuse("groups-unclear", "whose starts are these?", hint)
    return value


def _is_groups(value: Any) -> str:
    return "‹groups›" if isinstance(value, dict) else "‹one›"


Starts = Annotated[
    Annotated[Day, Tag("‹one›")] | Annotated[dict[Name, Day], Field(max_length=12), Tag("‹groups›")],
    Discriminator(_is_groups),
    BeforeValidator(_not_listed),
]
"""The first day of a plan, or one for each group by its name."""


def slug(name: str) -> str:
    """Return a group's name as an address has it: Monday group, monday-group."""
    return "-".join(re.findall("[a-z0-9]+", name.lower()))


def week_starts(first: date, weeks: int, breaks: Sequence[Break]) -> tuple[date, ...]:
    """Return the first day of each week of a plan.

    Weeks follow each other; one that a break touches begins behind it, on the weekday of all others.

    Args:
        first: the plan's first day.
        weeks: how many weeks it has.
        breaks: its breaks, in order.
    """
    starts = []
    day = first
    for _ in range(weeks):
        for one in breaks:
            if day <= one.to and day + timedelta(days=6) >= one.from_:
                day += timedelta(weeks=-(-((one.to - day).days + 1) // 7))
        starts.append(day)
        day += timedelta(weeks=1)
    return tuple(starts)


def week_after(starts: Sequence[date], one: Break) -> int | None:
    """Return the week, from 1, that comes next after a break; None where no week lies before it, or none behind it."""
    number = next((n for n, day in enumerate(starts, 1) if day > one.to), None)
    return number if number is not None and number > 1 and starts[number - 2] < one.from_ else None
