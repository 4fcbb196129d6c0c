"""From what does not fit in a solved figure to the doubts of one rule."""

from collections.abc import Iterator

from setwright.checks.rule import Doubt, Subject
from setwright.figure.motion import solved


def doubts(subject: Subject, rule: str) -> Iterator[Doubt]:
    """Yield every misfit of one rule, with its place in the exercise's file."""
    for ident, exercise in subject.programme.exercises.items():
        if exercise.figure is None:
            continue
        for misfit in solved(exercise.figure).misfits:
            if misfit.rule == rule:
                place = subject.at(f"exercises/{ident}.yml", "figure", *misfit.path)
                yield Doubt(place, f"{ident}: {misfit.message}", misfit.hint, exercise.accept)
