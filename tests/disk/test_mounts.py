"""A site on a mounted disk cannot be swapped: that is said before anything is done."""

import os
from pathlib import Path

import pytest

from setwright.disk import mounts
from setwright.disk.mounts import mounted_in
from support.site import digests
from support.small import miniature, said, setwright, small_project

CLEAN, USAGE = 0, 2

# The example of a line in proc_pid_mountinfo(5) of the Linux manual pages, with another mount point.
LINE = "36 35 98:0 /mnt1 {} rw,noatime master:1 - ext3 /dev/root rw,errors=continue\n"


@pytest.fixture
def project(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A project with a published site, in a folder whose name the list of mounts writes with octal numbers."""
    miniature(monkeypatch)
    folder = small_project(tmp_path / "our club")
    assert setwright(folder, "build").exit_code == CLEAN
    return folder


def mount(monkeypatch: pytest.MonkeyPatch, project: Path, *points: Path) -> None:
    """Have the system say that disks are mounted at these places."""
    table = project.parent / "mountinfo"
    table.write_text("".join(LINE.format(str(point).replace(" ", "\\040")) for point in points), "utf-8")
    monkeypatch.setattr(mounts, "TABLE", table)


def test_a_site_that_is_a_mount_point_is_refused(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Such a folder cannot be renamed: the line to change is named at the start, and nothing is touched."""
    mount(monkeypatch, project, Path("/"), project / "site")
    before = digests(project)
    result = setwright(project, "build")

    assert result.exit_code == USAGE
    assert "change the line 'site_dir' in mkdocs.yml: 'site' is a place where another disk is mounted" in said(result)
    assert digests(project) == before


def test_a_site_that_holds_a_mount_point_is_refused(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What lies on the other disk is the club's, and a replaced site is deleted."""
    mount(monkeypatch, project, project / "site" / "my photos")
    result = setwright(project, "build")

    assert result.exit_code == USAGE
    assert "'site' holds my photos, a place where another disk is mounted" in said(result)


def test_a_project_on_a_mounted_disk_is_built(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Disks around the project, beside the site and under names that begin alike are no matter."""
    beside = (project / "site-of-old", project / "program", project / "docs_build")
    mount(monkeypatch, project, Path("/"), project.parent, project, *beside)

    assert setwright(project, "build").exit_code == CLEAN


def test_where_the_system_has_no_list(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Then each folder is asked whether it lies on another disk than the one above it."""
    monkeypatch.setattr(mounts, "TABLE", project / "no such file")
    assert mounted_in(project / "site") is None
    assert setwright(project, "build").exit_code == CLEAN

    monkeypatch.setattr(os.path, "ismount", lambda path: Path(path).name == "plans")
    assert mounted_in(project / "site") == project / "site" / "plans"


def test_this_machine_tells_its_mounts() -> None:
    """Something is mounted at or below the root of all folders, wherever this runs."""
    assert mounted_in(Path("/")) is not None
