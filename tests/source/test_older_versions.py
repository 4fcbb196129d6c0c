"""Older states of the programme from git: what each commit held, and plain words where there is none."""

import os
import re
from pathlib import Path

import pytest

from setwright.source import git
from setwright.source.git import RevisionError, unpack, versions
from support.desk import GIT, Desk

SQUAT = "exercises/squat.yml"


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A programme in a repository, its squat committed in three states and changed since."""
    if GIT is None:
        pytest.skip("git is not installed")
    desk = Desk(tmp_path / "club")
    desk.git("init", "-q")
    desk.commit()
    for before, after in (("Chest up", "Chest high"), ("Chest high", "Chest proud")):
        desk.edit(SQUAT, before, after)
        desk.commit()
    desk.edit(SQUAT, "Chest proud", "Chest out")
    return desk


def chests(contents: list[bytes]) -> list[str]:
    """Return the first cue of each version."""
    return [re.findall(r"Chest \w+", content.decode())[0] for content in contents]


def test_versions_of_a_file_newest_first(desk: Desk) -> None:
    """What is committed counts; what lies in the folder is no version yet."""
    assert chests(list(versions(desk.program, SQUAT))) == ["Chest proud", "Chest high", "Chest up"]


def test_a_commit_of_another_file_is_no_version(desk: Desk) -> None:
    """Only commits that touched the file are looked at, and a file that was never there has none."""
    assert len(list(versions(desk.program, "exercises/row.yml"))) == 1
    assert list(versions(desk.program, "exercises/hop.yml")) == []


def test_a_deleted_file_has_the_versions_before(desk: Desk) -> None:
    """The commit that deletes a file holds no content of it, and those before still do."""
    (desk.program / SQUAT).unlink()
    desk.commit()

    assert chests(list(versions(desk.program, SQUAT))) == ["Chest proud", "Chest high", "Chest up"]


def test_a_folder_as_it_was(desk: Desk, tmp_path: Path) -> None:
    """Each revision is written below another folder, which is made where it is not there."""
    for number, (revision, cue) in enumerate({"HEAD": "Chest proud", "HEAD~2": "Chest up"}.items()):
        there = unpack(desk.program, revision, tmp_path / "old" / str(number))

        assert cue in (there / SQUAT).read_text("utf-8")
        assert sorted(path.name for path in there.iterdir()) == sorted(path.name for path in desk.program.iterdir())


def test_a_folder_may_be_written_over(desk: Desk, tmp_path: Path) -> None:
    """A folder that is there already is no trouble."""
    unpack(desk.program, "HEAD~2", tmp_path / "old")

    assert "Chest high" in (unpack(desk.program, "HEAD~1", tmp_path / "old") / SQUAT).read_text("utf-8")


def test_the_top_of_the_repository_is_a_folder_too(desk: Desk, tmp_path: Path) -> None:
    """A programme may lie at the top of its own repository."""
    assert (unpack(desk.folder, "HEAD", tmp_path / "old") / "program" / SQUAT).exists()


def test_a_revision_that_is_none(desk: Desk, tmp_path: Path) -> None:
    """A slip in its name is said in words, and so is a folder that was not there then."""
    desk.git("checkout", "-q", "--orphan", "empty")
    desk.git("rm", "-q", "-r", "-f", "--cached", ".")
    (desk.folder / "note.txt").write_text("A note.", "utf-8")
    desk.git("add", "note.txt")
    desk.git("commit", "-q", "-m", "A note")

    with pytest.raises(RevisionError, match="'main~9' is neither a folder, a file nor a git revision"):
        unpack(desk.program, "main~9", tmp_path / "old")
    with pytest.raises(RevisionError, match="there is no program at revision 'HEAD'"):
        unpack(desk.program, "HEAD", tmp_path / "old")
    assert not (tmp_path / "old").exists()


def test_without_a_repository_there_is_nothing_older(tmp_path: Path) -> None:
    """A folder that is in no repository has no versions, and no revisions."""
    desk = Desk(tmp_path)

    assert list(versions(desk.program, SQUAT)) == []
    with pytest.raises(RevisionError, match="is in no git repository"):
        unpack(desk.program, "HEAD", tmp_path / "old")


def test_without_git_there_is_nothing_older(desk: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    """A machine without git, or with one that does not start, is like a folder without a repository."""
    monkeypatch.setattr(git.shutil, "which", lambda name: str(desk.folder / "no-such-git"))
    assert list(versions(desk.program, SQUAT)) == []

    monkeypatch.setattr(git.shutil, "which", lambda name: None)
    assert list(versions(desk.program, SQUAT)) == []


def test_a_hook_s_own_repository_is_left_alone(desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Run by a hook of another repository, the programme's own is looked at, and the rest of the surroundings stays."""
    other = Desk(tmp_path / "other")
    other.git("init", "-q")
    monkeypatch.setenv("GIT_DIR", str(other.folder / ".git"))
    monkeypatch.setenv("GIT_WORK_TREE", str(other.folder))

    assert len(list(versions(desk.program, SQUAT))) == 3
    assert os.environ["GIT_DIR"] == str(other.folder / ".git")


def test_git_asks_nobody_and_fetches_nothing(desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A build on a server never waits for a password: git(1), GIT_TERMINAL_PROMPT and GIT_NO_LAZY_FETCH."""
    told = tmp_path / "told"
    tool = tmp_path / "bin" / "git"
    tool.parent.mkdir()
    tool.write_text(f"#!/bin/sh\necho $GIT_TERMINAL_PROMPT $GIT_NO_LAZY_FETCH > '{told}'\n", "utf-8")
    tool.chmod(0o755)
    monkeypatch.setenv("PATH", str(tool.parent), prepend=":")

    assert list(versions(desk.program, SQUAT)) == []
    assert told.read_text("utf-8") == "0 1\n"
