"""The club's name comes from club.yml, escaped, whatever mkdocs.yml says and whichever engine builds."""

import html
import subprocess
import sys
from collections.abc import Callable
from html.parser import HTMLParser
from pathlib import Path

import pytest
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config

from setwright import publish
from support.small import setting, small_project

NAME = 'Reed & "Mere" Paddlers % #1'
SETTINGS = {
    "site_name": '\'Wrong " onclick="alert(1)"<script>alert(2)</script>\'',
    "site_description": '\'For " onclick="alert(3)"<script>alert(4)</script> all\'',
    "site_author": '\'By " onclick="alert(5)"<script>alert(6)</script> us\'',
}


class _Page(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.handlers: list[str] = []
        self.scripts: list[str] = []
        self.title = ""
        self.labels: set[str] = set()
        self.inside = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.inside = tag
        self.handlers += [name for name, _ in attrs if name.startswith("on")]
        if ("data-md-component", "logo") in attrs:
            self.labels |= {value or "" for name, value in attrs if name in ("title", "aria-label")}

    def handle_data(self, data: str) -> None:
        if self.inside == "title" and not self.title:
            self.title = data
        if self.inside == "script":
            self.scripts.append(data)


def _mkdocs(project: Path) -> None:
    config = load_config(config_file=str(project / "mkdocs.yml"))
    config.plugins["setwright"].config.generate = False
    mkdocs_build(config)


def _zensical(project: Path) -> None:
    pytest.importorskip("zensical", reason="the successor engine cannot be installed here")
    words = [sys.executable, "-m", "zensical", "build"]
    subprocess.run(words, cwd=project, check=True, capture_output=True)


@pytest.mark.parametrize("engine", [_mkdocs, _zensical])
def test_the_name_is_the_clubs_own_and_runs_nothing(tmp_path: Path, engine: Callable[[Path], None]) -> None:
    """Quotes and signs of the name are shown as written; those in mkdocs.yml reach no page as markup."""
    project = small_project(tmp_path / "club")
    club = project / "program" / "club.yml"
    text = club.read_text("utf-8").replace("name: Reedmere Paddlers", f"name: '{NAME}'", 1)
    club.write_text(text, "utf-8")
    for line, value in SETTINGS.items():
        setting(project, line, value)
    looked = publish.look(project / "program")
    assert looked.programme is not None, looked.findings
    assert looked.programme.club.name == NAME
    publish.write(looked, project / "docs_build", sheets="left out")
    engine(project)
    pages = sorted((project / "site").rglob("*.html"))

    assert len(pages) > 20
    for path in pages:
        page = _Page()
        page.feed(path.read_text("utf-8"))
        assert page.handlers == [], path
        assert not any("alert" in script for script in page.scripts), path
        assert html.unescape(page.title).endswith(NAME), path
        assert page.labels == {NAME}, path
