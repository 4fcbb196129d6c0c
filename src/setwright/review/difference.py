"""Old and new side by side: which lines differ, and which words inside them."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from itertools import zip_longest

from setwright.review.parts import Line

_WORDS = re.compile(r"\s+|[^\s]+")


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a line; ``changed`` where the other side does not have it."""

    text: str
    changed: bool


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the old state beside the same line of the new one; no pieces where a side lacks it."""

    label: str
    old: tuple[Piece, ...]
    new: tuple[Piece, ...]

    @property
    def old_text(self) -> str:
        """The old line, whole."""
        return "".join(piece.text for piece in self.old)

    @property
    def new_text(self) -> str:
        """The new line, whole."""
        return "".join(piece.text for piece in self.new)


def rows(old: Sequence[Line], new: Sequence[Line]) -> tuple[Row, ...]:
    """Return the lines that differ, in order; nothing where all are the same."""
    before = [(line.field, line.text) for line in old]
    after = [(line.field, line.text) for line in new]
    found: list[Row] = []
    for way, a, b, c, d in SequenceMatcher(None, before, after, autojunk=False).get_opcodes():
        if way != "equal":
            found.extend(_paired(old[a:b], new[c:d]))
    return tuple(found)


def _paired(old: Sequence[Line], new: Sequence[Line]) -> Iterator[Row]:
    """Put what was taken out beside what came in, key by key; what has no counterpart stands alone."""
    fields = list(dict.fromkeys(line.field for line in (*old, *new)))
    for name in fields:
        ours = [line for line in old if line.field == name]
        theirs = [line for line in new if line.field == name]
        for was, now in zip_longest(ours, theirs):
            yield _row(was, now)


def _row(was: Line | None, now: Line | None) -> Row:
    label = (now or was or Line("", "", "")).key
    if was is None or now is None:
        return Row(label, _whole(was), _whole(now))
    return Row(label, *words_apart(was.text, now.text))


def _whole(line: Line | None) -> tuple[Piece, ...]:
    return (Piece(line.text, True),) if line is not None else ()


def words_apart(old: str, new: str) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """Return two texts in pieces, with the words marked that the other does not have."""
    before, after = _WORDS.findall(old), _WORDS.findall(new)
    left: list[Piece] = []
    right: list[Piece] = []
    for way, a, b, c, d in SequenceMatcher(None, before, after, autojunk=False).get_opcodes():
        _append(left, "".join(before[a:b]), way != "equal")
        _append(right, "".join(after[c:d]), way != "equal")
    return tuple(left), tuple(right)


def _append(pieces: list[Piece], text: str, changed: bool) -> None:
    if text:
        pieces.append(Piece(text, changed))
