"""Findings: what is wrong, where, how bad, and what would mend it. Values, until a printer shows them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice
from typing import Final, Literal

Severity = Literal["error", "warning"]

WARNING: Final = "warning"


@dataclass(frozen=True, slots=True, order=True)
class Position:
    """A place in a file; line and column count from 1."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True, order=True)
class Finding:
    """One mistake or doubt, in a coach's words. Errors stop publishing, warnings show."""

    position: Position
    rule: str
    message: str
    hint: str = ""
    severity: Severity = "error"


MOST_FINDINGS: Final = 200
"""A file with more mistakes than this is wrong as a whole, and nobody reads them one by one."""


def first_of(findings: Iterable[Finding], file: str) -> Iterator[Finding]:
    """Yield the first findings of a file; where there are more, say so instead of going on."""
    waiting = iter(findings)
    yield from islice(waiting, MOST_FINDINGS)
    if next(waiting, None) is not None:
        said, hint = f"more than {MOST_FINDINGS} mistakes in this file", "mend the first ones and look again"
        yield Finding(Position(file), "too-many-mistakes", said, hint)
