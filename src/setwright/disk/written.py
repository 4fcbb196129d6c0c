"""Which files of a folder this tool wrote: a list in the folder itself, the only files that a later run may delete.

A folder of an earlier version has no list. It is known by its service worker, and its files by their names.
"""

import json
import os
import re
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Final

from setwright.disk.files import PART

LIST: Final = ".written.json"
"""The list, in the tree and in the site. Engines skip files whose names begin with a dot."""

SIGN: Final = "service-worker.js"
"""A file that every engine copies from tree to site unchanged, but for its list."""

_SIGNED: Final = b"const FAMILY = `setwright ${"
"""What stands in the worker of every version, and in nobody else's."""

_EARLIER: Final = re.compile(
    r"(.*/)?index\.(md|html)|(assets|handouts|search|\.theme|\.handouts)/.*"
    r"|404\.html|search\.json|sitemap\.xml(\.gz)?|manifest\.webmanifest|service-worker\.js"
)
"""Names of the files that versions without a list wrote, and that an engine of its own writes."""


def as_list(names: Iterable[str]) -> bytes:
    """Return a list of names as the bytes of its file."""
    return (json.dumps({"written by": "setwright", "files": sorted(names)}, indent=0) + "\n").encode()


def listed(folder: Path) -> frozenset[str] | None:
    """Return the names in a folder's list, or None where it has none that can be read as one."""
    try:
        found = json.loads((folder / LIST).read_bytes())
    except (FileNotFoundError, NotADirectoryError, ValueError, RecursionError):
        return None
    names = found.get("files") if isinstance(found, dict) else None
    if not isinstance(names, list):
        return None
    return frozenset(name for name in names if isinstance(name, str))


def below(folder: Path) -> Iterator[str]:
    """Yield the names of all files below a folder, in order; a link counts as a file and is not followed."""
    for place, folders, files in os.walk(folder):
        folders.sort()
        inside = Path(place).relative_to(folder)
        links = [name for name in folders if (Path(place) / name).is_symlink()]
        yield from ((inside / name).as_posix() for name in sorted([*files, *links]))


def is_ours(folder: Path) -> bool:
    """Say whether this tool wrote into a folder before: it holds a list, or the worker of an earlier version."""
    return listed(folder) is not None or _is_signed(folder)


def own(folder: Path, kept: frozenset[str] = frozenset()) -> frozenset[str]:
    """Return the names of the files below a folder that this tool wrote, and so may delete.

    Args:
        folder: the folder.
        kept: names that belong to the project, whatever a list says.
    """
    names = listed(folder)
    if names is None:
        names = frozenset(filter(_EARLIER.fullmatch, below(folder))) if _is_signed(folder) else frozenset()
    there = set(below(folder))
    parts = {name for name in there if name.rpartition("/")[2] == PART}
    return frozenset((names & there | parts | {LIST} & there) - kept)


def _is_signed(folder: Path) -> bool:
    try:
        return _SIGNED in (folder / SIGN).read_bytes()
    except (FileNotFoundError, NotADirectoryError, IsADirectoryError):
        return False
