"""Desks to sign at, and the built example with something changed since its review."""

from pathlib import Path

import pytest

from support.desk import GIT, Desk


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """A small programme without a repository."""
    return Desk(tmp_path)


@pytest.fixture
def repository(tmp_path: Path) -> Desk:
    """A small programme in a git repository, committed once, with the line that keeps both sides of a merge."""
    if GIT is None:
        pytest.skip("git is not installed")
    desk = Desk(tmp_path)
    (desk.program / ".gitattributes").write_text("sign-offs.yml merge=union\n", "utf-8")
    desk.git("init", "-q")
    desk.commit()
    return desk
