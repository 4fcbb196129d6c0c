"""Limits on the height of a box or step: in the dose, in the picture, and of what the club owns."""

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.checks.limit_crossing import Crossing, doubt
from setwright.checks.rule import Doubt, Subject, place_in_session
from setwright.dose.heights import owned_heights_cm
from setwright.model.exercise import Exercise
from setwright.model.units import plain_number

STOOD_ON: Final = ("box", "step", "chair", "bench")
"""Props of a figure that a member may stand on."""


def heights(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each height above the limit of its exercise."""
    for ident, exercise in subject.programme.exercises.items():
        limit = exercise.limits.height if exercise.limits else None
        if limit is not None:
            yield from _drawn(subject, ident, exercise, limit)
    for session, written in subject.programme.sessions.items():
        for b, block in enumerate(written.blocks):
            for where, one in block.prescriptions():
                exercise = subject.programme.exercises[one.exercise]
                limit = exercise.limits.height if exercise.limits else None
                if limit is None:
                    continue
                path = place_in_session(session, (b, *where))
                crossing = _asked(subject, one.height, one.kit or exercise.kit, limit)
                if crossing is not None:
                    place = subject.at(*path, crossing.written)
                    yield doubt(subject, place, one.exercise, crossing, f"in the session {session}")


def _drawn(subject: Subject, ident: str, exercise: Exercise, limit: Fraction) -> Iterator[Doubt]:
    props = exercise.figure.props if exercise.figure is not None else None
    for name in STOOD_ON:
        prop = getattr(props, name, None)
        if prop is not None and Fraction(str(prop.height)) > limit:
            place = subject.at(f"exercises/{ident}.yml", "figure", "props", name, "height")
            height = f"a {name} of {plain_number(Fraction(str(prop.height)))} cm"
            yield doubt(subject, place, ident, _crossing(limit, height, "height"), "in the figure")


def _asked(subject: Subject, height: Fraction | None, kit: list[str], limit: Fraction) -> Crossing | None:
    """Return how one exercise of a session crosses the limit: by its height, or by its kit."""
    if height is not None and height > limit:
        return _crossing(limit, f"a height of {plain_number(height)} cm", "height")
    owned = owned_heights_cm(subject.programme.club, kit)
    if owned and owned[0] > limit:
        return _crossing(limit, f"the club's lowest, {plain_number(owned[0])} cm,", "kit")
    return None


def _crossing(limit: Fraction, actual: str, written: str) -> Crossing:
    return Crossing("height", f"{plain_number(limit)} cm", actual, written)
