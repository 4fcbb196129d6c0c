"""Sentences of which a part is stressed: pages set it in bold, sheets as they like."""

import re
from dataclasses import dataclass

_STRESSED = re.compile("\x02([^\x03]*)\x03")


@dataclass(frozen=True, slots=True)
class Piece:
    """A stretch of a sentence."""

    text: str
    stressed: bool


Pieces = tuple[Piece, ...]


def stressed(value: object) -> str:
    """Mark a value that goes into a sentence as its stressed part; ``pieces`` takes the mark out again."""
    return f"\x02{value}\x03"


def pieces(sentence: str) -> Pieces:
    """Return a sentence in its pieces."""
    parts = _STRESSED.split(sentence)
    return tuple(Piece(part, bool(index % 2)) for index, part in enumerate(parts) if part)


def plainly(said: Pieces) -> str:
    """Return a sentence in one piece."""
    return "".join(piece.text for piece in said)
