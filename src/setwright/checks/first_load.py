"""A first load that is heavy.

Looks at the first load of each exercise in a plan, and at the first one of each kind (in kg, of body weight, of 1RM),
since steps are judged from one load to the next, and the first is no step. It is heavy where it begins near the load
limit of the exercise, so that there is nowhere to go, where it is a large part of what a member weighs, or of what
they can lift once, or where a set is to feel very hard. A weight for everyone is held against the lightest member.
Plans of members who all have a season of strength work behind them (`experience: trained`) may begin heavier.

Why it matters: the first evening is the one with the most new movements and the least practice.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.limit_crossing import dose_place
from setwright.checks.limit_open import left
from setwright.checks.rule import Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.dose.bounding import effort_of
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.taking import limit_of
from setwright.model.club import BodyWeightRange
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare, Load, OneRepMaxShare, Weight, in_all, magnitude
from setwright.model.plan import Plan
from setwright.model.units import plain_number

ID = "first-load-heavy"
SEVERITY = "warning"
SOURCE = (
    "Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708, from memory: 60 to 70 % of 1RM for those who are new to "
    "it, 80 % and more for those who are trained. The shares of a limit and of body weight are common practice."
)
MOST: Final = threshold(
    ID, "most", "%", 90, (50, 100), "the largest share of its load limit that an exercise begins at"
)
THRESHOLDS = (MOST,)

OF_BODY_WEIGHT: Final = {"new": Fraction(30), "trained": Fraction(75)}
"""Heaviest first load in percent of body weight, both hands together. Common practice, no source."""
EFFORT_OF_NEW: Final = Fraction(8)
"""Hardest first set, 0 to 10, for those who may be new. Common practice, no source."""
OF_1RM: Final = {"new": Fraction(70), "trained": Fraction(85)}
"""Heaviest first load in percent of 1RM."""

_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 8, load: %s %% bodyweight}]
"""
BAD: Example = {"exercises/goblet-squat": "limits: {load: 25 % bodyweight}", "sessions/legs": _SESSION % "24"}
GOOD: Example = {"exercises/goblet-squat": "limits: {load: 25 % bodyweight}", "sessions/legs": _SESSION % "15"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise and plan, at its first load of a kind that is heavy."""
    most = subject.value(MOST)
    for plan in subject.plans:
        begun: set[tuple[str, type[Load]]] = set()
        told: set[str] = set()
        for session in plan.sessions:
            first = [
                item
                for item in session.all_items
                if _kinds(item) - {kind for one, kind in begun if one == item.exercise}
            ]
            for item in first:
                why = _heavy(subject, plan.plan, item, most)
                if why is not None and item.exercise not in told:
                    told.add(item.exercise)
                    yield _doubt(subject, plan, session, item, why)
            if session.remains.kind == "normal":  # a lighter first week does not excuse the next one
                begun |= {(item.exercise, kind) for item in first for kind in _kinds(item)}


def _kinds(item: ResolvedItem) -> set[type[Load]]:
    return {type(load) for load in (*item.dose.loads, *_felt(item)) if load.weighed or effort_of(load) is not None}


def _felt(item: ResolvedItem) -> list[Load]:
    """Return what says how hard the sets of a dose are beside their loads."""
    return [load for one in item.dose.working for load in (one.feels, left(one.amount)) if load is not None]


def _heavy(subject: Subject, plan: Plan, item: ResolvedItem, most: Fraction) -> str | None:
    """Return why the heaviest load of an exercise is heavy to begin with; None where it is not."""
    load = item.dose.heaviest
    members = subject.programme.club.body_weight
    who = "trained" if plan.experience == "trained" else "new"
    efforts = [effort for one in (*item.dose.loads, *_felt(item)) if (effort := effort_of(one)) is not None]
    if who == "new" and max(efforts, default=EFFORT_OF_NEW) > EFFORT_OF_NEW:
        return f"an effort of {plain_number(EFFORT_OF_NEW)} of 10, 2 reps in reserve, is the most"
    if load is None or not load.weighed:
        return None
    if isinstance(load, OneRepMaxShare):
        return f"{plain_number(OF_1RM[who])} % of 1RM is the most" if load.percent > OF_1RM[who] else None
    of_limit = _of_limit(subject.programme.exercises[item.exercise], load, members)
    if of_limit is not None and of_limit > 100:
        return None  # beyond its limit, which is told as that
    if of_limit is not None and of_limit > most:
        return f"{plain_number(of_limit, 1)} % of its limit, and {MOST.said(most)} is the most"
    of_body = in_all(load) if isinstance(load, BodyWeightShare) else in_all(load) / members.from_ * 100
    if of_body > OF_BODY_WEIGHT[who]:
        whose = "" if isinstance(load, BodyWeightShare) else f" of a member of {plain_number(members.from_)} kg"
        said = f"{plain_number(of_body, 1)} % of the body weight{whose}"
        return f"{said}, and {plain_number(OF_BODY_WEIGHT[who])} % is the most"
    return None


def _of_limit(exercise: Exercise, load: Load, members: BodyWeightRange) -> Fraction | None:
    """Return a load in percent of its limit; None where there is none, or where weights keep to it by themselves."""
    limit = limit_of(exercise, load.per_hand)
    if isinstance(load, Weight):
        most_kg = limit.at(members.from_)
        return load.kg / most_kg * 100 if most_kg else None
    return magnitude(load) / limit.percent * 100 if limit.percent else None


def _doubt(subject: Subject, plan: ResolvedPlan, session: ResolvedSession, item: ResolvedItem, why: str) -> Doubt:
    felt = _felt(item)
    begins = item.dose.heaviest or (felt[0] if felt else None)
    return Doubt(
        dose_place(subject, plan, session, item, item.slot, "load"),
        f"{item.exercise}: {plan.ident} begins it at {begins} in week {session.week}: {why}",
        "begin lighter and let it progress, or say with 'accept' what members did before",
        [*subject.accepted_at(session.session, item.slot), *plan.plan.accept],
    )
