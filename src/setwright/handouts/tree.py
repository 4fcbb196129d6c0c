"""All sheets of a programme as files of the tree. Only a sheet whose content changed is printed again.

The tree keeps, beside the sheets, a list of the digest of what each was printed from and of its own bytes. A sheet
that stands in the list with both is taken as it is.
"""

import hashlib
import json
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain
from pathlib import Path
from typing import Final

from setwright.handouts import booklet, coach, exercise, session
from setwright.handouts.coverage import missing
from setwright.handouts.press import Press, Presses
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk
from setwright.outline import paper

FOLDERS: Final = (f"{paper.FOLDER}/", ".handouts/")
"""Where sheets and the list of them lie in the tree."""

LIST: Final = ".handouts/digests.json"
"""The list of digests in the tree. Site engines skip folders whose name begins with a dot."""


@dataclass(frozen=True)
class Printed:
    """The sheets by path, the list of their digests among them; how many were printed; characters that no font has."""

    files: dict[str, bytes]
    printed: int
    kept: int
    lacking: tuple[str, ...]


def sheets(desk: Desk) -> Iterator[Sheet]:
    """Yield every sheet of a programme."""
    return chain(session.sheets(desk), coach.sheets(desk), booklet.sheets(desk), exercise.sheets(desk))


def render(desk: Desk, folder: Path) -> Printed:
    """Return all sheets; those that ``folder`` holds already, printed from the same content, are taken from there.

    Sheets are printed side by side, one a core; in which order they are done changes nothing.
    """
    mark = Press().mark
    before = _read_list(folder / LIST)
    made_from: dict[str, str] = {}
    kept: dict[str, bytes] = {}
    lacking: set[str] = set()
    with Presses() as presses:
        for sheet in sheets(desk):
            made_from[sheet.path] = digest = sheet.digest(mark)
            lacking |= missing(sheet.text)
            pdf = _kept(folder / sheet.path, before.get(sheet.path), digest)
            if pdf is None:
                presses.begin(sheet)
            else:
                kept[sheet.path] = pdf
        printed = presses.done()
    files = {path: kept[path] if path in kept else printed[path] for path in made_from}
    digests = {path: [digest, _digest(files[path])] for path, digest in made_from.items()}
    files[LIST] = (json.dumps(digests, indent=1) + "\n").encode()
    return Printed(files, len(printed), len(kept), tuple(sorted(lacking)))


def one(desk: Desk, folder: Path, path: str) -> bytes | None:
    """Return one sheet by its path, from ``folder`` if it fits, else printed; None where there is no such sheet."""
    press = Press()
    for sheet in sheets(desk):
        if sheet.path == path:
            entry = _read_list(folder / LIST).get(path)
            return _kept(folder / path, entry, sheet.digest(press.mark)) or press.print(sheet)
    return None


def _kept(path: Path, entry: list[str] | None, made_from: str) -> bytes | None:
    """Return the sheet that lies there, if it is just the one that was printed from this content."""
    if entry is None or entry[0] != made_from or not path.is_file() or path.is_symlink():
        return None
    pdf = path.read_bytes()
    return pdf if _digest(pdf) == entry[1] else None


def _read_list(path: Path) -> dict[str, list[str]]:
    """Return the list of digests, or an empty one where it is missing or not readable: then everything is printed."""
    try:
        found = json.loads(path.read_text("utf-8"))
    except (OSError, ValueError, RecursionError):
        return {}
    pairs = found.items() if isinstance(found, dict) else ()
    return {path: pair for path, pair in pairs if isinstance(pair, list) and len(pair) == 2}


def _digest(pdf: bytes) -> str:
    return hashlib.sha256(pdf).hexdigest()
