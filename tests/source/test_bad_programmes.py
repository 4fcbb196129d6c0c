"""Slips of a coach, each with the one finding that it gives. The cases are in tests/programmes/bad/."""

import re

import pytest

from support.expected import TABLE, table
from support.reading import BAD, EXPECTED, MADE, bad_cases, bad_looked_at, plain_lines

ONLY_PROGRAMMERS_SAY = re.compile(
    r"pydantic|validation|NoneType|dict|\bint\b|\bstr\b|object|Traceback|Input should|ctx|token|scalar|mapping\b|parse",
    re.IGNORECASE,
)


@pytest.mark.parametrize("case", bad_cases())
def test_a_slip_gives_one_error_with_its_place_and_fix(case: str) -> None:
    """One slip is one error: file, line and column, what is wrong, and in brackets what mends it and the rule's id."""
    expected = (BAD / case / EXPECTED).read_text("utf-8")

    findings, _ = bad_looked_at(case)

    assert expected == plain_lines(findings)
    assert len(findings) == 1
    assert re.fullmatch(r"program[^:]*(:[^\n]*)?:\d+:\d+: error: [^\n]+ \([^\n]+\) \[[a-z0-9-]+\]\n", expected)


@pytest.mark.parametrize("case", bad_cases())
def test_a_message_is_in_a_coachs_words(case: str) -> None:
    """Nothing that a coach reads is a word of the machinery underneath."""
    findings, _ = bad_looked_at(case)
    quoted = re.compile(r"'[^']*'")

    words = " ".join(quoted.sub("", f"{finding.message} {finding.hint}") for finding in findings)

    assert not ONLY_PROGRAMMERS_SAY.search(words)


@pytest.mark.parametrize("case", [case for case in bad_cases() if case not in MADE])
def test_a_place_lies_inside_the_file_that_was_put_there(case: str) -> None:
    """The finding points at a file of the case, at a line that it has, and no farther right than its end."""
    findings, places = bad_looked_at(case)

    position = findings[0].position
    line = places.line(position)

    assert (BAD / case / position.file.removeprefix("program/")).is_file()
    assert line is not None
    assert 1 <= position.column <= len(line) + 1


def test_there_are_many_slips() -> None:
    """The table covers at least forty different slips, and every made one has its folder."""
    cases = bad_cases()

    assert len(cases) >= 40
    assert set(MADE) <= set(cases)


def test_the_table_of_slips_is_fresh() -> None:
    """The table in tests/programmes/bad/README.md says what the tool says now."""
    expected = table()

    assert expected == TABLE.read_text("utf-8")
