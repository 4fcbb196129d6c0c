"""The doses in use as a sign-off keeps them: values, read back as they were, whatever words pages use."""

import pytest

from setwright.dose.in_use import dosages
from setwright.dose.resolve import resolve
from setwright.model.programme import Programme
from setwright.model.sign_off import SignedDosage
from setwright.review.first_form import sentence
from setwright.review.signed import as_dosage, signed, text_of
from setwright.wording.dosage import in_words
from setwright.wording.language import ENGLISH
from support import make

RANGES = [
    # the prescription over four weeks, and what a sign-off keeps of it
    ("{reps: 8}", "{reps: [8, 8], sets: [3, 3], weekly_sets: 3}"),
    ("{hold: 50 s, progress: {hold: {add: 10 s, up_to: 70 s}}}", "{hold: [50 s, 70 s], sets: [3, 3], weekly_sets: 3}"),
    ("{distance: 1.55 m}", "{distance: [155 cm, 155 cm], sets: [3, 3], weekly_sets: 3}"),
    (
        "{reps: 8, load: 5 kg per hand, progress: {load: {add: 1 kg per hand, up_to: 6 kg per hand}}}",
        "{reps: [8, 8], sets: [3, 3], load: [5 kg per hand, 6 kg per hand], weekly_sets: 3}",
    ),
    (
        "{reps: 8, load: light band, progress: {load: {weeks: [light band, heavy band]}}}",
        "{reps: [8, 8], sets: [3, 3], load: [heavy band, light band], weekly_sets: 3}",
    ),
    (
        "{reps: 8, tempo: 3-0-1-0, progress: {tempo: {weeks: [3-0-1-0, 4-0-X-0]}}}",
        "{reps: [8, 8], sets: [3, 3], tempo: [3-0-1-0, 4-0-X-0], weekly_sets: 3}",
    ),
]


@pytest.mark.parametrize(("written", "kept"), RANGES)
def test_what_is_kept(written: str, kept: str) -> None:
    """From the least to the most of everything, in the coach's own form."""
    made = make.one_exercise(written, phases="[{name: All, aim: To go on., weeks: 4, sessions: {monday: only}}]")

    assert text_of(signed(dosages(made, resolve(made))["lift"])) == kept


def test_every_dosage_of_the_example_comes_back(example: Programme) -> None:
    """Written and read again, signed doses are the same, and are said in the same words."""
    for dosage in dosages(example, resolve(example)).values():
        again = SignedDosage.model_validate(make.yaml(f"doses: {text_of(signed(dosage))}")["doses"])

        assert again == signed(dosage)
        assert in_words(ENGLISH, as_dosage(again)) == in_words(ENGLISH, dosage)


def test_today_the_first_form_and_the_pages_say_the_same(example: Programme) -> None:
    """The sentence that old sign-offs keep is the one that the review page shows, as long as nobody words it anew."""
    for dosage in dosages(example, resolve(example)).values():
        assert sentence(dosage) == in_words(ENGLISH, dosage)
