"""Two runs never write into one folder at the same time."""

import errno
import fcntl
import subprocess
import sys
import threading
from contextlib import ExitStack
from pathlib import Path

import pytest
from mkdocs.config import load_config

from setwright.disk import lock
from setwright.errors import StoppedError
from setwright.plugin import SetwrightPlugin
from support.desk import DAY
from support.site import digests
from support.small import miniature, said, setwright, small_project

FOUND = 1


@pytest.fixture(params=["folder", "file", "network drive"])
def kind(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """A system that can lock a folder, one that cannot lock at all, and a drive that cannot."""
    if request.param == "file":
        monkeypatch.setattr(lock, "fcntl", None)
    if request.param == "network drive":

        def refuse(*_: object) -> None:
            raise OSError(errno.EBADF, "Bad file descriptor")

        monkeypatch.setattr(fcntl, "flock", refuse)
    return str(request.param)


def test_a_second_run_is_refused_and_a_later_one_is_not(kind: str, tmp_path: Path) -> None:
    """One sentence that names the folder; nothing stays behind, so that the next run goes on."""
    said = f"another run is at work in {tmp_path}"
    with lock.held(tmp_path), pytest.raises(StoppedError, match=said), lock.held(tmp_path):
        pass
    with lock.held(tmp_path):
        pass

    assert list(tmp_path.iterdir()) == []


def test_a_preview_waits_for_a_build(kind: str, tmp_path: Path) -> None:
    """It says so once, and goes on when the other run has ended."""
    said: list[str] = []
    first = ExitStack()
    first.enter_context(lock.held(tmp_path))

    def waits() -> None:
        said.append("waiting")
        first.close()

    with lock.held(tmp_path, waits):
        assert said == ["waiting"]


_TAKE_AND_DIE = """
import os, sys
from pathlib import Path
from setwright.disk import lock
if sys.argv[2] == "without":
    lock.fcntl = None
with lock.held(Path(sys.argv[1])):
    os._exit(9)
"""


@pytest.mark.parametrize("without", [False, True])
def test_the_lock_of_a_killed_run_is_no_lock(tmp_path: Path, without: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    """A process that was killed holds nothing any more."""
    words = [sys.executable, "-c", _TAKE_AND_DIE, str(tmp_path), "without" if without else "with"]
    assert subprocess.run(words, check=False).returncode == 9
    if without:
        assert (tmp_path / lock.FILE).exists()
        monkeypatch.setattr(lock, "fcntl", None)

    with lock.held(tmp_path):
        pass
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("command", ["render", "build"])
def test_a_command_beside_another_says_so(command: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It writes nothing, and exits with 1 and a sentence."""
    miniature(monkeypatch)
    project = small_project(tmp_path / "club")
    before = digests(project)
    with lock.held(project / "docs_build"):
        result = setwright(project, command)

    assert result.exit_code == FOUND
    assert said(result).startswith(
        f"Error: another run is at work in {project / 'docs_build'}: wait until it has ended"
    )
    assert digests(project) == before


def test_a_preview_holds_its_folder_while_it_builds_only(tmp_path: Path) -> None:
    """Between two changes of the programme, a build may run beside a preview."""
    project = small_project(tmp_path / "club")
    config = load_config(config_file=str(project / "mkdocs.yml"), site_dir=str(tmp_path / "shown"))
    plugin = config.plugins["setwright"]
    assert isinstance(plugin, SetwrightPlugin)
    plugin.on_startup(command="serve", dirty=False)
    for end in (lambda: plugin.on_post_build(config=config), lambda: plugin.on_build_error(error=ValueError())):
        plugin.on_config(config)
        with pytest.raises(StoppedError), lock.held(project / "docs_build"):
            pass
        end()
        with lock.held(project / "docs_build"):
            pass


def test_two_who_sign_at_once_lose_no_sign_off(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """While one writes the file of sign-offs, another is told to wait; nobody writes over the other's line."""
    from setwright import reviewing

    project = small_project(tmp_path / "club")
    replace, refused = reviewing.replace, []

    def meanwhile(*args: object, **more: object) -> None:
        def second() -> None:
            try:
                reviewing.sign(project / "program", ["row"], "Second", "Physiotherapist", DAY, None)
            except StoppedError as error:
                refused.append(str(error))

        other = threading.Thread(target=second)
        other.start()
        other.join()
        replace(*args, **more)  # type: ignore[arg-type]

    monkeypatch.setattr(reviewing, "replace", meanwhile)
    reviewing.sign(project / "program", ["squat"], "First", "Physiotherapist", DAY, None)
    monkeypatch.setattr(reviewing, "replace", replace)
    reviewing.sign(project / "program", ["row"], "Second", "Physiotherapist", DAY, None)
    text = (project / "program" / "sign-offs.yml").read_text("utf-8")

    assert len(refused) == 1
    assert ("First" in text, "Second" in text) == (True, True)
