"""A programme with every number explicit: what pages, sheets and feeds are made from."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from datetime import time as clock
from fractions import Fraction

from setwright.dose.bands import LoadBand
from setwright.dose.change import Difference
from setwright.dose.choosing import Course, Picks
from setwright.dose.dose import Clock, Dose
from setwright.dose.heights import Heights
from setwright.dose.loads import Choice
from setwright.dose.sequence import Step, session_steps
from setwright.dose.timing import TimeRange, between_blocks, in_minutes
from setwright.dose.week_kind import Remains
from setwright.model.amounts import Rests
from setwright.model.calendar import Break
from setwright.model.load import Load
from setwright.model.plan import Plan
from setwright.model.session import BlockKind, Slot
from setwright.model.vocabulary import WEEKDAYS, Weekday
from setwright.model.weekly import place_of


@dataclass(frozen=True, slots=True)
class Reason:
    """Why the coach changed a session this week, and the day it was moved from, if it was."""

    why: str
    moved_from: Weekday | None = None


@dataclass(frozen=True, slots=True)
class Take:
    """What to take for one of an exercise's loads.

    ``bands`` stand over body weight (or over 1RM, where the load is a share of that); ``choice`` is the owned weight
    for a fixed load. A table over 1RM is shown from ``shown_from_kg`` on; the bands begin below.
    """

    load: Load
    bands: tuple[LoadBand, ...]
    choice: Choice | None
    shown_from_kg: Fraction | None = None

    @property
    def shown(self) -> tuple[LoadBand, ...]:
        """The bands that a table shows."""
        if self.shown_from_kg is None:
            return self.bands
        first = self.shown_from_kg
        return tuple(
            replace(band, from_kg=max(first, band.from_kg), from_included=band.from_included or band.from_kg < first)
            for band in self.bands
            if band.to_kg >= first
        )


@dataclass(frozen=True, slots=True)
class ResolvedItem:
    """One exercise of one session in one week.

    ``takes`` say what to take for each load of its dose, in the order of its sets; ``kit`` is what that is,
    ``kit_name`` what members call it.
    ``rounds`` is whether its sets are rounds of a superset or circuit. ``changes`` say what differs from the last time.
    ``heights`` are those of a box or step, where the session or a limit names any. ``instead`` is what members with a
    choice do in its place, and ``choices`` are those of whoever does this one so. A member may leave out what is
    ``optional``. ``ramp_takes`` say what to take for each warm-up set. ``own_rest_s`` is the rest before the next
    exercise of a round, where the coach wrote one.
    """

    slot: Slot
    exercise: str
    dose: Dose
    kit: str | None
    kit_name: str | None
    takes: tuple[Take, ...]
    rounds: bool
    changes: tuple[Difference, ...]
    reasons: tuple[str, ...]
    heights: Heights | None = None
    optional: bool = False
    choices: tuple[str, ...] = ()
    instead: tuple["ResolvedItem", ...] = ()
    ramp_takes: tuple[Take, ...] = ()
    own_rest_s: int | None = None

    @property
    def ways(self) -> tuple["ResolvedItem", ...]:
        """The exercise itself, and what may be done in its place."""
        return (self, *self.instead)

    def take_of(self, load: Load | None) -> Take | None:
        """Return what to take for a load of the dose; None for the body alone."""
        return next((take for take in (*self.takes, *self.ramp_takes) if take.load == load), None)

    @property
    def bands(self) -> tuple[LoadBand, ...]:
        """The bands of the heaviest load."""
        take = self.take_of(self.dose.heaviest)
        return take.bands if take else ()

    @property
    def choice(self) -> Choice | None:
        """The owned weight of the heaviest load, where that is fixed."""
        take = self.take_of(self.dose.heaviest)
        return take.choice if take else None


@dataclass(frozen=True, slots=True)
class ResolvedBlock:
    """A group of exercises with its rests, in seconds, and how it goes, step by step.

    ``rests_s`` is the rest after every set or round, or after each but the last.
    ``name`` is the coach's own, if any; ``number`` counts the unnamed blocks of one kind where there are several.
    ``changes`` say what differs from the last time for all of them together: rounds and the rest between them.
    ``steps`` are those of the exercises as they stand, ``courses`` how it goes for members with choices, and ``time``
    is that of any of them, from without what is ``optional`` to all of it. ``clock`` is what it keeps to, where it runs
    by the clock.
    """

    index: int
    kind: BlockKind
    name: str | None
    number: int | None
    rests_s: Rests
    change_over_s: int
    items: tuple[ResolvedItem, ...]
    time: TimeRange
    steps: tuple[Step, ...]
    note: str | None
    changes: tuple[Difference, ...]
    optional: bool = False
    courses: tuple[Course, ...] = ()
    clock: Clock | None = None

    def picked(self, picks: Picks) -> tuple[ResolvedItem, ...]:
        """Return the exercises of one combination of ways."""
        return tuple(item.ways[pick] for item, pick in zip(self.items, picks, strict=True))

    def course_with(self, item: ResolvedItem) -> tuple[tuple[Step, ...], tuple[ResolvedItem, ...]]:
        """Return the steps and the exercises of a way through the block that holds one that may be done in it."""
        pick = item.slot[2] + 1 if len(item.slot) > 2 else 0
        for course in self.courses:
            if pick and course.picks[item.slot[1]] == pick:
                return course.steps, self.picked(course.picks)
        return self.steps, self.items

    def guided(self, steps: tuple[Step, ...] | None = None) -> tuple[Step, ...]:
        """Return steps as they are gone through: as many rounds as possible are one, in which a member counts them.

        Args:
            steps: those of a course; of the exercises as they stand where none are given.
        """
        if self.clock is None or self.clock.lasts_s is None:
            return self.steps if steps is None else steps
        return (Step("rounds", self.index, rounds=self.rounds or 0, seconds=self.clock.lasts_s),)

    @property
    def rounds(self) -> int | None:
        """Rounds of a superset or circuit; None for straight sets."""
        return None if self.kind == "straight" else max(item.dose.count for item in self.items)

    @property
    def minutes(self) -> TimeRange:
        """Its time as it is printed."""
        return in_minutes(self.time)


@dataclass(frozen=True, slots=True)
class ResolvedSession:
    """One session of one week, on one day or on any. ``trained`` is the week of its progression, counted from 0.

    ``day`` is None where it is done on any day; ``number`` counts it from 1, then in its week, else on its day.
    ``date`` is that of the plan's first start, None where no day or no start is written. ``since_start`` counts the
    days from the plan's first one, breaks included; where the day is open, as if sessions were spread over the week.
    ``at`` is when it begins on the club's clock, where that is written. ``planned`` is its place before it was moved.
    """

    plan: str
    week: int
    day: Weekday | None
    number: int
    date: date | None
    since_start: int
    at: clock | None
    planned: str
    session: str
    remains: Remains
    trained: int
    first_time: bool
    blocks: tuple[ResolvedBlock, ...]
    time: TimeRange
    reasons: tuple[Reason, ...]

    @property
    def place(self) -> str:
        """Where it stands in its week, as addresses have it: friday, friday-2, session-1. No word of any language."""
        return place_of(self.day, self.number)

    @property
    def steps(self) -> tuple[Step, ...]:
        """The whole session, step by step, without warm-up and cool-down."""
        return session_steps([block.guided() for block in self.blocks])

    @property
    def minutes_between(self) -> TimeRange | None:
        """The changes from block to block, all together, as they are printed; None where there is one block."""
        return in_minutes(between_blocks([block.time for block in self.blocks])) if len(self.blocks) > 1 else None

    @property
    def minutes(self) -> TimeRange:
        """Its time as it is printed, without warm-up and cool-down: what stands at its parts, added up."""
        return sum((block.minutes for block in self.blocks), self.minutes_between or TimeRange(0, 0))

    @property
    def items(self) -> Iterator[ResolvedItem]:
        """Every exercise as it stands, in order."""
        return (item for block in self.blocks for item in block.items)

    @property
    def all_items(self) -> Iterator[ResolvedItem]:
        """Every exercise, each followed by what may be done in its place."""
        return (way for item in self.items for way in item.ways)


@dataclass(frozen=True, slots=True)
class Skipped:
    """A planned session that is left out, and why; ``number`` counts as that of a session does."""

    day: Weekday | None
    number: int
    date: date | None
    session: str
    why: str


@dataclass(frozen=True, slots=True)
class ResolvedWeek:
    """One week of a plan. ``phase`` counts from 0, ``phase_week`` from 1.

    ``starts`` and ``ends`` are those of the plan's first start, None without any; ``after`` is the break that lies
    right before it, for every group.
    """

    number: int
    starts: date | None
    ends: date | None
    phase: int
    phase_week: int
    remains: Remains
    sessions: tuple[ResolvedSession, ...]
    skipped: tuple[Skipped, ...]
    after: Break | None = None


@dataclass(frozen=True, slots=True)
class Group:
    """Members who begin together: the first day of each of their weeks. The only one of a plan has no name."""

    name: str
    slug: str
    starts: tuple[date, ...]

    def date_of(self, week: int, day: Weekday) -> date:
        """Return the date of a day in a week, from 1."""
        first = self.starts[week - 1]
        return first + timedelta(days=(WEEKDAYS.index(day) - first.weekday()) % 7)

    def span_of(self, week: int) -> tuple[date, date]:
        """Return the first and last day of a week, from 1."""
        return self.starts[week - 1], self.starts[week - 1] + timedelta(days=6)


@dataclass(frozen=True, slots=True)
class ResolvedPlan:
    """A plan, week by week; ``groups`` are those who begin together, none where each member begins when they like."""

    ident: str
    plan: Plan
    weeks: tuple[ResolvedWeek, ...]
    groups: tuple[Group, ...] = ()

    def event_on(self, group: Group) -> date | None:
        """Return the day that the plan leads up to for a group, if any."""
        event = self.plan.event
        if event is None or event.week is None or event.day is None:
            return event.date if event else None
        if event.week <= len(self.weeks):
            return group.date_of(event.week, event.day)
        return group.date_of(len(self.weeks), event.day) + timedelta(weeks=event.week - len(self.weeks))

    @property
    def sessions(self) -> Iterator[ResolvedSession]:
        """Every session, in order of date."""
        return (session for week in self.weeks for session in week.sessions)

    def uses(self, exercise: str) -> Iterator[tuple[ResolvedSession, ResolvedItem]]:
        """Yield every place where an exercise stands, also in that of another one, in order of date."""
        return ((s, item) for s in self.sessions for item in s.all_items if item.exercise == exercise)
