"""A dose beyond what the physiotherapist allows.

Looks at the limits that an exercise carries: load, repetitions, hold, sets in a week, step of the load in a week, and
the earliest phase of a plan. Any week of any plan, and any warm-up or cool-down, that goes beyond one of them stops
publishing; the message names the place of the dose, the hint the place of the limit. Limits cannot be accepted away.

Why it matters: the physiotherapist signed the exercise off with these limits.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from setwright.checks.example import Example
from setwright.checks.load_step import lightened_once, step_percent
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.loads import share_kg
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession, Slot
from setwright.dose.taking import limit_of
from setwright.model.club import BodyWeightRange
from setwright.model.exercise import Exercise, Limits
from setwright.model.load import BodyWeightShare, Load, Weight
from setwright.model.units import plain_number
from setwright.source.finding import Position

ID = "dose-beyond-limit"
SEVERITY = "error"
SOURCE = "The physiotherapist of the club."

BAD: Example = {"exercises/goblet-squat": "limits: {reps: 6}            # the session asks for 8"}
GOOD: Example = {"exercises/goblet-squat": "limits: {reps: 12}"}


@dataclass(frozen=True, slots=True)
class Crossing:
    """A limit's key, the limit and the dose beyond it, in words."""

    key: str
    limit: str
    actual: str


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each limit that an exercise of a session crosses, at the first week that does."""
    for (_, slot), uses in subject.slots.items():
        exercise = subject.programme.exercises[uses[0][2].exercise]
        if exercise.limits is not None:
            yield from _in_session(subject, slot, uses, exercise, exercise.limits)
    yield from _weekly_sets(subject)
    yield from _earliest_phase(subject)
    yield from _in_routines(subject)


def _in_session(
    subject: Subject,
    slot: Slot,
    uses: list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]],
    exercise: Exercise,
    limits: Limits,
) -> Iterator[Doubt]:
    members = subject.programme.club.body_weight
    crossed: set[str] = set()
    before: tuple[ResolvedPlan, Load | None] | None = None
    for plan, where, item in uses:
        step = None
        if where.remains.kind == "normal" and before is not None and before[0] is plan:
            step = step_percent(before[1], item.dose.heaviest)
        found = list(_crossings(exercise, limits, item, members))
        if step is not None and limits.weekly_step is not None and step > limits.weekly_step:
            most = f"{plain_number(limits.weekly_step)} %"
            found.append(Crossing("weekly_step", most, f"a step of {plain_number(step, 1)} %"))
        for crossing in found:
            if crossing.key not in crossed:
                crossed.add(crossing.key)
                place = dose_place(subject, plan, where, item, slot, crossing.key)
                week = f"in week {where.week} of {plan.ident}"
                yield _doubt(subject, place, item.exercise, crossing, week)
        if where.remains.kind == "normal" and not lightened_once(item, step):
            before = (plan, item.dose.heaviest)


def dose_place(
    subject: Subject, plan: ResolvedPlan, where: ResolvedSession, item: ResolvedItem, slot: Slot, key: str
) -> Position:
    """Return where the number stands that a coach would change: in a change of that week, a progression or the dose."""
    written_key = "load" if key == "weekly_step" else key
    for index, change in enumerate(plan.plan.changes):
        if change.week == where.week and change.exercise == item.exercise and written_key in change.doses:
            return subject.at(f"plans/{plan.ident}.yml", "changes", index, written_key)
    path = place_in_session(where.session, slot)
    written = subject.programme.sessions[where.session].blocks[slot[0]].exercises[slot[1]]
    if where.trained and written.progress is not None:
        return subject.at(*path, "progress")
    return subject.at(*path, written_key)


def _doubt(subject: Subject, place: Position, ident: str, crossing: Crossing, when: str) -> Doubt:
    limit_at = subject.at(f"exercises/{ident}.yml", "limits", crossing.key)
    return Doubt(
        place,
        f"{ident}: {crossing.actual} {when} is beyond the limit of {crossing.limit}",
        f"the limit is in {limit_at}; lower the dose, or ask the physiotherapist",
    )


def _crossings(exercise: Exercise, limits: Limits, item: ResolvedItem, members: BodyWeightRange) -> Iterator[Crossing]:
    yield from _amounts(limits, item.dose.measure, item.dose.amount.high)
    for load in item.dose.loads:
        yield from _too_heavy(exercise, limits, load, item, members)


def _too_heavy(
    exercise: Exercise, limits: Limits, load: Load, item: ResolvedItem, members: BodyWeightRange
) -> Iterator[Crossing]:
    if isinstance(load, BodyWeightShare):
        most = limit_of(exercise, load.per_hand)
        if most.percent is not None and load.percent > most.percent:
            yield Crossing("load", str(limits.load), str(load))
        # Load bands never offer more than a limit in kg. Without bands, the heaviest member would lift more.
        elif most.kg is not None and not item.bands and share_kg(load.percent, members.to) > most.kg:
            yield Crossing("load", str(limits.load), f"{load} for a member of {plain_number(members.to)} kg")
    elif isinstance(load, Weight):
        limit_kg = limit_of(exercise, load.per_hand).at(members.from_)
        if limit_kg is not None and load.kg > limit_kg:
            lightest = f" for a member of {plain_number(members.from_)} kg"
            who = lightest if isinstance(limits.load, BodyWeightShare) else ""
            yield Crossing("load", str(limits.load), f"{load}{who}")


def _amounts(limits: Limits, measure: str, amount: int | Fraction) -> Iterator[Crossing]:
    if limits.reps is not None and measure == "reps" and amount > limits.reps:
        yield Crossing("reps", str(limits.reps), f"{amount} reps")
    if limits.hold is not None and measure == "hold" and amount > limits.hold:
        yield Crossing("hold", f"{limits.hold} s", f"a hold of {amount} s")


def _weekly_sets(subject: Subject) -> Iterator[Doubt]:
    crossed: set[str] = set()
    for plan in subject.plans:
        for week in plan.weeks:
            total: dict[str, int] = {}
            for session in week.sessions:
                for item in session.items:
                    total[item.exercise] = total.get(item.exercise, 0) + item.dose.count
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


def _earliest_phase(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise and plan in which it comes too early."""
    for plan in subject.plans:
        crossed: set[str] = set()
        for week in plan.weeks:
            for session in week.sessions:
                for item in session.items:
                    limits = subject.programme.exercises[item.exercise].limits
                    first = limits.earliest_phase if limits else None
                    if first is None or week.phase + 1 >= first or item.exercise in crossed:
                        continue
                    crossed.add(item.exercise)
                    limit_at = subject.at(f"exercises/{item.exercise}.yml", "limits", "earliest_phase")
                    phase = plan.plan.phases[week.phase].name
                    yield Doubt(
                        subject.at(*place_in_session(session.session, item.slot)),
                        f"{item.exercise}: week {week.number} of {plan.ident} is in phase {week.phase + 1} ({phase}), "
                        f"before phase {first}, the earliest allowed",
                        f"the limit is in {limit_at}; use an easier variation until then, or ask the physiotherapist",
                    )


def _in_routines(subject: Subject) -> Iterator[Doubt]:
    for ident, routine in subject.programme.routines.items():
        for index, part in enumerate(routine.exercises):
            limits = subject.programme.exercises[part.exercise].limits if part.exercise else None
            if part.exercise is None or limits is None:
                continue
            measure = next(key for key in ("reps", "hold", "work", "distance") if getattr(part, key) is not None)
            for crossing in _amounts(limits, measure, getattr(part, measure)):
                place = subject.at(f"routines/{ident}.yml", "exercises", index, crossing.key)
                yield _doubt(subject, place, part.exercise, crossing, f"in the {routine.kind} {ident}")
