"""Windows in which pages are only looked at, and a project that is quick to build."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from support.shared import made_once
from support.site import build
from support.small import small_project

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
def small(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small good programme, built once for all tests; a test that changes something takes a copy."""
    return made_once(tmp_path_factory, "small", _build_small)


def _build_small(folder: Path) -> None:
    built = build(small_project(folder))
    assert built.site is not None, (built.looked.findings, built.broken)
