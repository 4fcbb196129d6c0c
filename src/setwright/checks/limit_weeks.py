"""Limits on weeks and whole sessions: the step of a load, sets in a week, the first phase and week, landings.

They count every way to an exercise: sessions, changes of one week, what may be done in the place of another exercise,
and the warm-up and cool-down that a member may pick.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import islice

from setwright.checks.limit_crossing import dose_place, limit_place
from setwright.checks.load_step import oversteps, uses_before, uses_in
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.contacts import contacts, routine_contacts
from setwright.dose.in_use import most_sets
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.dose.ways import offered, ways_from
from setwright.model.exercise import Exercise
from setwright.model.routine import Routine
from setwright.model.units import plain_number
from setwright.source.finding import Position


def weekly_steps(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise whose load steps by more than its limit, at the first such step of any plan."""
    crossed: set[str] = set()
    for plan in subject.plans:
        before = uses_before(subject.plans, plan)
        for ident, uses in uses_in(plan).items():
            limits = subject.programme.exercises[ident].limits
            if limits is None or limits.weekly_step is None or ident in crossed:
                continue
            for found in islice(
                oversteps(subject, plan.ident, uses, limits.weekly_step, True, before.get(ident, ())), 1
            ):
                crossed.add(ident)
                yield Doubt(
                    dose_place(subject, plan, found.session, found.now, found.now.slot, "load"),
                    f"{ident}: {found}; the limit is {plain_number(limits.weekly_step)} % in a week",
                    f"the limit is in {limit_place(subject, ident, 'weekly_step')}; take a smaller step, or ask the "
                    "physiotherapist",
                )


def weekly_sets(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise with more sets in a week than its limit, at the first such week of any plan."""
    crossed: set[str] = set()
    for plan in subject.plans:
        for week in plan.weeks:
            total: dict[str, int] = {}
            for session in week.sessions:
                for ident, sets in sets_in(subject, session).items():
                    total[ident] = total.get(ident, 0) + sets
            for ident, sets in total.items():
                most = _limit(subject, ident, "weekly_sets")
                if most is None or sets <= most or ident in crossed:
                    continue
                crossed.add(ident)
                own = sum(most_sets(item).get(ident, 0) for s in week.sessions for item in s.items)
                ways = "" if own == sets else f", {sets - own} of them as a way of another exercise or in a routine,"
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"{ident}: {sets} sets{ways} in week {week.number} of {plan.ident} are beyond the limit of {most}",
                    f"the limit is in {limit_place(subject, ident, 'weekly_sets')}; lower the sets, or ask the "
                    "physiotherapist",
                )


def sets_in(subject: Subject, session: ResolvedSession) -> dict[str, int]:
    """Return the most sets of each exercise that a member may come to in a session, by whatever way."""
    total: dict[str, int] = {}
    for item in session.items:
        here: dict[str, int] = {}
        for done in item.ways:
            ways = ways_from(subject.programme.exercises[done.exercise])
            for ident in (done.exercise, *(way.exercise for way in ways)):
                here[ident] = max(here.get(ident, 0), done.dose.most_count)
        for ident, sets in here.items():
            total[ident] = total.get(ident, 0) + sets
    for routines in _picks(subject, session):
        most: dict[str, int] = {}
        for routine in routines:
            for ident, sets in _sets_of(routine).items():
                most[ident] = max(most.get(ident, 0), sets)
        for ident, sets in most.items():
            total[ident] = total.get(ident, 0) + sets
    return total


def earliest(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise and plan in which some way leads to it in too early a phase or week."""
    for plan in subject.plans:
        crossed: set[str] = set()
        for week in plan.weeks:
            for session in week.sessions:
                for ident, place, how in _led_to(subject, session):
                    early = _too_early(subject, week, ident)
                    if early is None or ident in crossed:
                        continue
                    crossed.add(ident)
                    key, first = early
                    yield Doubt(
                        place,
                        f"{ident}: week {week.number} of {plan.ident} is {_in_phase(plan, week)}{how}, before {first}, "
                        "the earliest allowed",
                        f"the limit is in {limit_place(subject, ident, key)}; use an easier variation until then, or "
                        "ask the physiotherapist",
                    )


def landings(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise and session with more landings, warm-up included, than its limit."""
    crossed: set[tuple[str, str]] = set()
    for plan in subject.plans:
        for session in plan.sessions:
            total = most_landings(subject, session)
            for ident, place, _ in _led_to(subject, session):
                most = _limit(subject, ident, "contacts")
                if most is None or total <= most or (ident, session.session) in crossed:
                    continue
                crossed.add((ident, session.session))
                yield Doubt(
                    place,
                    f"{ident}: {total} landings in week {session.week} of {plan.ident}, all jumps of the session and "
                    f"its warm-up together, are beyond the limit of {most}",
                    f"the limit is in {limit_place(subject, ident, 'contacts')}; fewer jumps, or ask the "
                    "physiotherapist",
                )


def most_landings(subject: Subject, session: ResolvedSession) -> int:
    """Return the most landings that a member may come to in a session, by whatever way."""
    exercises = subject.programme.exercises
    total = sum(max(_most_contacts(way, exercises) for way in item.ways) for item in session.items)
    for routines in _picks(subject, session):
        total += max((routine_contacts(routine, exercises) for routine in routines), default=0)
    return total


def _most_contacts(item: ResolvedItem, exercises: Mapping[str, Exercise]) -> int:
    own = exercises[item.exercise]
    ways = [exercises[way.exercise] for way in ways_from(own)]
    most = item.dose.of(item.dose.most_count)
    paces = [(one, dose) for one in ways for dose in (most, most.with_sets(tempo=one.tempo))]
    return max(contacts(one, replace(dose, sides=one.sides)) for one, dose in ((own, most), *paces))


def _picks(subject: Subject, session: ResolvedSession) -> Iterable[list[Routine]]:
    """Return the warm-ups of a session, and its cool-downs: of each, a member picks one."""
    routines = [routine for _, routine in offered(subject.programme, session.session)]
    return [[one for one in routines if one.kind == kind] for kind in ("warm-up", "cool-down")]


def _sets_of(routine: Routine) -> dict[str, int]:
    total: dict[str, int] = {}
    for part in routine.exercises:
        if part.exercise is not None:
            total[part.exercise] = total.get(part.exercise, 0) + routine.rounds
    return total


def _led_to(subject: Subject, session: ResolvedSession) -> Iterator[tuple[str, Position, str]]:
    """Yield each exercise that a session leads to, the place that does, and how, where not by a dose of its own."""
    for item in session.all_items:
        place = subject.at(*place_in_session(session.session, item.slot))
        yield item.exercise, place, ""
        for way in ways_from(subject.programme.exercises[item.exercise]):
            yield way.exercise, place, f", as the {way.kind} way of {item.exercise}"
    for ident, routine in offered(subject.programme, session.session):
        for index, part in enumerate(routine.exercises):
            if part.exercise is not None:
                place = subject.at(f"routines/{ident}.yml", "exercises", index)
                yield part.exercise, place, f", in the {routine.kind} {ident}"


def _limit(subject: Subject, ident: str, key: str) -> int | None:
    limits = subject.programme.exercises[ident].limits
    limit: int | None = getattr(limits, key) if limits is not None else None
    return limit


def _too_early(subject: Subject, week: ResolvedWeek, ident: str) -> tuple[str, str] | None:
    """Return the key of the limit that a week comes before, and what that names; None where it is late enough."""
    for key, now in (("earliest_phase", week.phase + 1), ("earliest_week", week.number)):
        first = _limit(subject, ident, key)
        if first is not None and now < first:
            return key, f"{key.removeprefix('earliest_')} {first}"
    return None


def _in_phase(plan: ResolvedPlan, week: ResolvedWeek) -> str:
    return f"in phase {week.phase + 1} ({plan.plan.phases[week.phase].name})"
