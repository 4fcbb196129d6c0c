"""Writes what the bad cases are expected to print, and the table of them. Read what it changed before you keep it.

Run it from the folder tests: ``python -m support.expected``.
"""

from typing import Final

from setwright.source.finding import Finding
from support.reading import BAD, EXPECTED, MADE, bad_cases, bad_looked_at, plain_lines

TABLE: Final = BAD / "README.md"

_HEAD: Final = """# Bad inputs, and what the tool says

Each folder is one slip. Its files are put over the small good programme beside this folder; slips that no file can hold
(odd bytes, links, sizes) are made in `support/reading.py`. `expected.txt` is what `setwright check --format plain`
prints: one error, at the place to mend, with the likely fix. This table and those files come from
`python -m support.expected`, and a test holds them.

| Slip | Written | Where | What the tool says |
| --- | --- | --- | --- |
"""


def table() -> str:
    """Return the table of all bad cases as Markdown."""
    return _HEAD + "".join(f"{_row(case)}\n" for case in bad_cases())


def _row(case: str) -> str:
    findings, places = bad_looked_at(case)
    first = findings[0]
    if case in MADE:
        written = (MADE[case].__doc__ or "").rstrip(".")
    else:
        written = _code(_near(places.line(first.position) or "", first.position.column - 1))
    place = f"{first.position.file.removeprefix('program/')}:{first.position.line}:{first.position.column}"
    return f"| {case} | {written} | {_escaped(place)} | {_escaped(_said(first))} |"


def _near(line: str, column: int) -> str:
    """Return the part of a long line round a column."""
    start = max(0, min(column - 20, len(line) - 60))
    return line[start : start + 60].strip()


def _code(text: str) -> str:
    fence = "``" if "`" in text else "`"
    return f"{fence}{text.replace('|', chr(92) + '|')}{fence}" if text else "(nothing)"


def _said(finding: Finding) -> str:
    return f"{finding.message} ({finding.hint})" if finding.hint else finding.message


def _escaped(text: str) -> str:
    for sign in ("\\", "|", "*", "_", "`", "<", "["):
        text = text.replace(sign, f"\\{sign}")
    return text


def main() -> None:
    """Write every expected.txt and the table."""
    for case in bad_cases():
        findings, _ = bad_looked_at(case)
        (BAD / case / EXPECTED).write_text(plain_lines(findings), "utf-8")
    TABLE.write_text(table(), "utf-8")


if __name__ == "__main__":
    main()
