"""A new club's project: all that a first build needs, outside of this tool, and nothing of the example's club."""

import json
import re
import shutil
import tempfile
from collections.abc import Iterator, Mapping
from datetime import date, timedelta
from pathlib import Path
from typing import Final

from setwright import __version__
from setwright.errors import ProjectError, StoppedError
from setwright.outline.packaged import package_files
from setwright.source.read import read
from setwright.source.schemas import schemas
from setwright.starting.library import Library, entries, sources_of, with_what_they_name

_AT_TOP: Final = {
    "README.md": "README.md",
    "wheels.md": "wheels/README.md",
    "gitignore": ".gitignore",
    "gitlab-ci.yml": ".gitlab-ci.yml",
    "forgejo.yml": ".forgejo/workflows/publish.yml",
}
"""What does not belong into the programme's folder, and where it goes."""
_TREE: Final = ("README.md", ".gitignore", ".theme/.gitignore")
_OWN_INSTALL: Final = "pip install --no-deps --no-build-isolation ."
_WHEEL_INSTALL: Final = f"pip install --no-deps --no-index --find-links wheels setwright=={__version__}"
_HASHED: Final = "requirements.hashed.lock"


def next_monday(today: date) -> date:
    """Return the first Monday after a day."""
    return today + timedelta(days=7 - today.weekday())


def start(folder: Path, name: str, starts: date | None, library: Library) -> tuple[str, ...]:
    """Write a new club's project.

    Args:
        folder: where; it may exist, and must be empty.
        name: what the club is called.
        starts: the first day of its first plan; None where each member begins when they like.
        library: the movements that came with the tool.

    Returns:
        The files, by relative path.

    Raises:
        ProjectError: where the folder is not empty, or the name cannot be one.
        StoppedError: where something cannot be written; then nothing is left.
    """
    if folder.is_symlink() or (folder.exists() and (not folder.is_dir() or any(folder.iterdir()))):
        raise ProjectError(f"{folder} is there already and is not an empty folder: name another one")
    written = files(name, starts, library)
    folder = folder.absolute()
    folder.parent.mkdir(parents=True, exist_ok=True)
    beside = Path(tempfile.mkdtemp(prefix=".setwright-new-", dir=folder.parent))
    placed: list[Path] = []
    try:
        for file, content in written.items():
            target = beside / file
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(content)
        wrong = [f for f in read(beside / "program").findings if f.severity == "error"]
        if wrong:
            raise ProjectError(f"the club's name cannot be used: {wrong[0].message} ({wrong[0].hint})")
        folder.mkdir(exist_ok=True)
        for path in sorted(beside.iterdir()):  # a folder that somebody stands in must stay the same one
            placed.append(folder / path.name)
            path.rename(placed[-1])
    except OSError as error:
        for path in placed:
            _remove(path)
        raise StoppedError(f"{folder}: {error.strerror}; nothing was written") from error
    finally:
        shutil.rmtree(beside, ignore_errors=True)
    return tuple(written)


def _remove(path: Path) -> None:
    if path.is_dir():
        shutil.rmtree(path, ignore_errors=True)
    else:
        path.unlink(missing_ok=True)


def files(name: str, starts: date | None, library: Library) -> Mapping[str, bytes]:
    """Return a new project's files by relative path."""
    texts = {path: raw.decode() for path, raw in package_files("starting", "club")}
    wanted = list(with_what_they_name(library.programme, _exercises(texts)))
    values = {
        "@@NAME@@": json.dumps(name, ensure_ascii=False),
        "@@VERSION@@": __version__,
        "@@STARTS@@": f"starts: {starts.isoformat()}\n" if starts else "",
        "@@KIT@@": "\n".join(_kit(library, wanted)),
    }
    made = {}
    for path, text in texts.items():
        for place, value in (values | ({"@@NAME@@": name} if path.endswith(".md") else {})).items():
            text = text.replace(place, value)
        made[_placed(path)] = text
    made |= {f"program/exercises/{ident}.yml": library.exercise(ident) for ident in wanted}
    sources = entries(library.text("references.yml"))
    named = "".join(sources[ident] for ident in sources_of(library.programme, wanted))
    made["program/references.yml"] = f"# yaml-language-server: $schema=schema/references.json\n{named}"
    made |= {f"program/schema/{path}": text for path, text in schemas().items()}
    made |= {f"program/{path}": library.text(path) for path in ("README.md", ".gitattributes")}
    made |= {f"docs_build/{path}": (library.top / "docs_build" / path).read_text("utf-8") for path in _TREE}
    made["mkdocs.yml"] = _settings(library, values["@@NAME@@"])
    made["requirements.lock"] = (library.top / _HASHED).read_text("utf-8")
    made[".github/workflows/publish.yml"] = _workflow(library)
    return {path: made[path].encode() for path in sorted(made)}


def _placed(path: str) -> str:
    return _AT_TOP.get(path, f"program/{path}")


def _exercises(texts: Mapping[str, str]) -> Iterator[str]:
    """Yield the exercises that a new club's sessions and routines name."""
    for path, text in texts.items():
        if path.startswith(("sessions/", "routines/")):
            yield from re.findall(r"exercise: ([\w-]+)", text)


def _kit(library: Library, wanted: list[str]) -> Iterator[str]:
    """Yield a line of club.yml for each kit that the exercises need, with the example's weights to begin with."""
    needed = {kit for ident in wanted for kit in library.programme.exercises[ident].kit}
    section = re.search(r"^kit:\n((?: .*\n)+)", library.text("club.yml"), re.MULTILINE)
    for line in (section[1] if section else "").splitlines():
        if line.split(":")[0].strip() in needed:
            yield line


def _settings(library: Library, name: str) -> str:
    """Return the example's settings with the club's own name."""
    text = (library.top / "mkdocs.yml").read_text("utf-8")
    text = _once(r"^site_name: .*$", f"site_name: {name}", text)
    return _once(r"^site_description: .*$", "site_description: Our strength programme", text)


def _workflow(library: Library) -> str:
    """Return the publishing workflow of this project, which installs the tool from the club's folder of wheels."""
    text = (library.top / ".github" / "workflows" / "publish.yml").read_text("utf-8")
    return _once(re.escape(_OWN_INSTALL), _WHEEL_INSTALL, text).replace(_HASHED, "requirements.lock")


def _once(pattern: str, written: str, text: str) -> str:
    text, count = re.subn(pattern, lambda _: written, text, flags=re.MULTILINE)
    if count != 1:
        raise ProjectError(f"what this tool starts projects from is not whole: {pattern} stands in it {count} times")
    return text
