"""The life of a sign-off: unsigned, signed, changed, signed again; and two reviewers at once."""

import json
from datetime import date, timedelta

import pytest

from setwright import reviewing
from setwright.errors import ProjectError
from setwright.review.signing import HEAD, with_line
from setwright.source.read import read
from support.desk import DAY, Desk

SQUAT = "exercises/squat.yml"


def test_life_of_a_sign_off(desk: Desk) -> None:
    """Each edit shows in the part that it touches, spaces show nowhere, and signing again settles it."""
    assert desk.standing("squat") == ("unreviewed", ())

    desk.sign("squat")
    assert desk.standing("squat") == ("reviewed", ())

    desk.edit(SQUAT, "Knees over toes", "Knees in line with the toes")
    assert desk.standing("squat") == ("changed", ("cues",))

    desk.edit(SQUAT, "Knees in line with the toes", "Knees over toes")
    assert desk.standing("squat") == ("reviewed", ())

    desk.edit(SQUAT, "why: Strong legs push the boat along.", "why: >-\n  Strong legs push\n  the boat along.")
    assert desk.standing("squat") == ("reviewed", ())

    desk.edit(SQUAT, "cues: [Chest up,", "# in our words\ncues: [ Chest up ,")
    assert desk.standing("squat") == ("reviewed", ())

    desk.edit("references.yml", "  year: 2009", "  year: 2009\n  studied: Healthy adults.\n  from_memory: Its pages.")
    assert desk.standing("squat") == ("reviewed", ())

    desk.edit("sessions/legs.yml", "up_to: 10}", "up_to: 9}")
    assert desk.standing("squat") == ("changed", ("dosage",))

    desk.sign("squat", on=DAY + timedelta(days=1))
    assert desk.standing("squat") == ("reviewed", ())


def test_a_limit_tightened_under_a_dose_stops_publishing(desk: Desk) -> None:
    """The dose is then beyond the limit: both lines are named, and the sign-off knows that the limits changed."""
    desk.sign("squat")
    desk.edit(SQUAT, "reps: 15}", "reps: 9}")
    found = desk.findings("dose-beyond-limit")

    assert desk.standing("squat") == ("changed", ("limits",))
    assert [f.severity for f in found] == ["error"]
    assert found[0].position.file == "program/sessions/legs.yml"
    assert "program/exercises/squat.yml:" in found[0].hint
    line = int(found[0].hint.split("squat.yml:")[1].split(":")[0])
    assert (desk.program / SQUAT).read_text("utf-8").split("\n")[line - 1].startswith("limits:")


def test_the_newest_sign_off_decides(desk: Desk) -> None:
    """Put back to what an older one saw, the exercise is not reviewed: the newer may be stricter on purpose."""
    desk.sign("squat")
    desk.edit(SQUAT, "load: 30 % bodyweight", "load: 25 % bodyweight")
    desk.sign("squat", who="Another physiotherapist", on=DAY + timedelta(days=7))
    desk.edit(SQUAT, "load: 25 % bodyweight", "load: 30 % bodyweight")
    review = desk.review("squat")

    assert (review.status, review.changed) == ("changed-back", ("limits",))
    assert review.sign_off is not None
    assert review.sign_off.who == "Another physiotherapist"
    assert [one.who for one in review.earlier] == ["A physiotherapist"]
    found = next(f for f in desk.findings("sign-off-due") if "squat" in f.position.file)
    assert found.severity == "error"
    assert "limits changed back to what was signed before Another physiotherapist signed" in found.message
    assert found.message.endswith(": ask again")


def test_signing_again_settles_what_was_changed_back(desk: Desk) -> None:
    """The reviewer was asked again and agreed."""
    desk.sign("squat")
    desk.edit(SQUAT, "Chest up", "Chest high")
    desk.sign("squat", on=DAY + timedelta(days=7))
    desk.edit(SQUAT, "Chest high", "Chest up")
    desk.sign("squat", on=DAY + timedelta(days=8))

    assert desk.standing("squat") == ("reviewed", ())


def test_of_two_sign_offs_on_one_day_the_lower_one_decides(desk: Desk) -> None:
    """Signing again writes below: the order of the file is the order of the day."""
    desk.sign("squat")
    desk.edit(SQUAT, "reps: 15", "reps: 12")
    desk.sign("squat")
    assert desk.standing("squat") == ("reviewed", ())

    desk.edit(SQUAT, "reps: 12", "reps: 15")
    assert desk.standing("squat") == ("changed-back", ("limits",))


GRAVE = [
    # an edit, and whether it must stop publishing by itself
    ("reps: 15}", "reps: 14}", True),
    ("reps: 15}", "reps: 15, not_for: [Anyone dizzy.]}", True),
    ("With a sore knee, ask", "With a sore knee, you may ask", True),
    ("limits: {", "stop_if: [A knee locks.]\nlimits: {", True),
    ("Chest up", "Chest high", False),
    ("Sit down between", "Sit between", False),
]
ACCEPTED = "accept: [{rule: sign-off-due, why: We know better.}]\n"


@pytest.mark.parametrize(("old", "new", "grave"), GRAVE)
@pytest.mark.parametrize("choice", ["", "changed_limits: notice\n"])
def test_changed_limits_stop_publishing_and_cannot_be_accepted(
    desk: Desk, old: str, new: str, grave: bool, choice: str
) -> None:
    """Limits, cautions, not-for and when to stop: an error unless the club chose the notice, and never accepted."""
    club = desk.program / "club.yml"
    club.write_text(club.read_text("utf-8") + choice, "utf-8")
    squat = desk.program / SQUAT
    squat.write_text(squat.read_text("utf-8") + ACCEPTED, "utf-8")
    desk.sign("squat", "row", "plank")
    desk.edit(SQUAT, old, new)

    assert [f.severity for f in desk.findings("sign-off-due")] == (["warning" if choice else "error"] if grave else [])


def test_pages_say_that_the_club_publishes_changed_limits(desk: Desk) -> None:
    """Where the club chose the notice, the exercise, the session and the review page carry it."""
    club = desk.program / "club.yml"
    club.write_text(club.read_text("utf-8") + "changed_limits: notice\n", "utf-8")
    desk.sign("squat", "row", "plank")
    before = desk.pages()
    desk.edit(SQUAT, "reps: 15}", "reps: 14}")
    now = desk.pages()
    said = {
        "exercises/squat/index.md": "The club publishes it all the same: ask before you do it.",
        "review/index.md": "is published with a notice, as the club chose",
        "plans/regatta/week-01/tuesday/index.md": "are not as the physiotherapist saw them",
    }

    assert {path for path, words in said.items() if words not in now[path]} == set()
    assert "publishes it all the same" not in before["exercises/squat/index.md"]
    assert "are not as the physiotherapist saw them" not in before["plans/regatta/week-01/tuesday/index.md"]


def test_the_review_page_says_what_a_sign_off_is(repository: Desk) -> None:
    """A record of trust, no proof; beside it stands who committed the line, where git knows."""
    repository.sign("squat")
    assert "line in the file by" not in repository.pages()["review/index.md"]  # not committed yet

    repository.commit()
    page = repository.pages()["review/index.md"]
    assert "A sign-off is a record of trust." in page
    assert "It is no proof of who wrote it" in page
    assert "(line in the file by A coach)" in page


def test_earlier_sign_offs_are_kept_latest_first(desk: Desk) -> None:
    """The last of three counts, and the two before stand behind it, the later one first."""
    for week, who in enumerate(("First", "Second", "Third")):
        desk.sign("squat", who=who, on=DAY + timedelta(days=7 * week))
    review = desk.review("squat")

    assert review.sign_off is not None
    assert [review.sign_off.who, *(one.who for one in review.earlier)] == ["Third", "Second", "First"]


def test_the_latest_of_two_that_do_not_fit_is_compared(desk: Desk) -> None:
    """What changed is told since the last look, not since the first."""
    desk.sign("squat")
    desk.edit(SQUAT, "Chest up", "Chest high")
    desk.sign("squat", on=DAY + timedelta(days=7))
    desk.edit(SQUAT, "Sit down between your feet.", "Sit between your feet.")

    assert desk.standing("squat") == ("changed", ("text",))


@pytest.mark.parametrize(("choice", "severity"), [("notice", "warning"), ("stop publishing", "error")])
def test_the_club_decides_what_an_outdated_review_does(desk: Desk, choice: str, severity: str) -> None:
    """Changed and unreviewed exercises are warnings or errors, as the club chose; what is reviewed is neither."""
    (desk.program / "club.yml").write_text(
        (desk.program / "club.yml").read_text("utf-8") + f"unreviewed_exercises: {choice}\n", "utf-8"
    )
    desk.sign("squat", "row")
    desk.edit("exercises/row.yml", "Elbows close", "Elbows near")
    found = desk.findings("sign-off-due")

    assert [(f.position.file, f.severity) for f in found] == [("program/exercises/row.yml", severity)]
    assert found[0].message == (
        "2 exercises are due for review; changed since their sign-off: row (cues); not signed off: plank"
    )


def test_what_is_due_is_told_once_and_what_may_hurt_first(desk: Desk) -> None:
    """Forty edited pages are one line in the coach's list; a looser limit stops publishing, in a line of its own."""
    desk.sign("squat", "row", "plank")
    desk.edit("exercises/row.yml", "Elbows close", "Elbows near")
    desk.edit("exercises/plank.yml", "Neck long", "Long neck")
    desk.edit(SQUAT, "limits: {load: 30 % bodyweight, reps: 15}", "limits: {load: 40 % bodyweight, reps: 15}")
    other, grave = desk.findings("sign-off-due")  # in order of place

    assert (grave.position.file, grave.severity) == (f"program/{SQUAT}", "error")
    assert "limits changed since A physiotherapist signed on" in grave.message
    assert (other.severity, other.message) == (
        "warning",
        "2 exercises are due for review; changed since their sign-off: plank (cues), row (cues)",
    )


def test_a_club_without_any_sign_off_is_not_nagged(desk: Desk) -> None:
    """With a notice on every page, a club that has no physiotherapist yet hears nothing."""
    assert desk.findings("sign-off-due") == []


def test_a_sign_off_of_a_renamed_exercise_is_found(desk: Desk) -> None:
    """The review does not follow a file that gets another name, and the coach is told."""
    desk.sign("plank")
    (desk.program / "exercises/plank.yml").rename(desk.program / "exercises/front-plank.yml")
    desk.edit("sessions/trunk.yml", "exercise: plank", "exercise: front-plank")
    desk.edit("routines/warm.yml", "exercise: plank", "exercise: front-plank")
    found = desk.findings("sign-off-astray")

    assert [f.message for f in found] == ["there is no exercise 'plank' for this sign-off"]
    assert found[0].position.line == 4


AWKWARD = [
    'Reads "well"; go on.',
    "Colon: and # hash",
    "Ünïcödé, {braces} & [brackets]",
    "'single' \\ backslash",
    "* - ?",
]


@pytest.mark.parametrize("note", AWKWARD)
def test_any_note_comes_back_as_it_was_written(desk: Desk, note: str) -> None:
    """A note with signs that mean something in YAML is kept word for word, and so is the line."""
    (line,) = desk.sign("squat", note=note)
    programme = read(desk.program).programme
    assert programme is not None

    assert programme.sign_offs[0].note == note
    assert f"note: {json.dumps(note, ensure_ascii=False)}" in line


@pytest.mark.parametrize(
    ("who", "role"), [("", "Physiotherapist"), ("A physiotherapist", ""), ("A physiotherapist", "x" * 5000)]
)
def test_a_sign_off_that_could_not_be_read_is_not_written(desk: Desk, who: str, role: str) -> None:
    """An empty name or a role without end is refused before the file is touched."""
    with pytest.raises(ProjectError):
        reviewing.sign(desk.program, ["squat"], who, role, DAY, None)

    assert not (desk.program / "sign-offs.yml").exists()


def test_lines_stand_in_the_order_of_the_exercises(desk: Desk) -> None:
    """Whoever signs first, the file is ordered by exercise, and everything else in it stays."""
    desk.sign("squat")
    desk.edit("sign-offs.yml", "\n- {", "\n# asked on the phone\n- {")
    desk.sign("plank")
    desk.sign("row", on=date(2027, 2, 2))
    text = (desk.program / "sign-offs.yml").read_text("utf-8")

    assert text.startswith(HEAD)
    assert "# asked on the phone" in text
    assert [row.split(",")[0] for row in text.split("\n") if row.startswith("- ")] == [
        "- {exercise: plank",
        "- {exercise: row",
        "- {exercise: squat",
    ]


def test_a_pasted_line_may_stand_anywhere(desk: Desk) -> None:
    """A line pasted at the end counts; one that was made for another exercise shows as changed."""
    (line,) = desk.sign("squat")
    (desk.program / "sign-offs.yml").write_text(with_line("", line) + "\n\n" + line.replace("squat", "row") + "\n")

    assert desk.standing("squat") == ("reviewed", ())
    assert desk.standing("row")[0] == "changed"


def _merged(desk: Desk, mine: str, theirs: str) -> list[tuple[str, str]]:
    """Let two people sign on two branches, merge them, and return who signed what."""
    desk.git("checkout", "-q", "-b", "theirs")
    desk.sign(theirs, who="Their reviewer")
    desk.commit()
    desk.git("checkout", "-q", "main")
    desk.sign(mine, who="My reviewer")
    desk.commit()
    desk.git("merge", "-q", "--no-edit", "theirs")
    programme = read(desk.program).programme
    assert programme is not None
    return sorted((one.exercise, one.who) for one in programme.sign_offs)


@pytest.mark.parametrize("signed_before", [(), ("plank",), ("plank", "row", "squat")])
@pytest.mark.parametrize("theirs", ["squat", "row", "plank"])
def test_two_people_sign_on_two_branches(repository: Desk, signed_before: tuple[str, ...], theirs: str) -> None:
    """A merge keeps both sign-offs, whether they are of neighbours or of the same exercise, and both stay whole."""
    if signed_before:
        repository.sign(*signed_before, who="First reviewer")
        repository.commit()
    found = _merged(repository, "row", theirs)

    assert ("row", "My reviewer") in found
    assert (theirs, "Their reviewer") in found
    assert len(found) == len(signed_before) + 2
    assert repository.standing("row") == ("reviewed", ())
    assert repository.standing(theirs) == ("reviewed", ())


def test_conflict_markers_are_named(desk: Desk) -> None:
    """Where a forge merged without the rule of .gitattributes, the coach is told what to do."""
    (line,) = desk.sign("squat")
    text = f"<<<<<<< HEAD\n{line}\n=======\n{line}\n>>>>>>> theirs\n"
    (desk.program / "sign-offs.yml").write_text(text, "utf-8")
    found = read(desk.program, "program").findings

    assert [(str(f.position), f.rule) for f in found] == [("program/sign-offs.yml:1:1", "conflict-markers")]
