"""Findings: what is wrong, where, how bad, and what would mend it. Values, until a printer shows them."""

from dataclasses import dataclass
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
