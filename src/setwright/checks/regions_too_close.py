"""Two sessions that work the same region too soon after each other.

Looks at sessions with three sets or more on the same main region. Days count as whole days: from Monday to Wednesday
is 48 h. Where a week's sessions are on any day, it asks whether the week is long enough for them in their order.

Why it matters: muscle and tendon need a day or two before the same work again; before that, the second session is
trained on tired legs.
"""

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise
from math import ceil
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.spacing import HOURS_A_DAY
from setwright.checks.threshold import threshold
from setwright.dose.resolved import ResolvedPlan, ResolvedSession

ID = "regions-too-close"
SEVERITY = "warning"
SOURCE = COMMON
LEAST: Final = threshold(ID, "least", "time", 48 * 3600, (0, 168 * 3600), "the least time between two such sessions")
THRESHOLDS = (LEAST,)
ENOUGH_SETS: Final = 3
_DAYS_A_WEEK: Final = 7

BAD: Example = {
    "plans/spring": """
phases:
  - {name: First, aim: To begin., weeks: 4, sessions: {monday: legs, tuesday: legs}}
"""
}
GOOD: Example = {
    "plans/spring": """
phases:
  - {name: First, aim: To begin., weeks: 4, sessions: {monday: legs, thursday: legs}}
"""
}


def sets_by_region(subject: Subject, session: ResolvedSession) -> Counter[str]:
    """Return the sets of a session by main region; where there is a choice, of the way with the most."""
    found: Counter[str] = Counter()
    for item in session.items:
        most: Counter[str] = Counter()
        for way in item.ways:
            most |= Counter(dict.fromkeys(subject.main_regions(way.exercise), way.dose.count))
        found += most
    return found


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each pair of sessions, at the first week in which they are too close."""
    for plan in subject.plans:
        seen: set[tuple[str, str]] = set()
        # Next neighbours are enough: what is too close to a later session is closer still to the one between.
        yield from _on_any_day(subject, plan)
        for first, second in pairwise(sorted(plan.sessions, key=lambda session: session.since_start)):
            if first.day is None or second.day is None:
                continue
            pair = (first.session, second.session)
            hours = (second.since_start - first.since_start) * HOURS_A_DAY
            if hours * 3600 >= subject.value(LEAST) or pair in seen:
                continue
            if shared := _shared(subject, first, second):
                seen.add(pair)
                yield _doubt(subject, plan, first, second, hours, shared)


def _shared(subject: Subject, first: ResolvedSession, second: ResolvedSession) -> list[str]:
    one, other = sets_by_region(subject, first), sets_by_region(subject, second)
    return [region for region in one if min(one[region], other[region]) >= ENOUGH_SETS]


def _on_any_day(subject: Subject, plan: ResolvedPlan) -> Iterator[Doubt]:
    """Yield one doubt at the first week that is too short for its sessions on any day, back to its first one."""
    least_days = ceil(subject.value(LEAST) / (HOURS_A_DAY * 3600))
    for week in plan.weeks:
        row = [session for session in week.sessions if session.day is None]
        shared = [region for pair in pairwise([*row, *row[:1]]) for region in _shared(subject, *pair)[:1]]
        if len(row) > 1 and len(shared) * least_days > _DAYS_A_WEEK:
            yield Doubt(
                subject.at(f"plans/{plan.ident}.yml", "phases", week.phase, "sessions"),
                f"week {week.number} has {len(row)} sessions, and with {LEAST.said(subject.value(LEAST))} between two "
                f"that work {' or '.join(dict.fromkeys(shared))}, it would need {len(shared) * least_days} days",
                "plan fewer sessions, or let neighbours work other regions",
                plan.plan.accept,
            )
            return


def _doubt(
    subject: Subject,
    plan: ResolvedPlan,
    first: ResolvedSession,
    second: ResolvedSession,
    hours: int,
    shared: list[str],
) -> Doubt:
    return Doubt(
        subject.at(f"plans/{plan.ident}.yml", "phases", plan.weeks[second.week - 1].phase, "sessions", str(second.day)),
        f"{first.session} and {second.session} are {hours} h apart in week {second.week} and both work "
        f"{' and '.join(shared)}",
        f"leave {LEAST.said(subject.value(LEAST))} between them, or work other regions",
        plan.plan.accept,
    )
