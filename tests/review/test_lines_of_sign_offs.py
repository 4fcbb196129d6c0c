"""A sign-off as a line of the file, and where it goes; the signed doses in it, value by value."""

from datetime import date
from fractions import Fraction

import pytest

from setwright.dose.in_use import Dosage
from setwright.model.load import Band, Reserve, Weight
from setwright.model.sign_off import SignedDosage
from setwright.model.tempo import Tempo
from setwright.review.difference import Piece, Row, rows, words_apart
from setwright.review.parts import Line
from setwright.review.signed import as_dosage, signed, text_of
from setwright.review.signing import HEAD, line_of, with_line
from support import make

DIGESTS = {
    "text": "a",
    "cues": "b",
    "cautions": "c",
    "limits": "d",
    "figure": "none",
    "words": "none",
    "dosage": "{reps: [8, 8]}",
}
PARTS = "text: a, cues: b, cautions: c, limits: d, figure: none, words: none, doses: {reps: [8, 8]}"


def test_a_line_holds_who_when_and_what() -> None:
    """Texts stand in double quotes on one line, and no note is no key."""
    noted, plain = (
        line_of("squat", "A  reviewer", "Physio", date(2027, 2, 1), note, DIGESTS) for note in ("Two\nlines.", None)
    )
    begins = '- {exercise: squat, who: "A reviewer", role: "Physio", date: 2027-02-01, '

    assert noted == f'{begins}note: "Two lines.", {PARTS}}}'
    assert plain == f"{begins}{PARTS}}}"


PLUM, PEAR, FIG = (f"- {{exercise: {ident}, who: x}}" for ident in ("plum", "pear", "fig"))
FILES = [
    # the file, a new line, the file afterwards
    ("", PEAR, f"{HEAD}{PEAR}\n"),
    (f"# ours\n{FIG}\n{PLUM}\n", PEAR, f"# ours\n{FIG}\n{PEAR}\n{PLUM}\n"),
    (f"# ours\n{PLUM}\n", FIG, f"# ours\n{FIG}\n{PLUM}\n"),
    (f"{PEAR}\n# the second one\n{PEAR}\n", PEAR, f"{PEAR}\n# the second one\n{PEAR}\n{PEAR}\n"),
    (f"{PEAR}\n\n\n", PLUM, f"{PEAR}\n{PLUM}\n"),
    ("- exercise: pear\n  who: x\n", FIG, f"- exercise: pear\n  who: x\n{FIG}\n"),  # pasted in another form
]


@pytest.mark.parametrize(("text", "line", "after"), FILES)
def test_a_line_goes_where_its_exercise_stands(text: str, line: str, after: str) -> None:
    """Behind the last one of the same exercise or of an earlier one; all else stays as it was."""
    assert with_line(text, line) == after


WHOLE = Dosage(
    sets={2, 4, 3},
    weekly_sets=8,
    amounts={"reps": {Fraction(8), Fraction(12), Fraction(10)}, "hold": {Fraction(30)}},
    loads={Weight(Fraction(8)), Weight(Fraction(12)), Weight(Fraction(10)), Reserve(2), Band("light"), Band("heavy")},
    unloaded=True,
    tempos={Tempo(3, 0, 1, 0)},
    in_routines={"work": {Fraction(20), Fraction(40)}},
)
WRITTEN = (
    "{reps: [8, 12], hold: [30 s, 30 s], sets: [2, 4], "
    "load: [heavy band, light band, 2 reps in reserve, 8 kg, 12 kg], without_weight: true, tempo: [3-0-1-0], "
    "weekly_sets: 8, routines: {work: [20 s, 40 s]}}"
)


def test_signed_doses_hold_the_ends_of_everything() -> None:
    """What lies between the least and the most is not kept; bands have no order, so that each is."""
    assert text_of(signed(WHOLE)) == WRITTEN


def test_signed_doses_are_read_back_with_their_ends() -> None:
    """The dosage that a page shows for a sign-off has the ends that were signed."""
    again = as_dosage(SignedDosage.model_validate(make.yaml(f"doses: {WRITTEN}")["doses"]))

    assert (again.sets, again.weekly_sets, again.unloaded) == ({2, 4}, 8, True)
    assert again.amounts == {"reps": {8, 12}, "hold": {30}}
    assert again.loads == WHOLE.loads - {Weight(Fraction(10))}
    assert (again.tempos, again.in_routines) == (WHOLE.tempos, WHOLE.in_routines)


@pytest.mark.parametrize(
    ("loads", "unloaded", "words"),
    [
        (set(), True, "{reps: [8, 8], sets: [3, 3]}"),  # always without a weight
        ({Weight(Fraction(8))}, False, "{reps: [8, 8], sets: [3, 3], load: [8 kg]}"),
        ({Weight(Fraction(8))}, True, "{reps: [8, 8], sets: [3, 3], load: [8 kg], without_weight: true}"),
    ],
)
def test_without_a_weight_is_said_beside_weights_alone(loads: set[Weight], unloaded: bool, words: str) -> None:
    """Where no set has a load there is nothing to say; read back, it is the same."""
    dosage = Dosage(sets={3}, amounts={"reps": {Fraction(8)}}, loads=set(loads), unloaded=unloaded)

    assert text_of(signed(dosage)) == words
    assert as_dosage(signed(dosage)).unloaded is unloaded


def test_what_is_not_in_use_is_signed_as_nothing() -> None:
    """No sets, no doses, no routines: an empty mapping, and nothing else when it is read back."""
    assert text_of(signed(Dosage())) == "{}"
    assert as_dosage(signed(Dosage())) == Dosage(unloaded=True)


def test_words_that_one_side_lacks_are_marked_on_the_other() -> None:
    """Both sides keep all their words; only what differs is marked."""
    assert words_apart("Sit down now", "Sit up now") == (
        (Piece("Sit ", False), Piece("down", True), Piece(" now", False)),
        (Piece("Sit ", False), Piece("up", True), Piece(" now", False)),
    )


def test_lines_are_paired_key_by_key() -> None:
    """What was taken out stands beside what came in under the same key; the rest stands alone, whole."""
    old = [Line("cues 1", "Tall", "cues"), Line("steps 1", "Sit.", "steps"), Line("why", "Strong.", "why")]
    new = [Line("steps 2", "Sat.", "steps"), Line("steps 3", "Up.", "steps"), Line("why", "Strong.", "why")]

    assert rows(old, new) == (
        Row("cues 1", (Piece("Tall", True),), ()),
        Row("steps 2", (Piece("Sit.", True),), (Piece("Sat.", True),)),
        Row("steps 3", (), (Piece("Up.", True),)),
    )
