"""The first form of sign-offs, word for word: lines of clubs' files hang on it, so that it stays for ever."""

from fractions import Fraction

import pytest

from setwright.dose.in_use import Dosage
from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight
from setwright.model.prescription import Measure
from setwright.model.tempo import Tempo
from setwright.review.first_form import first_digest_of, sentence
from support import make

AMOUNTS: list[tuple[Measure, tuple[int, ...], str]] = [
    ("reps", (8,), "8 reps"),
    ("reps", (12, 8, 10), "8 to 12 reps"),
    ("hold", (30,), "30 s hold"),
    ("hold", (30, 45), "30 to 45 s hold"),
    ("hold", (50, 59), "50 to 59 s hold"),
    ("hold", (59, 60), "59 s to 1 min hold"),
    ("work", (60,), "1 min work"),
    ("work", (90, 120), "1 min 30 s to 2 min work"),
    ("distance", (2000,), "20 m"),
    ("distance", (2000, 2550), "20 to 25.5 m"),
]


@pytest.mark.parametrize(("measure", "numbers", "words"), AMOUNTS)
def test_amounts(measure: Measure, numbers: tuple[int, ...], words: str) -> None:
    """From the least to the most, with one unit where both ends are below a minute."""
    amounts = {measure: set(map(Fraction, numbers))}

    assert sentence(Dosage(sets={3}, weekly_sets=6, amounts=amounts)) == f"3 sets of {words}; at most 6 sets a week"
    assert sentence(Dosage(in_routines=amounts)) == f"in warm-ups and cool-downs {words}"


LOADS: list[tuple[list[Load], str]] = [
    ([BodyWeightShare(Fraction("12.5"))], "12.5 % of body weight"),
    ([BodyWeightShare(Fraction(10)), BodyWeightShare(Fraction(5))], "5 to 10 % of body weight"),
    (
        [BodyWeightShare(Fraction(5), per_hand=True), BodyWeightShare(Fraction(6), per_hand=True)],
        "5 to 6 % of body weight in each hand",
    ),
    ([OneRepMaxShare(Fraction(70)), OneRepMaxShare(Fraction(80))], "70 to 80 % of 1RM"),
    ([Weight(Fraction(12)), Weight(Fraction(8))], "8 to 12 kg"),
    ([Weight(Fraction(8), per_hand=True)], "8 kg in each hand"),
    ([Effort(Fraction(7)), Effort(Fraction("6.5"))], "effort 6.5 to 7 of 10"),
    ([Effort(Fraction(10)), Effort(Fraction(9))], "effort 9 to 10 of 10"),
    ([Reserve(1)], "1 rep in reserve"),
    ([Reserve(3), Reserve(1)], "1 to 3 reps in reserve"),
    ([Band("light"), Band("heavy")], "heavy band or light band"),
    # each kind by itself, in the order of the first version's names
    (
        [Weight(Fraction(8)), Effort(Fraction(7)), Weight(Fraction(4), per_hand=True)],
        "effort 7 of 10; 8 kg; 4 kg in each hand",
    ),
]


@pytest.mark.parametrize(("loads", "words"), LOADS)
def test_loads(loads: list[Load], words: str) -> None:
    """The lightest to the heaviest of each kind."""
    dosage = Dosage(sets={3}, weekly_sets=3, amounts={"reps": {Fraction(8)}}, loads=set(loads))

    assert sentence(dosage) == f"3 sets of 8 reps; {words}; at most 3 sets a week"


def test_everything_in_one_sentence() -> None:
    """Sets, amounts, loads, none at all, tempos, the week, and routines."""
    dosage = Dosage(
        sets={1, 3},
        weekly_sets=9,
        amounts={"hold": {Fraction(30)}, "reps": {Fraction(8)}},
        loads={Weight(Fraction(8))},
        unloaded=True,
        tempos={Tempo(4, 0, 1, 0), Tempo(3, 0, 1, 0)},
        in_routines={"hold": {Fraction(20)}, "reps": {Fraction(5)}},
    )

    assert sentence(dosage) == (
        "1 to 3 sets of 8 reps or 30 s hold; 8 kg; also without weight; tempo 3-0-1-0 or 4-0-1-0; "
        "at most 9 sets a week; in warm-ups and cool-downs 5 reps or 20 s hold"
    )


def test_one_set_and_none() -> None:
    """A single set is one; without a weight at all nothing is said of weights; what nobody asks for is not in use."""
    assert sentence(Dosage(sets={1}, weekly_sets=1, amounts={"reps": {Fraction(8)}}, unloaded=True)) == (
        "1 set of 8 reps; at most 1 sets a week"
    )
    assert sentence(Dosage()) == "not in use"


LIMITS = [
    # a limit of load, and the digest that the first form has for it (pinned: computed once, and held from then on)
    ("20 % bodyweight", "palagbnlbpbg"),
    ("20 % bodyweight per hand", "eoklimmfgifn"),
    ("16 kg", "fipojiicdmdj"),
]


@pytest.mark.parametrize(("written", "digest"), LIMITS)
def test_digests_of_limits(written: str, digest: str) -> None:
    """The digest was taken over the load in the words of that time."""
    assert first_digest_of(make.exercise(f"limits: {{load: {written}}}"), "limits") == digest
