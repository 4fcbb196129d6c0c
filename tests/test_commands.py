"""The commands: what they print, where, and with which exit status: 0 clean, 1 findings, 2 not understood."""

import json
import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from setwright.cli import main
from setwright.printers import annotation, terminal
from setwright.source.finding import WARNING, Finding, Position
from support.reading import EXAMPLE, GOOD, good_programme

CLEAN, FOUND, USAGE = 0, 1, 2

SLIP = "blocks: [{kind: straight, sets: 2, exercises: [{exercise: squat, resp: 8}]}]"
SLIPS = {
    "sessions/legs.yml": f"name: Legs\naim: Push.\n{SLIP}\n",
    "exercises/plank.yml": "name: Plänk 🦵 <b>\npattern: trunk\nregions: {main: [abdominals]}\n",
}
PLAIN = [
    (
        "exercises/plank.yml:1:1: error: 'why', 'set_up' and 'steps' are missing (add each on a line of its own, "
        "such as 'name: ...') [missing-key]"
    ),
    "exercises/plank.yml:1:7: error: a name cannot hold '<' (use plain words) [name-with-markup]",
    "sessions/legs.yml:3:66: error: unknown key 'resp' (did you mean 'reps'?) [unknown-key]",
]


def run(*words: str) -> Result:
    """Run one command; an exception that is no exit fails the test."""
    return CliRunner().invoke(main, words, catch_exceptions=False)


@pytest.fixture
def bad(tmp_path: Path) -> Path:
    """A programme with three mistakes in two files."""
    return good_programme(tmp_path, SLIPS)


def test_a_clean_programme_exits_with_0() -> None:
    """No finding, and the counts on the stream on which findings would stand."""
    result = run("check", "--program", str(GOOD))

    assert result.exit_code == CLEAN
    assert len(result.stderr.splitlines()) == 2
    assert "2 sessions, 3 exercises" in result.stderr
    assert "0 errors, 0 warnings" in result.stderr


def test_the_example_programme_is_clean() -> None:
    """The programme that a club starts from has no errors and no doubts."""
    assert run("check", "--program", str(EXAMPLE)).exit_code == CLEAN


def test_findings_exit_with_1_and_come_sorted(bad: Path) -> None:
    """All mistakes of all files are printed in one run, one a line in the plain format, by place."""
    result = run("check", "--program", str(bad), "--format", "plain")

    assert result.exit_code == FOUND
    assert [f"{bad}/{line}" for line in PLAIN] == result.stderr.splitlines()


def test_the_text_shows_the_line_with_a_caret_below_the_column(bad: Path) -> None:
    """For people: the source line, a caret under the slip, and the likely fix."""
    lines = run("check", "--program", str(bad)).stderr.splitlines()

    shown = next(index for index, line in enumerate(lines) if "unknown key" in line)

    assert lines[shown] == f"{bad}/sessions/legs.yml:3:66: error: unknown key 'resp' [unknown-key]"
    assert lines[shown + 1] == f"  3 | {SLIP}"
    assert lines[shown + 2] == f"    | {' ' * 65}^"
    assert lines[shown + 1][lines[shown + 2].index("^") :].startswith("resp")
    assert lines[shown + 3] == "  help: did you mean 'reps'?"


def test_a_long_line_is_cut_round_its_slip() -> None:
    """The caret still stands below the slip when only a part of the line fits."""
    finding = Finding(Position("f.yml", 1, 500), "a-rule", "a slip", "mend it")
    line = "." * 499 + "!" + "." * 300

    _, shown, caret, _ = terminal(finding, line, lambda _, text: text).splitlines()

    assert shown[caret.index("^")] == "!"
    assert len(shown) < 120


def test_a_finding_without_a_line_shows_none() -> None:
    """Where a file is missing or empty there is no line, and no caret."""
    finding = Finding(Position("f.yml"), "a-rule", "a slip")

    assert terminal(finding, None, lambda _, text: text) == "f.yml:1:1: error: a slip [a-rule]"
    assert terminal(finding, "  ", lambda _, text: text) == "f.yml:1:1: error: a slip [a-rule]"


def test_json_holds_the_same_findings(bad: Path) -> None:
    """For programs: a list of objects on the output, with the parts of each finding under their names."""
    result = run("check", "--program", str(bad), "--format", "json")
    rows = json.loads(result.stdout)

    said = [
        f"{r['file']}:{r['line']}:{r['column']}: {r['severity']}: {r['message']} ({r['hint']}) [{r['rule']}]"
        for r in rows
    ]

    assert result.exit_code == FOUND
    assert result.stderr == ""
    assert [f"{bad}/{line}" for line in PLAIN] == said


def test_json_of_a_clean_programme_is_an_empty_list() -> None:
    """A program that reads it needs no special case."""
    assert json.loads(run("check", "--program", str(GOOD), "--format", "json").stdout) == []


def test_annotations_are_commands_of_a_workflow(bad: Path) -> None:
    """For a forge: one command a finding, that it shows at the line."""
    result = run("check", "--program", str(bad), "--format", "annotations")

    assert result.exit_code == FOUND
    assert result.stdout.splitlines()[-1] == (
        f"::error file={bad}/sessions/legs.yml,line=3,col=66,title=unknown-key"
        "::unknown key 'resp' (did you mean 'reps'?)"
    )


def test_an_annotation_cannot_be_broken_out_of() -> None:
    """Percent signs, line breaks, colons and commas are escaped as workflow commands want it."""
    finding = Finding(Position("a,b:c\nd.yml"), "a-rule", "100 %\n::error::", severity=WARNING)

    expected = "::warning file=a%2Cb%3Ac%0Ad.yml,line=1,col=1,title=a-rule::100 %25%0A::error::"

    assert expected == annotation(finding)


def test_warnings_alone_exit_with_1(tmp_path: Path) -> None:
    """A doubt is a finding: a run that stays quiet about it would hide it."""
    program = good_programme(tmp_path, {"notes.txt": "x"})

    result = run("check", "--program", str(program), "--format", "plain")

    assert result.exit_code == FOUND
    assert ": warning: nothing reads this file" in result.stderr


def test_a_folder_that_is_not_there_is_a_finding(tmp_path: Path) -> None:
    """The coach stands in the wrong folder: the message says so."""
    result = run("check", "--program", str(tmp_path / "nowhere"))

    assert result.exit_code == FOUND
    assert "there is no such folder" in result.stderr


def test_explain_says_each_step_and_its_rule() -> None:
    """Share of body weight times body weight, the owned weight chosen, and every week: the arithmetic by hand."""
    words = ("week", "7", "friday", "box-step-up", "--body-weight", "68", "--program", str(EXAMPLE))
    result = run("explain", "relay", *words)

    assert result.exit_code == CLEAN
    assert "Box step-up, Ready for the autumn relay, week 7, friday" in result.stdout
    assert "7 % of 68 kg is 4.76 kg in each hand" in result.stdout  # 0.07 * 68 = 4.76
    assert re.search(r"^ *7  .*\(trained week 2\)", result.stdout, re.MULTILINE)


@pytest.mark.parametrize("weight", ["68", "68 kg", "149.9143 lb"])
def test_a_body_weight_may_carry_its_unit(weight: str) -> None:
    """68 kg are 149.9143 lb: 68 / 0.453 592 37 (international yard and pound agreement, 1959), to a tenth of a gram."""
    words = ("explain", "relay", "7", "friday", "box-step-up", "--body-weight", weight, "--program", str(EXAMPLE))

    assert "is 4.76 kg in each hand" in run(*words).stdout


NOT_UNDERSTOOD = [
    (("chek",), "No such command 'chek': did you mean 'check'?"),
    (("check", "--fromat", "json"), "--format"),
    (("check", "--format", "xml"), "'xml' is not one of"),
    (("explain", "rely", "week", "7", "friday", "box-step-up"), "unknown plan 'rely': did you mean 'relay'?"),
    (("explain", "relay", "week", "7", "frday", "box-step-up"), "'frday' is not a day: did you mean 'friday'?"),
    (("explain", "relay", "week", "7", "monday", "box-step-up"), "unknown day 'monday': one of: friday, tuesday"),
    (("explain", "relay", "week", "7", "friday", "box-step-uq"), "did you mean 'box-step-up'?"),
    (("explain", "relay", "week", "77", "friday", "box-step-up"), "relay has weeks 1 to 12"),
    (("explain", "relay", "week", "0", "friday", "box-step-up"), "relay has weeks 1 to 12"),
    (("explain", "relay", "friday"), "explain relay week 7 friday push-up"),
    (("explain", "relay", "7", "friday", "box-step-up", "--body-weight", "heavy"), "--body-weight"),
]


@pytest.mark.parametrize(("words", "said"), NOT_UNDERSTOOD)
def test_what_is_not_understood_exits_with_2_and_a_suggestion(words: tuple[str, ...], said: str) -> None:
    """Unknown commands, options, plans, days and exercises name the likeliest one, or what there is."""
    place = ("--program", str(EXAMPLE)) if words[0] == "explain" else ()
    result = run(*words, *place)

    assert result.exit_code == USAGE
    assert said in result.stderr


def test_explain_prints_the_mistakes_of_a_broken_programme(bad: Path) -> None:
    """Before there is a programme, there is nothing to explain."""
    result = run("explain", "regatta", "1", "tuesday", "squat", "--program", str(bad))

    assert result.exit_code == FOUND
    assert "did you mean 'reps'?" in result.stderr


@pytest.mark.parametrize("command", ["build", "render", "preview"])
def test_commands_that_make_a_site_want_its_settings(command: str, tmp_path: Path) -> None:
    """Without mkdocs.yml they say what is missing, as a mistake in how they were called."""
    result = run(command, "-f", str(tmp_path / "mkdocs.yml"))

    assert result.exit_code == USAGE
    assert "there is no mkdocs.yml" in result.stderr


@pytest.mark.parametrize(
    ("options", "expected"),
    [
        ([], "127.0.0.1:8000"),
        (["--port", "8123"], "127.0.0.1:8123"),
        (["--address", "0.0.0.0:9000"], "0.0.0.0:9000"),
        (["--address", "0.0.0.0:9000", "--port", "9001"], "0.0.0.0:9001"),
    ],
)
def test_a_preview_is_served_where_it_is_asked_for(
    options: list[str], expected: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A port alone is one on this machine; a browser opens only on request."""
    served: list[dict[str, object]] = []
    monkeypatch.setattr("mkdocs.commands.serve.serve", lambda **how: served.append(how))

    assert run("preview", "-f", str(EXAMPLE.parent / "mkdocs.yml"), *options).exit_code == CLEAN
    assert run("preview", "-f", str(EXAMPLE.parent / "mkdocs.yml"), "--open", *options).exit_code == CLEAN
    assert [(how["dev_addr"], how["open_in_browser"]) for how in served] == [(expected, False), (expected, True)]


def test_schemas_are_written_into_the_programme(tmp_path: Path) -> None:
    """The command writes what the repository holds for the example."""
    result = run("schemas", "--program", str(tmp_path))
    written = {path.name: path.read_text("utf-8") for path in (tmp_path / "schema").iterdir()}

    assert result.exit_code == CLEAN
    assert written == {path.name: path.read_text("utf-8") for path in (EXAMPLE / "schema").iterdir()}


@pytest.mark.parametrize("command", ["check", "build", "render", "preview", "explain", "schemas"])
def test_every_command_says_what_it_does(command: str) -> None:
    """The list of commands and each command's own help hold a sentence about it."""
    assert re.search(rf"^  {command} +\w", run("--help").stdout, re.MULTILINE)
    assert run(command, "--help").exit_code == CLEAN


def test_errors_come_first(tmp_path: Path) -> None:
    """What stops publishing stands above what is only doubtful, wherever in the files the two are."""
    program = Path(shutil.copytree(EXAMPLE, tmp_path / "program"))
    doubtful, wrong = program / "exercises" / "ankle-rock.yml", program / "exercises" / "goblet-squat.yml"
    doubtful.write_text(re.sub(r"^breathing:.*\n(  .*\n)*", "", doubtful.read_text("utf-8"), flags=re.M), "utf-8")
    wrong.write_text(wrong.read_text("utf-8").replace("  reps: 15\n", "  reps: 4\n"), "utf-8")
    lines = run("check", "--program", str(program), "--format", "plain").stderr.splitlines()
    kinds = [re.search(r": (error|warning): ", line) for line in lines]

    assert [kind[1] for kind in kinds if kind] == sorted(kind[1] for kind in kinds if kind)
    assert {kind[1] for kind in kinds if kind} == {"error", "warning"}


def test_nobody_signs_in_the_future(tmp_path: Path) -> None:
    """A review that is dated in the future would outrank every later one: it is refused, and nothing is written."""
    program = good_programme(tmp_path, {})
    words = ("--who", "A", "--role", "physio", "--date", "2199-01-01", "--program", str(program))
    result = run("sign", "squat", *words)

    assert result.exit_code == USAGE
    assert "2199-01-01 is still to come" in result.stderr
    assert not (program / "sign-offs.yml").exists()
