"""Cases from Markdown: prose says why, a YAML block says what, a comment on a line says what is found there.

A heading begins a case. A block whose first line is a comment with a file's name, such as ``# sessions/legs.yml``, is
put over the good programme; several blocks under one heading are put there together. At the end of a line,
``# error: [rule]`` or ``# warning: [rule]`` expects a finding in that line; ``# error: 7 [rule]`` also says in which
column. These comments are cut off before the tool reads the file. A finding that nothing expects fails the case, and so
does an expectation that nothing meets. Doubts of a check that no case of the page speaks of are left out: checks have
tests of their own, and their number grows.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from setwright.source.finding import Finding
from setwright.source.read import read
from support.reading import LABEL, good_programme, looked_at

_HEADING = re.compile(r"#+ (?P<title>.+)")
_FILE = re.compile(r"# (?P<name>[\w/.-]+\.yml)\b")
_EXPECTED = re.compile(r"\s*# (?P<severity>error|warning): (?:(?P<column>\d+) )?\[(?P<rule>[a-z-]+)\]$")


@dataclass(frozen=True, order=True)
class Expected:
    """One finding that a case expects; column 0 is any column."""

    file: str
    line: int
    severity: str
    rule: str
    column: int = 0

    def __str__(self) -> str:
        place = f"{self.file}:{self.line}" + (f":{self.column}" if self.column else "")
        return f"{place}: {self.severity}: [{self.rule}]"


@dataclass
class Case:
    """What stands under one heading."""

    title: str
    files: dict[str, str] = field(default_factory=dict)
    expected: list[Expected] = field(default_factory=list)

    def add(self, lines: list[str]) -> None:
        """Add one YAML block, if it names a file."""
        named = _FILE.match(lines[0]) if lines else None
        if named is None:
            return
        kept = []
        for number, line in enumerate(lines, 1):
            found = _EXPECTED.search(line)
            if found:
                column = int(found["column"] or 0)
                self.expected.append(Expected(named["name"], number, found["severity"], found["rule"], column))
            kept.append(line[: found.start()] if found else line)
        self.files[named["name"]] = "\n".join(kept) + "\n"


def cases(markdown: str) -> Iterator[Case]:
    """Yield every case of a Markdown text that holds a file."""
    case, block = Case("before the first heading"), None
    for line in markdown.splitlines():
        if block is not None:
            if line.startswith("```"):
                case.add(block)
                block = None
            else:
                block.append(line)
        elif line.startswith("```yaml"):
            block = []
        elif heading := _HEADING.fullmatch(line):
            yield from [case] if case.files else []
            case = Case(heading["title"])
    yield from [case] if case.files else []


def spoken_of(page: list[Case]) -> set[str]:
    """Return the ids of all rules that the cases of a page expect."""
    return {expected.rule for case in page for expected in case.expected}


def mismatches(case: Case, rules: set[str], folder: Path) -> list[str]:
    """Return what was found but not expected, and what was expected but not found.

    Args:
        case: the case.
        rules: ids of the rules whose doubts count; findings of reading always do.
        folder: an empty folder to put the programme into.
    """
    program = good_programme(folder, case.files)
    of_reading = read(program, LABEL).findings
    findings = [finding for finding in looked_at(program)[0] if finding.rule in rules or finding in of_reading]
    missing = list(case.expected)
    wrong = []
    for finding in findings:
        met = next((expected for expected in missing if _meets(finding, expected)), None)
        if met is None:
            wrong.append(f"not expected: {finding.position}: {finding.severity}: {finding.message} [{finding.rule}]")
        else:
            missing.remove(met)
    return wrong + [f"not found: {expected}" for expected in missing]


def _meets(finding: Finding, expected: Expected) -> bool:
    place = finding.position
    return (
        (f"{LABEL}/{expected.file}", expected.line) == (place.file, place.line)
        and (finding.severity, finding.rule) == (expected.severity, expected.rule)
        and expected.column in (0, place.column)
    )
