"""Two opposite kinds of movement, counted over a plan: what the two balance checks share."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.rule import Doubt, Subject
from setwright.checks.threshold import Threshold
from setwright.dose.resolved import ResolvedPlan
from setwright.model.units import plain_number

FEWEST_EXERCISES: Final = 3
"""A plan of fewer exercises is an extra beside other training, and is not judged."""

Side = tuple[str, frozenset[str]]
"""What one side is called, and its patterns."""


def sets_of(subject: Subject, plan: ResolvedPlan, patterns: frozenset[str]) -> int:
    """Return a plan's sets of some patterns, all weeks together."""
    exercises = subject.programme.exercises
    return sum(i.dose.count for s in plan.sessions for i in s.items if exercises[i.exercise].pattern in patterns)


def doubts(subject: Subject, most: Threshold, one: Side, other: Side) -> Iterator[Doubt]:
    """Yield one doubt for each plan in which one side has too many times the sets of the other."""
    for plan in subject.plans:
        if len({item.exercise for session in plan.sessions for item in session.items}) < FEWEST_EXERCISES:
            continue
        (less, fewer), (more, larger) = sorted(
            (sets_of(subject, plan, patterns), name) for name, patterns in (one, other)
        )
        if not more or (less and Fraction(more, less) <= subject.value(most)):
            continue
        times = f"{plain_number(Fraction(more, less), 1)} times as many" if less else "none of the other"
        yield Doubt(
            subject.at(f"plans/{plan.ident}.yml"),
            f"{more} sets of {larger} and {less} of {fewer} in the whole plan: {times}",
            f"at most {most.said(subject.value(most))} times: add {fewer}, or take out {larger}",
            plan.plan.accept,
        )
