"""A preview builds what changed, and shows at any moment what a whole build would show."""

import json
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.config.defaults import MkDocsConfig

pytestmark = pytest.mark.filterwarnings("ignore:user_configs is never used:DeprecationWarning")
URL = "http://127.0.0.1:8000/"


class Preview:
    """The engine as `setwright preview` runs it, without its server."""

    def __init__(self, project: Path, site: Path, dirty: bool) -> None:
        self.project, self.site, self.dirty = project, site, dirty
        self.config = self._read()
        self.config.plugins.on_startup(command="serve", dirty=dirty)

    def _read(self) -> MkDocsConfig:
        config = load_config(config_file=str(self.project / "mkdocs.yml"), site_dir=str(self.site))
        config.site_url = URL
        return config

    def look(self) -> set[str]:
        """Build once more, and return the pages that were built."""
        for page in self.site.rglob("*.html"):
            page.touch()
        before = {page: page.stat().st_mtime_ns for page in self.site.rglob("*.html")}
        build(self._read(), serve_url=URL, dirty=self.dirty)
        now = {page: page.stat().st_mtime_ns for page in self.site.rglob("*.html")}
        built = {page.relative_to(self.site).as_posix() for page in now if now[page] != before.get(page)}
        return built - {"404.html"}  # no page of the tree: the theme writes it each time

    def pages(self) -> dict[str, str]:
        """Return every page's text."""
        return {p.relative_to(self.site).as_posix(): p.read_text("utf-8") for p in self.site.rglob("*.html")}

    def found(self) -> set[tuple[str, str]]:
        """Return what the search knows: addresses and titles."""
        index = json.loads((self.site / "search" / "search_index.json").read_bytes())
        return {(entry["location"], entry["title"]) for entry in index["docs"]}


@pytest.fixture
def preview(small: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Preview]:
    """A preview of a small project that has been looked at once."""
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "315532800")
    project = Path(shutil.copytree(small, tmp_path / "club"))
    preview = Preview(project, tmp_path / "seen", dirty=True)
    preview.look()
    yield preview
    preview.config.plugins.on_shutdown()


def whole(preview: Preview) -> Preview:
    """Return what a preview from the beginning shows."""
    fresh = Preview(preview.project, preview.project.parent / "whole", dirty=False)
    fresh.look()
    return fresh


def edit(preview: Preview, name: str, old: str, new: str) -> None:
    path = preview.project / name
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")


def test_a_changed_sentence_builds_the_pages_that_show_it(preview: Preview) -> None:
    """A new name of an exercise: its page and those that name it, not the page of safety; all as in a whole build."""
    edit(preview, "program/exercises/row.yml", "name: Row with a band", "name: Zebra row")
    built = preview.look()
    fresh = whole(preview)

    assert "exercises/row/index.html" in built
    assert "safety/index.html" not in built
    assert len(built) < len(preview.pages()) / 2
    assert preview.pages() == fresh.pages()
    assert preview.found() == fresh.found()


@pytest.mark.parametrize(
    ("name", "old", "new"),
    [
        ("program/club.yml", "name: Reedmere Paddlers", "name: Heron Paddlers"),
        ("mkdocs.yml", "site_description: Strength for the terrain", "site_description: For the water"),
    ],
    ids=["club", "settings"],
)
def test_what_stands_on_every_page_builds_them_all(preview: Preview, name: str, old: str, new: str) -> None:
    """The club's name in the header, and the engine's settings."""
    edit(preview, name, old, new)

    assert preview.look() == set(preview.pages()) - {"404.html"}
    assert preview.pages() == whole(preview).pages()


def test_a_page_that_is_gone_is_gone(preview: Preview) -> None:
    """A plan under another name: no page of the old one is left to be found."""
    (preview.project / "program/plans/regatta.yml").rename(preview.project / "program/plans/only.yml")
    preview.look()
    fresh = whole(preview)

    assert not (preview.site / "plans/regatta").exists()
    assert preview.pages() == fresh.pages()


def test_nothing_changed_builds_nothing(preview: Preview) -> None:
    """A file that was saved without an edit costs no page."""
    assert preview.look() == set()
