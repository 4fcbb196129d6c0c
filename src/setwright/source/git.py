"""Older states of the programme's files, from the git repository around it, where there is one.

Reading only. Where git is not installed, or the folder is in no repository, there is simply nothing older to see.
"""

import io
import os
import re
import shutil
import subprocess
import tarfile
from collections.abc import Iterable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Final

from setwright.errors import SetwrightError

MOST_VERSIONS: Final = 400
"""How far back a file is looked up."""

_ALOOF: Final = ("--no-pager", "--no-optional-locks", "-c", "core.fsmonitor=false", "-c", "core.quotePath=false")
"""Options under which git writes nothing and starts nothing else."""

_ANOTHER: Final = frozenset(
    f"GIT_{name}"
    for name in ("DIR", "WORK_TREE", "COMMON_DIR", "INDEX_FILE", "OBJECT_DIRECTORY", "NAMESPACE", "PREFIX")
)
"""What git tells the hooks that it runs about its own repository, which need not be the programme's."""


_BLAMED: Final = re.compile(r"([0-9a-f]{40,64}) \d+ (\d+)( \d+)?")
"""The head of a line in git's account of a file: the commit, the line before, the line now."""


class RevisionError(SetwrightError):
    """A revision that the repository does not know."""


def versions(folder: Path, name: str) -> Iterator[bytes]:
    """Yield the contents that a file had in each commit that touched it, newest first.

    Args:
        folder: the programme's folder.
        name: the file below it, such as ``exercises/goblet-squat.yml``.
    """
    listed = _git(folder, "rev-list", f"--max-count={MOST_VERSIONS}", "HEAD", "--", name)
    for commit in (listed or b"").decode("ascii", "replace").split():
        content = _git(folder, "cat-file", "blob", f"{commit}:./{name}")
        if content is not None:
            yield content


def authors(folder: Path, name: str) -> dict[int, str]:
    """Return, by line from 1, who committed each line of a file last; lines that are not committed are left out.

    It is the name that git keeps, which whoever commits can choose. In a shallow clone, git gives every older line to
    whoever made the first commit that is there, so nothing is told.
    """
    if (_git(folder, "rev-parse", "--is-shallow-repository") or b"").strip() != b"false":
        return {}
    told = _git(folder, "blame", "--porcelain", "--", name)
    found: dict[int, str] = {}
    by: dict[str, str] = {}
    commit, number = "", 0
    for row in (told or b"").decode("utf-8", "replace").split("\n"):
        if header := _BLAMED.match(row):
            commit, number = header[1], int(header[2])
        elif row.startswith("author "):
            by[commit] = row.removeprefix("author ").strip()
        elif row.startswith("\t") and commit.strip("0") and by.get(commit):
            found[number] = by[commit]
    return found


def commits(folder: Path, names: Iterable[str]) -> list[datetime]:
    """Return when each commit was made that touched some files, as they stand there now, newest first.

    Nothing where one of them is changed since, and nothing in a shallow clone, whose oldest commit is made to hold
    everything before it.

    Args:
        folder: the programme's folder.
        names: files below it.
    """
    files = list(names)
    if (_git(folder, "rev-parse", "--is-shallow-repository") or b"").strip() != b"false":
        return []
    if _git(folder, "status", "--porcelain", "--", *files) != b"":
        return []
    told = _git(folder, "log", "--format=%ct", "--", *files) or b""
    return [datetime.fromtimestamp(int(line), UTC) for line in told.decode("ascii").split()]


def unpack(folder: Path, revision: str, into: Path) -> Path:
    """Write a folder as it was at a revision below another folder, and return where it is.

    Raises:
        RevisionError: where there is no such revision, or the folder did not exist in it.
    """
    top = _git(folder, "rev-parse", "--show-toplevel")
    below = _git(folder, "rev-parse", "--show-prefix")
    if top is None or below is None:
        raise RevisionError(f"{folder} is in no git repository")
    commit = _git(folder, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}")
    if commit is None:
        raise RevisionError(f"'{revision}' is neither a folder, a file nor a git revision")
    tree = f"{commit.decode().strip()}:{below.decode().strip().rstrip('/')}"
    packed = _git(Path(top.decode().strip()), "archive", "--format=tar", tree)
    if packed is None:
        raise RevisionError(f"there is no {folder.name} at revision '{revision}'")
    with tarfile.open(fileobj=io.BytesIO(packed)) as archive:
        archive.extractall(into, filter="data")
    return into


def _git(folder: Path, *words: str) -> bytes | None:
    """Return what git prints, or None where it is missing or has nothing to say."""
    tool = shutil.which("git")
    if tool is None:
        return None
    around = {name: value for name, value in os.environ.items() if name not in _ANOTHER}
    around |= {"GIT_NO_LAZY_FETCH": "1", "GIT_TERMINAL_PROMPT": "0"}  # nothing is fetched, nobody is asked
    # The words are this module's own; the one that a person chose stands after --end-of-options, the others are
    # file names of the programme.
    call = [tool, "-C", str(folder), *_ALOOF, *words]
    try:
        done = subprocess.run(call, capture_output=True, check=False, stdin=subprocess.DEVNULL, env=around)  # noqa: S603
    except OSError:
        return None
    return done.stdout if done.returncode == 0 else None
