"""All pages of a programme, and writing them: only what changed, never half a file, nothing stale left behind."""

import html
from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from setwright.checks.registry import Accepted
from setwright.disk import written
from setwright.disk.files import replace
from setwright.dose.resolved import ResolvedPlan
from setwright.errors import ProjectError
from setwright.model.programme import Programme
from setwright.outline.packaged import package_files
from setwright.outline.site import Seen, Site
from setwright.pages import (
    checks,
    coach,
    data,
    exercise,
    exposure,
    figures,
    home,
    index,
    numbers,
    pictures,
    plan,
    policy,
    review,
    routine,
    safety,
    session,
    settings,
    theming,
    week,
)
from setwright.pages.page import Page
from setwright.pages.renderer import Renderer
from setwright.palette import SHEET
from setwright.phone import catalogue, days
from setwright.phone.lean import lean
from setwright.wording.language import ENGLISH, Language

KEPT: Final = frozenset({"README.md", ".gitignore", ".theme/.gitignore"})
"""Files of docs_build that are not generated."""

STYLES: Final = "assets/setwright.css"
"""The first of our style sheets: the palette is published at its head, so that no page asks for a file more."""


def pages_of(site: Site) -> Iterator[Page]:
    """Yield every page, kind by kind."""
    training = (home, plan, week, session, exercise, routine, index, figures, numbers, safety, settings)
    for kind in (*training, coach, review, checks, exposure, data):
        yield from kind.pages(site)


def render(
    programme: Programme,
    plans: tuple[ResolvedPlan, ...],
    accepted: tuple[Accepted, ...] = (),
    seen: Seen | None = None,
    language: Language = ENGLISH,
    committed: Mapping[int, str] | None = None,
) -> dict[str, bytes]:
    """Return the whole tree for docs_build as path and bytes; the same programme gives the same bytes.

    Args:
        programme: the programme.
        plans: its plans, resolved.
        accepted: the warnings that the coach stands by, for the physiotherapist's page.
        seen: by exercise and part, what a reviewer saw where that has changed since.
        language: what members read.
        committed: by place among the sign-offs, who committed the line of each.
    """
    return of(Site(programme, plans, accepted, seen or {}, language, committed or {}))


def of(site: Site) -> dict[str, bytes]:
    """Return the whole tree of a site for docs_build as path and bytes; the same site gives the same bytes."""
    programme, language = site.programme, site.language
    renderer = Renderer(site)
    tree = {one.path: renderer.render(one).encode() for one in pages_of(site)}
    for room in ("pages", "phone"):
        tree |= {f"assets/{name}": lean(name, raw) for name, raw in package_files(room, "assets")}
    tree[STYLES] = lean(STYLES, SHEET) + tree[STYLES]
    if (sentences := catalogue.module(language)) is not None:
        tree[catalogue.PATH] = sentences.encode()
    tree |= {f".theme/{name}": theming.said(raw, language) for name, raw in package_files("pages", "theme")}
    tree[".theme/club.html"] = _named(programme.club.name).encode()
    tree |= dict(package_files("phone", "root"))
    tree |= {name: text.encode() for name, text in (*days.files(site), *settings.files(site))}
    tree |= {name: text.encode() for name, text in (*pictures.files(programme).items(), *policy.files().items())}
    tree |= {pictures.photo_path(name): raw for name, raw in sorted(programme.photos.items())}
    return tree


def _named(club: str) -> str:
    """Return the template from which the theme has the club's name, for engines that escape nothing by themselves."""
    return f"{{%- macro name() -%}}{html.escape(club).replace('{', '&#123;')}{{%- endmacro -%}}\n"


@dataclass(frozen=True)
class Written:
    """How many files were written, left alone and deleted; ``remarks`` say what a reader of the log should know.

    ``frames`` says whether every page has to be built anew, not only those written: its theme or which pages there are.
    """

    changed: int
    same: int
    deleted: int
    remarks: tuple[str, ...] = ()
    frames: bool = False


def write(tree: Mapping[str, bytes], folder: Path, staying: tuple[str, ...] = ()) -> Written:
    """Bring a folder into line with a tree. A file is replaced whole or not touched at all.

    Only files that an earlier run wrote are deleted or written over. The list of them is on the disk before the first
    of them is, so that a run that was stopped leaves no file behind that nobody knows.

    Args:
        tree: the files by name.
        folder: the folder.
        staying: how the names begin of those that stay as they are, although they are not in the tree.

    Raises:
        ProjectError: where a file that this tool did not write stands in the place of one of the tree.
        OSError: where the system refuses.
    """
    folder.mkdir(parents=True, exist_ok=True)
    there = frozenset(written.below(folder))
    own = written.own(folder, KEPT)
    left = frozenset(name for name in own - tree.keys() if name.startswith(staying))
    changed = [name for name, content in tree.items() if name not in there or not _holds(folder / name, content)]
    _refuse_to_cover(folder, changed, there - own)
    _note(folder, own | tree.keys())
    for name in changed:
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        replace(target, tree[name])
    stale = sorted(own - tree.keys() - left - {written.LIST}, reverse=True)
    for name in stale:
        (folder / name).unlink(missing_ok=True)
    for empty in sorted({parent for name in stale for parent in (folder / name).parents}, reverse=True):
        if empty.is_relative_to(folder) and empty != folder and not any(empty.iterdir()):
            empty.rmdir()
    _note(folder, tree.keys() | left)
    frames = bool(stale) or any(name.startswith(".theme/") for name in changed)
    return Written(len(changed), len(tree) - len(changed), len(stale), frames=frames)


def _holds(target: Path, content: bytes) -> bool:
    return target.is_file() and not target.is_symlink() and target.read_bytes() == content


def _refuse_to_cover(folder: Path, changed: Sequence[str], foreign: Set[str]) -> None:
    """Refuse to write over a file that somebody else wrote, or through a link into another folder."""
    root = folder.resolve()
    for name in changed:
        if name in foreign:
            raise ProjectError(f"{folder / name} was not written by this tool, and a page goes there: move it away")
    for parent in sorted({name.rpartition("/")[0] for name in changed}):
        if (root / parent).resolve() != root / parent:
            raise ProjectError(f"{folder / parent} is a link that leads out of {folder.name}: delete it")


def _note(folder: Path, names: Set[str]) -> None:
    """Bring the list of what this tool wrote up to date, if it is not."""
    whole = written.as_list({*names, written.LIST})
    if not _holds(folder / written.LIST, whole):
        replace(folder / written.LIST, whole, lasting=True)
