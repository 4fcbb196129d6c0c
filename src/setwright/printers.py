"""Findings as text: for a terminal with the line and a caret, plain, JSON, SARIF, and annotations of a workflow."""

import json
import unicodedata
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Any, Final
from urllib.parse import quote

from setwright.source.finding import Finding, Severity

SourceLine = Callable[[Finding], str | None]

_JOINERS: Final = "\u200c\u200d"
"""Signs without a shape that belong into words and pictures of some scripts."""


def clean(text: str, keep: str = "") -> str:
    """Return a text as one line that can be printed anywhere: it steers no terminal and commands no workflow.

    File names may hold anything. What has no shape shows as a question mark, a line break as a space; workflow
    commands, which begin a line with two colons or hold "##[" anywhere, are broken up.

    Args:
        text: a message, with whatever names are in it.
        keep: signs to leave alone, such as line breaks that are escaped later.
    """
    seen = "".join(sign if sign in keep else " " if sign in "\r\n\t" else _shape(sign) for sign in text)
    seen = seen.replace("##[", "##(")
    return f"\\{seen}" if seen.lstrip().startswith("::") else seen


def _shape(sign: str) -> str:
    return "?" if _is_shapeless(sign) else sign


def _is_shapeless(sign: str) -> bool:
    return unicodedata.category(sign) in ("Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp") and sign not in _JOINERS


def _printable_json(whole: str) -> str:
    """Return JSON in which nothing but its own line breaks is without a shape; read again, it is the same."""
    seen = "".join(json.dumps(sign)[1:-1] if sign != "\n" and _is_shapeless(sign) else sign for sign in whole)
    return seen.replace("##[", "##\\u005b")


def plain(finding: Finding) -> str:
    """Return a finding on one line: file:line:column: severity: message (hint) [rule]."""
    hint = f" ({finding.hint})" if finding.hint else ""
    return clean(f"{finding.position}: {finding.severity}: {finding.message}{hint} [{finding.rule}]")


def terminal(finding: Finding, line: str | None, colour: Callable[[str, str], str]) -> str:
    """Return a finding with its source line, a caret below it, and the likely fix.

    Args:
        finding: the finding.
        line: the source line it is about, if it can be shown.
        colour: puts a colour named by its first argument round the text in its second.
    """
    name = "red" if finding.severity == "error" else "yellow"
    head = f"{colour('bold', clean(str(finding.position)))}: {colour(name, finding.severity)}: {clean(finding.message)}"
    rows = [f"{head} [{finding.rule}]"]
    if line is not None and line.strip():
        shown, offset = _around(clean(line), finding.position.column - 1)
        number = str(finding.position.line)
        rows.append(f"  {number} | {shown}")
        rows.append(f"  {' ' * len(number)} | {' ' * offset}{colour(name, '^')}")
    if finding.hint:
        rows.append(f"  {colour('bold', 'help')}: {clean(finding.hint)}")
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
    return _printable_json(json.dumps(rows, ensure_ascii=False, indent=2))


@dataclass(frozen=True, slots=True)
class AboutRule:
    """What a report says of a check: a heading, why it matters, its source, and how bad it usually is."""

    ident: str
    title: str
    says: str
    source: str
    severity: Severity


SARIF_SCHEMA: Final = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"


def as_sarif(
    findings: Iterable[Finding],
    accepted: Iterable[tuple[Finding, str]],
    rules: Sequence[AboutRule],
    version: str,
) -> str:
    """Return findings as a log in the Static Analysis Results Interchange Format (SARIF) 2.1.0, an OASIS standard.

    An accepted warning is in it too, suppressed in the source with the coach's reason.
    """
    found = [(finding, None) for finding in findings]
    known = {rule.ident: rule for rule in rules}
    others = sorted({finding.rule for finding, _ in found} - known.keys())
    index = {ident: number for number, ident in enumerate((*known, *others))}
    driver = {
        "name": "setwright",
        "version": version,
        "rules": [*map(_sarif_rule, rules), *({"id": ident} for ident in others)],
    }
    log = {
        "$schema": SARIF_SCHEMA,
        "version": "2.1.0",
        "runs": [
            {
                "tool": {"driver": driver},
                "columnKind": "unicodeCodePoints",
                "results": [_sarif_result(finding, why, index) for finding, why in (*found, *accepted)],
            }
        ],
    }
    return _printable_json(json.dumps(log, ensure_ascii=False, indent=2))


def _sarif_rule(rule: AboutRule) -> dict[str, Any]:
    return {
        "id": rule.ident,
        "shortDescription": {"text": f"{rule.title}."},
        "fullDescription": {"text": rule.says},
        "help": {"text": f"{rule.says} Source: {rule.source}"},
        "defaultConfiguration": {"level": rule.severity},
    }


def _sarif_result(finding: Finding, why: str | None, index: dict[str, int]) -> dict[str, Any]:
    place = finding.position
    text = f"{finding.message} ({finding.hint})" if finding.hint else finding.message
    result: dict[str, Any] = {
        "ruleId": finding.rule,
        "ruleIndex": index[finding.rule],
        "level": finding.severity,
        "message": {"text": text},
        "locations": [
            {
                "physicalLocation": {
                    "artifactLocation": {"uri": quote(place.file, errors="surrogateescape")},
                    "region": {"startLine": place.line, "startColumn": place.column},
                }
            }
        ],
    }
    if why is not None:
        result["suppressions"] = [{"kind": "inSource", "justification": why}]
    return result


def annotation(finding: Finding) -> str:
    """Return a finding as a workflow command that a forge shows at the line."""
    place = finding.position
    body = finding.message + (f" ({finding.hint})" if finding.hint else "")
    properties = f"file={_escape_property(place.file)},line={place.line},col={place.column}"
    return f"::{finding.severity} {properties},title={_escape_property(finding.rule)}::{_escape(body)}"


def _escape(text: str) -> str:
    seen = clean(text, keep="\r\n")
    return seen.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def _escape_property(text: str) -> str:
    return _escape(text).replace(":", "%3A").replace(",", "%2C")
