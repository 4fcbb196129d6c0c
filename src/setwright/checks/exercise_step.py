"""An exercise with many more repetitions, seconds or metres than the week before.

Adds up what a week asks of one exercise, in all its sets and sessions and on both sides. Compares each week with the
last full one before it in which the exercise stood; lighter weeks, tapers and weeks that a change made lighter are
passed over. Fewer than three sets count as three of the same; an exercise that begins is not compared. Jumps are judged
by their landings, in a check of their own.

Why it matters: loads and sets may stay as they are, and a set of 14 where it was 8 is still another set.
"""

from collections.abc import Iterator
from fractions import Fraction
from operator import itemgetter
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.checks.weeks import comparable, is_full
from setwright.dose.contacts import is_jump
from setwright.dose.dose import metres
from setwright.dose.resolved import ResolvedPlan, ResolvedWeek
from setwright.model.prescription import Measure
from setwright.model.units import plain_number

ID = "exercise-step-too-large"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(
    ID, "most", "%", 50, (10, 100), "the largest step of an exercise's repetitions or time in a week"
)
THRESHOLDS = (MOST,)
FEWEST_SETS: Final = 3
"""Fewer sets count as so many: there, one set more is always a large step."""

_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8, progress: {reps: {weeks: [8, %s]}}}
      - {exercise: step-down, reps: 8}
"""
BAD: Example = {"sessions/legs": _SESSION % "14"}
GOOD: Example = {"sessions/legs": _SESSION % "10, 12, 14"}

Asked = dict[tuple[str, Measure], tuple[int, Fraction]]
"""Sets and amount of each exercise in a week: repetitions, seconds or centimetres."""


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a plan, at its first week that grows too much."""
    for plan in subject.plans:
        yield from _in_plan(subject, plan)


def _in_plan(subject: Subject, plan: ResolvedPlan) -> Iterator[Doubt]:
    most = subject.value(MOST)
    full: list[ResolvedWeek] = []
    seen: set[str] = set()
    for week in plan.weeks:
        if week.remains.kind != "normal":
            continue
        now = _asked(subject, week)
        last: dict[tuple[str, Measure], tuple[int, int, Fraction]] = {}
        for one in comparable(plan.plan, full, week):
            last |= {what: (one.number, *asked) for what, asked in _asked(subject, one).items()}
        for (exercise, measure), (_, amount) in now.items():
            if (exercise, measure) not in last or exercise in seen:
                continue
            number, sets, before = last[exercise, measure]
            step = (amount / max(before, before / sets * FEWEST_SETS) - 1) * 100
            than = " than three sets of that" if sets < FEWEST_SETS else ""
            if step <= most:
                continue
            seen.add(exercise)
            yield Doubt(
                subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                f"{exercise}: {_said(measure, amount)} in week {week.number}, {_said(measure, before)} "
                f"in week {number}: {plain_number(step, 1)} % more{than}",
                f"{MOST.said(most)} more is the most: climb in smaller steps, or with fewer sets",
                plan.plan.accept,
            )
        if is_full(plan.plan, week):
            full.append(week)


def _asked(subject: Subject, week: ResolvedWeek) -> Asked:
    found: Asked = {}
    for session in week.sessions:
        for item in session.items:
            here: Asked = {}
            for way in item.ways:
                amount = sum((Fraction(one.amount.high) for one in way.dose.working), Fraction(0)) * way.dose.side_count
                what = (way.exercise, way.dose.measure)
                here[what] = max(here.get(what, (0, Fraction(0))), (way.dose.count, amount), key=itemgetter(1))
            for what, (more_sets, more) in here.items():
                if not is_jump(subject.programme.exercises[what[0]]):
                    sets, before = found.get(what, (0, Fraction(0)))
                    found[what] = (sets + more_sets, before + more)
    return found


def _said(measure: Measure, amount: Fraction) -> str:
    match measure:
        case "reps":
            return f"{plain_number(amount)} reps"
        case "distance":
            return f"{plain_number(metres(amount))} m"
        case _:
            return f"{plain_number(amount)} s"
