"""A list without its brackets inside braces: in ``{reps: 8, 8, 6}`` YAML reads the second and third as keys."""

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from setwright.model.units import shown
from setwright.source.finding import Finding, Position

_ENTRY = r"(?:(?:RPE +)?[0-9][^,:{}\[\]#'\"]*|[a-z][a-z -]{0,30} band *)"
_ROW = re.compile(rf"{_ENTRY}(?:,\s*{_ENTRY})+(?=[,}}])")
_DECIMAL = re.compile(r"[0-9]+,[0-9]+[^,]*")


@dataclass(frozen=True, slots=True)
class Spilled:
    """Such a list: the path of the value it begins with, its place (line and column from 1), and all of it."""

    path: tuple[str | int, ...]
    line: int
    column: int
    row: str

    def finding(self, file: str) -> Finding:
        """Return the one finding for all of it."""
        row = self.row.rstrip()
        whole = f"'[{row}]'" if len(row) <= 80 else "it in brackets"
        hint = f"write {whole}, or put it in quotes if it is one text"
        if _DECIMAL.fullmatch(row):
            hint = f"write a point, not a comma: '{row.replace(',', '.')}'; or a list: '[{row.replace(',', ', ')}]'"
        place = Position(file, self.line, self.column)
        return Finding(place, "list-without-brackets", f"a comma inside braces ends a value: {shown(row)}", hint)


def apart_from(lists: Iterable[Spilled], findings: Iterable[Finding]) -> Iterator[Finding]:
    """Yield the findings that are not about a part of one of these lists."""
    ends = {(one.line, one.column): one.column + len(one.row) for one in lists}
    starts = sorted(ends)
    for finding in findings:
        place = finding.position
        before = bisect_right(starts, (place.line, place.column)) - 1
        start = starts[before] if before >= 0 else (0, 0)
        if start[0] != place.line or place.column >= ends[start]:
            yield finding


def spilled(text: str, root: Any) -> Iterator[Spilled]:
    """Yield every list without brackets below a node of a tree, which was read from a text."""
    lines: Sequence[str] = text.split("\n")
    waiting: list[tuple[tuple[str | int, ...], Any]] = [((), root)]
    while waiting:
        path, node = waiting.pop()
        content = node.content
        pairs = content.items() if isinstance(content, dict) else ()
        items = enumerate(content) if isinstance(content, list) else ()
        for step, child in (*pairs, *items):
            waiting.append(((*path, step), child))
            if node.flow and isinstance(content, dict):
                found = _ROW.match(lines[child.line - 1], child.column - 1)
                if found:
                    yield Spilled((*path, step), child.line, child.column, found[0])
