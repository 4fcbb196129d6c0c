"""Jumps in the first phase of a plan for beginners.

A plan is for beginners unless it says `experience: trained`: that every member has a season of strength work behind
them.

Why it matters: tendons and bone take weeks to get used to landing. A first phase is for learning to lower oneself.
"""

from collections.abc import Iterator

from setwright.checks.example import JUMPS, Example
from setwright.checks.jumping import is_beginning, jumps_of
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "jumps-for-beginners"
SEVERITY = "warning"
SOURCE = COMMON

_JUMPS = {
    **JUMPS,
    "sessions/legs": """
blocks:
  - {kind: straight, sets: 2, exercises: [{exercise: hop, reps: 5}]}
  - {kind: straight, sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}
""",
}
BAD: Example = {**_JUMPS, "plans/spring": "for: Members who are new to strength work."}
GOOD: Example = {**_JUMPS, "plans/spring": "experience: trained"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each plan, at its first session with jumps."""
    for plan in subject.plans:
        for week in plan.weeks:
            jumps = [(s, jumps_of(subject, s)[0]) for s in week.sessions if jumps_of(subject, s)]
            if jumps and is_beginning(plan, week.phase):
                session, jump = jumps[0]
                yield Doubt(
                    subject.at(f"plans/{plan.ident}.yml", "phases", 0, "sessions"),
                    f"{jump.exercise} stands in the first phase of {plan.ident}: week {week.number}, {session.session}",
                    "begin with step-downs and heel raises and jump from the second phase on; or write "
                    "'experience: trained', if every member has a season of strength work behind them",
                    plan.plan.accept,
                )
                break
