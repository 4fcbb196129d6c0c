"""A programme with every number explicit: what pages, sheets and feeds are made from."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from datetime import time as clock
from fractions import Fraction

from setwright.dose.bands import LoadBand
from setwright.dose.change import Difference
from setwright.dose.dose import Dose
from setwright.dose.heights import Heights
from setwright.dose.loads import Choice
from setwright.dose.sequence import Step, session_steps
from setwright.dose.timing import TimeRange
from setwright.dose.week_kind import Remains
from setwright.model.calendar import Break
from setwright.model.load import Load
from setwright.model.plan import Plan
from setwright.model.session import BlockKind
from setwright.model.vocabulary import WEEKDAYS, Weekday
from setwright.model.weekly import place_of

Slot = tuple[int, int]
"""Where an exercise stands in its session: block and place in the block, from 0."""


@dataclass(frozen=True, slots=True)
class Reason:
    """Why the coach changed a session this week, and the day it was moved from, if it was."""

    why: str
    moved_from: Weekday | None = None


@dataclass(frozen=True, slots=True)
class Take:
    """What to take for one of an exercise's loads.

    ``bands`` stand over body weight (or over 1RM, where the load is a share of that); ``choice`` is the owned weight
    for a fixed load.
    """

    load: Load
    bands: tuple[LoadBand, ...]
    choice: Choice | None


@dataclass(frozen=True, slots=True)
class ResolvedItem:
    """One exercise of one session in one week.

    ``takes`` say what to take for each load of its dose, in the order of its sets; ``kit`` is what that is.
    ``rounds`` is whether its sets are rounds of a superset or circuit. ``changes`` say what differs from the last time.
    ``heights`` are those of a box or step, where the session or a limit names any.
    """

    slot: Slot
    exercise: str
    dose: Dose
    kit: str | None
    takes: tuple[Take, ...]
    rounds: bool
    changes: tuple[Difference, ...]
    reasons: tuple[str, ...]
    heights: Heights | None = None

    def take_of(self, load: Load | None) -> Take | None:
        """Return what to take for a load of the dose; None for the body alone."""
        return next((take for take in self.takes if take.load == load), None)

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

    ``name`` is the coach's own, if any; ``number`` counts the unnamed blocks of one kind where there are several.
    ``changes`` say what differs from the last time for all of them together: rounds and the rest between them.
    """

    index: int
    kind: BlockKind
    name: str | None
    number: int | None
    rest_s: int
    change_over_s: int
    items: tuple[ResolvedItem, ...]
    time: TimeRange
    steps: tuple[Step, ...]
    note: str | None
    changes: tuple[Difference, ...]

    @property
    def rounds(self) -> int | None:
        """Rounds of a superset or circuit; None for straight sets."""
        return None if self.kind == "straight" else max(item.dose.count for item in self.items)


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
        return session_steps([block.steps for block in self.blocks])

    @property
    def items(self) -> Iterator[ResolvedItem]:
        """Every exercise, in order."""
        return (item for block in self.blocks for item in block.items)


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
        """Yield every place where an exercise stands, in order of date."""
        return ((s, item) for s in self.sessions for item in s.items if item.exercise == exercise)


def choice_at(bands: tuple[LoadBand, ...], base_kg: Fraction) -> Choice | None:
    """Return the owned weight for a body weight (or a 1RM), from the bands of a load."""
    return next((band.choice for band in bands if band.holds(base_kg)), None)
