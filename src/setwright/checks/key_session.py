"""A session for the legs just before a key session or the event.

Looks at `other_training` with `hard: true` and at the plan's event. A session with three sets or more for the legs
should leave them a free day before either. Days count as whole days: from Friday to Sunday is 48 h. Where a week's
sessions are on any day, it asks whether the week has enough days for them.

Why it matters: the key session is where the sport itself is trained; heavy legs spoil it, and invite a stumble.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.regions_too_close import ENOUGH_SETS, sets_by_region
from setwright.checks.rule import Doubt, Subject
from setwright.checks.spacing import HOURS_A_DAY, days_to, days_to_event, free_days
from setwright.checks.threshold import threshold
from setwright.dose.resolved import ResolvedPlan, ResolvedSession

ID = "key-session-too-close"
SEVERITY = "warning"
SOURCE = (
    "Robineau J et al., J Strength Cond Res 2016;30:672-683: of 0, 6 and 24 h between strength and endurance work, 24 "
    "served best. A whole free day before a key session is common practice."
)
LEAST: Final = threshold(ID, "least", "time", 48 * 3600, (0, 168 * 3600), "the least time before a key session")
THRESHOLDS = (LEAST,)
LEGS: Final = frozenset(
    {"quadriceps", "hamstrings", "glutes", "hip flexors", "hip stabilisers", "inner thigh", "calf", "shin", "foot"}
)

BAD: Example = {
    "plans/spring": """
other_training: [{day: tuesday, what: Hill intervals., hard: true}]      # legs are on Monday
"""
}
GOOD: Example = {
    "plans/spring": """
other_training: [{day: wednesday, what: Hill intervals., hard: true}]
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each session and each thing that it comes too close to, at the first week."""
    for plan in subject.plans:
        seen: set[tuple[str, str]] = set()
        yield from _on_any_day(subject, plan)
        for session in plan.sessions:
            if session.day is None or not _is_for_legs(subject, session):
                continue
            for what, hours, path in ahead(plan, session):
                if hours * 3600 < subject.value(LEAST) and (session.session, what) not in seen:
                    seen.add((session.session, what))
                    when = "on the same day as" if hours == 0 else f"{hours} h before"
                    yield Doubt(
                        subject.at(f"plans/{plan.ident}.yml", *path),
                        f"{session.session} in week {session.week} is {when} {what}",
                        f"leave {LEAST.said(subject.value(LEAST))}: move one of them, or train other regions that day",
                        plan.plan.accept,
                    )


def _is_for_legs(subject: Subject, session: ResolvedSession) -> bool:
    sets = sets_by_region(subject, session)
    return max((sets[region] for region in LEGS), default=0) >= ENOUGH_SETS


def _on_any_day(subject: Subject, plan: ResolvedPlan) -> Iterator[Doubt]:
    """Yield one doubt at the first week that has fewer free days than sessions for the legs on any day."""
    for week in plan.weeks:
        legs = sum(1 for session in week.sessions if session.day is None and _is_for_legs(subject, session))
        free = free_days(plan, week, float(subject.value(LEAST)))
        if legs > free:
            days = f"{free} day leaves" if free == 1 else f"{free} days leave"
            yield Doubt(
                subject.at(f"plans/{plan.ident}.yml", "phases", week.phase, "sessions"),
                f"{legs} sessions of week {week.number} work the legs, and {days} {LEAST.said(subject.value(LEAST))} "
                "before what is hard",
                "plan fewer of them, or a day less of hard training beside them",
                plan.plan.accept,
            )
            return


def ahead(plan: ResolvedPlan, session: ResolvedSession) -> Iterator[tuple[str, int, tuple[str | int, ...]]]:
    """Yield what comes after a session, in how many hours, and where it is written."""
    for index, other in enumerate(plan.plan.other_training):
        if other.hard and session.day is not None:
            hours = days_to(session.day, other.day) * HOURS_A_DAY
            yield f"the key session of {other.day}", hours, ("other_training", index)
    event, days = plan.plan.event, days_to_event(plan, session)
    if event is not None and days is not None:
        yield event.name, days * HOURS_A_DAY, ("event",)
