"""Mutants that no test can tell from the code, because they do the same, each with the reason."""

from dataclasses import dataclass
from pathlib import Path
from typing import Final

import yaml

FILE: Final = Path(__file__).with_name("equivalents.yml")


@dataclass(frozen=True)
class Equivalent:
    """A change on a line of a module, named by the line's text, since numbers move."""

    file: str
    at: str
    change: str
    why: str


def equivalents() -> list[Equivalent]:
    """Return the list in ``equivalents.yml``."""
    listed = yaml.safe_load(FILE.read_text("utf-8")) or {}
    return [
        Equivalent(file, str(entry["at"]), str(change), entry["why"])
        for file, entries in listed.items()
        for entry in entries
        for change in entry["changes"]
    ]
