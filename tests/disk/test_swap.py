"""The published site is the old one or the new one, whole; a run that was killed is put right by the next."""

import os
import shutil
from pathlib import Path

import pytest

from setwright.disk import files, swap, written
from support.site import digests
from support.small import miniature, said, setwright, small_project

FOUND = 1


@pytest.fixture
def project(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A project with a published site and a file of the club's own in it."""
    miniature(monkeypatch)
    folder = small_project(tmp_path / "club")
    assert setwright(folder, "build").exit_code == 0
    (folder / "site" / "CNAME").write_text("strength.example.org", "utf-8")
    return folder


def mistake(project: Path) -> None:
    """Put a mistake into the programme, so that nothing can be published."""
    (project / "program" / "club.yml").write_text("name: [", "utf-8")


def test_a_kill_between_the_two_renames_is_put_right(project: Path) -> None:
    """The next run puts the old site back before anything else, even if it then has nothing to publish."""
    before = digests(project / "site")
    (project / "site").rename(project / f"{swap.OLD}-site")
    shutil.copytree(project / f"{swap.OLD}-site", project / f"{swap.NEXT}-site")
    mistake(project)

    assert setwright(project, "build").exit_code == FOUND
    assert digests(project / "site") == before
    assert list(project.glob(".setwright-*")) == []


def test_a_kill_after_the_two_renames_is_put_right(project: Path) -> None:
    """Then the new site stays, and what was replaced goes, but for files of the coach's that are not in the new one."""
    shutil.copytree(project / "site", project / f"{swap.OLD}-site")
    (project / "site" / "CNAME").unlink()
    (project / "site" / "index.html").write_text("newer", "utf-8")
    mistake(project)

    assert setwright(project, "build").exit_code == FOUND
    assert (project / "site" / "index.html").read_text("utf-8") == "newer"
    assert (project / "site" / "CNAME").is_file()
    assert list(project.glob(".setwright-*")) == []


def test_a_kill_while_the_replaced_site_is_deleted_brings_none_of_it_back(project: Path) -> None:
    """Pages of the replaced site that are still there go, and are not taken for the coach's."""
    gone = project / f"{swap.GONE}-site"
    shutil.copytree(project / "site", gone)
    (gone / "plans" / "index.html").rename(gone / "plans" / "removed.html")
    listed = written.listed(gone) or frozenset()
    (gone / written.LIST).write_bytes(written.as_list({*listed, "plans/removed.html"}))
    mistake(project)

    assert setwright(project, "build").exit_code == FOUND
    assert not (project / "site" / "plans" / "removed.html").exists()
    assert list(project.glob(".setwright-*")) == []


def test_a_swap_that_fails_puts_the_old_site_back(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """If the new site cannot be moved in, the old one is there again, and the command names the folder."""
    before = digests(project / "site")
    rename = Path.rename

    def refuse(self: Path, target: Path) -> Path:
        if self.name.startswith(swap.NEXT):
            raise PermissionError(13, "Permission denied", str(self))
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", refuse)
    result = setwright(project, "build")

    assert result.exit_code == FOUND
    assert said(result) == f"Error: {project / swap.NEXT}-site: Permission denied"
    assert digests(project / "site") == before
    assert list(project.glob(".setwright-*")) == []


def test_a_site_is_on_the_disk_before_it_is_moved_in(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every file and folder of it is flushed before the first rename, so that a cut of power loses neither site."""
    order: list[tuple[str, int]] = []
    fsync, rename = os.fsync, Path.rename

    def flushed(descriptor: int) -> None:
        order.append(("flush", os.fstat(descriptor).st_ino))
        fsync(descriptor)

    def renamed(self: Path, target: Path) -> Path:
        order.append(("rename", self.stat().st_ino))
        return rename(self, target)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(Path, "rename", renamed)
    assert setwright(project, "build").exit_code == 0
    site = project / "site"
    first = next(index for index, (what, _) in enumerate(order) if what == "rename")
    parts = {path.stat().st_ino for path in (site, *site.rglob("*"))}

    assert parts <= {inode for what, inode in order[:first] if what == "flush"}
    assert ("flush", project.stat().st_ino) in order[first:]


def test_a_file_is_replaced_whole_and_keeps_its_permissions(tmp_path: Path) -> None:
    """The old bytes are there until the new ones are, all of them, on the disk where that is asked for."""
    target = tmp_path / "sign-offs.yml"
    target.write_bytes(b"old")
    target.chmod(0o640)
    (tmp_path / files.PART).write_bytes(b"left by a run that was killed")
    files.replace(target, b"new", lasting=True)

    assert target.read_bytes() == b"new"
    assert target.stat().st_mode & 0o777 == 0o640
    assert list(tmp_path.iterdir()) == [target]


def test_a_site_stays_open_to_the_same_people(project: Path) -> None:
    """A site that only its group may read, and a private folder that the club put into it, stay so."""
    site = project / "site"
    (site / "ours" / "deep").mkdir(parents=True)
    (site / "ours" / "deep" / "list.txt").write_text("names", "utf-8")
    for folder, mode in ((site, 0o750), (site / "ours", 0o700), (site / "ours" / "deep", 0o711)):
        folder.chmod(mode)
    result = setwright(project, "build")

    assert result.exit_code == 0, said(result)
    found = {path: oct(path.stat().st_mode & 0o777) for path in (site, site / "ours", site / "ours" / "deep")}
    assert list(found.values()) == ["0o750", "0o700", "0o711"]
    assert (site / "ours" / "deep" / "list.txt").read_text("utf-8") == "names"
