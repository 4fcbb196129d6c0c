"""Whatever goes wrong with a file, at whichever step: the old site or the new one, and the club's files as they were.

The pages, the sheets and the engine are in miniature here; `tests/benchmarks/faults.py` sweeps over the real ones.
"""

import os
import shutil
from pathlib import Path

import pytest

from setwright import publish
from setwright.disk import swap
from support.amount import some
from support.faults import Killed, Kind, faults
from support.site import digests
from support.small import PAGES, SETTINGS, miniature, said, setwright, small_project
from support.sweep import Before, clubs_files, put_own_files, wrong

NEW = {name: raw for name, raw in PAGES.items() if name != "plans/regatta/index.md"} | {"safety/index.md": b"safety"}


@pytest.fixture
def before(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Before:
    """A published project in the folder 'club', whose next run has one page more and one page less."""
    club, ahead = small_project(tmp_path / "club"), tmp_path / "ahead"
    (club / "mkdocs.yml").write_text(SETTINGS, "utf-8")
    looked = publish.look(club / "program")
    monkeypatch.setattr(publish, "look", lambda *_: looked)  # reading has tests of its own, and takes long
    monkeypatch.setattr(os, "fsync", lambda _: None)  # counted, but nothing here outlives the machine
    miniature(monkeypatch)
    assert setwright(club, "build").exit_code == 0
    put_own_files(club)
    miniature(monkeypatch, NEW)
    shutil.copytree(club, ahead)
    assert setwright(ahead, "build").exit_code == 0
    return Before(clubs_files(club), digests(club / "site"), digests(ahead / "site"))


def steps(tmp_path: Path, kind: Kind) -> list[int]:
    """Return the numbers of all steps of a run."""
    counted = Path(shutil.copytree(tmp_path / "club", tmp_path / "counted"))
    with faults(counted, 0, kind) as watch:
        assert setwright(counted, "build").exit_code == 0
    assert watch.count > 50
    return some(range(1, watch.count + 1), 3)


def test_a_refusal_at_any_step_is_one_sentence_and_changes_nothing(before: Before, tmp_path: Path) -> None:
    """A run that cannot write, rename, delete or read ends with file and reason, or goes on without that step."""
    for number in steps(tmp_path, "refuse"):
        project = Path(shutil.copytree(tmp_path / "club", tmp_path / f"club-{number}"))
        with faults(project, number, "refuse") as watch:
            result = setwright(project, "build")
        met = f"step {number}: {watch.met}"
        assert wrong(project, before) is None, met
        if result.exit_code:
            assert result.exit_code == 1, (met, result.stderr)
            assert said(result).startswith("Error: "), met
            assert str(project) in said(result), (met, said(result))
            assert digests(project / "site") == before.old, met
        again = setwright(project, "build")
        assert again.exit_code == 0, (met, again.stderr)
        assert digests(project / "site") == before.new, met
        assert not list(project.rglob(".setwright-*")), met
        shutil.rmtree(project)


def test_a_kill_at_any_step_leaves_the_old_site_or_the_new_one(before: Before, tmp_path: Path) -> None:
    """At once, or, between two renames, when the next run starts; that publishes as if nothing had been."""
    without = 0
    for number in steps(tmp_path, "kill"):
        project = Path(shutil.copytree(tmp_path / "club", tmp_path / f"club-{number}"))
        with pytest.raises(Killed), faults(project, number, "kill") as watch:
            setwright(project, "build")
        met = f"step {number}: {watch.met}"
        assert wrong(project, before, between=True) is None, met
        without += not (project / "site").exists()
        swap.recover(project / "site")
        assert wrong(project, before) is None, met
        again = setwright(project, "build")
        assert again.exit_code == 0, (met, again.stderr)
        assert digests(project / "site") == before.new, met
        assert not list(project.rglob(".setwright-*")), met
        shutil.rmtree(project)
    assert without == 1  # the one step between two renames
