"""A dose beyond what the physiotherapist allows.

Looks at the limits that an exercise carries: load, repetitions, hold, sets in a week, and step of the load in a week.
Any week of any plan that goes beyond one of them stops publishing. Limits cannot be accepted away.

Why it matters: the physiotherapist signed the exercise off with these limits.
"""

from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from setwright.checks.load_step import step_percent
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.dose import Dose
from setwright.dose.resolve import limit_of
from setwright.model.exercise import Exercise, Limits
from setwright.model.load import BodyWeightShare, Weight
from setwright.model.units import plain_number

ID = "dose-beyond-limit"
SEVERITY = "error"
SOURCE = "The physiotherapist of the club."


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each limit that an exercise of a session crosses, at the first week that does."""
    lightest_kg = subject.programme.club.body_weight.from_
    for (session, slot), uses in subject.slots.items():
        exercise = subject.programme.exercises[uses[0][2].exercise]
        if exercise.limits is None:
            continue
        crossed: set[str] = set()
        before: tuple[Any, Dose] | None = None
        for plan, where, item in uses:
            step_from = before[1].load if before and before[0] is plan else None
            for key, limit, actual in _crossings(exercise, exercise.limits, item.dose, lightest_kg):
                if key not in crossed:
                    crossed.add(key)
                    yield _doubt(subject, session, slot, item.exercise, key, limit, actual, where.week, plan.ident)
            step = step_percent(step_from, item.dose.load) if where.remains.kind == "normal" else None
            most = exercise.limits.weekly_step
            if step is not None and most is not None and step > most and "weekly_step" not in crossed:
                crossed.add("weekly_step")
                said, allowed = f"a step of {plain_number(step, 1)} %", f"{plain_number(most)} %"
                yield _doubt(
                    subject, session, slot, item.exercise, "weekly_step", allowed, said, where.week, plan.ident
                )
            before = (plan, item.dose) if where.remains.kind == "normal" else before
    yield from _weekly_sets(subject)


def _doubt(
    subject: Subject, session: str, slot: Any, ident: str, key: str, limit: str, actual: str, week: int, plan: str
) -> Doubt:
    limit_at = subject.at(f"exercises/{ident}.yml", "limits", key)
    return Doubt(
        subject.at(*place_in_session(session, slot)),
        f"{ident}: {actual} in week {week} of {plan} is beyond the limit of {limit}",
        f"the limit is in {limit_at}; lower the dose, or ask the physiotherapist",
    )


def _crossings(exercise: Exercise, limits: Limits, dose: Dose, lightest_kg: Fraction) -> Iterator[tuple[str, str, str]]:
    if limits.reps is not None and dose.measure == "reps" and dose.amount > limits.reps:
        yield "reps", str(limits.reps), f"{dose.amount} reps"
    if limits.hold is not None and dose.measure == "hold" and dose.amount > limits.hold:
        yield "hold", f"{limits.hold} s", f"a hold of {dose.amount} s"
    load = dose.load
    if isinstance(load, BodyWeightShare):
        # A limit in kg needs no check here: the load bands never offer more than it.
        most = limit_of(exercise, load.per_hand).percent
        if most is not None and load.percent > most:
            yield "load", str(limits.load), str(load)
    elif isinstance(load, Weight):
        limit_kg = limit_of(exercise, load.per_hand).at(lightest_kg)
        if limit_kg is not None and load.kg > limit_kg:
            who = f" for a member of {plain_number(lightest_kg)} kg" if isinstance(limits.load, BodyWeightShare) else ""
            yield "load", str(limits.load), f"{load}{who}"


def _weekly_sets(subject: Subject) -> Iterator[Doubt]:
    crossed: set[str] = set()
    for plan in subject.plans:
        for week in plan.weeks:
            total: dict[str, int] = {}
            for session in week.sessions:
                for item in session.items:
                    total[item.exercise] = total.get(item.exercise, 0) + item.dose.sets
            for ident, sets in total.items():
                limits = subject.programme.exercises[ident].limits
                most = limits.weekly_sets if limits else None
                if most is not None and sets > most and ident not in crossed:
                    crossed.add(ident)
                    limit_at = subject.at(f"exercises/{ident}.yml", "limits", "weekly_sets")
                    yield Doubt(
                        subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                        f"{ident}: {sets} sets in week {week.number} of {plan.ident} are beyond the limit of {most}",
                        f"the limit is in {limit_at}; lower the sets, or ask the physiotherapist",
                    )
