"""Ways out of a dose: what a member may do in the place of an exercise, with the dose that stands there.

A session offers the easier way and the one at home beside each exercise. Where one of them is another exercise, that
one's limits hold too.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.model.routine import Routine
from setwright.model.text import exercise_target, spans

WayKind = Literal["easier", "at home"]


@dataclass(frozen=True, slots=True)
class Way:
    """A way to another exercise, by its id."""

    kind: WayKind
    exercise: str


def ways_from(exercise: Exercise) -> tuple[Way, ...]:
    """Return each exercise that may be done in this one's place, once, in the order of its page."""
    found: dict[str, Way] = {}
    for variation in exercise.easier:
        for ident in (variation.exercise, *linked(variation.how)):
            if ident is not None:
                found.setdefault(ident, Way("easier", ident))
    if exercise.at_home is not None:
        for ident in (*linked(exercise.at_home.use), *linked(exercise.at_home.how)):
            found.setdefault(ident, Way("at home", ident))
    return tuple(found.values())


def linked(text: str | None) -> tuple[str, ...]:
    """Return the exercises that a text leads to, by id."""
    targets = (exercise_target(span.target) for span in spans(text or "") if span.kind == "link")
    return tuple(target for target in targets if target is not None)


def offered(programme: Programme, session: str) -> Iterator[tuple[str, Routine]]:
    """Yield the warm-ups and cool-downs of a session, warm-ups first; a member picks one of each."""
    written = programme.sessions[session]
    for ident in (*written.warm_up, *written.cool_down):
        yield ident, programme.routines[ident]
