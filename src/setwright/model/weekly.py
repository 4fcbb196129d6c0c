"""The sessions of a phase's weeks: on weekdays, in order on any day, or taking turns."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Any, Final, Self

from pydantic import BeforeValidator, Discriminator, Field, Tag, model_validator

from setwright.model.base import CoachModel, refuse
from setwright.model.text import Id
from setwright.model.units import shown
from setwright.model.vocabulary import WEEKDAYS, Weekday

MOST_A_DAY: Final = 3


@dataclass(frozen=True, slots=True)
class Planned:
    """One place of a week: a session on a weekday, or on any day where ``day`` is None.

    ``number`` counts from 1, on that day or, without days, in that week. ``path`` leads to it below the phase.
    """

    day: Weekday | None
    number: int
    session: str
    path: tuple[str | int, ...]

    @property
    def place(self) -> str:
        """Where that is, as addresses have it: friday, friday-2, session-1. No word of any language."""
        return place_of(self.day, self.number)


def place_of(day: Weekday | None, number: int) -> str:
    """Return a place of a week, as addresses have it."""
    if day is None:
        return f"session-{number}"
    return day if number == 1 else f"{day}-{number}"


class Rotation(CoachModel):
    """Sessions that take turns over the days of the phase's weeks."""

    rotate: list[Id] = Field(min_length=2, max_length=14, description="Ids of the sessions, in turn.")
    days: list[Weekday] = Field(min_length=1, max_length=7, description="Days of the week, such as [tuesday, friday].")

    @model_validator(mode="before")
    @classmethod
    def _is_whole(cls, value: Any) -> Any:
        if isinstance(value, dict):
            for key, example in (("rotate", "[legs, trunk]"), ("days", "[tuesday, friday]")):
                if isinstance(value.get(key), str):
                    said = f"{shown(value[key])} is one, and a rotation goes over several"
                    refuse("not-a-list", said, f"write a list, such as '{example}'", at=(key,))
        return value

    @model_validator(mode="after")
    def _no_day_twice(self) -> Self:
        for index, day in enumerate(self.days):
            if day in self.days[:index]:
                refuse("day-twice", f"{day} stands here twice", "write each day once", at=("days", index))
        return self


def _several(value: Any) -> Any:
    if isinstance(value, list) and len(value) > MOST_A_DAY:
        said = f"{len(value)} sessions on one day, {MOST_A_DAY} are the most"
        refuse("too-many", said, "spread them over the week")
    return value


OfADay = Annotated[
    Annotated[Id, Tag("‹one›")] | Annotated[list[Id], Field(min_length=1), Tag("‹several›")],
    Discriminator(lambda v: "‹several›" if isinstance(v, list) else "‹one›"),
    BeforeValidator(_several),
]
"""The session of a day, or a list of them in the order of the day."""


def _kind(value: Any) -> str:
    if isinstance(value, list):
        return "‹any day›"
    if isinstance(value, Rotation):
        return "‹rotation›"
    return "‹rotation›" if isinstance(value, dict) and {"rotate", "days"} & value.keys() else "‹days›"


def _not_one(value: Any) -> Any:
    if isinstance(value, str):
        said = shown(value)[1:-1]
        hint = f"write '{{tuesday: {said}}}', or '[{said}]' for any day of the week"
        refuse("not-a-mapping", f"on which day is {shown(value)}?", hint)
    return value


Sessions = Annotated[
    Annotated[dict[Weekday, OfADay], Field(min_length=1), Tag("‹days›")]
    | Annotated[list[Id], Field(min_length=1, max_length=14), Tag("‹any day›")]
    | Annotated[Rotation, Tag("‹rotation›")],
    Discriminator(_kind),
    BeforeValidator(_not_one),
]
"""Weekdays with their sessions; or a list, done in that order on any days; or sessions that take turns."""


def planned(sessions: dict[Weekday, Any] | list[str] | Rotation, week: int, first: Weekday) -> Iterator[Planned]:
    """Yield what a week holds before single changes; days in the order of a week.

    Args:
        sessions: the sessions of a phase.
        week: the week of the phase, from 1.
        first: the day on which weeks start.
    """
    if isinstance(sessions, list):
        for place, ident in enumerate(sessions):
            yield Planned(None, place + 1, ident, ("sessions", place))
    elif isinstance(sessions, Rotation):
        days = in_order(sessions.days, first)
        for place, day in enumerate(days, (week - 1) * len(days)):
            turn = place % len(sessions.rotate)
            yield Planned(day, 1, sessions.rotate[turn], ("sessions", "rotate", turn))
    else:
        for day in in_order(list(sessions), first):
            held = sessions[day]
            if isinstance(held, str):
                yield Planned(day, 1, held, ("sessions", day))
            else:
                for place, ident in enumerate(held):
                    yield Planned(day, place + 1, ident, ("sessions", day, place))


def in_order(days: list[Weekday], first: Weekday) -> list[Weekday]:
    """Return days of the week in order, beginning with the one on which weeks start."""
    return sorted(days, key=lambda day: (WEEKDAYS.index(day) - WEEKDAYS.index(first)) % 7)


def held(sessions: dict[Weekday, Any] | list[str] | Rotation) -> set[str]:
    """Return the ids of all sessions of a phase."""
    if isinstance(sessions, Rotation):
        return set(sessions.rotate)
    if isinstance(sessions, list):
        return set(sessions)
    return {ident for one in sessions.values() for ident in ([one] if isinstance(one, str) else one)}


def days_of(sessions: dict[Weekday, Any] | list[str] | Rotation) -> list[Weekday]:
    """Return the weekdays that a phase names, as written; none where its sessions are on any day."""
    if isinstance(sessions, Rotation):
        return sessions.days
    return [] if isinstance(sessions, list) else list(sessions)
