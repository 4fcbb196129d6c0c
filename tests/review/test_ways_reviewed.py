"""Ways for members with a choice, as a physiotherapist meets them: signed with the exercise, and compared."""

import pytest
from click.testing import CliRunner

from setwright import reviewing
from setwright.cli import main
from setwright.review.report import as_text
from setwright.review.written_state import from_json, to_json
from support.desk import Desk

LEGS, CLUB = "sessions/legs.yml", "club.yml"
SESSION = "plans/regatta/week-01/tuesday/index.md"
MARK = "not reviewed</span>"


@pytest.fixture
def offered(desk: Desk) -> Desk:
    """A club with a choice, and a squat in the place of the row for it."""
    desk.edit(CLUB, "safety:", "choices: {tired: My arms are tired}\nsafety:")
    way = "        instead: [{for: [tired], exercise: squat, reps: 6, load: 8 kg, note: Slowly.}]\n"
    desk.edit(
        LEGS, "        reps: 10\n        load: light band\n", f"        reps: 10\n        load: light band\n{way}"
    )
    return desk


def test_the_words_of_a_way_are_signed_with_its_exercise(offered: Desk) -> None:
    """Its note, and whom it is for: marked until they are signed, and changed by one other word of the choice."""
    offered.sign("row", "plank")
    assert offered.pages()[SESSION].count(MARK) == 2

    offered.sign("squat")
    assert MARK not in offered.pages()[SESSION]
    assert offered.standing("squat") == ("reviewed", ())

    offered.edit(CLUB, "My arms are tired", "My back hurts")
    assert offered.standing("squat") == ("changed", ("words",))


def test_a_heavier_way_takes_its_exercise_out_of_review(offered: Desk) -> None:
    """The range of doses in use spans every way."""
    offered.sign("squat", "row", "plank")
    offered.edit(LEGS, "load: 8 kg", "load: 10 kg")

    assert offered.standing("squat") == ("changed", ("dosage",))


def test_a_comparison_tells_of_ways(desk: Desk) -> None:
    """A way that is new or other is told with the choice that it is for; what is optional now, too."""
    old = reviewing.state_at(str(desk.program), desk.program)
    desk.edit(CLUB, "safety:", "choices: {tired: My arms are tired}\nsafety:")
    way = "        optional: true\n        instead: [{for: [tired], exercise: squat, reps: 6}]\n"
    desk.edit(
        LEGS, "        reps: 10\n        load: light band\n", f"        reps: 10\n        load: light band\n{way}"
    )
    new = reviewing.state_at(str(desk.program), desk.program)
    told = as_text(reviewing.compare(old, new))

    assert "for tired: 2 rounds of 6 reps" in told
    assert "light band, optional" in told
    assert from_json(to_json(new)) == new


def test_explain_knows_a_way(offered: Desk) -> None:
    """Both entries of the squat are explained, each with its own dose."""
    words = ["explain", "regatta", "week", "1", "tuesday", "squat", "--program", str(offered.program)]
    said = CliRunner().invoke(main, words).output

    assert said.count("Stronger") >= 2 or said.count("week 1, tuesday") == 2
    assert "week 1, tuesday, for tired" in said
    assert "6 reps" in said
