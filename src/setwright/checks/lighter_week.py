"""Too many weeks in a row without a lighter one.

Counts the weeks of a plan that are neither lighter nor part of a taper nor without a session. More than six in a row
raise a doubt.

Why it matters: a planned lighter week costs less than an unplanned one.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold

ID = "no-lighter-week"
SEVERITY = "warning"
SOURCE = COMMON
MOST: Final = threshold(ID, "most", "weeks", 6, (1, 12), "the most weeks in a row without a lighter one")
THRESHOLDS = (MOST,)

BAD: Example = {
    "plans/spring": """
phases:
  - {name: First, aim: To begin., weeks: 8, sessions: {monday: legs}}
"""
}
GOOD: Example = {
    "plans/spring": """
phases:
  - name: First
    aim: To begin.
    weeks: 8
    sessions: {monday: legs}
    lighter: {weeks: [4, 8], sets: 60 %}
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan, at the phase where the row gets too long."""
    most = subject.value(MOST)
    for plan in subject.plans:
        row = 0
        for week in plan.weeks:
            row = row + 1 if week.remains.kind == "normal" and week.sessions else 0
            if row > most:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"weeks {week.number - row + 1} to {week.number} run without a lighter one",
                    f"{MOST.said(most)} in a row are the most: add 'lighter: {{weeks: [4], sets: 60 %}}'",
                    plan.plan.accept,
                )
                break
