"""What sessions and warm-ups say of an exercise under limits in words and kit of their own: signed, or marked."""

import json

import pytest

from setwright import publish
from setwright.dose.resolve import resolve
from setwright.handouts import tree as handouts
from setwright.handouts.writing import Desk as Paper
from setwright.outline.site import Site
from setwright.review.words import sayings, words_about
from support import make
from support.desk import Desk

SQUAT, LEGS, WARM = "exercises/squat.yml", "sessions/legs.yml", "routines/warm.yml"
MARK = "not reviewed</span>"
SESSION = "plans/regatta/week-01/tuesday/index.md"


def note(desk: Desk, text: str) -> None:
    """Write a note for the squat in its session."""
    desk.edit(LEGS, "        reps: 8\n", f"        reps: 8\n        note: {text}\n")


def test_a_note_that_nobody_saw_is_marked_until_it_is_signed(desk: Desk) -> None:
    """On the page of the session, which the guide shows again; signing sees it, and one other word is a change."""
    note(desk, "Go deep.")
    desk.sign("row", "plank")
    assert f'Go deep. <span class="sw-tag">{MARK}' in desk.pages()[SESSION]

    desk.sign("squat")
    assert "Go deep.</p>" in desk.pages()[SESSION]
    assert desk.standing("squat") == ("reviewed", ())

    desk.edit(LEGS, "Go deep.", "Go deeper.")
    assert desk.standing("squat") == ("changed", ("words",))
    assert f'Go deeper. <span class="sw-tag">{MARK}' in desk.pages()[SESSION]


def test_a_sign_off_from_before_stays_valid_but_its_words_are_marked(desk: Desk) -> None:
    """A line without the digest of words is as good as it was; what it did not see is shown as not reviewed."""
    note(desk, "Go deep.")
    desk.sign("squat")
    path = desk.program / "sign-offs.yml"
    before, after = path.read_text("utf-8").split(" words: ")
    path.write_text(f"{before} {after.split(', ', 1)[1]}", "utf-8")
    review = desk.review("squat")

    assert (review.status, review.changed, review.words_seen) == ("reviewed", (), False)
    assert MARK in desk.pages()[SESSION]


def test_an_exercise_without_limits_needs_no_such_signature(desk: Desk) -> None:
    """Where nothing is limited, a note can get round nothing."""
    desk.edit(SQUAT, "limits: {load: 30 % bodyweight, reps: 15}\n", "")
    note(desk, "Go deep.")

    assert desk.review("squat").words_seen
    assert MARK not in desk.pages()[SESSION]


LINK = "Ten of [these](exercise:squat)."
SAID = [
    # file, old, new, whether it is about the squat
    (LEGS, "aim: Legs that push.", "aim: Legs.\nnote: Squats with a kettlebell come twice today.", True),
    (LEGS, "aim: Legs that push.", "aim: Legs.\nnote: Drink enough.", False),
    (LEGS, "    rounds: 2", "    note: Twice as many, if you like.\n    rounds: 2", True),
    (LEGS, "        reps: 8", "        kit: [kettlebell]\n        reps: 8", True),
    (LEGS, "        reps: 10", "        note: Elbows close.\n        reps: 10", False),
    (WARM, "Walk to the bridge and back.", "Do twenty squats with a kettlebell.", True),
    (WARM, "{do: Walk to the bridge and back.", f'{{do: "{LINK}"', True),
    (WARM, "hold: 15 s", "hold: 15 s, note: Like a squat with a kettlebell upside down.", True),
    ("plans/regatta.yml", "why: The boathouse is let.", "why: More of the squat with a kettlebell.", True),
]


@pytest.mark.parametrize(("file", "old", "new", "about"), SAID)
def test_what_is_about_an_exercise(desk: Desk, file: str, old: str, new: str, about: bool) -> None:
    """Its own note and kit, its block's note, and any words that name it or link to it."""
    desk.sign("squat")
    desk.edit(file, old, new)

    assert desk.standing("squat") == (("changed", ("words",)) if about else ("reviewed", ()))


EVERYWHERE = {
    "exercises/lift": "name: Heavy lift\nlimits: {reps: 20}",
    "sessions/only": """
note: A heavy lift today, one.
blocks:
  - kind: straight
    sets: 3
    note: Two.
    exercises: [{exercise: lift, reps: 8, kit: [dumbbell], height: 20 cm, note: Three.}]
""",
    "routines/warm": """
exercises:
  - {do: "Ten heavy lifts, four.", work: 1 min}
  - {exercise: lift, reps: 5, note: Five.}
""",
    "plans/plan": "changes: [{week: 1, session: only, exercise: lift, reps: 6, why: 'The heavy lift was heavy, six.'}]",
}


def test_every_kind_of_words_is_marked_on_page_and_paper() -> None:
    """Notes of session, block and exercise, kit, steps and notes of warm-ups, and the reason of a change."""
    made = make.programme(EVERYWHERE)
    site = Site(made, resolve(made))
    pages, sheets = make.printed(site), {s.path: s for s in handouts.sheets(Paper(site))}
    session = pages["plans/plan/week-01/monday/index.md"]
    warm = pages["warm-ups/warm/index.md"]
    booklet = json.dumps(sheets["handouts/plan/plan-booklet.pdf"].data)
    sheet = json.dumps(sheets["handouts/plan/plan-week-01-monday.pdf"].data)

    assert {saying.where[-1] for saying in sayings(made)} == {"note", "kit", "height", "do", "why"}
    assert len(words_about(made)["lift"]) == len(sayings(made)) == 8
    assert session.count(MARK) == 6
    assert warm.count(MARK) == 2
    assert sheet.count("(not reviewed)") == 6
    assert booklet.count("(not reviewed)") >= 8


def test_review_says_whose_words_are_not_seen(desk: Desk) -> None:
    """The review page lists what is said elsewhere, beside the exercise."""
    note(desk, "Go deep.")
    looked = publish.look(desk.program, "program")

    assert looked.programme is not None
    assert "Go deep." in desk.pages()["review/index.md"]
