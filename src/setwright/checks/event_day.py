"""An event outside its plan.

The event should fall into the plan's last week or the week after.

Why it matters: a taper that ends weeks before the day, or after it, has missed its purpose.
"""

from collections.abc import Iterator
from datetime import timedelta

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.dose.resolved import ResolvedPlan

ID = "event-outside-plan"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {
    "plans/spring": """
starts: 2027-03-01                                    # four weeks, to 28 March
event: {name: Spring relay, date: 2027-05-09}
"""
}
GOOD: Example = {
    "plans/spring": """
starts: 2027-03-01
event: {name: Spring relay, date: 2027-03-28}
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan whose event is elsewhere."""
    for plan in subject.plans:
        for key, said in _elsewhere(plan):
            yield Doubt(
                subject.at(f"plans/{plan.ident}.yml", "event", key),
                said,
                "move the plan's start or change its weeks",
                plan.plan.accept,
            )


def _elsewhere(plan: ResolvedPlan) -> Iterator[tuple[str, str]]:
    """Yield the key of an event that is elsewhere, with what is wrong, for each group that it is wrong for."""
    event, last = plan.plan.event, len(plan.weeks)
    if event is None:
        return
    if event.week is not None:
        if event.week < last:
            yield "week", f"{event.name} is in week {event.week}, the plan's last week is {last}"
        return
    for group in plan.groups:
        on, (starts, ends) = plan.event_on(group), group.span_of(last)
        if on is not None and not starts <= on <= ends + timedelta(days=7):
            whose = f"the last week of '{group.name}'" if group.name else "the plan's last week"
            yield "date", f"{event.name} is on {on}, {whose} is {starts} to {ends}"
