"""Windows in which pages are only looked at, and the site as another engine builds it."""

import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from support.shared import made_once

Look = Callable[..., Page]


@pytest.fixture(scope="session")
def look(browser: Browser, address: str) -> Iterator[Look]:
    """Opens a page of the site at a size, by day or by night: ``look("safety/", (390, 844), "dark")``.

    One window of a kind shows one page after another, since a new one takes longer than a page. So this is for tests
    that touch nothing and store nothing; the window keeps no copy of the site.
    """
    windows: dict[tuple[int, int, str], Page] = {}

    def look(path: str, size: tuple[int, int], scheme: str = "light") -> Page:
        width, height = size
        if (*size, scheme) not in windows:
            context = browser.new_context(
                viewport={"width": width, "height": height}, color_scheme=scheme, service_workers="block"
            )
            windows[*size, scheme] = context.new_page()
        page = windows[*size, scheme]
        page.goto(address + path)
        return page

    yield look
    for page in windows.values():
        page.context.close()


@pytest.fixture(scope="session")
def successor(project: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example site as the successor engine builds it from the same tree, once for all tests."""
    pytest.importorskip("zensical", reason="the successor engine cannot be installed here")

    def make(folder: Path) -> None:
        shutil.copytree(project, folder, ignore=lambda _, names: {"site", "handouts"} & set(names))
        words = [sys.executable, "-m", "zensical", "build", "--strict"]
        done = subprocess.run(words, cwd=folder, capture_output=True, text=True)
        assert done.returncode == 0, done.stdout + done.stderr

    return made_once(tmp_path_factory, "successor", make) / "site"
