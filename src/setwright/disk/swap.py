"""The published site and the one made beside it: always one of the two, whole, whatever stops a run.

Between two renames there is a moment without a site; a run that was stopped in it is put right by the next one.
"""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Final

from setwright.disk import written
from setwright.disk.files import flush, flush_all, replace
from setwright.errors import ProjectError

NEXT: Final = ".setwright-next"
OLD: Final = ".setwright-old"
GONE: Final = ".setwright-gone"


@contextmanager
def beside(site: Path) -> Iterator[Path]:
    """Give a folder for the next site, on the same disk; whatever is in it at the end goes, unless it was swapped in.

    What an earlier run left half done is put right first.
    """
    following = _named(site, NEXT)
    recover(site)
    try:
        yield following
    except OSError as error:
        if error.filename is None:  # a full disk does not say which file
            error.filename = str(following)
        raise
    finally:
        shutil.rmtree(following, ignore_errors=True)


def recover(site: Path) -> None:
    """Put right what a killed run left: the old site back where there is none, and what lies about cleared away."""
    old, following = _named(site, OLD), _named(site, NEXT)
    _retire(site)
    if old.exists():
        if site.exists():
            _retire(site)
        else:
            old.rename(site.resolve())
    if following.exists():
        shutil.rmtree(following)


def swap(following: Path, site: Path) -> None:
    """Put a finished site in the place of the published one; put that back if the last step fails.

    Files in the published site that this tool did not write go over into the new one.

    Raises:
        ProjectError: where the new site has a file of its own in the place of one of those.
        OSError: where something could not be moved; the published site is as it was.
    """
    site = site.resolve()
    old = _named(site, OLD)
    replace(following / written.LIST, written.as_list({*written.below(following), written.LIST}))
    _carry_over(site, following)
    flush_all(following)
    if site.exists():
        _open_to(following, site)
        site.rename(old)
    try:
        following.rename(site)
    except OSError:
        if old.exists():
            old.rename(site)
        raise
    with suppress(OSError):  # the new site is there; the next run clears away what stays of the old one
        flush(site.parent)
        _retire(site)


def _named(site: Path, name: str) -> Path:
    real = site.resolve()
    return real.parent / f"{name}-{real.name}"


def _carry_over(old: Path, new: Path) -> None:
    """Let a site have the files of another that this tool did not write."""
    for name in sorted(set(written.below(old)) - written.own(old)):
        source, target = old / name, new / name
        if os.path.lexists(target):
            if not _alike(source, target):
                said = "was not written by this tool, and the new site has a file of that name: move it away"
                raise ProjectError(f"{source} {said}")
            continue
        for folder in reversed(Path(name).parents[:-1]):
            if not (new / folder).exists():
                (new / folder).mkdir()
                _open_to(new / folder, old / folder)
        shutil.copy2(source, target, follow_symlinks=False)


def _open_to(new: Path, old: Path) -> None:
    """Open a folder to the same people as the one that it follows: what was private stays private."""
    shutil.copymode(old, new)
    with suppress(OSError):  # a group of others cannot be given away; its mode still holds
        os.chown(new, -1, old.stat().st_gid)


def _alike(one: Path, other: Path) -> bool:
    if one.is_symlink() or other.is_symlink():
        return one.is_symlink() and other.is_symlink() and one.readlink() == other.readlink()
    return one.is_file() and other.is_file() and one.read_bytes() == other.read_bytes()


def _retire(site: Path) -> None:
    """Delete a site that was replaced, once everything in it that this tool did not write is in the new one.

    It gets a name of its own first, so that what is half deleted is never put back; what tells that it is this
    tool's goes last.
    """
    old, gone = _named(site, OLD), _named(site, GONE)
    if not gone.exists() and old.exists() and site.exists():
        old.rename(gone)
    if not gone.exists():
        return
    if site.exists():
        _carry_over(gone, site)
    names = set(written.below(gone))
    for name in (*sorted(names - {written.LIST, written.SIGN}), *sorted(names & {written.LIST, written.SIGN})):
        (gone / name).unlink()
    shutil.rmtree(gone)
