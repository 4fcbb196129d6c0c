"""Which characters the sheets' fonts can show, and what stands for the others.

The typesetter refuses a PDF/UA file with a character that none of its fonts has. A club may still write one: pages show
it with the reader's own fonts, and on the sheet a sign stands in its place. Pictographs and invisible marks are left
out, as nothing is lost to the reader.
"""

import re
import unicodedata
from functools import cache
from pathlib import Path
from typing import Final

LIST: Final = Path(__file__).parent / "fonts" / "coverage.txt"
"""The characters of all fonts beside it, as ranges of code points, one a line."""

STAND_IN: Final = "\N{REPLACEMENT CHARACTER}"
_LEFT_OUT: Final = frozenset({"So", "Sk", "Cf", "Mn", "Me", "Cs", "Co", "Cn"})


@cache
def _missing() -> re.Pattern[str]:
    ranges = [line.split("-") for line in LIST.read_text("ascii").split()]
    covered = "".join(f"\\U{int(first, 16):08X}-\\U{int(last, 16):08X}" for first, last in ranges)
    return re.compile(f"[^\\n{covered}]")


def printable(text: str) -> str:
    """Return text with every character that no font has replaced by a sign, or left out."""
    return _missing().sub(_instead, unicodedata.normalize("NFC", text))


def missing(text: str) -> set[str]:
    """Return the characters of a text that no font has, invisible ones apart."""
    found = _missing().findall(unicodedata.normalize("NFC", text))
    return {char for char in found if unicodedata.category(char) not in {"Cf", "Mn"}}


def _instead(match: re.Match[str]) -> str:
    return "" if unicodedata.category(match[0]) in _LEFT_OUT else STAND_IN
