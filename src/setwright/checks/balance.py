"""Two opposite kinds of movement, counted phase by phase: what the two balance checks share."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.rule import Doubt, Subject
from setwright.checks.threshold import Threshold
from setwright.dose.resolved import ResolvedItem
from setwright.model.units import plain_number

FEWEST_EXERCISES: Final = 3
"""A phase of fewer exercises is an extra beside other training, and is not judged."""

Side = tuple[str, frozenset[str]]
"""What one side is called, and its patterns."""


def doubts(subject: Subject, most: Threshold, one: Side, other: Side) -> Iterator[Doubt]:
    """Yield one doubt for each phase in which one side has too many times the sets of the other.

    Lighter weeks and tapers are not counted: their whole sets tell little about a proportion.
    """
    for plan in subject.plans:
        for index, phase in enumerate(plan.plan.phases):
            weeks = [week for week in plan.weeks if week.phase == index and week.remains.kind == "normal"]
            items = [item for week in weeks for session in week.sessions for item in session.items]
            if len({item.exercise for item in items}) < FEWEST_EXERCISES:
                continue
            (less, fewer), (more, larger) = sorted(
                (_sets_of(subject, items, patterns), name) for name, patterns in (one, other)
            )
            if not more or (less and Fraction(more, less) <= subject.value(most)):
                continue
            times = f"{plain_number(Fraction(more, less), 1)} times as many" if less else "none of the other"
            yield Doubt(
                subject.at(f"plans/{plan.ident}.yml", "phases", index),
                f"{more} sets of {larger} and {less} of {fewer} in the phase {phase.name}: {times}",
                f"at most {most.said(subject.value(most))} times: add {fewer}, or take out {larger}",
                plan.plan.accept,
            )


def _sets_of(subject: Subject, items: list[ResolvedItem], patterns: frozenset[str]) -> int:
    exercises = subject.programme.exercises
    return sum(item.dose.count for item in items if exercises[item.exercise].pattern in patterns)
