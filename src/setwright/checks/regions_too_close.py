"""Two sessions that work the same region too soon after each other.

Looks at sessions with three sets or more on the same main region. Days count as whole days: from Monday to Wednesday
is 48 h.

Why it matters: muscle and tendon need a day or two before the same work again; before that, the second session is
trained on tired legs.
"""

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.dose.resolved import ResolvedPlan, ResolvedSession

ID = "regions-too-close"
SEVERITY = "warning"
SOURCE = COMMON
LEAST: Final = threshold(ID, "least", "time", 48 * 3600, (0, 168 * 3600), "the least time between two such sessions")
THRESHOLDS = (LEAST,)
ENOUGH_SETS: Final = 3
_HOURS_A_DAY: Final = 24

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
        for first, second in pairwise(sorted(plan.sessions, key=lambda session: session.date)):
            pair = (first.session, second.session)
            hours = (second.date - first.date).days * _HOURS_A_DAY
            if hours * 3600 >= subject.value(LEAST) or pair in seen:
                continue
            one, other = sets_by_region(subject, first), sets_by_region(subject, second)
            shared = [region for region in one if min(one[region], other[region]) >= ENOUGH_SETS]
            if shared:
                seen.add(pair)
                yield _doubt(subject, plan, first, second, hours, shared)


def _doubt(
    subject: Subject,
    plan: ResolvedPlan,
    first: ResolvedSession,
    second: ResolvedSession,
    hours: int,
    shared: list[str],
) -> Doubt:
    return Doubt(
        subject.at(f"plans/{plan.ident}.yml", "phases", plan.weeks[second.week - 1].phase, "sessions", second.day),
        f"{first.session} and {second.session} are {hours} h apart in week {second.week} and both work "
        f"{' and '.join(shared)}",
        f"leave {LEAST.said(subject.value(LEAST))} between them, or work other regions",
        plan.plan.accept,
    )
