"""A suggestion after a slip never names something of another meaning."""

from typing import get_args

import pytest

from setwright.model.vocabulary import Region
from setwright.source.suggest import which_word

REGIONS = get_args(Region)


@pytest.mark.parametrize(
    ("written", "meant"),
    [("quadricep", "quadriceps"), ("hamstring", "hamstrings"), ("gluets", "glutes"), ("Shoulder", "shoulders")],
)
def test_a_slip_of_the_keyboard_is_named(written: str, meant: str) -> None:
    """A word that lacks a letter, has two swapped or a capital is nearly the right one."""
    assert which_word(written, REGIONS) == f"did you mean '{meant}'?"


@pytest.mark.parametrize("written", ["abs", "core", "obliques", "adductors", "calves", "delts", "traps", "pecs"])
def test_another_word_is_not_taken_for_a_slip(written: str) -> None:
    """A word of another meaning, or one that is only shorter, gets all the words that exist."""
    assert which_word(written, REGIONS) == f"one of: {', '.join(REGIONS)}"


def test_biceps_were_never_quadriceps() -> None:
    """A region that is missing from a list is not turned into one that looks like it."""
    assert which_word("biceps", ("quadriceps", "glutes")) == "one of: quadriceps, glutes"
    assert which_word("lats", ("glutes", "calf")) == "one of: glutes, calf"
