"""Which folders this tool may write into: only such as are its own, or empty; never the programme or a repository."""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from setwright.disk import written
from setwright.disk.mounts import mounted_in
from setwright.errors import ProjectError

_README: Final = "README.md"


def refuse_foreign(root: Path, program: Path, docs: Path, site: Path) -> None:
    """Refuse settings under which a run would write into a folder that is not this tool's own.

    What is in the site's folder does not matter here, since not every run writes it: ``refuse_site`` says.

    Args:
        root: the project's folder, in which mkdocs.yml stands.
        program: the programme's folder.
        docs: the folder of the Markdown tree, `docs_dir`.
        site: the folder of the site, `site_dir`.

    Raises:
        ProjectError: naming the line of mkdocs.yml to change, and why.
    """
    for line, folder in (("program", program), ("docs_dir", docs), ("site_dir", site)):
        if "\0" in str(folder):
            raise _refused(line, folder, root, "is no folder's name")
    if _lies_in(root.resolve(), program.resolve()):
        raise _refused("program", program, root, "holds the whole project, and the programme has a folder of its own")
    for line, folder in (("docs_dir", docs), ("site_dir", site)):
        if why := _standing(folder.resolve(), root.resolve(), program.resolve()):
            raise _refused(line, folder, root, why)
    if _lies_in(docs.resolve(), site.resolve()) or _lies_in(site.resolve(), docs.resolve()):
        why = "and the folder of the Markdown tree must be two folders, neither of them inside the other"
        raise _refused("site_dir", site, root, why)
    refuse_filled("docs_dir", docs, root)


def refuse_site(site: Path, root: Path) -> None:
    """Refuse a folder for which no new site can be swapped: it holds other people's files, or a disk is mounted there.

    Raises:
        ProjectError: naming the line of mkdocs.yml to change, and why.
    """
    refuse_filled("site_dir", site, root)
    point = mounted_in(site)
    if point is not None:
        here = point == site.resolve()
        where = "is a place" if here else f"holds {point.relative_to(site.resolve())}, a place"
        why = f"{where} where another disk is mounted, so that no new site can be swapped in"
        why += "; name a folder inside it" if here else "; name another folder"
        raise _refused("site_dir", site, root, why)


def refuse_filled(line: str, folder: Path, root: Path) -> None:
    """Refuse a folder that holds what this tool did not write.

    Raises:
        ProjectError: naming the line of mkdocs.yml to change, and what is in the folder.
    """
    if why := _content(folder.resolve()):
        raise _refused(line, folder, root, why)


def _refused(line: str, folder: Path, root: Path, why: str) -> ProjectError:
    named = os.path.relpath(folder, root)
    return ProjectError(f"change the line '{line}' in mkdocs.yml: '{named}' {why}; nothing was touched")


def _standing(folder: Path, root: Path, program: Path) -> str:
    """Say what is wrong with where a folder stands, if anything is."""
    if _same(folder, program):
        return "is the programme's folder"
    if _lies_in(program, folder) and not _lies_in(root, folder):
        return "holds the programme's folder"
    if _lies_in(folder, program):
        return "lies in the programme's folder"
    if _lies_in(root, folder):
        return "holds the whole project"
    if folder.exists() and not folder.is_dir():
        return "is not a folder"
    return ""


def _content(folder: Path) -> str:
    """Say what in a folder shows that it is not this tool's own, if anything does."""
    if any(".git" in (*folders, *files) for _, folders, files in os.walk(folder)):
        return "holds a git repository"
    if written.is_ours(folder):
        return ""
    foreign = next(_visible(folder), None)
    if foreign is None:
        return ""
    return f"holds {foreign}, which this tool did not write; name another folder, or empty this one yourself"


def _visible(folder: Path) -> Iterator[str]:
    """Yield the files of a folder that somebody put there; what a clone of a club's project has does not count."""
    for name in written.below(folder):
        hidden = any(part.startswith(".") for part in name.split("/"))
        about_us = name == _README and b"setwright" in (folder / name).read_bytes()
        if not hidden and not about_us:
            yield name


def _lies_in(inner: Path, outer: Path) -> bool:
    """Say whether a folder is another or lies below it, on disks that mind capital letters and on those that do not."""
    return any(_same(one, outer) for one in (inner, *inner.parents))


def _same(one: Path, other: Path) -> bool:
    try:
        return one.samefile(other)
    except FileNotFoundError:
        return one == other
