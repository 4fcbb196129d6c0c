"""Heights of boxes and steps: what a session asks for, what a limit allows, and what of that the club owns."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from setwright.model.club import Club
from setwright.model.exercise import Exercise


@dataclass(frozen=True, slots=True)
class Heights:
    """How high a box or step is, in centimetres.

    ``asked_cm`` is what the session names, ``most_cm`` the limit; ``owned_cm`` are the club's sizes up to the limit,
    lowest first.
    """

    asked_cm: Fraction | None
    most_cm: Fraction | None
    owned_cm: tuple[Fraction, ...]


def heights_of(club: Club, exercise: Exercise, kit: Iterable[str], asked_cm: Fraction | None) -> Heights | None:
    """Return the heights of one exercise in one session; None where neither a session nor a limit names any."""
    most_cm = exercise.limits.height if exercise.limits is not None else None
    if asked_cm is None and most_cm is None:
        return None
    owned = owned_heights_cm(club, kit)
    return Heights(asked_cm, most_cm, tuple(size for size in owned if most_cm is None or size <= most_cm))


def owned_heights_cm(club: Club, kit: Iterable[str]) -> tuple[Fraction, ...]:
    """Return the sizes that the club owns of some kit, lowest first; none where it comes in no sizes."""
    sizes = (club.kit.get(name) for name in kit)
    found = {size for some in sizes if isinstance(some, list) for size in some if isinstance(size, Fraction)}
    return tuple(sorted(found))
