"""A slip is told at its place, with what was meant there, wherever it stands in its file."""

from pathlib import Path

import pytest

from setwright.source.finding import Finding
from setwright.source.read import MAX_FILES, read
from setwright.source.spilled import Spilled
from setwright.source.tree import read_tree
from support.reading import GOOD, LABEL, good_programme


def told(text: str) -> Finding:
    """Return the one finding of a file."""
    (found,) = read_tree("file.yml", text.encode()).findings
    return found


@pytest.mark.parametrize("between", ["", "\n", "# why\n", "\n# why\n\n", "\n\n"])
def test_a_key_without_a_colon_is_told_above_the_line_where_reading_stops(between: str) -> None:
    """Whatever empty lines and comments stand between the two."""
    found = told(f"name: Legs\nblocks:\n  - kind: straight\n    sets 3\n{between}    rest: 60 s\n")

    assert (found.position.line, found.position.column) == (4, 5)
    assert found.hint == "write 'key: value', or indent the line to belong above"


@pytest.mark.parametrize("between", ["", "\n", "\n\n"])
def test_a_dash_without_a_space_is_told_where_it_stands(between: str) -> None:
    """The line below it is where a parser stops."""
    found = told(f"blocks:\n  -kind\n{between}    rest: 60 s\n")

    assert (found.position.line, found.hint) == (2, "write '- item'")


@pytest.mark.parametrize("line", [1, 2])
def test_a_tab_is_told_on_the_first_line_too(line: int) -> None:
    """YAML 1.2.2, 6.1: no tab may indent a line."""
    found = told("\n" * (line - 1) + "\tname: Legs\n\taim: Push\n")

    assert (found.rule, found.position.line) == ("tab", line)


@pytest.mark.parametrize("text", ["{}", "[]", "~", "null", "", "# nothing yet"])
def test_a_file_that_says_nothing_is_empty(text: str) -> None:
    """Braces with nothing in them are no more than nothing."""
    assert told(text).rule == "file-empty"


def test_a_key_inside_a_key_is_told_with_the_one_that_is_meant_there(tmp_path: Path) -> None:
    """The keys of the place count, not those of the file; a needed one that is misspelt is told once."""
    club = (
        (GOOD / "club.yml").read_text("utf-8").replace("  stop_if:", "  stop_iff:").replace("  contact:", "  contcat:")
    )
    plan = (GOOD / "plans/regatta.yml").read_text("utf-8").replace("aim:", "ami:")
    findings = read(good_programme(tmp_path, {"club.yml": club, "plans/regatta.yml": plan}), LABEL).findings
    hints = {found.message: found.hint for found in findings if found.position.file.endswith("club.yml")}

    assert hints["unknown key 'stop_iff'"] == "did you mean 'stop_if'?"
    assert hints["unknown key 'contcat'"] == "did you mean 'contact'?"
    assert not [found for found in findings if found.rule == "missing-key"]


@pytest.mark.parametrize(("length", "whole"), [(80, True), (81, False)])
def test_a_long_list_without_brackets_is_not_repeated(length: int, whole: bool) -> None:
    """A list of 80 signs is shown in its brackets; of a longer one, that it wants some."""
    row = "8, " * 26 + "8" * (length - 78)
    (hint,) = (Spilled((), 1, 1, row).finding("file.yml").hint,)

    assert len(row) == length
    assert hint.startswith(f"write '[{row}]'," if whole else "write it in brackets,")


@pytest.mark.parametrize(("more", "said"), [(0, False), (1, True)])
def test_files_and_folders(tmp_path: Path, more: int, said: bool) -> None:
    """3000 of them are read, one more is not."""
    program = good_programme(tmp_path, {})
    there = sum(1 for _ in program.rglob("*"))
    (program / "media").mkdir()
    for number in range(3000 - there - 1 + more):
        (program / "media" / f"photo-{number}.jpg").touch()

    assert MAX_FILES == 3000
    assert any(found.rule == "too-many-files" for found in read(program, LABEL).findings) is said
