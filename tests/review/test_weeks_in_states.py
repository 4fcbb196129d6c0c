"""Plans without dates, with groups and with breaks: as states that are compared, and as doses that are explained."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from setwright.cli import main
from setwright.dose.resolve import resolve
from setwright.review.compare import DayChange, compare
from setwright.review.state import State, state_of
from setwright.review.written_state import from_json, to_json
from support import make
from support.weeks import weeks_project

EVENING = {"sessions/evening": "name: Evening"}


def state(plan: str, dated: bool = True) -> State:
    made = make.programme({**EVENING, "plans/plan": plan}, {} if dated else {"plans/plan": ["starts"]})
    return state_of(made, resolve(made))


def week(sessions: str, more: str = "") -> str:
    return f"phases: [{{name: P, aim: On., weeks: 2, sessions: {sessions}}}]\n{more}"


@pytest.mark.parametrize(
    ("plan", "dated"),
    [
        (week("[only, evening]"), False),
        (week("{monday: only}"), False),
        (week("{monday: [only, evening]}"), True),
        (week("{rotate: [only, evening], days: [monday]}", "starts: {Early: 2027-03-01, Late: 2027-03-08}"), True),
    ],
)
def test_a_state_is_read_as_it_was_written(plan: str, dated: bool) -> None:
    """Days without a date, too, and two sessions of one day."""
    written = state(plan, dated)

    assert from_json(to_json(written)) == written


def test_a_day_that_became_any_day_is_told() -> None:
    """Monday went, session 1 came: members see both in the comparison."""
    found = compare(state(week("{monday: only}")), state(week("[only]"), dated=False)).days

    assert found[:2] == (
        DayChange("plan", 1, "monday", "only, 2027-03-01", "nothing"),
        DayChange("plan", 1, "session-1", "nothing", "only"),
    )


def test_a_break_shows_in_the_days_behind_it() -> None:
    """The second week moves by a week, and nothing else is said to change."""
    closed = "breaks: [{from: 2027-03-08, to: 2027-03-14, why: Closed.}]"
    found = compare(state(week("{monday: only}")), state(week("{monday: only}", closed)))

    assert found.days == (DayChange("plan", 2, "monday", "only, 2027-03-08", "only, 2027-03-15"),)
    assert found.sessions == ()


GROUPS = "starts: {Early: 2027-03-01, Late: 2027-03-15}"


@pytest.mark.parametrize(
    ("sessions", "more", "label", "old", "new"),
    [
        ("{monday: only}", GROUPS.replace("03-15", "03-22"), "starts Late", "2027-03-15", "2027-03-22"),
        ("{monday: only}", GROUPS.replace("Late", "Last"), "starts Last", "", "2027-03-15"),
        (
            "{monday: only}",
            f"{GROUPS}\nbreaks: [{{from: 2027-03-08, to: 2027-03-14, why: Closed.}}]",
            "breaks 1 from",
            "",
            "2027-03-08",
        ),
        ("{rotate: [only, evening], days: [monday]}", GROUPS, "phase 1 sessions in turn", "", "only, evening"),
    ],
)
def test_what_moves_the_days_of_groups_is_told(sessions: str, more: str, label: str, old: str, new: str) -> None:
    """No day of such a plan holds a date, so starts, breaks and turns stand among what is said beside the doses."""
    (found,) = compare(state(week("{monday: only}", GROUPS)), state(week(sessions, more))).texts

    assert (label, old, new) in [(row.label, row.old_text, row.new_text) for row in found.rows]


@pytest.fixture(scope="module")
def program(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return weeks_project(tmp_path_factory.mktemp("weeks") / "club") / "program"


def explained(program: Path, *words: str) -> tuple[int, str]:
    result = CliRunner().invoke(main, ["explain", *words, "--program", str(program)], catch_exceptions=False)
    return result.exit_code, result.output


def test_a_dose_of_an_open_day_is_explained_by_its_number(program: Path) -> None:
    """Week 3, session 2; and without its number, or with one that there is not, what to write is said."""
    status, said = explained(program, "open", "week", "3", "session", "2", "kettlebell-deadlift")
    assert (status, said.split("\n")[0]) == (0, "Kettlebell deadlift, Six weeks at your own pace, week 3, session 2")
    assert "skipped (The first week with two sessions was enough.)" in said

    assert "which session? write its number" in explained(program, "open", "3", "session", "kettlebell-deadlift")[1]
    assert "one of: session 1, session 2" in explained(program, "open", "3", "friday", "kettlebell-deadlift")[1]
    assert "'two' is no number" in explained(program, "open", "3", "session", "two", "kettlebell-deadlift")[1]


def test_the_second_session_of_a_day_is_explained_by_day_and_number(program: Path) -> None:
    """Monday 2 is the second one of Monday; Monday 1 is Monday."""
    status, said = explained(program, "groups", "week", "5", "monday", "2", "kettlebell-deadlift")
    assert (status, said.split("\n")[0]) == (0, "Kettlebell deadlift, Winter in two groups, week 5, monday 2")
    assert explained(program, "groups", "5", "monday", "1", "sit-to-box") == explained(
        program, "groups", "5", "monday", "sit-to-box"
    )
