"""Nobody signs what nobody has seen: signing all that is due wants what stood beside the list, as the list is now."""

import re

import pytest
from click.testing import CliRunner, Result

from setwright.cli import main
from support.desk import Desk

USAGE = 2


def run(desk: Desk, *words: str) -> Result:
    return CliRunner().invoke(main, [*words, "--program", str(desk.program)])


def sign_all(desk: Desk, *words: str) -> Result:
    """Sign all that is due, as a physiotherapist."""
    return run(desk, "sign", "--all-due", "--who", "A physiotherapist", "--role", "Physiotherapist", *words)


def code_of(result: Result) -> str:
    """Return what the review prints beside its list."""
    found = re.search(r"--seen (\d+-[a-p]+)", result.stdout + result.stderr)
    assert found is not None, result.output
    return found[1]


def signed(desk: Desk) -> list[str]:
    """Return the exercises that have a line in the file of sign-offs."""
    path = desk.program / "sign-offs.yml"
    return re.findall(r"exercise: ([a-z-]+)", path.read_text("utf-8")) if path.exists() else []


def test_without_a_word_that_it_was_seen_nothing_is_signed(desk: Desk) -> None:
    """The list is printed instead, with the line that signs it."""
    before, result = signed(desk), sign_all(desk)

    assert result.exit_code == USAGE
    assert re.search(r"^squat: not reviewed", result.stdout, re.M)
    assert code_of(result) == code_of(run(desk, "review"))
    assert signed(desk) == before


def test_what_was_seen_is_signed_and_listed(desk: Desk) -> None:
    """With what the review printed, every line is written, and shown."""
    code = code_of(run(desk, "review"))
    result = sign_all(desk, "--seen", code)

    assert result.exit_code == 0, result.output
    assert len(signed(desk)) == int(code.partition("-")[0]) == result.stdout.count("- {exercise: ")
    assert "0 of" in run(desk, "review").stdout


@pytest.mark.parametrize("late", ["Chest high", "Chest  up, always"])
def test_what_changed_after_it_was_seen_is_not_signed(desk: Desk, late: str) -> None:
    """An edit between reading and signing changes the letters, though it is as many exercises."""
    code = code_of(run(desk, "review"))
    before = signed(desk)
    desk.edit("exercises/squat.yml", "Chest up", late)
    result = sign_all(desk, "--seen", code)

    assert result.exit_code == USAGE
    assert f"'{code}' is another list than this" in result.stderr
    assert code_of(result).partition("-")[0] == code.partition("-")[0]
    assert signed(desk) == before


def test_nothing_is_signed_at_once_while_something_is_wrong(desk: Desk) -> None:
    """A dose beyond a limit is mended first; one exercise can still be signed by its name."""
    code, before = code_of(run(desk, "review")), signed(desk)
    desk.edit("exercises/squat.yml", "load: 30 % bodyweight", "load: 3 % bodyweight")
    result = sign_all(desk, "--seen", code)
    by_name = run(desk, "sign", "row", "--who", "A", "--role", "Physiotherapist")

    assert result.exit_code == USAGE
    assert "nothing is signed with" in result.stderr
    assert by_name.exit_code == 0
    assert signed(desk) == [*before, "row"]


def test_seen_belongs_to_all_that_is_due(desk: Desk) -> None:
    """Beside a name it would say nothing."""
    result = run(desk, "sign", "squat", "--seen", "1-abcd", "--who", "A", "--role", "Physiotherapist")

    assert result.exit_code == USAGE
    assert "--seen belongs to --all-due" in result.stderr
