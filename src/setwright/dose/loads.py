"""Which of the weights that a club owns stands for a prescribed load."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

NEAR_SHARE: Final = Fraction(1, 4)
NEAR_KG: Final = Fraction(1)
"""A weight is near a prescribed load within a quarter of it, or within 1 kg. Common practice, no source: the usual
steps of kettlebells stay inside it, and a first weight twice as heavy as prescribed does not."""

Fit = Literal["near", "limit", "lighter", "none-light-enough", "over-limit"]
"""How a choice meets the prescription: near it; kept lighter by the limit; lighter since nothing heavier is owned;
nothing chosen since all are clearly heavier; nothing chosen since all are beyond the limit."""


@dataclass(frozen=True, slots=True)
class Choice:
    """An owned weight, or None where none may be used, and how it fits."""

    weight_kg: Fraction | None
    fit: Fit


def share_kg(percent: Fraction, of_kg: Fraction) -> Fraction:
    """Return a percentage of a weight: 5 % of 70 kg is 3.5 kg, exactly."""
    return percent * of_kg / 100


def nearest(exact_kg: Fraction, owned_kg: Sequence[Fraction]) -> Fraction:
    """Return the owned weight nearest to a load; the lighter one of two equally near."""
    return min(owned_kg, key=lambda weight: (abs(weight - exact_kg), weight))


def is_near(exact_kg: Fraction, weight_kg: Fraction) -> bool:
    """Say whether a weight stands for a load without a remark."""
    return abs(weight_kg - exact_kg) <= max(NEAR_KG, NEAR_SHARE * exact_kg)


def choose_weight(exact_kg: Fraction, owned_kg: Sequence[Fraction], limit_kg: Fraction | None = None) -> Choice:
    """Choose the owned weight for a load.

    The nearest, the lighter one on a tie, never one above the limit, and never one that is clearly heavier than
    prescribed: too light costs a training effect, too heavy may cost an injury.

    Args:
        exact_kg: the prescribed load in kg; per hand, where the weights are.
        owned_kg: the owned weights in kg, lightest first, at least one.
        limit_kg: the heaviest weight allowed, if any.
    """
    allowed = [weight for weight in owned_kg if limit_kg is None or weight <= limit_kg]
    if not allowed:
        return Choice(None, "over-limit")
    weight = nearest(exact_kg, allowed)
    if not is_near(exact_kg, weight) and weight > exact_kg:
        return Choice(None, "none-light-enough")
    if weight != nearest(exact_kg, owned_kg):
        return Choice(weight, "limit")
    return Choice(weight, "near" if is_near(exact_kg, weight) else "lighter")
