"""A plan: phases of weeks, each with its sessions, leading up to a day that matters."""

import re
from datetime import date
from typing import Annotated, Any, Final, Literal, Self

from pydantic import Field, PlainValidator, WithJsonSchema, model_validator

from setwright.model.acceptance import Acceptance
from setwright.model.amounts import Distances, LoadsField, Reps, Times
from setwright.model.base import CoachModel, refuse
from setwright.model.load import EffortField
from setwright.model.open_end import Leave, refuse_open
from setwright.model.prescription import MEASURES, refuse_other_length, refuse_unfelt
from setwright.model.slips import in_a_row
from setwright.model.tempo import TempoField
from setwright.model.text import Id, Name, Prose
from setwright.model.units import Count, Duration, Flag, Percent, shown
from setwright.model.vocabulary import Weekday


def parse_day(value: Any) -> date:
    """Return a calendar day from year-month-day (ISO 8601), of the years 1900 to 2200."""
    if isinstance(value, date):
        return value
    text, hint = str(value).strip(), "write year-month-day, such as 2027-07-05"
    if not re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text):
        refuse("not-a-date", f"{shown(text)} is not a date", hint)
    try:
        day = date.fromisoformat(text)
    except ValueError:
        refuse("not-a-date", f"{shown(text)} is not in the calendar", hint)
    if not 1900 <= day.year <= 2200:
        refuse("not-a-date", f"{shown(text)} is in another age", "check the year")
    return day


Day = Annotated[date, PlainValidator(lambda v: parse_day(v)), WithJsonSchema({"type": "string", "format": "date"})]
"""A calendar day."""


class Event(CoachModel):
    """The day that the plan leads up to."""

    name: Name = Field(description="The event's name.")
    date: Day = Field(description="Its day.")


class OtherTraining(CoachModel):
    """Training beside the plan, so that strength work keeps out of its way."""

    day: Weekday = Field(description="Day of the week.")
    what: Prose = Field(description="What it is.")
    hard: Flag = Field(default=False, description="true for a key session.")


_LEAST_KEPT: Final = 10
"""Less than this share, in percent, is no week of training."""


class Lighter(CoachModel):
    """Lighter weeks: what remains of each number. Progressions wait."""

    weeks: list[Count] = Field(min_length=1, max_length=104, description="Which weeks of the phase.")
    sets: Percent | None = Field(default=None, description="Share of the sets and rounds that remains.")
    reps: Percent | None = Field(default=None, description="Share of reps, hold and work time that remains.")
    load: Percent | None = Field(default=None, description="Share of the load that remains.")

    @model_validator(mode="after")
    def _is_lighter(self) -> Self:
        shares = {key: getattr(self, key) for key in ("sets", "reps", "load") if getattr(self, key) is not None}
        if not shares:
            refuse("lighter-of-what", "what gets lighter?", "write 'sets: 60 %', 'reps: 80 %' or 'load: 90 %'")
        for key, share in shares.items():
            if not _LEAST_KEPT <= share <= 100:
                refuse(
                    "lighter-of-what",
                    f"a lighter week keeps from {_LEAST_KEPT} to 100 %",
                    "write what remains, such as 60 %",
                    at=(key,),
                )
        return self


class Taper(CoachModel):
    """A taper: what remains of the sets in each week of the phase. Loads stay, progressions wait."""

    sets: list[Percent] = Field(min_length=1, description="Share of the sets and rounds that remains, week by week.")

    @model_validator(mode="after")
    def _is_less(self) -> Self:
        for index, share in enumerate(self.sets):
            if not 0 < share <= 100:
                refuse(
                    "lighter-of-what",
                    "a taper keeps more than 0 % and at most 100 %",
                    "write what remains",
                    at=("sets", index),
                )
        return self


class Phase(CoachModel):
    """Some weeks with one aim and the same sessions."""

    name: Name = Field(description="The phase's name.")
    aim: Prose = Field(description="What it is for.")
    weeks: Count = Field(description="How many weeks.")
    sessions: dict[Weekday, Id] = Field(min_length=1, description="Day of the week: id of the session.")
    lighter: Lighter | None = Field(default=None, description="Lighter weeks of this phase.")
    taper: Taper | None = Field(default=None, description="Makes this phase a taper.")

    @model_validator(mode="before")
    @classmethod
    def _weeks_are_listed(cls, value: Any) -> Any:
        """Refuse one value where a list goes over weeks, with the list that it means."""
        if not isinstance(value, dict):
            return value
        taper, lighter = value.get("taper"), value.get("lighter")
        shares = taper.get("sets") if isinstance(taper, dict) else None
        if isinstance(shares, str):
            weeks = str(value.get("weeks", ""))
            count = int(weeks) if re.fullmatch("[1-9][0-9]?", weeks) else 1
            row = in_a_row(shares) or [shares] * min(count, 6)
            hint = f"write a percentage for each week: '[{', '.join(row)}]'"
            refuse("not-a-list", f"{shown(shares)} does not say which week", hint, at=("taper", "sets"))
        which = lighter.get("weeks") if isinstance(lighter, dict) else None
        if isinstance(which, str):
            numbers = ", ".join(re.findall("[0-9]{1,3}", which)[:6]) or "4"
            hint = f"write the numbers of the weeks as a list: '[{numbers}]'"
            refuse("not-a-list", f"{shown(which)} is not a list of weeks", hint, at=("lighter", "weeks"))
        return value

    @model_validator(mode="after")
    def _weeks_fit(self) -> Self:
        if self.weeks > 104:
            refuse("not-weeks", "a phase has 104 weeks at most", "split it", at=("weeks",))
        if self.lighter:
            for index, week in enumerate(self.lighter.weeks):
                if week > self.weeks:
                    refuse(
                        "no-such-week",
                        f"this phase has {self.weeks} weeks, there is no week {week}",
                        "weeks are counted from the start of the phase",
                        at=("lighter", "weeks", index),
                    )
        if self.taper and len(self.taper.sets) != self.weeks:
            refuse(
                "no-such-week",
                f"the taper lists {len(self.taper.sets)} weeks, the phase has {self.weeks}",
                "write one percentage for each week of the phase",
                at=("taper", "sets"),
            )
        return self


class Change(CoachModel):
    """A change in one week: skip or move a day, do another session, or another dose of one exercise."""

    week: Count = Field(description="Week of the plan.")
    day: Weekday | None = Field(default=None, description="Day of that week.")
    session: Id | None = Field(default=None, description="Session of that week, wherever it stands.")
    skip: Flag = Field(default=False, description="true: no session that day.")
    move_to: Weekday | None = Field(default=None, description="Do it on this day instead.")
    do_instead: Id | None = Field(default=None, description="Id of another session for that day.")
    exercise: Id | None = Field(default=None, description="The exercise whose dose changes.")
    sets: Count | None = Field(default=None, description="Sets or rounds in that week.")
    reps: Reps | None = Field(default=None, description="Reps in that week.")
    leave: Leave | None = Field(default=None, description="Reps left at the end of 'as many as possible'.")
    up_to: Count | None = Field(default=None, description="Reps at which 'as many as possible' ends in any case.")
    hold: Times | None = Field(default=None, description="Hold in that week.")
    work: Times | None = Field(default=None, description="Work time in that week.")
    distance: Distances | None = Field(default=None, description="Distance in that week.")
    load: LoadsField | None = Field(default=None, description="Load in that week.")
    feels_like: EffortField | None = Field(default=None, description="How hard a set with its load should feel then.")
    tempo: TempoField | None = Field(default=None, description="Tempo in that week.")
    rest: Duration | None = Field(default=None, description="Rest in that week.")
    why: Prose = Field(description="The reason; members read it.")

    @property
    def doses(self) -> dict[str, Any]:
        """The numbers that this change sets."""
        keys = (*MEASURES, "leave", "up_to", "sets", "load", "feels_like", "tempo", "rest")
        return {key: getattr(self, key) for key in keys if getattr(self, key) is not None}

    @property
    def listed(self) -> dict[str, int]:
        """The keys that list their sets one by one, and how many each lists."""
        return {key: len(value) for key in (*MEASURES, "load") if len(value := getattr(self, key) or ()) > 1}

    @model_validator(mode="after")
    def _lists_agree(self) -> Self:
        first = next(iter(self.listed), "")
        for key, count in self.listed.items():
            if self.sets is not None and count != self.sets:
                hint = f"leave 'sets' out, or write {self.sets} entries"
                refuse_other_length(count, f"'sets' says {self.sets}", hint, (key,))
            if count != self.listed[first]:
                said, hint = f"the list of '{first}' has {self.listed[first]}", "one entry for each set in both"
                refuse_other_length(count, said, hint, (key,))
        return self

    @model_validator(mode="after")
    def _one_thing(self) -> Self:
        if self.day is None and self.session is None:
            refuse("change-unclear", "which session changes?", "write 'day: friday' or 'session: its-id'")
        ways = [self.skip, self.move_to is not None, self.do_instead is not None, bool(self.doses)]
        if sum(ways) != 1:
            refuse(
                "change-unclear",
                "a change does one thing" if sum(ways) > 1 else "what changes?",
                "write just one of 'skip: true', 'move_to: a day', 'do_instead: a session', or numbers like 'reps: 8'",
            )
        if (self.move_to or self.do_instead) and self.day is None:
            refuse("change-unclear", "which day?", "write 'day' with 'move_to' and 'do_instead'")
        if self.exercise is not None and not self.doses:
            refuse(
                "change-unclear",
                "what changes about this exercise?",
                "write numbers such as 'reps: 8'",
                at=("exercise",),
            )
        if self.exercise is None and set(self.doses) - {"sets", "rest"}:
            refuse("change-unclear", "of which exercise?", "write 'exercise: its-id'")
        if self.feels_like is not None:
            refuse_unfelt(self.feels_like, self.load or ())
        refuse_open(self.reps or (), (), self.leave, self.up_to, self.load or ())
        return self


class Plan(CoachModel):
    """A club's plan over several weeks."""

    name: Name = Field(description="The plan's name.")
    for_: Prose = Field(alias="for", description="Whom it is for.")
    aim: Prose | None = Field(default=None, description="What it leads to.")
    experience: Literal["new", "trained"] = Field(
        default="new",
        description="trained: every member has a season of strength work behind them; checks of jumps ask less.",
    )
    starts: Day = Field(description="The first day; weeks run from its weekday.")
    event: Event | None = Field(default=None, description="The day that it leads up to.")
    other_training: list[OtherTraining] = Field(default=[], max_length=14, description="Training beside the plan.")
    phases: list[Phase] = Field(min_length=1, max_length=24, description="The phases, in order.")
    changes: list[Change] = Field(default=[], max_length=400, description="Changes in single weeks.")
    accept: list[Acceptance] = Field(default=[], max_length=60, description="Warnings that the coach stands by.")

    @property
    def week_count(self) -> int:
        """Weeks of all phases."""
        return sum(phase.weeks for phase in self.phases)

    @model_validator(mode="after")
    def _weeks_exist(self) -> Self:
        if self.week_count > 104:
            refuse("not-weeks", f"this plan has {self.week_count} weeks, 104 are the most", "split it", at=("phases",))
        for index, change in enumerate(self.changes):
            if change.week > self.week_count:
                refuse(
                    "no-such-week",
                    f"this plan has {self.week_count} weeks, there is no week {change.week}",
                    "weeks are counted from the start of the plan",
                    at=("changes", index, "week"),
                )
        return self
