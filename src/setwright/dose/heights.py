"""Heights of boxes and steps: what the club owns, and what of it a limit leaves."""

from collections.abc import Iterable
from fractions import Fraction

from setwright.model.club import Club
from setwright.model.exercise import Exercise


def owned_heights_cm(club: Club, kit: Iterable[str]) -> tuple[Fraction, ...]:
    """Return the sizes that the club owns of some kit, lowest first; none where it comes in no sizes."""
    sizes = (club.kit.get(name) for name in kit)
    return tuple(
        sorted({size for some in sizes if isinstance(some, list) for size in some if isinstance(size, Fraction)})
    )


def limit_cm(exercise: Exercise) -> Fraction | None:
    """Return the highest box or step that is allowed, in centimetres, if that is limited."""
    return exercise.limits.height if exercise.limits is not None else None
