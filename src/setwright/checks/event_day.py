"""An event outside its plan.

The event should fall into the plan's last week or the week after.

Why it matters: a taper that ends weeks before the day, or after it, has missed its purpose.
"""

from collections.abc import Iterator
from datetime import timedelta

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

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
        event, last = plan.plan.event, plan.weeks[-1]
        if event is not None and not last.starts <= event.date <= last.ends + timedelta(days=7):
            yield Doubt(
                subject.at(f"plans/{plan.ident}.yml", "event", "date"),
                f"{event.name} is on {event.date}, the plan's last week is {last.starts} to {last.ends}",
                "move the plan's start or change its weeks",
                plan.plan.accept,
            )
