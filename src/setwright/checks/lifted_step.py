"""A week that lifts many more kilograms than the one before.

Multiplies repetitions by load over all sessions of a week, for the lightest and the heaviest member. Compares each week
with the last full one before it, across sessions and phases; lighter weeks, tapers and weeks that a change made lighter
are passed over. A week of fewer than five times one's own weight counts as that. Loads by effort and bands are not in
the sum: where half of their repetitions or more turn into kilograms, nothing is compared.

Why it matters: a new phase may raise loads, repetitions and exercises at once, each by a sensible step.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.checks.weeks import week_pairs
from setwright.dose.exposure import Lifted, week_exposure
from setwright.model.units import plain_number

ID = "lifted-step-too-large"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "%", 40, (10, 100), "the largest step of the kilograms lifted in a week")
THRESHOLDS = (MOST,)
LEAST_SHARE: Final = 5
"""A week that lifts less than so many times one's own weight counts as that."""

_PHASES = """
experience: trained
phases:
  - {name: First, aim: To begin., weeks: 2, sessions: {monday: legs}}
  - {name: Second, aim: To go on., weeks: 2, sessions: {monday: legs, thursday: arms}}
"""
_LEGS = """
blocks:
  - {kind: straight, sets: 5, exercises: [{exercise: goblet-squat, reps: 8, load: 24 kg}]}
"""
_ARMS = """
blocks:                                             # one set more: 480 kg after 960 kg
  - kind: straight
    sets: 1
    exercises:
      - {exercise: press, reps: 20, load: %s}
"""
_PRESS = "{pattern: push, regions: {main: [chest]}, kit: [kettlebell], at_home: {use: a rucksack}}"
_USUAL = {"exercises/press": _PRESS, "sessions/legs": _LEGS, "plans/spring": _PHASES}
BAD: Example = {**_USUAL, "sessions/arms": _ARMS % "24 kg"}
GOOD: Example = {**_USUAL, "sessions/arms": _ARMS % "8 kg"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan, at its first week that grows too much."""
    most, members = subject.value(MOST), subject.programme.club.body_weight
    for plan in subject.plans:
        for before, week in week_pairs(plan):
            was, now = (week_exposure(one, subject.programme).lifted for one in (before, week))
            if was.unknown_reps and now.unknown_reps * 2 <= was.unknown_reps:
                continue
            step, kg = max((_step(was, now, kg), kg) for kg in (members.from_, members.to))
            if step > most:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"week {week.number} lifts {_said(now, kg)}, week {before.number} {_said(was, kg)}, for a member "
                    f"of {plain_number(kg)} kg: {plain_number(step, 1)} % more",
                    f"{MOST.said(most)} more is the most: begin a phase with fewer sets or lighter loads",
                    plan.plan.accept,
                )
                break


def _step(was: Lifted, now: Lifted, body_weight_kg: Fraction) -> Fraction:
    before = max(was.at(body_weight_kg), LEAST_SHARE * body_weight_kg)
    return (now.at(body_weight_kg) / before - 1) * 100


def _said(lifted: Lifted, body_weight_kg: Fraction) -> str:
    return f"{plain_number(lifted.at(body_weight_kg), 0)} kg"
