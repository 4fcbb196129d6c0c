"""A choice that speaks of pain, an injury or an illness leaves it to a clinician."""

import pytest

from setwright.wording.choices import clinician_decides, for_whom, speaks_of_illness
from setwright.wording.language import ENGLISH
from support import make

# Common practice, no source: what members say of themselves.
ILL = [
    "Lifting an arm above my head hurts",
    "I have a sore knee",
    "My back aches after long days",
    "I am back from a sprained ankle",
    "I am pregnant",
    "I have high blood pressure",
    "I get dizzy when I stand up",
    "I had an operation on my hip",
    "I take medicine for my heart",
    "I have backache in the morning",
    "My shoulder is unstable",
    "I am recovering from flu",
]
WELL = [
    "I cannot do a pull-up yet",
    "This is my first season of strength work",
    "I train at home without a barbell",
    "I would rather not jump",
    "I am over sixty",
]


@pytest.mark.parametrize("sentence", ILL)
def test_words_of_illness_are_known(sentence: str) -> None:
    assert speaks_of_illness(sentence)
    assert "a clinician decides" in (clinician_decides(ENGLISH, make.club(f"choices: {{a: {sentence}}}"), ["a"]) or "")


@pytest.mark.parametrize("sentence", WELL)
def test_other_choices_say_nothing_of_clinicians(sentence: str) -> None:
    assert not speaks_of_illness(sentence)
    assert clinician_decides(ENGLISH, make.club(f"choices: {{a: {sentence}}}"), ["a"]) is None


def test_one_of_several_choices_is_enough() -> None:
    """A way for newcomers and for sore knees defers to a clinician; both are named."""
    club = make.club("choices: {a: I am new, b: My knee hurts}")

    assert clinician_decides(ENGLISH, club, ["a", "b"]) is not None
    assert for_whom(ENGLISH, club, ["a", "b"]) == "“I am new” or “My knee hurts”"
