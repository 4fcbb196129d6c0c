"""Whom a plan or a way is for, as its words tell: members under 18, and those who begin. Common practice, no source."""

import pytest

from setwright.checks.minors import speaks_of_minors
from setwright.wording.choices import speaks_of_beginning
from support import make


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Juniors of 12.", "Juniors"),
        ("The under-16s of the club.", "under-16s"),
        ("Members aged 14 and more.", "aged 14"),
        ("Our 15-year-olds.", "15-year-olds"),
        ("The U18 squad.", None),  # an age that a squad is called by: 18 is no minor's
        ("The U16 squad.", "U16"),
        ("Pupils in their last year.", "Pupils"),
        ("Adults who keep asking, and juniors' parents.", None),
        ("Adults, no juniors.", None),
        ("Grown-ups, and not for children.", None),
        ("Parents of young children.", None),
        ("Members aged 55 and more, two evenings of 12 weeks.", None),
    ],
)
def test_a_plan_for_minors_is_known_by_its_words(text: str, found: str | None) -> None:
    """Ages below 18 and the words for those who have them; whoever belongs to them is somebody else."""
    assert speaks_of_minors(text) == found


@pytest.mark.parametrize(
    ("whom", "speaks"),
    [
        ("Juniors of 12.", True),
        ("Juniors of 12 whose parents agree.", True),
        ("Juniors of 12, with their coach.", True),
        ("Juniors of 12 whose parents agree, with a coach who may train minors.", False),
        ("Juniors of 12 whose guardians and physiotherapist have agreed.", False),
    ],
)
def test_minors_want_a_guardian_and_somebody_who_is_trained_for_it(whom: str, speaks: bool) -> None:
    """One of the two is not enough."""
    found = make.verdict(make.programme({"plans/plan": f"for: {whom}"})).findings

    assert [f.rule for f in found] == (["minors-without-adults"] if speaks else [])


@pytest.mark.parametrize(
    ("sentence", "begins"),
    [
        ("This is my first season of strength work", True),
        ("I am new to lifting", True),
        ("I have never lifted", True),
        ("I come back after a long break", True),
        ("I have lifted for years", False),
        ("My knee hurts", False),
        ("I train at home", False),
    ],
)
def test_who_begins_is_known_by_the_words_of_a_choice(sentence: str, begins: bool) -> None:
    """New to it, or back to it."""
    assert speaks_of_beginning(sentence) is begins


_USUAL = "{exercise: lift, reps: 8, load: %s, instead: [{for: [new], exercise: lift, %s}]}"


@pytest.mark.parametrize(
    ("usual", "way", "speaks"),
    [
        ("8 kg", "reps: 8, load: 12 kg", True),
        ("8 kg", "reps: 8, load: 8 kg", False),
        ("8 kg", "reps: 10, load: 8 kg", True),
        ("8 kg", "reps: 10, load: 6 kg", False),
        ("RPE 6", "reps: 8, load: RPE 7", True),
        ("RPE 6", "reps: 8, load: RPE 5", False),
        ("3 reps in reserve", "reps: 8, load: 2 reps in reserve", True),
        ("3 reps in reserve", "reps: 8, load: 5 reps in reserve", False),
        ("8 kg", "hold: 20 s", False),
    ],
)
def test_beginners_are_offered_the_same_or_less(usual: str, way: str, speaks: bool) -> None:
    """More load, more effort or more repetitions at the same load is a slip."""
    session = f"blocks: [{{kind: straight, sets: 3, rest: 2 min, exercises: [{_USUAL % (usual, way)}]}}]"
    club = make.CLUB + "choices: {new: This is my first season}\n"
    made = make.programme({"club": club, "sessions/only": session})
    found = [f.rule for f in make.verdict(made).findings]

    assert found == (["beginners-way-heavier"] if speaks else [])


@pytest.mark.parametrize(("load", "speaks"), [("RPE 10", True), ("0 reps in reserve", True), ("RPE 9", False)])
def test_a_session_is_no_row_of_sets_to_failure(load: str, speaks: bool) -> None:
    """All sets to the last repetition are told, for trained members too; one repetition left is theirs to choose."""
    block = f"{{kind: straight, sets: 3, rest: 3 min, exercises: [{{exercise: lift, reps: 8, load: {load}}}]}}"
    made = make.programme({"plans/plan": "experience: trained", "sessions/only": f"blocks: [{block}]"})

    assert [f.rule for f in make.verdict(made).findings] == (["most-sets-to-failure"] if speaks else [])
