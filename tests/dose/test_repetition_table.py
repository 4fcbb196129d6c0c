"""Repetitions at a share of the one-repetition maximum.

Source: Baechle TR, Earle RW (eds), Essentials of Strength Training and Conditioning, NSCA / Human Kinetics, 2nd ed.
2000 and 3rd ed. 2008. The row of 12 repetitions is from memory.
"""

from fractions import Fraction

import pytest

from setwright.dose.repetitions import PERCENT_AT_REPS, most_reps

PRINTED = {1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75, 11: 70, 12: 67, 15: 65}


def test_table_is_the_printed_one() -> None:
    """Every printed row stands in the table, 11 at 70 and 12 at 67, and nothing is made up for 13 and 14."""
    assert PERCENT_AT_REPS == PRINTED


@pytest.mark.parametrize(("reps", "percent"), PRINTED.items())
def test_a_printed_share_allows_its_own_repetitions(reps: int, percent: int) -> None:
    """At the share of a printed row, as many repetitions are allowed as stand beside it."""
    assert most_reps(Fraction(percent)) == reps


@pytest.mark.parametrize(
    ("percent", "reps"),
    [("99.9", 1), ("94", 2), ("86", 5), ("72", 10), ("69", 11), ("66.9", 12), ("65.1", 12), ("65", 15)],
)
def test_share_between_two_rows_allows_what_the_heavier_row_does(percent: str, reps: int) -> None:
    """Between two rows no repetition is promised that only the lighter one allows."""
    assert most_reps(Fraction(percent)) == reps


@pytest.mark.parametrize("percent", ["64.9", "50", "1"])
def test_table_ends_at_65_percent(percent: str) -> None:
    """Below its last row the table says nothing."""
    assert most_reps(Fraction(percent)) is None


def test_nothing_is_lifted_above_the_maximum() -> None:
    """More than can be lifted once allows no repetition, by definition of the maximum."""
    assert most_reps(Fraction(101)) == 0
