"""All pages of a programme, and writing them: only what changed, never half a file, nothing stale left behind."""

import os
import tempfile
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from setwright.checks.registry import Accepted
from setwright.dose.resolved import ResolvedPlan
from setwright.model.programme import Programme
from setwright.outline.packaged import package_files
from setwright.outline.site import Seen, Site
from setwright.pages import (
    checks,
    exercise,
    exposure,
    figures,
    home,
    index,
    numbers,
    pictures,
    plan,
    review,
    routine,
    safety,
    session,
    settings,
    week,
)
from setwright.pages.page import Page
from setwright.pages.renderer import Renderer
from setwright.palette import SHEET
from setwright.phone import days
from setwright.phone.lean import lean

KEPT: Final = frozenset({"README.md", ".gitignore", ".theme/.gitignore"})
"""Files of docs_build that are not generated."""

STYLES: Final = "assets/setwright.css"
"""The first of our style sheets: the palette is published at its head, so that no page asks for a file more."""


def pages_of(site: Site) -> Iterator[Page]:
    """Yield every page, kind by kind."""
    training = (home, plan, week, session, exercise, routine, index, figures, numbers, safety, settings)
    for kind in (*training, review, checks, exposure):
        yield from kind.pages(site)


def render(
    programme: Programme, plans: tuple[ResolvedPlan, ...], accepted: tuple[Accepted, ...] = (), seen: Seen | None = None
) -> dict[str, bytes]:
    """Return the whole tree for docs_build as path and bytes; the same programme gives the same bytes.

    Args:
        programme: the programme.
        plans: its plans, resolved.
        accepted: the warnings that the coach stands by, for the physiotherapist's page.
        seen: by exercise and part, what a reviewer saw where that has changed since.
    """
    site = Site(programme, plans, accepted, seen or {})
    renderer = Renderer(site)
    tree = {one.path: renderer.render(one).encode() for one in pages_of(site)}
    for room in ("pages", "phone"):
        tree |= {f"assets/{name}": lean(name, raw) for name, raw in package_files(room, "assets")}
    tree[STYLES] = lean(STYLES, SHEET) + tree[STYLES]
    tree |= {f".theme/{name}": raw for name, raw in package_files("pages", "theme")}
    tree |= dict(package_files("phone", "root"))
    tree |= {name: text.encode() for name, text in (*days.files(site), *settings.files(site))}
    tree |= {name: text.encode() for name, text in pictures.files(programme).items()}
    tree |= {pictures.photo_path(name): raw for name, raw in sorted(programme.photos.items())}
    return tree


@dataclass(frozen=True)
class Written:
    """How many files were written, left alone and deleted; ``remarks`` say what a reader of the log should know."""

    changed: int
    same: int
    deleted: int
    remarks: tuple[str, ...] = ()


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
