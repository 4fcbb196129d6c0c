"""Loads as a share of body weight, and the units that they come in."""

from fractions import Fraction

import pytest

from setwright.dose.loads import choose_weight, share_kg
from setwright.model.units import KG_PER_LB, parse_mass_kg
from support import make

MIER = "Mier CM et al., Int J Exerc Sci 2014;7(2):161-168, push-up held still, men"
MELROSE = "Melrose D, Dawes J, J Athl Enhanc 2015;4(1), strap row, year from memory"
WORKED = [
    ("67.0", 75, "50.25", MIER + ", standard, up"),
    ("74.6", 75, "55.95", MIER + ", standard, down"),
    ("52.5", 75, "39.375", MIER + ", on the knees, up"),
    ("37.44", 70, "26.208", MELROSE + ", 30 degrees from vertical"),
    ("79.38", 70, "55.566", MELROSE + ", 75 degrees from vertical"),
    ("15", 68, "10.2", "arithmetic"),
    ("5", 70, "3.5", "arithmetic"),
]


@pytest.mark.parametrize(("percent", "body_weight_kg", "expected_kg", "source"), WORKED)
def test_share_is_exact(percent: str, body_weight_kg: int, expected_kg: str, source: str) -> None:
    """A percentage of a body weight is that percentage, exactly; percentages from published measurements."""
    assert share_kg(Fraction(percent), Fraction(body_weight_kg)) == Fraction(expected_kg)


def test_pound_is_exact() -> None:
    """A pound is 0.45359237 kg exactly. Source: international yard and pound agreement, 1959."""
    assert (KG_PER_LB, parse_mass_kg("1 lb")) == (Fraction("0.45359237"), Fraction("0.45359237"))


@pytest.mark.parametrize(
    ("pounds", "kg"), [("25 lb", "11.33980925"), ("45 lb", "20.41165665"), ("2.5 lb", "1.133980925")]
)
def test_discs_in_pounds(pounds: str, kg: str) -> None:
    """A disc in pounds keeps every decimal of its kilograms (computed from the agreement of 1959)."""
    assert parse_mass_kg(pounds) == Fraction(kg)


def test_light_row_for_70_kg() -> None:
    """5 % in each hand for 70 kg, with dumbbells in 1 kg steps, is 3 kg: 3.5 kg is a tie, and the lighter one wins.

    Common practice, no source: a light row takes 5 % of body weight in each hand.
    """
    dumbbells_kg = make.club().weights_kg("dumbbell", per_hand=True)

    assert choose_weight(share_kg(Fraction(5), Fraction(70)), dumbbells_kg).weight_kg == 3


def test_weights_that_are_not_owned_in_pairs_are_not_offered_per_hand() -> None:
    """One kettlebell of each weight gives no choice for two hands."""
    assert make.club().weights_kg("kettlebell", per_hand=True) == ()


def test_barbell_goes_up_by_twice_its_smallest_disc() -> None:
    """With discs of 1.25 kg a barbell goes up by 2.5 kg: discs go on in pairs (common practice, no source)."""
    barbell = "kit: {barbell: {bar: 20 kg, pairs: [1.25 kg, 2.5 kg, 5 kg]}}"

    assert make.club(barbell).weights_kg("barbell") == tuple(Fraction(20 * 2 + 5 * n, 2) for n in range(8))
