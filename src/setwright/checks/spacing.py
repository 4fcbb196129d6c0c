"""How far apart things of a plan are, in days: what all checks of rest between days share."""

from collections.abc import Iterator
from datetime import timedelta

from setwright.dose.resolved import ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.model.vocabulary import WEEKDAYS, Weekday

HOURS_A_DAY = 24


def length_in_days(plan: ResolvedPlan) -> int:
    """Return the days from the first of a plan to the last of its last week, breaks included."""
    if not plan.groups:
        return 7 * len(plan.weeks)
    return (plan.groups[0].starts[-1] - plan.groups[0].starts[0]).days + 7


def days_to(day: Weekday, other: Weekday) -> int:
    """Return the days from one weekday to the next such one of another, none where they are the same."""
    return (WEEKDAYS.index(other) - WEEKDAYS.index(day)) % 7


def days_to_event(plan: ResolvedPlan, session: ResolvedSession) -> int | None:
    """Return the days from a session on a fixed day to the event, of the group that has fewest; None if it is over."""
    if session.day is None:
        return None
    week, place = plan.weeks[session.week - 1], days_to(plan.plan.first_weekday, session.day)
    ahead = [days - place for days in _event_from(plan, week) if days >= place]
    return min(ahead, default=None)


def free_days(plan: ResolvedPlan, week: ResolvedWeek, least_s: int | float) -> int:
    """Return how many days of a week leave a time before each key session and before the event, in seconds."""
    events = list(_event_from(plan, week))
    hard = [days_to(plan.plan.first_weekday, other.day) for other in plan.plan.other_training if other.hard]
    found = 0
    for place in range(7):
        ahead = [(day - place) % 7 for day in hard] + [day - place for day in events if day >= place]
        found += all(days * HOURS_A_DAY * 3600 >= least_s for days in ahead)
    return found


def _event_from(plan: ResolvedPlan, week: ResolvedWeek) -> Iterator[int]:
    """Yield the days from the first one of a week to the event, for each group; less than none where it is over."""
    event = plan.plan.event
    if event is not None and not plan.groups and event.week is not None and event.day is not None:
        yield 7 * (event.week - week.number) + days_to(plan.plan.first_weekday, event.day)
    for group in plan.groups:
        on = plan.event_on(group)
        if on is not None:
            yield (on - group.starts[week.number - 1]) // timedelta(days=1)
