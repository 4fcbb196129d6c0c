"""Kit that a club owns: weights one by one, in steps, on a bar; sizes, names and numbers."""

from fractions import Fraction
from itertools import product
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.model.club import Club, Names
from setwright.source.tree import read_tree

CLUB = """
name: A club
body_weight: {from: 40 kg, to: 110 kg}
safety: {contact: a, in_an_emergency: b, before_you_start: [c], stop_if: [d]}
"""


def club_with(kit: str) -> Club:
    """Return a club with one kind of kit."""
    tree = read_tree("club.yml", f"{CLUB}kit: {{thing: {kit}}}\n".encode())
    return Club.model_validate(tree.root.data() if tree.root else None)


WEIGHTS = [
    ("[8 kg, 4 kg, 8 kg]", [4, 8], []),
    ("{from: 1 kg, to: 2 kg, step: 0.5 kg}", [1, 1.5, 2], []),
    ("{from: 1 kg, to: 2 kg, step: 0.5 kg, pairs: true}", [1, 1.5, 2], [1, 1.5, 2]),
    ("{from: 1 kg, to: 2 kg, step: 0.6 kg}", [1, 1.6], []),
    ("{weights: [4 kg, 6 kg], pairs: true}", [4, 6], [4, 6]),
    ("{bar: 20 kg, pairs: [1.25 kg, 2.5 kg]}", [20, 22.5, 25, 27.5], []),
    ("{bar: 20 kg, pairs: [5 kg, 5 kg]}", [20, 30, 40], []),
    ("[light, heavy]", [], []),
    ("[20 cm, 40 cm]", [], []),
    ("3", [], []),
]


@pytest.mark.parametrize(("kit", "weights", "per_hand"), WEIGHTS)
def test_every_weight_that_can_be_held_is_known(kit: str, weights: list[Any], per_hand: list[Any]) -> None:
    """In all, lightest first; in each hand, only what is owned in pairs. A bar takes any choice of its discs."""
    club = club_with(kit)

    assert [Fraction(str(kg)) for kg in weights] == list(club.weights_kg("thing"))
    assert [Fraction(str(kg)) for kg in per_hand] == list(club.weights_kg("thing", per_hand=True))


def test_sizes_names_and_numbers_are_told_apart() -> None:
    """One unit, or none, tells what a list is of."""
    assert club_with("[20 cm, 40 cm]").kit["thing"] == [20, 40]
    assert Names(("light", "extra 2")) == club_with("[light, extra 2]").kit["thing"]
    assert club_with("[light, heavy]").names("thing") == ("light", "heavy")
    assert club_with("3").kit["thing"] == 3


@given(st.lists(st.sampled_from(["1.25", "2.5", "5", "10", "15"]), min_size=1, max_size=5))
def test_a_bar_gives_each_total_once(discs: list[str]) -> None:
    """The totals are the bar and, for each pair of discs, twice its weight or nothing: counted here in another way."""
    club = club_with(f"{{bar: 20 kg, pairs: [{', '.join(f'{disc} kg' for disc in discs)}]}}")
    chosen = product(*[(Fraction(0), 2 * Fraction(disc)) for disc in discs])

    assert sorted({20 + sum(choice) for choice in chosen}) == list(club.weights_kg("thing"))


def test_pounds_are_weights_like_kilograms() -> None:
    """A club may own kit in pounds: 1 lb = 0.453 592 37 kg (international yard and pound agreement, 1959)."""
    assert club_with("[25 lb]").weights_kg("thing") == (25 * Fraction("0.45359237"),)


def test_the_totals_of_a_bar_are_worked_out_once() -> None:
    """Ten pairs of discs make a thousand totals; whoever asks again, for each exercise of each week, gets the same."""
    barbell = club_with(f"{{bar: 20 kg, pairs: [{', '.join(f'{2**n} kg' for n in range(10))}]}}")

    assert len(barbell.weights_kg("thing")) == 1024
    assert barbell.weights_kg("thing") is barbell.weights_kg("thing")
