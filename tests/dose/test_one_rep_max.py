"""Estimates of the one-repetition maximum.

Sources: each formula's own, as printed beside it in ``FORMULAS``. Epley's constants were seen in a secondary source, as
Mayhew's; the other formulas are from memory. Worked examples are computed from them by hand, not published figures.
Variants: Epley divides by 30 (not x 0.0333), Brzycki is 36 / (37 - r) (not 1 / (1.0278 - 0.0278 r)).
"""

from math import isclose

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.one_rep_max import FORMULAS, estimate_range

BY_NAME = {formula.name: formula.estimate_kg for formula in FORMULAS}
SETS = ((100, 1), (100, 5), (60, 8), (80, 10), (40, 12))
WORKED_KG = {
    "Epley": (103.33, 116.67, 76.00, 106.67, 56.00),
    "Brzycki": (100.00, 112.50, 74.48, 106.67, 57.60),
    "Lombardi": (100.00, 117.46, 73.87, 100.71, 51.28),
    "Mayhew": (108.86, 119.01, 75.77, 104.75, 54.16),
    "Wathan": (101.30, 116.58, 76.60, 107.80, 56.60),
    "O'Conner": (102.50, 112.50, 72.00, 100.00, 52.00),
    "Lander": (101.39, 113.71, 75.07, 107.26, 57.77),
}
EXAMPLES = [
    (name, weight, reps, expected)
    for name, row in WORKED_KG.items()
    for (weight, reps), expected in zip(SETS, row, strict=True)
]
anyones_kg = st.floats(min_value=1, max_value=400)


def test_every_formula_has_worked_examples() -> None:
    """No formula goes unchecked."""
    assert set(BY_NAME) == set(WORKED_KG)


@pytest.mark.parametrize(("name", "weight_kg", "reps", "expected_kg"), EXAMPLES)
def test_worked_example(name: str, weight_kg: float, reps: int, expected_kg: float) -> None:
    """Each formula gives its worked examples to the second decimal."""
    assert round(BY_NAME[name](weight_kg, reps), 2) == expected_kg


@given(anyones_kg)
def test_epley_meets_brzycki_at_ten(weight_kg: float) -> None:
    """Epley and Brzycki agree at 10 repetitions: 1 + 10/30 = 36/27."""
    assert isclose(BY_NAME["Epley"](weight_kg, 10), BY_NAME["Brzycki"](weight_kg, 10))


@given(anyones_kg)
def test_oconner_meets_brzycki_at_five(weight_kg: float) -> None:
    """O'Conner and Brzycki agree at 5 repetitions: 1.125 = 36/32."""
    assert isclose(BY_NAME["O'Conner"](weight_kg, 5), BY_NAME["Brzycki"](weight_kg, 5))


def test_only_two_formulas_return_a_single_as_it_is() -> None:
    """Only Brzycki and Lombardi give back the weight itself at one repetition."""
    same = {name for name, estimate_kg in BY_NAME.items() if isclose(estimate_kg(100, 1), 100)}

    assert same == {"Brzycki", "Lombardi"}


@given(anyones_kg, st.integers(2, 10))
def test_range_spans_all_formulas(weight_kg: float, reps: int) -> None:
    """The span that is shown holds every formula's estimate, and none of them is below the weight lifted."""
    span = estimate_range(weight_kg, reps)
    estimates = [estimate_kg(weight_kg, reps) for estimate_kg in BY_NAME.values()]

    assert weight_kg <= span.low_kg == min(estimates) <= max(estimates) == span.high_kg


def test_range_for_60_kg_eight_times() -> None:
    """60 kg lifted 8 times spans O'Conner's 72.0 to Wathan's 76.6 kg, from the worked examples."""
    span = estimate_range(60, 8)

    assert (round(span.low_kg, 2), round(span.high_kg, 2)) == (72.00, 76.60)


@pytest.mark.parametrize("reps", [-1, 0, 1, 11, 12, 37])
def test_formulas_are_not_used_outside_2_to_10(reps: int) -> None:
    """Outside 2 to 10 repetitions nothing is estimated.

    Source: Reynolds JM et al., J Strength Cond Res 2006;20:584-592 (linear equations to ten repetitions or fewer).
    """
    with pytest.raises(ValueError, match="2 to 10"):
        estimate_range(100, reps)


@pytest.mark.parametrize("weight_kg", [0, -20])
def test_no_estimate_without_a_weight(weight_kg: float) -> None:
    """A weight of nothing or less is refused."""
    with pytest.raises(ValueError, match="above 0 kg"):
        estimate_range(weight_kg, 5)
