"""A session that takes longer than its time budget.

Adds the shortest warm-up to the middle of the session's computed time, in the longest week.

Why it matters: what does not fit gets left out by the member, and it is seldom the part that the coach would drop.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

ID = "over-time-budget"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {"sessions/legs": "time_budget: 10 min"}
GOOD: Example = {"sessions/legs": "time_budget: 30 min"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each session over its budget, with its longest week."""
    longest: dict[str, tuple[int, int, str]] = {}
    for plan in subject.plans:
        for session in plan.sessions:
            middle_s = (session.time.low_s + session.time.high_s) // 2
            if middle_s > longest.get(session.session, (0, 0, ""))[0]:
                longest[session.session] = (middle_s, session.week, plan.ident)
    for ident, (middle_s, week, plan_ident) in longest.items():
        written = subject.programme.sessions[ident]
        warm_up_s = min((subject.programme.routines[r].takes for r in written.warm_up), default=0)
        if written.time_budget is not None and middle_s + warm_up_s > written.time_budget:
            over = duration(ENGLISH, 60 * -(-(middle_s + warm_up_s) // 60))
            yield Doubt(
                subject.at(f"sessions/{ident}.yml", "time_budget"),
                f"about {over} with the shortest warm-up, in week {week} of {plan_ident}",
                "raise the budget, or take out a set or an exercise",
                written.accept,
            )
