"""Numbers in free words, read as a member reads them. Common practice, no source."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.checks.quantities import number_of, quantities

KG_PER_LB = Fraction(45359237, 100000000)  # the international pound in kg (agreement of 1959)
CM_PER_INCH = Fraction(254, 100)  # the international inch (agreement of 1959)
ASKED = [
    # a text, the kinds and numbers that it asks for
    ("The 24 kg bell.", [("kg", 24)]),
    ("A 24-kilo bell, or 12.5 kilograms.", [("kg", 24), ("kg", Fraction(25, 2))]),
    ("Take 50 lb.", [("kg", 50 * KG_PER_LB)]),
    ("Fifty pounds.", [("kg", 50 * KG_PER_LB)]),
    ("A box of 40 to 50 cm.", [("height_cm", 40), ("height_cm", 50)]),
    ("Sixteen inches.", [("height_cm", 16 * CM_PER_INCH)]),
    ("A 0.5 m box.", [("height_cm", 50)]),
    ("Carry it 30 m.", [("distance_cm", 3000)]),
    ("Hold it for 2 minutes.", [("seconds", 120)]),
    ("Do twenty-four reps.", [("reps", 24)]),
    ("A hundred reps.", [("reps", 100)]),
    ("Thirty times without a stop.", [("reps", 30)]),
    ("Four sets today.", [("sets", 4)]),
    ("3 x 12, quickly.", [("sets", 3), ("reps", 12)]),
    ("3 sets of 20.", [("sets", 3), ("sets", 3), ("reps", 20)]),
    ("Two bells, 2x12 kg.", [("kg", 12)]),
    ("As many as you can.", [("effort", 10)]),
    ("Go for a max.", [("effort", 10)]),
    ("Double last week's weight.", [("heavier", 0)]),
    ("40 % of body weight.", [("% bodyweight", 40)]),
    ("At 85 % 1RM.", [("% 1RM", 85)]),
    ("At RPE 9.", [("effort", 9)]),
    ("Keep two reps in reserve.", [("effort", 8)]),
    ("The last set to failure.", [("effort", 10)]),
    ("As heavy as you can.", [("effort", 10)]),
    ("Go heavier today.", [("heavier", 0)]),
    ("One size up.", [("heavier", 0)]),
    ("No more than 24 kg.", [("kg", 24)]),
    ("Half your body weight.", [("% bodyweight", 50)]),
    ("Hold a quarter of your own body weight.", [("% bodyweight", 25)]),
    ("Two thirds of their bodyweight.", [("% bodyweight", Fraction(200, 3))]),
]
NOT_ASKED = [
    "Not the 24 kg bell.",
    "Less than 20 kg.",
    "Without a 20 kg bell.",
    "Rest 2 min between sets.",
    "Walk for 5 minutes.",
    "Three times a week.",
    "Never to failure.",
    "Half a minute.",
    "Never half your body weight.",
    "Squat with your body weight alone.",
    "Week 12 is the last.",
    "The first 1, then the others.",
    "Room 40 has the mats.",
]


@pytest.mark.parametrize(("text", "asked"), ASKED)
def test_what_a_text_asks_for(text: str, asked: list[tuple[str, Fraction]]) -> None:
    """In digits or in words, with the unit that a coach would say."""
    assert sorted((one.kind, one.number) for one in quantities(text)) == sorted(asked)


@pytest.mark.parametrize("text", NOT_ASKED)
def test_what_a_text_does_not_ask_for(text: str) -> None:
    """A warning, a rest, a date or a room is no dose."""
    assert list(quantities(text)) == []


def test_a_warning_ends_with_its_clause() -> None:
    """What comes after a comma is asked again."""
    assert [one.number for one in quantities("Not too deep, with 24 kg.")] == [24]


def test_each_hand_is_heard() -> None:
    """12 kg in each hand are not 12 kg in all."""
    assert [one.per_hand for one in quantities("12 kg in each hand. 12 kg.")] == [True, False]


OF_NAMES = [
    # a text, the repetitions of a goblet squat or a push-up that it asks for
    ("Fifty squats.", [50]),
    ("Do 30 of these goblet squats.", [30]),
    ("20 push-ups and 25 squats.", [20, 25]),
    ("Squat with the 20 kg bell.", []),
    ("Take 20 kg squats.", []),  # a weight, and no count
]


@pytest.mark.parametrize(("text", "reps"), OF_NAMES)
def test_a_number_of_an_exercise_is_one_of_repetitions(text: str, reps: list[int]) -> None:
    """People count squats, and do not say repetitions."""
    found = quantities(text, ["Goblet squat", "Push-up"])

    assert sorted(one.number for one in found if one.kind == "reps") == reps


TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
ONES = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine"]


@given(st.integers(20, 99))
def test_numbers_in_words_are_those_in_digits(number: int) -> None:
    """From twenty to ninety-nine."""
    ten, one = divmod(number, 10)
    words = TENS[ten - 2] + (f"-{ONES[one - 1]}" if one else "")

    assert number_of(words) == number_of(str(number)) == number
    assert [found.number for found in quantities(f"Do {words} reps.")] == [number]


@given(st.text(max_size=200))
def test_any_text_can_be_read(text: str) -> None:
    """Nothing that a coach writes breaks it, and what is found stands in the text."""
    assert all(found.said in text for found in quantities(text))
