"""What is around a run changes no byte that it writes: line endings, folders, dates, git and what else there is."""

import os
import re
import shutil
from pathlib import Path

import pytest
from mkdocs.config import load_config

from setwright import publish
from setwright.source.git import versions
from support.desk import GIT, Desk
from support.reading import GOOD
from support.site import digests, lend_sheets
from support.small import setwright, small_project

pytestmark = pytest.mark.skipif(GIT is None, reason="git is not installed")
ODD = "Übungen für Anfänger 2027"


@pytest.fixture
def tree(small: Path) -> dict[str, str]:
    """The tree of the small good programme, with nothing odd around it."""
    return digests(small / "docs_build")


def rendered(project: Path) -> dict[str, str]:
    """Render a project's tree and return a digest of every file."""
    result = setwright(project, "render")
    assert result.exit_code == 0, result.stderr
    return digests(project / "docs_build")


def windows(path: Path) -> None:
    """Give a file the line endings of Windows."""
    path.write_bytes(path.read_bytes().replace(b"\r\n", b"\n").replace(b"\n", b"\r\n"))


def test_line_endings_of_windows(small: Path, tmp_path: Path, tree: dict[str, str]) -> None:
    """Programme and settings saved on Windows give the same pages."""
    project = small_project(tmp_path / "club")
    lend_sheets(small, project)
    for path in (project / "mkdocs.yml", *(project / "program").rglob("*.yml")):
        windows(path)

    assert rendered(project) == tree


def test_a_sign_off_keeps_the_line_endings_of_its_file(tmp_path: Path) -> None:
    """A file of sign-offs saved on Windows stays one: a signature changes one line."""
    desk = Desk(tmp_path)
    desk.sign("row")
    target = desk.program / "sign-offs.yml"
    windows(target)
    desk.sign("squat")
    raw = target.read_bytes()

    assert raw.count(b"\n") == raw.count(b"\r\n") > 2
    assert desk.standing("row")[0] == desk.standing("squat")[0] == "reviewed"


def test_a_folder_with_spaces_and_umlauts(small: Path, tmp_path: Path, tree: dict[str, str]) -> None:
    """Nobody has to keep a club in a folder with a plain name."""
    assert rendered(lend_sheets(small, small_project(tmp_path / ODD / "a  b"))) == tree


def test_another_working_folder(
    small: Path, tmp_path: Path, tree: dict[str, str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A project is built from anywhere, named by a path that goes up and down."""
    project = lend_sheets(small, small_project(tmp_path / "club"))
    (tmp_path / ODD).mkdir()
    monkeypatch.chdir(tmp_path / ODD)

    assert rendered(Path("..") / "club") == tree
    assert rendered(project) == tree


def test_without_git_and_in_a_shallow_clone(small: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nothing older is to be had, pages are those of a folder that never was in a repository."""
    desk = Desk(tmp_path)
    desk.git("init", "-q")
    desk.sign("squat")
    desk.commit()
    desk.edit("exercises/squat.yml", "Chest up", "Chest high")
    desk.commit()
    names = ("whole", "shallow", "without")
    whole, shallow, without = (lend_sheets(small, small_project(tmp_path / name)) for name in names)
    for project in (whole, shallow, without):
        shutil.rmtree(project / "program")
    desk.git("clone", "-q", "--no-local", str(tmp_path), str(tmp_path / "cloned"))
    desk.git("clone", "-q", "--no-local", "--depth", "1", f"file://{tmp_path}", str(tmp_path / "cut"))
    (whole / "program").symlink_to(tmp_path / "cloned" / "program")
    (shallow / "program").symlink_to(tmp_path / "cut" / "program")
    shutil.copytree(desk.program, without / "program")
    with_history, cut = rendered(whole), rendered(shallow)
    alone = rendered(without)
    monkeypatch.setenv("PATH", str(tmp_path / "nothing"))
    no_git = rendered(whole)

    assert with_history.keys() == alone.keys()
    assert {name for name in alone if with_history[name] != alone[name]} == {
        "review/index.md",
        "feeds/regatta.ics",  # which tells a new version from an older one by the commits behind it
    }
    assert cut == alone
    assert no_git == alone


def test_a_hook_of_another_repository_changes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Git tells the hooks that it runs where its own files are; the programme's are asked all the same."""
    repository = Desk(tmp_path)
    repository.git("init", "-q")
    repository.commit()
    before = list(versions(repository.program, "exercises/squat.yml"))
    monkeypatch.setenv("GIT_DIR", "/nowhere")
    monkeypatch.setenv("GIT_INDEX_FILE", "/nowhere/index")

    assert before == [(GOOD / "exercises/squat.yml").read_bytes()]
    assert list(versions(repository.program, "exercises/squat.yml")) == before


@pytest.mark.parametrize("given", [None, "0", "1700000000", "-5", "99999999999999", "abc", "", "٣", "9" * 5000])
def test_a_date_of_the_callers_is_a_date_or_nothing(given: str | None, monkeypatch: pytest.MonkeyPatch) -> None:
    """A whole number of seconds that an archive can hold is taken (RFC 1952 has 32 bits for it), anything else not."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "")
    if given is None:
        monkeypatch.delenv("SOURCE_DATE_EPOCH")
    else:
        monkeypatch.setenv("SOURCE_DATE_EPOCH", given)
    publish.steady_dates()

    assert os.environ["SOURCE_DATE_EPOCH"] == (given if given in ("0", "1700000000") else "315532800")


def test_a_date_changes_only_dates(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Two dates of the caller's give the same site, but for the days in the list of its pages and that list packed."""
    project = small_project(tmp_path / "club")
    publish.write(publish.look(project / "program"), project / "docs_build", "https://club.example/", sheets="left out")
    sites = []
    for given in ("1000000000", "1700000000"):
        monkeypatch.setenv("SOURCE_DATE_EPOCH", given)
        site = tmp_path / given
        config = load_config(config_file=str(project / "mkdocs.yml"), site_url="https://club.example/")
        publish.run_engine(config, site)
        sites.append(site)
    one, other = map(digests, sites)
    listed = [re.sub(r"<lastmod>\d{4}-\d\d-\d\d<", "", (site / "sitemap.xml").read_text("utf-8")) for site in sites]

    assert {name for name in one if one[name] != other[name]} == {"sitemap.xml", "sitemap.xml.gz"}
    assert one.keys() == other.keys()
    assert listed[0] == listed[1]
