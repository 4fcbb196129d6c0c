"""What a week asks of the body: sets by region and pattern, repetitions, load lifted, time under tension, session load.

Warm-ups and cool-downs are not counted, and neither is the training beside the plan. Of a range, the upper end counts.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from setwright.dose.dose import Dose, Set
from setwright.dose.resolved import ResolvedItem, ResolvedWeek
from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare, HelpShare, HelpWeight, Weight, in_all
from setwright.model.programme import Programme

MAIN_SET: Final = Fraction(1)
ALSO_SET: Final = Fraction(1, 2)
"""A set counts whole for the regions that do most of the work, and half for those that help. After Pelland J et al.
2024 (a preprint), whose data fitted best with half of an indirect set, of 1, a half and none."""


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


def lifted(dose: Dose) -> Lifted:
    """Return the load lifted: repetitions × load, both hands together. The body's own weight is not counted."""
    return sum((_lifted(dose, one) for one in dose.working), Lifted())


def _lifted(dose: Dose, one: Set) -> Lifted:
    load, reps = one.load, int(one.amount.high) * dose.side_count
    if load is None or dose.measure != "reps":
        return Lifted()
    match load:
        case Weight():
            return Lifted(fixed_kg=in_all(load) * reps)
        case BodyWeightShare():
            return Lifted(share=in_all(load) / 100 * reps)
        case HelpShare() | HelpWeight():
            return Lifted()  # what is lifted is the body, less than all of it
        case _:
            return Lifted(unknown_reps=reps)


def exposure(items: Iterable[ResolvedItem], exercises: Mapping[str, Exercise], club: Club | None = None) -> Exposure:
    """Return the work of some exercises together, such as of a week; a club's own regions count as what they belong to.

    Where something else may be done in an exercise's place, the most of any way counts, figure by figure.
    """
    sets = reps = tension = 0
    by_region: dict[str, Fraction] = {}
    by_pattern: dict[str, int] = {}
    whole = Lifted()
    for item in items:
        each = [_alone(way.dose, exercises[way.exercise], club) for way in item.ways]
        sets += max(one.sets for one in each)
        reps += max(one.reps for one in each)
        tension += max(one.tension_s for one in each)
        whole += Lifted(
            max(one.lifted.fixed_kg for one in each),
            max(one.lifted.share for one in each),
            max(one.lifted.unknown_reps for one in each),
        )
        for region in dict.fromkeys(region for one in each for region in one.by_region):
            most = max(one.by_region.get(region, Fraction(0)) for one in each)
            by_region[region] = by_region.get(region, Fraction(0)) + most
        for pattern in dict.fromkeys(pattern for one in each for pattern in one.by_pattern):
            by_pattern[pattern] = by_pattern.get(pattern, 0) + max(one.by_pattern.get(pattern, 0) for one in each)
    return Exposure(sets, by_region, by_pattern, reps, whole, tension)


def _alone(dose: Dose, exercise: Exercise, club: Club | None) -> Exposure:
    """Return the work of one dose."""
    main, also = (
        names if club is None else club.counted(names) for names in (exercise.regions.main, exercise.regions.also)
    )
    counted = [(region, MAIN_SET) for region in main]
    counted += [(region, ALSO_SET) for region in also if region not in main]
    return Exposure(
        dose.count,
        {region: dose.count * share for region, share in counted},
        {exercise.pattern: dose.count},
        int(dose.total_reps.high),
        lifted(dose),
        int(dose.tension_s.high),
    )


def week_exposure(week: ResolvedWeek, programme: Programme) -> Exposure:
    """Return the work of a week of a plan."""
    return exposure((i for session in week.sessions for i in session.items), programme.exercises, programme.club)


def session_load(effort: int, minutes: Fraction) -> Fraction:
    """Return a session's load: the effort of the whole session from 0 to 10, times its minutes.

    Foster C, Med Sci Sports Exerc 1998;30:1164-1168. Monotony and strain of that paper are not computed: they want
    every training of the week, and the runs beside the plan have no effort written.
    """
    return effort * minutes
