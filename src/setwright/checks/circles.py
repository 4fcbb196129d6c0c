"""Easier and harder ways that lead round in a circle.

Looks at what exercises name under `easier` and `harder`: going from easier way to easier way, no exercise comes back to
itself. Where one names another as harder, the other way round is meant as well.

Why it matters: a member for whom something is too hard follows the easier way, and in a circle ends where it was too
hard.
"""

from collections.abc import Iterator, Mapping
from graphlib import CycleError, TopologicalSorter
from itertools import pairwise

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.model.exercise import Exercise
from setwright.source.finding import Position

ID = "easier-in-a-circle"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {"exercises/step-down": "easier: [goblet-squat]    # whose easier way is the step-down"}
GOOD: Example = {"exercises/step-down": "harder: [goblet-squat]"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each circle that shares no exercise with one found before."""
    exercises = subject.programme.exercises
    easier = _easier_ways(exercises)
    while circle := _circle_in(easier):
        rest = ", ".join(f"'{one}' than '{other}'" for one, other in pairwise(circle[1:]))
        yield Doubt(
            _named_at(subject, circle[0], circle[1]),
            f"easier ways go round in a circle: '{circle[0]}' is easier than '{circle[1]}', {rest}",
            "turn one of them round, or leave it out",
            [accepted for ident in circle[1:] for accepted in exercises[ident].accept],
        )
        easier = {ident: ways.difference(circle) for ident, ways in easier.items() if ident not in circle}


def _easier_ways(exercises: Mapping[str, Exercise]) -> dict[str, set[str]]:
    """Return which other exercises are easier than each, said by either of the two."""
    easier: dict[str, set[str]] = {ident: set() for ident in exercises}
    for ident, exercise in exercises.items():
        easier[ident].update(way.exercise for way in exercise.easier if way.exercise not in (None, ident))
        for way in exercise.harder:
            if way.exercise not in (None, ident):
                easier[way.exercise].add(ident)
    return easier


def _circle_in(easier: Mapping[str, set[str]]) -> list[str]:
    """Return one circle, each easier than the next and the first again at the end; nothing where there is none."""
    try:
        TopologicalSorter({ident: sorted(ways) for ident, ways in easier.items()}).prepare()
    except CycleError as error:
        circle: list[str] = error.args[1]
        return circle
    return []


def _named_at(subject: Subject, one: str, other: str) -> Position:
    """Return where one exercise is named as easier than another, on either of the two."""
    for ident, key, named in ((other, "easier", one), (one, "harder", other)):
        for index, way in enumerate(getattr(subject.programme.exercises[ident], key)):
            if way.exercise == named:
                return subject.at(f"exercises/{ident}.yml", key, index)
    raise ValueError(f"neither '{one}' nor '{other}' names the other")
