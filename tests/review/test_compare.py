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
]


@pytest.mark.parametrize(("file", "old", "new", "says"), EDITS, ids=[f"{e[0]}: {e[2]}" for e in EDITS])
def test_each_kind_of_change_is_told(desk: Desk, before: Path, file: str, old: str, new: str, says: str) -> None:
    """A limit, a text, a dose, a rest, a day and a taper: each edit shows, old beside new."""
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
