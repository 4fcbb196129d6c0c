"""What is asked about a dose whose sets differ: a pyramid, a ramp before the working sets, loads of several kinds."""

from dataclasses import replace
from fractions import Fraction

import pytest

from setwright.dose.dose import Dose, Group, Set
from setwright.model.load import Band, Effort, Load, Weight
from setwright.model.span import Span

RAMP = Set(Span.of(5), Weight(Fraction(10)), rest_s=60, kind="ramp")
PYRAMID = Dose(
    "reps",
    "both together",
    (
        RAMP,
        Set(Span(8, 10), Weight(Fraction(20)), rest_s=60),
        Set(Span(6, 8), Weight(Fraction(24)), rest_s=90),
        Set(Span(4, 6), Weight(Fraction(22)), rest_s=0),
    ),
)


def test_the_ramp_counts_for_nothing_but_time() -> None:
    """Lighter sets that lead up to the working ones are no sets, no repetitions and no first set."""
    assert (PYRAMID.count, PYRAMID.total_reps) == (3, Span(18, 24))
    assert PYRAMID.first.amount == Span(8, 10)


def test_how_sets_feel_is_what_any_of_them_says() -> None:
    """The heavy set is told how it should feel, a first one with the body alone is not."""
    heavy = Set(Span.of(5), Weight(Fraction(40)), feels=Effort(Fraction(8)))

    assert Dose("reps", "both together", (Set(Span.of(5)), heavy)).feels == Effort(Fraction(8))


def test_a_set_of_which_nothing_else_is_said() -> None:
    """It works with the body alone, at no set tempo, and nothing is rested after it."""
    assert Set(Span.of(8)) == Set(Span.of(8), load=None, tempo=None, rest_s=0, kind="work")


def test_a_loaded_walk_takes_a_second_a_metre() -> None:
    """200 m are 200 s. Common practice, no source."""
    walk = Dose("distance", "both together", (Set(Span.of(20_000)),))

    assert walk.tension_s == Span.of(200)


def test_the_amount_reaches_from_the_least_to_the_most() -> None:
    """Sets of 8 to 10, 6 to 8 and 4 to 6 repetitions are sets of 4 to 10."""
    assert PYRAMID.amount == Span(4, 10)


def test_another_set_is_the_last_one_again() -> None:
    """A pyramid with a set more goes on with its last one, and one with a set fewer ends earlier; the ramp stays."""
    assert [one.amount.low for one in PYRAMID.of(4).sets] == [5, 8, 6, 4, 4]
    assert [one.amount.low for one in PYRAMID.of(2).sets] == [5, 8, 6]


def test_a_number_set_for_all_sets_leaves_the_ramp_alone() -> None:
    """A change of load in one week is meant for the working sets."""
    changed = PYRAMID.with_sets(load=Weight(Fraction(18)))

    assert [one.load for one in changed.sets] == [RAMP.load, *(Weight(Fraction(18)),) * 3]


def test_rests_set_nothing_apart() -> None:
    """Three equal sets are three equal sets, whatever is rested between them: the rests are said beside them."""
    one = Set(Span.of(8), rest_s=60)
    equal, slower = (
        Dose("reps", "both together", (one, replace(one, rest_s=rest_s), replace(one, rest_s=0))) for rest_s in (60, 90)
    )

    assert equal.groups == (Group(3, one),)
    assert equal.same_throughout
    assert slower.groups == (Group(3, one),)
    assert (equal.rests_s, slower.rests_s) == ((60,), (60, 90))


HEAVIEST: list[tuple[list[Load | None], Load | None]] = [
    ([Weight(Fraction(20)), Weight(Fraction(24)), Weight(Fraction(22))], Weight(Fraction(24))),
    # in one hand and in each hand, kilograms and an effort cannot be compared: the first one stands for all
    ([Weight(Fraction(20)), Weight(Fraction(22), per_hand=True)], Weight(Fraction(20))),
    ([Weight(Fraction(20)), Weight(Fraction(24)), Effort(Fraction(7))], Weight(Fraction(20))),
    ([Effort(Fraction(6)), Effort(Fraction(8))], Effort(Fraction(6))),
    ([Band("light"), Band("heavy")], Band("light")),
    ([None, Weight(Fraction(8))], Weight(Fraction(8))),
    ([None], None),
]


@pytest.mark.parametrize(("loads", "heaviest"), HEAVIEST)
def test_the_heaviest_load(loads: list[Load | None], heaviest: Load | None) -> None:
    """The heaviest of loads of one kind; efforts and bands follow the member and have no heaviest."""
    dose = Dose("reps", "both together", tuple(Set(Span.of(8), load) for load in loads))

    assert dose.heaviest == heaviest
