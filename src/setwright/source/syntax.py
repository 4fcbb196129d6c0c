"""What the YAML parser complains about, in a coach's words and at the place that wants mending.

The parser stops where it can no longer make sense of a file, which is often a line or more below the slip. What it
read last, and what was still open, lead back to it.
"""

import re
from dataclasses import dataclass
from typing import Any, Final

import yaml

from setwright.source.finding import Finding, Position


@dataclass(frozen=True)
class Stop:
    """Where a parser gave up: its complaint, the last thing it read, and the bracket or brace still open."""

    error: yaml.YAMLError
    last: Any = None
    bracket: tuple[int, int] | None = None


_WORDS: Final = (
    ("cannot start any token", "this sign cannot start a text", "put the text in quotes"),
    ("directive", "a line cannot start with '%'", "put the text in quotes"),
    ("comment or line break", "a text after '|' or '>' begins on the next line", "begin it there, or put it in quotes"),
    ("block sequence entries", "a dash starts this text", "put the text in quotes, or begin a list on the next line"),
    ("mapping keys are not", "a question mark starts this text", "put the text in quotes"),
    ("escape", "a backslash in double quotes", "use single quotes"),
    ("hexdecimal", "a backslash in double quotes", "use single quotes"),
    ("document start", "this stands after the file's end", "delete the line '...', and write 'key: value' lines alone"),
    ("incompatible", "this is YAML of another version", "delete the line that starts with '%YAML'"),
    ("tag", "an exclamation mark starts this text", "put the text in quotes"),
    ("expected <block end>", "this line is not where its neighbours are", "indent it like the lines beside it"),
    ("expected key", "this line is not where its neighbours are", "indent it like the lines beside it"),
    ("'-' indicator", "this line is not where its neighbours are", "indent it like the lines beside it"),
)
"""Part of a complaint, of either parser that PyYAML brings; what a coach reads; the likely fix."""

_BRACKETS: Final = {
    "[": ("the brackets of this list", "add ',' between items, and ']' at the end"),
    "{": ("these braces", "add ',' between keys, and '}' at the end"),
}
_DASH: Final = ("a dash needs a space after it", "write '- item'")
_TAB: Final = ("tab", "a tab in the indentation", "use spaces; set your editor to insert them")
_NO_BREAK: Final = (
    "no-break-space",
    "a no-break space, which only looks like a space",
    "retype the spaces of this line",
)
_NOT_YAML: Final = "not-yaml"


def syntax_finding(file: str, text: str, stop: Stop) -> Finding:
    """Return what stopped a parser as a finding."""
    mark = getattr(stop.error, "problem_mark", None) or getattr(stop.error, "context_mark", None)
    line, column = (mark.line, mark.column) if mark else (0, 0)
    rows = text.split("\n")
    if "nesting depth" in str(getattr(stop.error, "problem", "")):
        return Finding(Position(file, line + 1, column + 1), "too-deep", "far too many levels inside", "flatten it")
    for number in (line, line - 1):
        row = rows[number] if 0 <= number < len(rows) else ""
        for sign, words in (("\t", _TAB), ("\N{NO-BREAK SPACE}", _NO_BREAK)):
            if found := re.search(rf"^ *(?:- +)*(?:[a-z_]+: *)?{sign}", row):
                return Finding(Position(file, number + 1, found.end()), *words)
    (line, column), said, hint = _worded(stop, rows, line, column)
    return Finding(Position(file, line + 1, column + 1), _NOT_YAML, said, hint)


def _worded(stop: Stop, rows: list[str], line: int, column: int) -> tuple[tuple[int, int], str, str]:
    """Return place, message and hint for a complaint at a line and a column, both from 0."""
    here, problem = (line, column), str(getattr(stop.error, "problem", ""))
    context = getattr(stop.error, "context_mark", None)
    began = (context.line, context.column) if context else here
    if "unexpected end of stream" in problem or "document indicator" in problem:
        return began, "the quotes that open here are never closed", "add the closing quote"
    if ended := _ended_too_soon(stop.last, problem, here):
        return ended
    if stop.bracket and ("expected ','" in problem or "node content" in problem):
        opened, began_at = rows[stop.bracket[0]][stop.bracket[1] :][:1], stop.bracket
        what, hint = _BRACKETS.get(opened, _BRACKETS["["])
        if began_at[0] == line:
            return here, f"{what} should go on here, or end", hint
        return began_at, f"{what} never end", hint
    if "alphabetic or numeric" in problem and "directive" not in str(getattr(stop.error, "context", "")):
        return began, "an asterisk or an ampersand starts this text", "put the text in quotes"
    if "could not find expected ':'" in problem:
        return began, "a key without a colon and a space", "write 'key: value', or indent the line to belong above"
    if "mapping values" in problem:
        return _colon(rows, line, column)
    if re.match(r" *-[^\s-]", rows[line] if line < len(rows) else ""):
        return here, *_DASH
    for part, said, hint in _WORDS:
        if part in problem or part in str(getattr(stop.error, "context", "")):
            return here, said, hint
    return here, "this cannot be read as YAML", "compare it with an example in program/README.md"


def _ended_too_soon(last: Any, problem: str, here: tuple[int, int]) -> tuple[tuple[int, int], str, str] | None:
    """Return words for a text that goes on after its closing quote or bracket."""
    ends = getattr(last, "end_mark", None)
    if ends is None or ends.line != here[0] or not ends.column <= here[1]:
        return None
    if not any(part in problem for part in ("expected key", "expected <block end>", "'-' indicator", "expected ','")):
        return None
    if isinstance(last, yaml.CollectionEndEvent) and ends.column > _column(last) and "expected ','" not in problem:
        hint = "put the whole text in quotes if it starts with a bracket or a brace"
        return here, "this goes on after a closing bracket or brace", hint
    if not isinstance(last, yaml.ScalarEvent) or last.style not in ("'", '"'):
        return None
    starts: Any = last.start_mark
    if starts.line != ends.line:
        said = f"the quotes that open here close in line {ends.line + 1}, in the middle of something else"
        return (starts.line, starts.column), said, "close them where the text ends"
    other = "single" if last.style == '"' else "double"
    hint = f"put the whole text in {other} quotes; write an apostrophe twice inside single ones"
    return here, "this text goes on after its closing quote", hint


def _column(event: Any) -> int:
    return int(event.start_mark.column)


def _colon(rows: list[str], line: int, column: int) -> tuple[tuple[int, int], str, str]:
    """Return words for a colon where none may be: in a text, or because of the line above."""
    row = rows[line] if line < len(rows) else ""
    if not re.fullmatch(r" *(- +)*[\w-]+", row[:column]):
        return (line, column), "a colon where none is expected", "if the text holds ': ', put it in quotes"
    above = next((n for n in range(line - 1, -1, -1) if rows[n].strip() and not rows[n].lstrip().startswith("#")), line)
    start = len(rows[above]) - len(rows[above].lstrip())
    if re.match(r" *-[^ -]", rows[above]):
        return (above, start), *_DASH
    if not re.search(r":(\s|$)", rows[above]):
        return (above, start), "a key without a colon and a space", "write 'key: value'"
    begins = len(row) - len(row.lstrip())
    return (line, begins), "this line stands too far to the right", "indent it like the lines beside it"
