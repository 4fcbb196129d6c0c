"""Findings as text: for a terminal with the line and a caret, plain, as JSON, and as annotations of a workflow."""

import json
from collections.abc import Callable, Iterable

from setwright.source.finding import Finding

SourceLine = Callable[[Finding], str | None]


def plain(finding: Finding) -> str:
    """Return a finding on one line: file:line:column: severity: message (hint) [rule]."""
    hint = f" ({finding.hint})" if finding.hint else ""
    return f"{finding.position}: {finding.severity}: {finding.message}{hint} [{finding.rule}]"


def terminal(finding: Finding, line: str | None, colour: Callable[[str, str], str]) -> str:
    """Return a finding with its source line, a caret below it, and the likely fix.

    Args:
        finding: the finding.
        line: the source line it is about, if it can be shown.
        colour: puts a colour named by its first argument round the text in its second.
    """
    name = "red" if finding.severity == "error" else "yellow"
    head = f"{colour('bold', str(finding.position))}: {colour(name, finding.severity)}: {finding.message}"
    rows = [f"{head} [{finding.rule}]"]
    if line is not None and line.strip():
        shown, offset = _around(line.expandtabs(1), finding.position.column - 1)
        number = str(finding.position.line)
        rows.append(f"  {number} | {shown}")
        rows.append(f"  {' ' * len(number)} | {' ' * offset}{colour(name, '^')}")
    if finding.hint:
        rows.append(f"  {colour('bold', 'help')}: {finding.hint}")
    return "\n".join(rows)


def _around(line: str, column: int, width: int = 100) -> tuple[str, int]:
    """Return the part of a line around a column, and where the column falls in it."""
    start = max(0, min(column - width // 2, len(line) - width))
    return line[start : start + width], max(0, column - start)


def as_json(findings: Iterable[Finding]) -> str:
    """Return findings as a JSON list, one object each."""
    rows = [
        {
            "file": finding.position.file,
            "line": finding.position.line,
            "column": finding.position.column,
            "severity": finding.severity,
            "rule": finding.rule,
            "message": finding.message,
            "hint": finding.hint,
        }
        for finding in findings
    ]
    return json.dumps(rows, ensure_ascii=False, indent=2)


def annotation(finding: Finding) -> str:
    """Return a finding as a workflow command that a forge shows at the line."""
    place = finding.position
    body = finding.message + (f" ({finding.hint})" if finding.hint else "")
    data = _escape(body)
    properties = f"file={_escape_property(place.file)},line={place.line},col={place.column}"
    return f"::{finding.severity} {properties},title={_escape_property(finding.rule)}::{data}"


def _escape(text: str) -> str:
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _escape_property(text: str) -> str:
    return _escape(text).replace(":", "%3A").replace(",", "%2C")
