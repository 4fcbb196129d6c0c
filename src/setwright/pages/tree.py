"""All pages of a programme, and writing them: only what changed, never half a file, nothing stale left behind."""

import os
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from setwright.dose.resolved import ResolvedPlan
from setwright.model.programme import Programme
from setwright.pages import days, exercise, home, index, numbers, plan, routine, safety, session, week
from setwright.pages.page import Page
from setwright.pages.site import Renderer, Site, package_files

KEPT: Final = frozenset({"README.md", ".gitignore", ".theme/.gitignore"})
"""Files of docs_build that are not generated."""


def pages_of(site: Site) -> Iterator[Page]:
    """Yield every page, kind by kind."""
    for kind in (home, plan, week, session, exercise, routine, index, numbers, safety):
        yield from kind.pages(site)


def render(programme: Programme, plans: tuple[ResolvedPlan, ...]) -> dict[str, bytes]:
    """Return the whole tree for docs_build as path and bytes; the same programme gives the same bytes."""
    site = Site(programme, plans)
    renderer = Renderer(site)
    tree = {one.path: renderer.render(one).encode() for one in pages_of(site)}
    tree |= {f"assets/{name}": raw for name, raw in package_files("assets")}
    tree |= {f".theme/{name}": raw for name, raw in package_files("theme")}
    tree |= {name: text.encode() for name, text in days.files(site)}
    return tree


@dataclass(frozen=True)
class Written:
    """How many files were written, left alone and deleted."""

    changed: int
    same: int
    deleted: int


def write(tree: Mapping[str, bytes], folder: Path) -> Written:
    """Bring a folder into line with a tree. A file is replaced whole or not touched at all."""
    folder.mkdir(parents=True, exist_ok=True)
    changed = 0
    for name, content in tree.items():
        target = folder / name
        if target.is_file() and not target.is_symlink() and target.read_bytes() == content:
            continue
        target.parent.mkdir(parents=True, exist_ok=True)
        _replace(target, content)
        changed += 1
    stale = [
        path
        for path in sorted(folder.rglob("*"), reverse=True)
        if path.is_file() and path.relative_to(folder).as_posix() not in KEPT | tree.keys()
    ]
    for path in stale:
        path.unlink()
    for path in sorted(folder.rglob("*"), reverse=True):
        if path.is_dir() and not any(path.iterdir()):
            path.rmdir()
    return Written(changed, len(tree) - changed, len(stale))


def _replace(target: Path, content: bytes) -> None:
    descriptor, name = tempfile.mkstemp(dir=target.parent, prefix=".setwright-")
    try:
        with os.fdopen(descriptor, "wb") as stream:
            stream.write(content)
        Path(name).chmod(0o644)
        Path(name).replace(target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
