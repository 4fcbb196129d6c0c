"""Jumps in sessions and weeks: what the checks about them share."""

from collections.abc import Iterator

from setwright.checks.key_session import LEGS
from setwright.checks.rule import Subject
from setwright.dose.contacts import contacts, is_jump
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession, ResolvedWeek

_QUIET = frozenset({"mobility", "balance", "jump"})
"""Movements that leave the legs fresh for a jump, or are one. Common practice, no source."""


def jumps_of(subject: Subject, session: ResolvedSession) -> list[ResolvedItem]:
    """Return the jumps of a session and of what may be done instead, in order."""
    return [item for item in session.all_items if is_jump(subject.programme.exercises[item.exercise])]


def first_with_jumps(subject: Subject) -> Iterator[tuple[ResolvedPlan, ResolvedSession, list[ResolvedItem]]]:
    """Yield each session that holds jumps, on the first day that it is trained anywhere."""
    seen: set[str] = set()
    for plan in subject.plans:
        for session in plan.sessions:
            jumps = jumps_of(subject, session)
            if jumps and session.session not in seen:
                seen.add(session.session)
                yield plan, session, jumps


def tires(subject: Subject, item: ResolvedItem) -> bool:
    """Say whether an exercise takes strength, so that what follows it is done tired."""
    return subject.programme.exercises[item.exercise].pattern not in _QUIET


def tires_legs(subject: Subject, item: ResolvedItem) -> bool:
    """Say whether an exercise takes strength from the legs."""
    return tires(subject, item) and bool(LEGS & set(subject.main_regions(item.exercise)))


def contacts_in_session(subject: Subject, session: ResolvedSession) -> int:
    """Return the landings of a session, warm-up excluded; where there is a choice, of the way with the most."""
    exercises = subject.programme.exercises
    return sum(max(contacts(exercises[way.exercise], way.dose) for way in item.ways) for item in session.items)


def contacts_in_week(subject: Subject, week: ResolvedWeek) -> int:
    """Return the landings of a week, warm-ups excluded."""
    return sum(contacts_in_session(subject, session) for session in week.sessions)


def is_beginning(plan: ResolvedPlan, phase: int) -> bool:
    """Say whether a phase is the first of a plan for members who may be new to strength work."""
    return phase == 0 and plan.plan.experience != "trained"
