"""What a reviewer saw: found in git where git has it, and never guessed where it has not."""

from setwright import publish
from setwright.pages.review import changed_parts
from setwright.review.before import seen
from setwright.review.status import reviews
from setwright.wording.language import ENGLISH
from support.desk import Desk

SQUAT = "exercises/squat.yml"


def _changed(desk: Desk) -> dict[str, tuple[bool, list[tuple[str, str, str]]]]:
    """Return by part whether the old one is known, and the rows as label, old and new."""
    looked = publish.look(desk.program, "program")
    assert looked.programme is not None
    found = reviews(looked.programme, looked.plans)
    old = seen(desk.program, found)
    parts = changed_parts(ENGLISH, looked.programme.exercises["squat"], found["squat"], old.get("squat", {}))
    return {p.part: (p.kept, [(r.label, r.old_text, r.new_text) for r in p.rows]) for p in parts}


def test_old_and_new_stand_side_by_side(repository: Desk) -> None:
    """Several commits later, each part is shown as it was when it was signed."""
    repository.sign("squat")
    repository.commit()
    repository.edit(SQUAT, "Chest up", "Chest high")
    repository.commit()
    repository.edit(SQUAT, "Chest high", "Chest proud")
    repository.edit(SQUAT, "load: 30 % bodyweight", "load: 25 % bodyweight")

    assert _changed(repository) == {
        "limits": (True, [("Load", "30 % bodyweight", "25 % bodyweight")]),
        "cues": (True, [("Cue 1", "Chest up", "Chest proud")]),
    }


def test_the_dosage_needs_no_history(desk: Desk) -> None:
    """A sign-off keeps the range of doses in words, so old and new are there without git."""
    desk.sign("squat")
    desk.edit("sessions/legs.yml", "up_to: 10}", "up_to: 9}")
    kept, rows = _changed(desk)["dosage"]

    assert kept
    assert rows[0][1].startswith("1 to 2 sets of 8 to 10 reps")
    assert rows[0][2].startswith("1 to 2 sets of 8 to 9 reps")


def test_without_a_repository_the_new_text_stands_alone(desk: Desk) -> None:
    """Nothing older is kept: the page says so, and shows what stands there now."""
    desk.sign("squat")
    desk.edit(SQUAT, "Chest up", "Chest high")
    kept, rows = _changed(desk)["cues"]

    assert not kept
    assert ("Cue 1", "", "Chest high") in rows


def test_a_version_that_was_never_committed_is_not_guessed(repository: Desk) -> None:
    """What was signed between two commits is in no commit."""
    repository.edit(SQUAT, "Chest up", "Chest high")
    repository.sign("squat")
    repository.edit(SQUAT, "Chest high", "Chest proud")
    repository.commit()

    assert _changed(repository)["cues"][0] is False


def test_a_part_that_came_after_the_review_needs_no_history(desk: Desk) -> None:
    """A figure that was not there when the page was signed is new, whole."""
    desk.sign("squat")
    desk.edit(SQUAT, "sources:", "figure: {poses: [{trunk: 30, knee: 110}]}\nsources:")
    kept, rows = _changed(desk)["figure"]

    assert kept
    assert all(old == "" for _, old, _ in rows)


def test_only_what_changed_since_a_sign_off_is_looked_up(repository: Desk) -> None:
    """An exercise that nobody signed, and one that is as it was signed, have no older state to show."""
    repository.sign("squat", "row")
    repository.edit(SQUAT, "Chest up", "Chest high")
    repository.commit()
    looked = publish.look(repository.program, "program")
    assert looked.programme is not None

    found = seen(repository.program, reviews(looked.programme, looked.plans))

    assert {ident: set(parts) for ident, parts in found.items()} == {"squat": {"cues"}}
