"""A full week right after a long break.

Looks at the weeks without training between two weeks of a plan, for each of its groups. After more than two of them,
the next week has to be lighter: in its sets, its repetitions or its loads.

Why it matters: a member remembers the last load, and muscle and tendon do not. The first week back is the one with the
sorest legs, and with the strains.
"""

from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject
from setwright.checks.threshold import threshold

ID = "no-way-back"
SEVERITY = "warning"
SOURCE = (
    "Bosquet L et al., Scand J Med Sci Sports 2013;23:e140-e149, from memory: strength falls clearly from the third "
    "week without training. What counts as a lighter week is common practice."
)
MOST: Final = threshold(ID, "most", "weeks", 2, (1, 12), "the most weeks without training before a full week")
THRESHOLDS = (MOST,)
KEEPS_PERCENT: Final = 90
"""More than this share of every number is no lighter week. Common practice, no source."""

BAD: Example = {"plans/spring": "breaks: [{from: 2027-03-08, to: 2027-03-28, why: The hut is closed.}]"}
GOOD: Example = {
    "plans/spring": """
breaks:
  - {from: 2027-03-08, to: 2027-03-28, why: The hut is closed., coming_back: {sets: 60 %, load: 80 %}}
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each full week of a plan that comes after too long a break, at that break."""
    most = subject.value(MOST)
    for plan in subject.plans:
        seen: set[int] = set()
        for group in plan.groups:
            for number, (before, now) in enumerate(pairwise(group.starts), 2):
                remains = plan.weeks[number - 1].remains
                without = (now - before).days // 7 - 1
                if without <= most or number in seen or min(remains.sets, remains.reps, remains.load) <= KEEPS_PERCENT:
                    continue
                seen.add(number)
                index = max(index for index, one in enumerate(plan.plan.breaks) if one.to < now)
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "breaks", index),
                    f"week {number} of {plan.ident} is a full one, after {without} weeks without training",
                    "write 'coming_back: {sets: 60 %, load: 80 %}' on the break",
                    plan.plan.accept,
                )
