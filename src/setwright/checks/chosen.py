"""Kit that a member chooses a load from, weights or bands: what the checks of loads that nobody wrote share."""

from collections.abc import Iterable, Iterator

from setwright.checks.rule import Subject
from setwright.model.exercise import Exercise
from setwright.model.session import Slot
from setwright.source.finding import Position


def chosen_from(subject: Subject, kit: Iterable[str]) -> str | None:
    """Return the first kit that comes in weights or in named bands; None where there is nothing to choose."""
    return next((one for one in kit if subject.programme.club.is_load(one)), None)


def chosen_in(subject: Subject, session: str, slot: Slot) -> str | None:
    """Return the same of one exercise in a session, by its kit there."""
    written = subject.programme.sessions[session].written(slot)
    return chosen_from(subject, written.kit or subject.programme.exercises[written.exercise].kit)


def in_routines(subject: Subject) -> Iterator[tuple[str, Exercise, str, str, Position]]:
    """Yield each step of a warm-up or cool-down that leaves a load to the member, since a step can say none.

    The exercise's id, the exercise, the kit, the routine in words, and where the step stands.
    """
    for ident, routine in subject.programme.routines.items():
        for index, part in enumerate(routine.exercises):
            if part.exercise is None:
                continue
            exercise = subject.programme.exercises[part.exercise]
            kit = chosen_from(subject, exercise.kit)
            if kit is not None:
                place = subject.at(f"routines/{ident}.yml", "exercises", index, "exercise")
                yield part.exercise, exercise, kit, f"the {routine.kind} {ident}", place
