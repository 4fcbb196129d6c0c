"""Which of the weights that a club owns stands for a prescribed load."""

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

NEAR_SHARE: Final = Fraction(1, 4)
NEAR_KG: Final = Fraction(1)
"""A weight is near a prescribed load within a quarter of it, or within 1 kg. Common practice, no source: the usual
steps of kettlebells stay inside it, and a first weight twice as heavy as prescribed does not."""

Fit = Literal["near", "limit", "lighter", "none-light-enough", "over-limit"]
"""How a choice meets the prescription: near it; kept lighter by the limit; lighter since everything heavier is clearly
too heavy or not owned; nothing chosen since all are clearly heavier; nothing chosen since all are beyond the limit."""


@dataclass(frozen=True, slots=True)
class Choice:
    """An owned weight, or None where none may be used, and how it fits."""

    weight_kg: Fraction | None
    fit: Fit


def share_kg(percent: Fraction, of_kg: Fraction) -> Fraction:
    """Return a percentage of a weight: 5 % of 70 kg is 3.5 kg, exactly."""
    return percent * of_kg / 100


def nearest(exact_kg: Fraction, owned_kg: Sequence[Fraction]) -> Fraction:
    """Return the owned weight nearest to a load, of weights lightest first; the lighter one of two equally near."""
    above = bisect_left(owned_kg, exact_kg)
    return min(owned_kg[max(0, above - 1) : above + 1], key=lambda weight: abs(weight - exact_kg))


def is_near(exact_kg: Fraction, weight_kg: Fraction) -> bool:
    """Say whether a weight stands for a load without a remark."""
    return abs(weight_kg - exact_kg) <= _near_kg(exact_kg)


def _near_kg(exact_kg: Fraction) -> Fraction:
    return max(NEAR_KG, NEAR_SHARE * abs(exact_kg))


def choose_weight(exact_kg: Fraction, owned_kg: Sequence[Fraction], limit_kg: Fraction | None = None) -> Choice:
    """Choose the owned weight for a load.

    The nearest, the lighter one on a tie, among those that are neither above the limit nor clearly heavier than
    prescribed: too light costs a training effect, too heavy may cost an injury.

    Args:
        exact_kg: the prescribed load in kg; per hand, where the weights are.
        owned_kg: the owned weights in kg, lightest first, at least one.
        limit_kg: the heaviest weight allowed, if any.
    """
    allowed = owned_kg if limit_kg is None else owned_kg[: bisect_right(owned_kg, limit_kg)]
    if not allowed:
        return Choice(None, "over-limit")
    light_enough = owned_kg[: bisect_right(owned_kg, exact_kg + _near_kg(exact_kg))]
    if not light_enough:
        return Choice(None, "none-light-enough")
    weight = nearest(exact_kg, min(allowed, light_enough, key=len))
    if weight != nearest(exact_kg, light_enough):
        return Choice(weight, "limit")
    return Choice(weight, "near" if is_near(exact_kg, weight) else "lighter")


def choose_help(exact_kg: Fraction, owned_kg: Sequence[Fraction], least_kg: Fraction | None = None) -> Choice:
    """Choose the owned weight for a load that takes weight off the body: the same choice, the other way round.

    The nearest, the heavier one on a tie, among those that give neither less help than the limit nor clearly less than
    prescribed. Its fit "lighter" then says that it helps more than prescribed, since nothing else is owned.

    Args:
        exact_kg: the prescribed help in kg.
        owned_kg: the owned weights in kg, lightest first, at least one.
        least_kg: the least help allowed, if any.
    """
    lifted = choose_weight(
        -exact_kg, [-weight for weight in reversed(owned_kg)], None if least_kg is None else -least_kg
    )
    return Choice(None if lifted.weight_kg is None else -lifted.weight_kg, lifted.fit)
