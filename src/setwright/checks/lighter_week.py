"""Too many weeks in a row without a lighter one.

Counts the weeks of a plan that are neither lighter nor part of a taper nor without a session. More than six in a row
raise a doubt.

Why it matters: a planned lighter week costs less than an unplanned one.
"""

from collections.abc import Iterator

from setwright.checks.rule import COMMON, Doubt, Subject

ID = "no-lighter-week"
SEVERITY = "warning"
SOURCE = COMMON
MOST_IN_A_ROW = 6


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan, at the phase where the row gets too long."""
    for plan in subject.plans:
        row = 0
        for week in plan.weeks:
            row = row + 1 if week.remains.kind == "normal" and week.sessions else 0
            if row > MOST_IN_A_ROW:
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", week.phase),
                    f"weeks {week.number - row + 1} to {week.number} run without a lighter one",
                    f"{MOST_IN_A_ROW} in a row are the most: add 'lighter: {{weeks: [4], sets: 60 %}}'",
                    plan.plan.accept,
                )
                break
