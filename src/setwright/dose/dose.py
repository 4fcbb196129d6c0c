"""A dose: the explicit numbers of one exercise in one week, set by set."""

from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby
from typing import Final, Literal, Self

from setwright.model.load import Load, demand, same_kind
from setwright.model.prescription import Measure
from setwright.model.span import Span
from setwright.model.tempo import Tempo
from setwright.model.vocabulary import Sides

USUAL_TEMPO: Final = Tempo(2, 0, 2, 0)
"""The pace of a repetition where nothing is written: 2 s down, 2 s up. Common practice, no source."""

CARRY_CM_PER_S: Final = 100
"""A loaded walk is counted at 1 m/s. Common practice, no source."""

SetKind = Literal["work", "ramp"]
"""A working set, or one of the lighter ones that lead up to it: those take time, and count for nothing else."""


@dataclass(frozen=True, slots=True)
class Set:
    """One set: how much, with what, how fast, and the rest after it in seconds.

    ``feels`` is how hard it should feel with its load: an effort, or repetitions in reserve.
    """

    amount: Span
    load: Load | None = None
    tempo: Tempo | None = None
    rest_s: int = 0
    kind: SetKind = "work"
    feels: Load | None = None


@dataclass(frozen=True, slots=True)
class Clock:
    """What a block that runs by the clock keeps to, in seconds.

    ``every_s`` is how often a set starts. ``lasts_s`` is how long as many rounds as possible are done, ``up_to`` the
    number at which they end in any case; the sets of a dose are then what they are counted as.
    """

    every_s: int | None = None
    lasts_s: int | None = None
    up_to: int | None = None


@dataclass(frozen=True, slots=True)
class Group:
    """Sets in a row that are the same."""

    count: int
    each: Set


@dataclass(frozen=True, slots=True)
class Dose:
    """Everything a member needs to know about one exercise this week.

    The amount of a set is reps (a count), hold or work (seconds), or distance (centimetres), as ``measure`` says; on
    each side where the sides work one at a time, in all where they alternate. There is one set or more; in a superset
    or circuit, each is a round. What is asked about a dose is asked of its working sets.
    """

    measure: Measure
    sides: Sides
    sets: tuple[Set, ...]
    clock: Clock | None = None

    @property
    def open_rounds(self) -> bool:
        """Whether its rounds are as many as possible in a time."""
        return self.clock is not None and self.clock.lasts_s is not None

    @property
    def most_count(self) -> int:
        """How many sets it may come to: of as many rounds as possible, where they end in any case."""
        return max(self.count, self.clock.up_to or 0) if self.clock is not None else self.count

    @property
    def side_count(self) -> int:
        """How often a set's amount is done: twice where the sides work one at a time."""
        return 2 if self.sides == "one at a time" else 1

    @property
    def working(self) -> tuple[Set, ...]:
        """The sets that count."""
        return tuple(one for one in self.sets if one.kind == "work")

    @property
    def ramp(self) -> tuple[Set, ...]:
        """The warm-up sets before them."""
        return tuple(one for one in self.sets if one.kind == "ramp")

    @property
    def without_ramp(self) -> "Dose":
        """The dose without its warm-up sets."""
        return replace(self, sets=self.working)

    @property
    def first(self) -> Set:
        """The first working set."""
        return self.working[0]

    @property
    def rests_s(self) -> tuple[int, ...]:
        """The rests between the working sets, in seconds; a single one where all are the same, or there is one set."""
        rests = tuple(one.rest_s for one in self.working[:-1]) or (self.first.rest_s,)
        return rests if len(set(rests)) > 1 else rests[:1]

    @property
    def count(self) -> int:
        """How many sets."""
        return len(self.working)

    @property
    def groups(self) -> tuple[Group, ...]:
        """The working sets as people say them: equal neighbours together, the rest after each left aside."""
        alike = (list(same) for _, same in groupby(self.working, key=lambda one: replace(one, rest_s=0)))
        return tuple(Group(len(same), same[0]) for same in alike)

    @property
    def same_throughout(self) -> bool:
        """Whether all sets are the same."""
        return len(self.groups) == 1

    @property
    def amount(self) -> Span:
        """The amount of a set, from the least that any of them asks for to the most."""
        return Span(min(one.amount.low for one in self.working), max(one.amount.high for one in self.working))

    @property
    def loads(self) -> tuple[Load, ...]:
        """Every load that a set is done with, each once, in order."""
        return tuple(dict.fromkeys(one.load for one in self.working if one.load is not None))

    @property
    def feels(self) -> Load | None:
        """How hard a set with its load should feel, if anything says so."""
        return next((one.feels for one in self.working if one.feels is not None), None)

    @property
    def heaviest(self) -> Load | None:
        """The heaviest load; the first one where they cannot be compared, None for the body alone."""
        loads = self.loads
        if not loads or not loads[0].weighed or not all(same_kind(loads[0], load) for load in loads):
            return loads[0] if loads else None
        return max(loads, key=demand)

    @property
    def total_reps(self) -> Span:
        """All repetitions, both sides; none for holds, work and walks."""
        if self.measure != "reps":
            return Span.of(0)
        return sum((one.amount for one in self.working), Span.of(0)) * self.side_count

    @property
    def tension_s(self) -> Span:
        """Time under tension in seconds: repetitions × tempo, holds and work as they are, walks at 1 m/s.

        Repetitions without a tempo count as usual ones (2 s down, 2 s up).
        """
        return sum((self.seconds_of(one) for one in self.working), Span.of(0)) * self.side_count

    def seconds_of(self, one: Set) -> Span:
        """Return the whole seconds that one set takes on one side, at the tempo that is written."""
        match self.measure:
            case "reps":
                return one.amount * (one.tempo or USUAL_TEMPO).rep_s
            case "distance":
                return Span(int(one.amount.low / CARRY_CM_PER_S), int(one.amount.high / CARRY_CM_PER_S))
            case _:
                return one.amount

    @classmethod
    def alike(cls, count: int, measure: Measure, sides: Sides, each: Set) -> Self:
        """Return a dose of so many equal sets."""
        return cls(measure, sides, (each,) * count)

    def of(self, count: int) -> "Dose":
        """Return the dose with so many working sets: the last ones left out, or the last one again."""
        kept = (*self.working, *(self.working[-1],) * count)[:count]
        return replace(self, sets=(*self.ramp, *kept))

    def with_sets(self, **numbers: Span | Load | Tempo | int | None) -> "Dose":
        """Return the dose with the same number in every working set, such as ``rest_s=60``."""
        changed = tuple(replace(one, **numbers) if one.kind == "work" else one for one in self.sets)  # type: ignore[arg-type]
        return replace(self, sets=changed)


def metres(amount_cm: int | Fraction) -> Fraction:
    """Return a distance in metres."""
    return Fraction(amount_cm) / 100
