"""No line of mkdocs.yml costs a coach a file: a run writes only into folders that are its own."""

import shutil
import sys
from pathlib import Path

import pytest
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.exceptions import Abort

from setwright.disk import folders, written
from setwright.errors import ProjectError
from support.site import digests
from support.small import PAGES, WORKER, miniature, said, setting, setwright, small_project

CLEAN, USAGE = 0, 2


@pytest.fixture
def project(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A project as cloned, with other things of the club's in it."""
    miniature(monkeypatch)
    folder = small_project(tmp_path / "club")
    for name in ("docs/handbook.md", "history/.git/HEAD", "history/index.html", "public/index.html"):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text("the club's own", "utf-8")
    (folder / "linked").symlink_to("program")
    (folder / "linked-docs").symlink_to("docs_build")
    (folder / "empty").mkdir()
    return folder


def plain_mkdocs(project: Path, **settings: str) -> None:
    """Build with the engine's own command, which runs the plugin."""
    config = load_config(config_file=str(project / "mkdocs.yml"), **settings)
    config.plugins.on_startup(command="build", dirty=False)
    try:
        mkdocs_build(config)
    finally:
        config.plugins.on_shutdown()


FOREIGN = [
    ("docs_dir", "program", "is the programme's folder"),
    ("docs_dir", "program/plans", "lies in the programme's folder"),
    ("docs_dir", "linked", "is the programme's folder"),
    ("docs_dir", ".", "docs_dir"),
    ("docs_dir", "..", "docs_dir"),
    ("docs_dir", "docs", "holds handbook.md, which this tool did not write"),
    ("docs_dir", None, "'docs' holds handbook.md"),
    ("docs_dir", "history", "holds a git repository"),
    ("site_dir", "program", "is the programme's folder"),
    ("site_dir", "program/site", "lies in the programme's folder"),
    ("site_dir", "linked", "is the programme's folder"),
    ("site_dir", "linked/exercises", "lies in the programme's folder"),
    ("site_dir", ".", "site_dir"),
    ("site_dir", "..", "site_dir"),
    ("site_dir", "mkdocs.yml", "is not a folder"),
    ("site_dir", "linked-docs", "must be two folders"),
    ("site_dir", "linked-docs/site", "must be two folders"),
]
FOREIGN_SITES = [
    ("site_dir", "docs", "holds handbook.md, which this tool did not write"),
    ("site_dir", "public", "holds index.html, which this tool did not write"),
    ("site_dir", "history", "holds a git repository"),
]


@pytest.mark.parametrize("command", ["render", "build"])
@pytest.mark.parametrize(("line", "value", "why"), FOREIGN)
def test_a_folder_that_is_not_ours_is_refused(
    project: Path, command: str, line: str, value: str | None, why: str
) -> None:
    """The programme, what is around and in it, repositories and other people's files stay; the line is named."""
    setting(project, line, value)
    before = digests(project)
    result = setwright(project, command)

    assert result.exit_code == USAGE
    assert line in said(result)
    assert why in said(result)
    assert digests(project) == before


@pytest.mark.parametrize(("line", "value", "why"), FOREIGN_SITES)
def test_a_site_that_is_not_ours_is_refused(project: Path, line: str, value: str, why: str) -> None:
    """A build never replaces a folder that holds what it did not write."""
    setting(project, line, value)
    before = digests(project)
    result = setwright(project, "build")

    assert result.exit_code == USAGE
    assert f"change the line '{line}' in mkdocs.yml" in said(result)
    assert why in said(result)
    assert digests(project) == before


@pytest.mark.parametrize(
    ("line", "value", "why"), [row for row in FOREIGN if row[1] not in (".", "..")] + FOREIGN_SITES
)
def test_the_engines_own_command_refuses_it_too(
    project: Path, line: str, value: str | None, why: str, caplog: pytest.LogCaptureFixture
) -> None:
    """`mkdocs build` says the same in one sentence, and touches nothing."""
    setting(project, line, value)
    before = digests(project)

    with pytest.raises(Abort):
        plain_mkdocs(project)

    assert why in caplog.text
    assert digests(project) == before


def test_a_site_named_to_the_engines_command_is_looked_at(project: Path, caplog: pytest.LogCaptureFixture) -> None:
    """`mkdocs build --site-dir program` empties nothing either."""
    before = digests(project)

    with pytest.raises(Abort):
        plain_mkdocs(project, site_dir=str(project / "program"))

    assert "is the programme's folder" in caplog.text
    assert digests(project) == before


def test_a_folder_around_the_project_is_refused(tmp_path: Path) -> None:
    """The project's own folder, and any that holds it, is none to empty, wherever the tree is."""
    root, docs = tmp_path / "clubs" / "ours", tmp_path / "tree"
    for folder in (root / "program", docs):
        folder.mkdir(parents=True)

    for site in (root, root.parent, root / ".." / "ours"):
        with pytest.raises(ProjectError, match=r"'site_dir'.* holds the whole project"):
            folders.refuse_foreign(root, root / "program", docs, site)


@pytest.mark.parametrize(("line", "value"), [("docs_dir", "empty"), ("site_dir", "empty"), ("site_dir", "new/site")])
def test_an_empty_or_new_folder_is_taken(project: Path, line: str, value: str) -> None:
    """A club may put tree and site where it likes, if nothing is there yet; again and again."""
    setting(project, line, value)

    assert setwright(project, "build").exit_code == CLEAN
    assert setwright(project, "build").exit_code == CLEAN
    assert (project / value / ("index.html" if line == "site_dir" else "index.md")).is_file()


def test_a_site_behind_a_link_is_replaced_where_it_is(project: Path) -> None:
    """A link to the folder that a server shows stays a link, and the folder behind it has the new site."""
    shown = project.parent / "shown"
    shown.mkdir()
    (project / "site").symlink_to(shown)

    assert setwright(project, "build").exit_code == CLEAN
    assert setwright(project, "build").exit_code == CLEAN
    assert (project / "site").is_symlink()
    assert (shown / "index.html").is_file()
    assert [path.name for path in project.parent.glob(".setwright-*")] == []


def test_only_what_was_written_before_is_deleted(project: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A page that the programme no longer has goes from tree and site; what the coach put there stays."""
    assert setwright(project, "build").exit_code == CLEAN
    for name in ("docs_build/notes.md", "site/CNAME", "site/plans/map.png"):
        (project / name).write_text("the coach's own", "utf-8")
    (project / "site" / "shortcut").symlink_to("plans")
    miniature(monkeypatch, {name: raw for name, raw in PAGES.items() if name != "plans/regatta/index.md"})
    result = setwright(project, "build")

    assert result.exit_code == CLEAN, result.stderr
    assert not (project / "docs_build/plans/regatta").exists()
    assert not (project / "site/plans/regatta").exists()
    for name in ("docs_build/notes.md", "site/CNAME", "site/plans/map.png"):
        assert (project / name).read_text("utf-8") == "the coach's own"
    assert (project / "site" / "shortcut").readlink() == Path("plans")


@pytest.mark.parametrize("name", ["site/safety/index.html", "docs_build/safety/index.md"])
def test_nothing_of_the_coach_is_written_over(project: Path, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    """Where a new page would cover a file that the coach put into the tree or the site, the run stops and names it."""
    assert setwright(project, "build").exit_code == CLEAN
    (project / name).parent.mkdir(parents=True)
    (project / name).write_text("the coach's own", "utf-8")
    before = digests(project / "site")
    miniature(monkeypatch, {**PAGES, "safety/index.md": b"safety"})
    result = setwright(project, "build")

    assert result.exit_code == USAGE
    assert f"{project / name} was not written by this tool" in said(result)
    assert digests(project / "site") == before
    assert (project / name).read_text("utf-8") == "the coach's own"
    assert list(project.glob(".setwright-*")) == []


def test_no_page_is_written_through_a_link(project: Path) -> None:
    """A link in the tree that leads into the programme does not carry a page there."""
    assert setwright(project, "build").exit_code == CLEAN
    shutil.rmtree(project / "docs_build" / "plans")
    (project / "docs_build" / "plans").symlink_to("../program/plans")
    before = digests(project / "program")
    result = setwright(project, "render")

    assert result.exit_code == USAGE
    assert f"{project / 'docs_build' / 'plans'} is a link" in said(result)
    assert digests(project / "program") == before


def test_a_list_that_names_other_folders_deletes_nothing_there(project: Path) -> None:
    """A list is only believed about files of its own folder."""
    assert setwright(project, "build").exit_code == CLEAN
    names = {*PAGES, "../program/club.yml", str(project / "program/club.yml"), "README.md"}
    (project / "docs_build" / written.LIST).write_bytes(written.as_list(names))

    assert setwright(project, "build").exit_code == CLEAN
    assert (project / "program/club.yml").is_file()
    assert (project / "docs_build/README.md").is_file()


def test_what_an_earlier_version_wrote_is_known(project: Path) -> None:
    """Tree and site without a list are known by their worker: old pages go, what else is there stays."""
    for folder, page in (("docs_build", "index.md"), ("site", "index.html")):
        for name in (page, f"plans/old/{page}", "assets/old.css", "notes.txt"):
            (project / folder / name).parent.mkdir(parents=True, exist_ok=True)
            (project / folder / name).write_text("old", "utf-8")
        (project / folder / "service-worker.js").write_bytes(WORKER["service-worker.js"])
    result = setwright(project, "build")

    assert result.exit_code == CLEAN, result.stderr
    for folder, page in (("docs_build", "index.md"), ("site", "index.html")):
        assert not (project / folder / "plans/old").exists()
        assert not (project / folder / "assets/old.css").exists()
        assert (project / folder / page).read_text("utf-8") != "old"
        assert (project / folder / "notes.txt").read_text("utf-8") == "old"


@pytest.mark.parametrize("damaged", [b"", b"[]", b"{", b'{"files": 3}', b"[" * 100_000, b"\xff"])
def test_a_damaged_list_is_no_list(tmp_path: Path, damaged: bytes) -> None:
    """Then the folder is looked at as if it had none."""
    (tmp_path / written.LIST).write_bytes(damaged)

    assert written.listed(tmp_path) is None


def test_a_theme_folder_that_was_deleted_is_named_with_what_to_do(tmp_path: Path) -> None:
    """A coach who deleted everything below the tree is told which folder to make, in one sentence."""
    project = small_project(tmp_path / "club")
    shutil.rmtree(project / "docs_build")
    result = setwright(project, "build")

    assert result.exit_code == 2
    assert "make that folder, this tool fills it" in said(result)


ODD = [
    ("site_dir", '"si\\0te"', "change the line 'site_dir' in mkdocs.yml: 'si?te' is no folder's name"),
    ("docs_dir", '"si\\0te"', "docs_dir"),
    (
        "plugins",
        '[{setwright: {program: "a\\0b"}}]',
        "'program' in mkdocs.yml: 'a?b' is no folder's name",
    ),
    ("plugins", "[{setwright: {program: .}}]", "change the line 'program' in mkdocs.yml: '.' holds the whole project"),
    (
        "plugins",
        "[{setwright: {program: ..}}]",
        "'program' in mkdocs.yml: '..' holds the whole project",
    ),
    ("site_url", '"https://[::1"', "the site engine cannot read it: Invalid IPv6 URL"),
]


@pytest.mark.parametrize(("line", "value", "why"), ODD)
@pytest.mark.parametrize("command", ["render", "build"])
def test_a_setting_that_is_none_is_one_sentence(project: Path, command: str, line: str, value: str, why: str) -> None:
    """A slip in mkdocs.yml never shows the inside of the tool, and nothing is touched."""
    setting(project, line, value)
    before = digests(project)
    result = setwright(project, command)

    assert result.exit_code == USAGE
    assert why in said(result)
    assert digests(project) == before


def test_settings_that_inherit_from_themselves_are_one_sentence(project: Path) -> None:
    """They are read as deep as Python lets them, which is less deep here, since each time takes a while."""
    setting(project, "INHERIT", "mkdocs.yml")
    before, usual = digests(project), sys.getrecursionlimit()
    sys.setrecursionlimit(300)
    try:
        result = setwright(project, "build")
    finally:
        sys.setrecursionlimit(usual)

    assert result.exit_code == USAGE
    assert "the site engine cannot read it: maximum recursion depth exceeded" in said(result)
    assert digests(project) == before
