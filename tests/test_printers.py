"""Names of files may hold anything; what is printed steers no terminal and commands no workflow."""

import json
import os
from pathlib import Path

import pytest
from click.testing import CliRunner

from setwright import publish
from setwright.cli import main
from setwright.printers import AboutRule, annotation, as_json, as_sarif, clean, plain, terminal
from setwright.source.finding import Finding, Position
from support.reading import good_programme
from support.small import miniature, said, setting, setwright, small_project

NASTY = {
    "escape": "\x1b]0;owned\x07legs\x1b[31m.yml",
    "line break": "legs\n::error::x.yml",
    "carriage return": "legs\r::add-mask::x.yml",
    "command": "::error::x.yml",
    "old command": "legs##[error]x.yml",
    "eight-bit control": "legs\x9b31m.yml",
    "turned round": "legs\u202elmy.yml",
    "line separator": "legs\u2028::error::x.yml",
    "not text": os.fsdecode(b"legs\xff.yml"),
}
"""What a file may be called on most systems.

C0 and C1 controls as in ECMA-48; two colons at the start of a line and "##[" as commands of a workflow's log (from
memory); the signs that turn writing round as in Unicode Standard Annex 9.
"""

FORMS = {
    "text": lambda finding: terminal(finding, finding.position.file, lambda _, text: text),
    "plain": plain,
    "json": lambda finding: as_json([finding]),
    "annotations": annotation,
    "sarif": lambda finding: as_sarif(
        [finding], [(finding, finding.hint)], [AboutRule("a-rule", "A", "B", "C", "error")], "1"
    ),
}


def steers(text: str) -> bool:
    """Say whether a text could steer a terminal or command a workflow, or cannot be printed at all."""
    shapeless = any(ord(sign) < 32 or 127 <= ord(sign) < 160 for sign in text.replace("\n", ""))
    turned = any(sign in text for sign in "\u202a\u202b\u202c\u202d\u202e\u2028\u2029\u2066\u2067\u2068\u2069")
    commands = any(line.strip().startswith("::") for line in text.splitlines()) or "##[" in text
    return shapeless or turned or commands or text != text.encode("utf-8", "replace").decode()


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("name", NASTY.values(), ids=NASTY)
def test_no_name_steers_what_shows_it(form: str, name: str) -> None:
    """In every form of output, in the place, in the message, in the hint and in the line that is shown."""
    finding = Finding(Position(name, 1, 3), "a-rule", f"{name} is odd", f"rename {name}")
    printed = FORMS[form](finding)
    if form == "annotations":
        assert printed.startswith("::error file=")
        printed = printed.removeprefix("::")

    assert not steers(printed)
    assert steers(name)


@pytest.mark.parametrize("name", NASTY.values(), ids=NASTY)
def test_programs_read_the_name_as_it_is(name: str) -> None:
    """In JSON nothing is lost: a program that reads it has the name's every sign."""
    assert json.loads(as_json([Finding(Position(name), "a-rule", "odd")]))[0]["file"] == name


@pytest.mark.parametrize("text", ["Kniebeuge für Anfänger", "腕立て伏せ", "👩🏽‍⚕️ says: 5 × 5", "می‌خواهم", "12 % ±1 kg"])
def test_what_people_write_is_printed_as_it_is(text: str) -> None:
    """Letters of all scripts, signs, and pictures that are joined from several."""
    assert clean(text) == text


def test_the_caret_stands_below_its_sign(tmp_path: Path) -> None:
    """What has no shape is replaced sign by sign, so that a column stays a column."""
    line = "name: \x1b[31m\tBad"
    shown, caret = terminal(Finding(Position("f.yml", 1, 13), "r", "m"), line, lambda _, text: text).splitlines()[1:3]

    assert shown[caret.index("^")] == "B"


@pytest.mark.parametrize("form", ["text", "plain", "json", "annotations", "sarif"])
def test_a_programme_full_of_odd_names_is_printed_safely(form: str, tmp_path: Path) -> None:
    """The command itself, on files and on a folder with such names."""
    folder = tmp_path / "\x1b[2Jclub\x9b"
    folder.mkdir()
    program = good_programme(folder)
    for name in NASTY.values():
        (program / "sessions" / name).write_bytes(b"name: [")
    result = CliRunner().invoke(main, ["check", "--program", str(program), "--format", form], catch_exceptions=False)
    printed = result.stdout + result.stderr
    if form == "annotations":
        lines = [line.removeprefix("::error").removeprefix("::warning") for line in printed.splitlines()]
        assert not any(line.startswith("::") for line in lines)
        printed = "\n".join(lines)

    assert result.exit_code == 1
    assert not steers(printed)


def test_what_the_engine_says_is_printed_safely(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Warnings of the engine, links that lead nowhere and refusals of the system name files, too."""
    nasty = "\n".join(NASTY.values())
    miniature(monkeypatch)
    project = small_project(tmp_path / "club")
    engine = publish.run_engine
    monkeypatch.setattr(publish, "run_engine", lambda *args: (*engine(*args), nasty))
    monkeypatch.setattr(publish.verify, "broken", lambda *_: [nasty])
    assert not steers(setwright(project, "build").stderr)

    def refuse(*_: object) -> None:
        raise OSError(28, "No space left on device", nasty)

    monkeypatch.setattr(publish, "run_engine", refuse)
    result = setwright(project, "build")

    assert not steers(result.stderr)
    assert said(result).endswith("No space left on device")


def test_a_club_with_two_names_is_told(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where mkdocs.yml has another than club.yml, one line says so and what to change; else there is none."""
    miniature(monkeypatch)
    project = small_project(tmp_path / "club")
    told = {}
    for name in ("Another club", "Reedmere Paddlers"):
        setting(project, "site_name", name)
        told[name] = [line for line in setwright(project, "render").stderr.splitlines() if "site_name" in line]

    assert len(told["Another club"]) == 1
    assert "mkdocs.yml calls the club 'Another club', club.yml 'Reedmere Paddlers'" in told["Another club"][0]
    assert told["Reedmere Paddlers"] == []
