"""What changed between two states of the programme, as a coach's pull request shows it to a physiotherapist."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st

from setwright import reviewing
from setwright.cli import main
from setwright.errors import SetwrightError
from setwright.review.difference import rows, words_apart
from setwright.review.parts import Line
from setwright.review.report import NOTHING, as_markdown, as_text
from setwright.review.written_state import StateError, from_json, to_json
from setwright.wording.language import ENGLISH
from setwright.wording.times import weeks_in_words
from support.desk import Desk

texts = st.text(alphabet="ab \n.", max_size=30)


@given(texts, texts)
def test_pieces_put_together_are_the_texts(old: str, new: str) -> None:
    """Marking words loses nothing: the pieces of each side are the side."""
    left, right = words_apart(old, new)

    assert ("".join(p.text for p in left), "".join(p.text for p in right)) == (old, new)


@given(texts)
def test_a_text_does_not_differ_from_itself(text: str) -> None:
    """Nothing is marked where nothing changed."""
    assert not any(piece.changed for side in words_apart(text, text) for piece in side)


lines = st.lists(st.builds(Line, st.sampled_from(["cues 1", "cues 2"]), texts, st.sampled_from(["cues", "steps"])))


@given(lines, lines)
def test_every_line_that_differs_has_a_row(old: list[Line], new: list[Line]) -> None:
    """The rows hold each text that only one side has."""
    found = rows(old, new)
    shown = {row.new_text for row in found} | {row.old_text for row in found}
    only_here = {(x.field, x.text) for x in old} ^ {(x.field, x.text) for x in new}

    assert {text for _, text in only_here} <= shown
    assert (found == ()) == ([(x.field, x.text) for x in old] == [(x.field, x.text) for x in new])


def test_only_the_words_that_changed_are_marked() -> None:
    """A reviewer sees at once which word is new."""
    _, right = words_apart("Knees follow your toes", "Knees follow your little toes")

    assert [piece.text for piece in right if piece.changed] == ["little "]


WEEKS = [
    ([4], "week 4"),
    ([1, 2, 3, 5], "weeks 1 to 3 and 5"),
    ([1, 2], "weeks 1 and 2"),
    ([1, 3, 5], "weeks 1, 3 and 5"),
    ([1, 2, 5], "weeks 1, 2 and 5"),
    ([1, 2, 3, 5, 6, 8], "weeks 1 to 3, 5, 6 and 8"),
    ([2, 2], "week 2"),
]


@pytest.mark.parametrize(("weeks", "words"), WEEKS)
def test_weeks_as_people_say_them(weeks: list[int], words: str) -> None:
    """Three weeks in a row and more are taken together; weeks that do not touch are no range."""
    assert weeks_in_words(ENGLISH, weeks) == words


@pytest.fixture
def before(desk: Desk, tmp_path: Path) -> Path:
    """A file that holds the state before the edits."""
    path = tmp_path / "before.json"
    path.write_text(to_json(reviewing.state_at(str(desk.program), desk.program)), "utf-8")
    return path


MOVED = "changes:\n  - {week: 2, day: thursday, move_to: friday, why: The boathouse is let.}\n"
EDITS = [
    # file, old, new, what the comparison says
    (
        "exercises/squat.yml",
        "load: 30 % bodyweight",
        "load: 25 % bodyweight",
        "- 30 % bodyweight\n    + 25 % bodyweight",
    ),
    ("exercises/squat.yml", "Chest up", "Chest high", "cues 1\n    - Chest up\n    + Chest high"),
    ("exercises/row.yml", "Pull the elbows back.", "Draw the elbows back.", "text: steps 1"),
    (
        "sessions/legs.yml",
        "reps: 10\n        load: light band",
        "reps: 12\n        load: light band",
        "- 2 rounds of 10 reps, light band\n    + 2 rounds of 12 reps, light band",
    ),
    ("sessions/trunk.yml", "rest: 45 s", "rest: 60 s", "rest 45 s\n    + 2 sets of 20 s hold, rest 1 min"),
    (
        "plans/regatta.yml",
        "thursday: trunk}\n    lighter",
        "friday: trunk}\n    lighter",
        "friday: trunk, 2027-03-05 instead of nothing",
    ),
    ("plans/regatta.yml", "taper: {sets: [50 %]}", "taper: {sets: [100 %]}", "+ 2 rounds of"),
    ("plans/regatta.yml", "The boathouse is let.", "The hall is let.", "week 2 thursday why\n    - The boathouse"),
    (
        "sessions/legs.yml",
        "        load: light band",
        "        load: light band\n        note: The bell may be heavier.\n        kit: [band, mat]",
        "session legs\n  row kit 1\n    + band\n  row kit 2\n    + mat\n  row note\n    + The bell may be heavier.",
    ),
    ("sessions/legs.yml", "time_budget: 45 min", "time_budget: 1 h", "time budget\n    - 45 min\n    + 60 min"),
    ("routines/warm.yml", "hold: 15 s", "hold: 20 s", "warm-up warm\n  exercises 2 hold\n    - 15 s\n    + 20 s"),
    ("routines/warm.yml", "Walk to the bridge", "Run to the bridge", "exercises 1 do\n    - Walk to"),
    ("club.yml", "Call 112.", "Call nobody.", "club\n  safety in an emergency\n    - Call 112."),
    ("club.yml", "mat: 8", "mat: 6", "kit mat\n    - 8\n    + 6"),
    ("club.yml", "16 kg, 20 kg]", "16 kg, 24 kg]", "kit kettlebell\n    - 4, 6, 8, 10, 12, 14, 16, 20 kg"),
    ("club.yml", "from: 45 kg", "from: 40 kg", "body weight from\n    - 45 kg\n    + 40 kg"),
]


@pytest.mark.parametrize(("file", "old", "new", "says"), EDITS, ids=[f"{e[0]}: {e[2]}" for e in EDITS])
def test_each_kind_of_change_is_told(desk: Desk, before: Path, file: str, old: str, new: str, says: str) -> None:
    """A limit, a text, a dose, a rest, a day, a taper, a note, kit, a warm-up and a notice: old beside new."""
    desk.edit(file, old, new)
    if "friday: trunk" in new:
        desk.edit(
            "plans/regatta.yml",
            "changes:\n  - {week: 2, day: thursday, move_to: friday, why: The boathouse is let.}\n",
            "",
        )
    change = reviewing.compared(str(before), str(desk.program), desk.program)

    assert says in as_text(change).replace("description:", "text:")
    assert not change.is_empty


def test_the_same_programme_has_no_difference(desk: Desk, before: Path) -> None:
    """Spaces and comments are no change to a member."""
    desk.edit("sessions/legs.yml", "name: Legs", "# for everyone\nname:   Legs")
    change = reviewing.compared(str(before), str(desk.program), desk.program)

    assert change.is_empty
    assert as_text(change) == as_markdown(change) == NOTHING + "\n"


KIT = """kit:
  kettlebell: [4 kg]
  barbell: {bar: 20 kg, pairs: [5 kg, 10 kg]}
  dumbbell: {from: 2 kg, to: 6 kg, step: 2 kg, pairs: true}
  box: [20 cm, 40 cm]
"""
KIT_SAID = """  kit kettlebell
    - 4, 6, 8, 10, 12, 14, 16, 20 kg
    + 4 kg
  kit barbell
    + a bar of 20 kg, pairs of 5, 10 kg
  kit dumbbell
    + 2, 4, 6 kg, in pairs
  kit box
    + 20, 40 cm
"""


def test_kit_of_every_kind_is_told(desk: Desk, before: Path) -> None:
    """Weights one by one, in steps and on a bar, and sizes: each in its unit."""
    desk.edit("club.yml", "kit:\n  kettlebell: [4 kg, 6 kg, 8 kg, 10 kg, 12 kg, 14 kg, 16 kg, 20 kg]\n", KIT)
    change = reviewing.compared(str(before), str(desk.program), desk.program)

    assert KIT_SAID in as_text(change)


def test_what_came_and_went_is_told_in_a_line(desk: Desk, before: Path) -> None:
    """A new session and a warm-up that is gone are named, and not read out."""
    warm = (desk.program / "routines" / "warm.yml").read_text("utf-8")
    (desk.program / "routines" / "brisk.yml").write_text(warm, "utf-8")
    said = as_text(reviewing.compared(str(before), str(desk.program), desk.program))

    assert "\nwarm-up brisk: added\n" in said
    assert "Walk to the bridge" not in said


def test_a_state_survives_its_file(desk: Desk) -> None:
    """Written and read again, a state is the same."""
    state = reviewing.state_at(str(desk.program), desk.program)

    assert from_json(to_json(state)) == state


@pytest.mark.parametrize("text", ["", "[]", "{}", '{"format": "other", "version": 1}', "not JSON", '{"format": 1}'])
def test_another_file_is_refused_in_words(text: str) -> None:
    """What is no resolved programme is said to be none."""
    with pytest.raises(StateError, match="no resolved programme"):
        from_json(text)


def test_two_revisions_are_compared(repository: Desk) -> None:
    """Git revisions stand for the programme as it was, and nothing is left behind."""
    repository.edit("exercises/squat.yml", "load: 30 % bodyweight", "load: 25 % bodyweight")
    repository.commit()
    committed = reviewing.compared("HEAD~1", "HEAD", repository.program)
    folder = reviewing.compared("HEAD~1", str(repository.program), repository.program)

    assert [(e.ident, [p.part for p in e.parts]) for e in committed.exercises] == [("squat", ["limits"])]
    assert folder == committed
    assert repository.git("status", "--porcelain") == ""


@pytest.mark.parametrize("where", ["no-such-branch", "--upload-pack=touch x", "HEAD:program", ""])
def test_a_place_that_is_none_is_refused(repository: Desk, where: str) -> None:
    """A slip in the name of a revision, or something worse, is a plain error."""
    with pytest.raises(SetwrightError):
        reviewing.state_at(where or "-", repository.program)


def test_a_state_with_mistakes_is_not_compared(desk: Desk, before: Path) -> None:
    """Without doses there is nothing to compare: the first mistake is named."""
    desk.edit("sessions/legs.yml", "exercise: squat", "exercise: sqat")
    with pytest.raises(SetwrightError, match="unknown exercise 'sqat'"):
        reviewing.compared(str(before), str(desk.program), desk.program)


@pytest.mark.parametrize(
    ("form", "starts"), [("text", "1 exercise changed"), ("markdown", "## What"), ("html", "<!doctype")]
)
def test_the_command_prints_each_form(desk: Desk, before: Path, form: str, starts: str) -> None:
    """Plain text for a terminal, Markdown for a pull request, a page for an attachment."""
    desk.edit("exercises/squat.yml", "Chest up", "Chest & high | *now*")
    done = CliRunner().invoke(
        main, ["compare", str(before), str(desk.program), "--program", str(desk.program), "--format", form]
    )

    assert done.exit_code == 0, done.output
    assert done.stdout.lstrip().startswith(starts)
    if form == "html":
        assert "Chest <ins>&amp; high" in done.stdout
    if form == "markdown":
        row = next(row for row in done.stdout.split("\n") if "high" in row)
        assert row.replace("\\|", "").count("|") == 4


def test_resolve_prints_json(desk: Desk) -> None:
    """The file to compare with later is JSON, and the same each time."""
    first, second = (CliRunner().invoke(main, ["resolve", "--program", str(desk.program)]).stdout for _ in range(2))

    assert first == second
    assert json.loads(first)["format"] == "setwright resolved programme"
