"""A plan: phases of weeks, each with its sessions, leading up to a day that matters."""

import re
from datetime import date
from typing import Any, Literal, Self

from pydantic import Field, model_validator

from setwright.model.acceptance import Acceptance
from setwright.model.amounts import Distances, LoadsField, Reps, Times
from setwright.model.base import CoachModel, refuse
from setwright.model.calendar import Break, Event, Starts, refuse_unlighter, slug, week_after, week_starts
from setwright.model.load import EffortField
from setwright.model.open_end import Leave, refuse_open
from setwright.model.prescription import MEASURES, refuse_other_length, refuse_unfelt
from setwright.model.slips import in_a_row
from setwright.model.tempo import TempoField
from setwright.model.text import Id, Name, Prose
from setwright.model.units import Count, Duration, Flag, Percent, shown
from setwright.model.vocabulary import WEEKDAYS, Weekday
from setwright.model.weekly import Planned, Sessions, days_of, held, in_order, planned


class OtherTraining(CoachModel):
    """Training beside the plan, so that strength work keeps out of its way."""

    day: Weekday = Field(description="Day of the week.")
    what: Prose = Field(description="What it is.")
    hard: Flag = Field(default=False, description="true for a key session.")


class Lighter(CoachModel):
    """Lighter weeks: what remains of each number. Progressions wait."""

    weeks: list[Count] = Field(min_length=1, max_length=104, description="Which weeks of the phase.")
    sets: Percent | None = Field(default=None, description="Share of the sets and rounds that remains.")
    reps: Percent | None = Field(default=None, description="Share of reps, hold and work time that remains.")
    load: Percent | None = Field(default=None, description="Share of the load that remains.")

    @model_validator(mode="after")
    def _is_lighter(self) -> Self:
        refuse_unlighter({"sets": self.sets, "reps": self.reps, "load": self.load})
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
    sessions: Sessions = Field(
        description="Day of the week: id of the session, or a list of ids; a list alone: one after the other, any day."
    )
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
    number: Count | None = Field(
        default=None, description="Which session: of the week where its sessions are on any day, else of that day."
    )
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
        if self.day is None and self.number is None and self.session is None:
            refuse("change-unclear", "which session changes?", "write 'day: friday' or 'session: its-id'")
        ways = [self.skip, self.move_to is not None, self.do_instead is not None, bool(self.doses)]
        if sum(ways) != 1:
            refuse(
                "change-unclear",
                "a change does one thing" if sum(ways) > 1 else "what changes?",
                "write just one of 'skip: true', 'move_to: a day', 'do_instead: a session', or numbers like 'reps: 8'",
            )
        if (self.move_to or self.do_instead) and self.day is None and self.number is None:
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
    starts: Starts | None = Field(
        default=None,
        description="The first day; weeks run from its weekday. One for each group by its name; left out, any day.",
    )
    follows: Id | None = Field(default=None, description="Id of the plan that members come from.")
    event: Event | None = Field(default=None, description="The day that it leads up to.")
    other_training: list[OtherTraining] = Field(default=[], max_length=14, description="Training beside the plan.")
    phases: list[Phase] = Field(min_length=1, max_length=24, description="The phases, in order.")
    breaks: list[Break] = Field(default=[], max_length=12, description="Days without training, in order.")
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

    @property
    def groups(self) -> dict[str, date]:
        """The first day of each group by its name; one without a name where the plan has one start, none without."""
        if self.starts is None:
            return {}
        return self.starts if isinstance(self.starts, dict) else {"": self.starts}

    @property
    def first_weekday(self) -> Weekday:
        """The day on which weeks start; Monday where the plan has no date."""
        return WEEKDAYS[min((day.weekday() for day in list(self.groups.values())[:1]), default=0)]

    @property
    def keeps_weekdays(self) -> bool:
        """Whether anything of the plan stands on a weekday, so that no member can begin its weeks on any."""
        return any(days_of(phase.sessions) for phase in self.phases) or bool(self.event and self.event.day)

    def planned(self, week: int) -> tuple[Planned, ...]:
        """Return what a week of the plan, from 1, holds before single changes, in order."""
        index, phase_week = self.phase_of(week)
        return tuple(planned(self.phases[index].sessions, phase_week, self.first_weekday))

    def phase_of(self, week: int) -> tuple[int, int]:
        """Return the phase, from 0, that a week of the plan belongs to, and which week of the phase it is, from 1."""
        for index, phase in enumerate(self.phases):
            if week <= phase.weeks:
                return index, week
            week -= phase.weeks
        raise IndexError(week)

    @property
    def session_ids(self) -> set[str]:
        """Every session that some phase holds."""
        return {ident for phase in self.phases for ident in held(phase.sessions)}

    @model_validator(mode="after")
    def _starts_agree(self) -> Self:
        if not isinstance(self.starts, dict):
            return self
        if len(self.starts) < 2:
            refuse("groups-unclear", "one group alone needs no name", "write 'starts: 2027-01-04'", at=("starts",))
        slugs: dict[str, str] = {}
        for name, day in self.starts.items():
            if not slug(name) or slug(name) in slugs:
                said = (
                    f"'{name}' and '{slugs[slug(name)]}' read alike in an address"
                    if slug(name)
                    else f"'{name}' has no letters"
                )
                refuse(
                    "groups-unclear",
                    said,
                    "give the group a name of its own, with letters from a to z",
                    at=("starts", name),
                )
            slugs[slug(name)] = name
            for index, phase in enumerate(self.phases):
                days, first = days_of(phase.sessions), WEEKDAYS[day.weekday()]
                if in_order(days, first) != in_order(days, self.first_weekday):
                    order = ", ".join(in_order(days, first))
                    refuse(
                        "groups-unclear",
                        f"weeks of '{name}' begin on a {first}, so that its days come in another order: {order}",
                        "start every group on the same weekday, or write the sessions as a list, on any day",
                        at=("phases", index, "sessions"),
                    )
        return self

    @model_validator(mode="after")
    def _calendar_fits(self) -> Self:
        event = self.event
        if self.starts is None and event is not None and event.date is not None:
            hint = "write 'week: 12' with 'day: sunday', or give the plan its 'starts'"
            refuse("event-unclear", "a plan without 'starts' leads up to no date", hint, at=("event", "date"))
        if event is not None and event.week is not None and event.week > self.week_count + 1:
            said = f"this plan has {self.week_count} weeks, there is no week {event.week}"
            refuse("no-such-week", said, "weeks are counted from the start of the plan", at=("event", "week"))
        for index, one in enumerate(self.breaks):
            if self.starts is None:
                hint = "leave it out: without 'starts', each member moves the own weeks on the phone"
                refuse(
                    "break-without-dates", "a plan without 'starts' has no dates to break", hint, at=("breaks", index)
                )
            if index and one.from_ <= self.breaks[index - 1].to:
                said = "this break begins before the one above ends"
                refuse(
                    "breaks-overlap",
                    said,
                    "write them in order, and two that touch as one",
                    at=("breaks", index, "from"),
                )
            self._refuse_idle(index, one)
        return self

    def _refuse_idle(self, index: int, one: Break) -> None:
        """Refuse a break that no week moves behind, and a way back that comes in another week for each group."""
        after = {}
        for name, day in self.groups.items():
            after[name] = week_after(week_starts(day, self.week_count, self.breaks), one)
        if not any(after.values()):
            refuse(
                "break-misses",
                "no week of the plan comes after this break",
                "a break lies between the first and the last day; check its dates, or delete it",
                at=("breaks", index),
            )
        if one.coming_back is not None and len(set(after.values())) > 1:
            said = " and ".join(f"week {week} of '{name}'" for name, week in after.items() if week)
            refuse(
                "break-misses",
                f"the way back would be {said}: one plan has the same doses for all groups",
                "leave 'coming_back' out, or write a plan for each group",
                at=("breaks", index, "coming_back"),
            )
