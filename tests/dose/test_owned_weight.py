"""Which owned weight stands for a load."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.loads import Choice, choose_weight
from support import make
from support.strategies import quarters, racks

KETTLEBELLS = "4 8 12 16 20 24"
"""Steps of 4 kg, as kettlebells come. Common practice, no source."""

CASES = [
    # load, owned, limit, taken, how it fits
    ("12", KETTLEBELLS, None, "12", "near"),
    ("13.9", KETTLEBELLS, None, "12", "near"),
    ("14", KETTLEBELLS, None, "12", "near"),  # a tie goes to the lighter
    ("14.1", KETTLEBELLS, None, "16", "near"),
    ("15", KETTLEBELLS, "15", "12", "limit"),  # 16 kg is nearest, and forbidden
    ("15", KETTLEBELLS, "16", "16", "near"),  # the limit itself is allowed
    ("40", KETTLEBELLS, None, "24", "lighter"),  # nothing heavier is owned
    ("6.2", KETTLEBELLS, None, "4", "lighter"),  # 8 kg is nearer, and clearly heavier than planned
    ("6.4", KETTLEBELLS, None, "8", "near"),  # 8 kg is just a quarter heavier
    ("15", "4 24", None, "4", "lighter"),  # a wide gap
    ("3", KETTLEBELLS, None, "4", "near"),  # within 1 kg
    ("2.9", KETTLEBELLS, None, None, "none-light-enough"),
    ("12", KETTLEBELLS, "3", None, "over-limit"),
    ("2", "8 12", "4", None, "over-limit"),
    ("0.5", "1 2 3", None, "1", "near"),
    ("3.5", "3 4", None, "3", "near"),
]


def kilograms(text: str) -> tuple[Fraction, ...]:
    return tuple(map(Fraction, text.split()))


@pytest.mark.parametrize(("load", "owned", "limit", "taken", "fit"), CASES)
def test_weight_to_take(load: str, owned: str, limit: str | None, taken: str | None, fit: str) -> None:
    """The nearest owned weight, the lighter on a tie, none above the limit, none clearly heavier than planned.

    Common practice, no source; the quarter and the kilogram are rules of this tool.
    """
    chosen = choose_weight(Fraction(load), kilograms(owned), Fraction(limit) if limit else None)

    assert chosen == Choice(Fraction(taken) if taken else None, fit)


def may_be_offered(weight: Fraction, load: Fraction, limit: Fraction | None) -> bool:
    """Say, in the rule's own words, whether a weight may be offered at all."""
    clearly_heavier = weight > load + 1 and weight > load * Fraction(5, 4)
    return not clearly_heavier and (limit is None or weight <= limit)


loads_kg = st.fractions(min_value=Fraction(1, 10), max_value=80, max_denominator=500)
any_limit = st.one_of(st.none(), quarters(0.5, 60))


@given(loads_kg, racks(), any_limit)
def test_choice_is_the_nearest_of_all_that_may_be_offered(
    load: Fraction, owned: tuple[Fraction, ...], limit: Fraction | None
) -> None:
    """Of the weights that may be offered the nearest is chosen, the lighter of two; none where there is none."""
    offered = [weight for weight in owned if may_be_offered(weight, load, limit)]
    nearest = sorted(offered, key=lambda weight: (abs(weight - load), weight))

    assert choose_weight(load, owned, limit).weight_kg == (nearest[0] if nearest else None)


@given(loads_kg, racks(), any_limit)
def test_fit_says_why(load: Fraction, owned: tuple[Fraction, ...], limit: Fraction | None) -> None:
    """A limit is blamed only where it made a difference."""
    chosen, free = choose_weight(load, owned, limit), choose_weight(load, owned)
    blamed = chosen.fit in ("limit", "over-limit")

    assert blamed == (chosen.weight_kg != free.weight_kg or (limit is not None and limit < owned[0]))


@given(loads_kg, loads_kg, racks(), any_limit)
def test_heavier_load_never_takes_a_lighter_weight(
    one: Fraction, other: Fraction, owned: tuple[Fraction, ...], limit: Fraction | None
) -> None:
    """Whoever plans more does not get less."""
    less, more = (choose_weight(load, owned, limit).weight_kg or 0 for load in sorted((one, other)))

    assert less <= more


def test_nothing_is_chosen_where_nothing_is_owned_in_pairs() -> None:
    """A club with single kettlebells has no weight for each hand: no choice at all, and none that is too heavy."""
    item = make.in_week(make.one_exercise("{reps: 8, load: 6 kg per hand}"), 1)

    assert item is not None
    assert (item.kit, item.choice, item.bands) == ("kettlebell", None, ())
