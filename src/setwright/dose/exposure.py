"""What a week asks of the body: sets by region and pattern, repetitions, load lifted, time under tension, session load.

Warm-ups and cool-downs are not counted, and neither is the training beside the plan.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import sqrt
from typing import Final

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem, ResolvedWeek
from setwright.dose.timing import CARRY_CM_PER_S, USUAL_TEMPO
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare, Weight

MAIN_SET: Final = Fraction(1)
ALSO_SET: Final = Fraction(1, 2)
"""A set counts whole for the regions that do most of the work, and half for those that help. After Pelland J et al.
2024 (a preprint), whose data fitted best with half of an indirect set, of 1, a half and none."""

DAYS: Final = 7


@dataclass(frozen=True, slots=True)
class Lifted:
    """Kilograms moved in all repetitions: some fixed, some a share of body weight, some not known.

    ``share`` is in body weights: 2.4 stands for 2.4 times one's own weight. ``unknown_reps`` are repetitions with a
    load that the member chooses, such as by effort or with a band.
    """

    fixed_kg: Fraction = Fraction(0)
    share: Fraction = Fraction(0)
    unknown_reps: int = 0

    def __add__(self, other: "Lifted") -> "Lifted":
        return Lifted(self.fixed_kg + other.fixed_kg, self.share + other.share, self.unknown_reps + other.unknown_reps)

    def at(self, body_weight_kg: Fraction) -> Fraction:
        """Return the known kilograms for a body weight."""
        return self.fixed_kg + self.share * body_weight_kg


@dataclass(frozen=True, slots=True)
class Exposure:
    """A week's work. Sets by region may be halves; ``tension_s`` is time under tension in seconds."""

    sets: int
    by_region: Mapping[str, Fraction]
    by_pattern: Mapping[str, int]
    reps: int
    lifted: Lifted
    tension_s: int


@dataclass(frozen=True, slots=True)
class WeekLoad:
    """Session loads of seven days and what is made of them.

    ``monotony`` and ``strain`` are None where every day is the same: then the spread is nothing, and a division by it
    has no result.
    """

    days: tuple[Fraction, ...]
    total: Fraction
    mean: Fraction
    spread: float
    monotony: float | None
    strain: float | None


def reps_of(dose: Dose) -> int:
    """Return the repetitions of one exercise in one session, all sets and both sides; holds and walks have none."""
    return dose.sets * int(dose.amount) * dose.side_count if dose.measure == "reps" else 0


def tension_s(dose: Dose) -> int:
    """Return the time under tension in seconds: repetitions × tempo, holds and work as they are, walks at 1 m/s.

    Repetitions without a tempo count as usual ones (2 s down, 2 s up).
    """
    match dose.measure:
        case "reps":
            one_set = int(dose.amount) * (dose.tempo or USUAL_TEMPO).rep_s
        case "distance":
            one_set = int(dose.amount / CARRY_CM_PER_S)
        case _:
            one_set = int(dose.amount)
    return one_set * dose.side_count * dose.sets


def lifted(dose: Dose) -> Lifted:
    """Return the load lifted: repetitions × load, both hands together. The body's own weight is not counted."""
    reps = reps_of(dose)
    load = dose.load
    if load is None or not reps:
        return Lifted()
    hands = 2 if getattr(load, "per_hand", False) else 1
    match load:
        case Weight():
            return Lifted(fixed_kg=load.kg * hands * reps)
        case BodyWeightShare():
            return Lifted(share=load.percent / 100 * hands * reps)
        case _:
            return Lifted(unknown_reps=reps)


def exposure(items: Iterable[ResolvedItem], exercises: Mapping[str, Exercise]) -> Exposure:
    """Return the work of some exercises together, such as of a week."""
    sets = reps = tension = 0
    by_region: dict[str, Fraction] = {}
    by_pattern: dict[str, int] = {}
    whole = Lifted()
    for item in items:
        dose, exercise = item.dose, exercises[item.exercise]
        sets += dose.sets
        reps += reps_of(dose)
        tension += tension_s(dose)
        whole += lifted(dose)
        by_pattern[exercise.pattern] = by_pattern.get(exercise.pattern, 0) + dose.sets
        counted = [(region, MAIN_SET) for region in exercise.regions.main]
        counted += [(region, ALSO_SET) for region in exercise.regions.also if region not in exercise.regions.main]
        for region, share in counted:
            by_region[region] = by_region.get(region, Fraction(0)) + dose.sets * share
    return Exposure(sets, by_region, by_pattern, reps, whole, tension)


def week_exposure(week: ResolvedWeek, exercises: Mapping[str, Exercise]) -> Exposure:
    """Return the work of a week of a plan."""
    return exposure((item for session in week.sessions for item in session.items), exercises)


def session_load(effort: int, minutes: Fraction) -> Fraction:
    """Return a session's load: effort from 0 to 10, times minutes.

    Foster C, Med Sci Sports Exerc 1998;30:1164-1168.
    """
    return effort * minutes


def week_load(days: Sequence[Fraction]) -> WeekLoad:
    """Return total, monotony and strain of a week (Foster C, Med Sci Sports Exerc 1998;30:1164-1168).

    Monotony is the mean of the daily loads divided by their standard deviation, strain the total times the monotony.
    The paper's abstract does not say which standard deviation; here it is that of the whole population (divided by 7),
    since the seven days are the week and no sample of it. Days of rest count as 0.

    Args:
        days: the load of each of the seven days.

    Raises:
        ValueError: for another number of days.
    """
    if len(days) != DAYS:
        raise ValueError(f"a week has {DAYS} days, not {len(days)}")
    total = sum(days, Fraction(0))
    mean = total / DAYS
    spread = sqrt(sum((day - mean) ** 2 for day in days) / DAYS)
    if not spread:
        return WeekLoad(tuple(days), total, mean, 0.0, None, None)
    monotony = float(mean) / spread
    return WeekLoad(tuple(days), total, mean, spread, monotony, float(total) * monotony)
