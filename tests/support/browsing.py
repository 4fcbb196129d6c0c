"""Fixtures for all tests with a browser: the example site, built once and served on this machine, and Chromium."""

import os
import shutil
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Error, Page, expect, sync_playwright

from support.serving import served
from support.shared import made_once
from support.site import build, copy_project
from support.small import small_project

CHROMIUM = os.environ.get("SETWRIGHT_CHROMIUM") or shutil.which("chromium") or shutil.which("chromium-browser")
FLAGS = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
PATIENCE_MS = 180_000
"""How long to wait for what a page must come to: a busy machine is no finding."""

expect.set_options(timeout=PATIENCE_MS)


def missing(what: str) -> None:
    """Skip for want of a tool on a contributor's machine; fail for want of it in continuous integration."""
    if os.environ.get("CI"):
        pytest.fail(f"{what} is missing here, and continuous integration must have it")
    pytest.skip(f"{what} is not installed")


@pytest.fixture(scope="session")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example project, built once for all tests; a test that changes something takes a copy."""
    return made_once(tmp_path_factory, "example", _build_example)


def _build_example(folder: Path) -> None:
    built = build(copy_project(folder))
    assert built.site is not None, (built.looked.findings, built.broken)


@pytest.fixture(scope="session")
def small(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small good programme, built once for all tests; a test that changes something takes a copy."""
    return made_once(tmp_path_factory, "small", _build_small)


def _build_small(folder: Path) -> None:
    built = build(small_project(folder))
    assert built.site is not None, (built.looked.findings, built.broken)


@pytest.fixture(scope="session")
def site(project: Path) -> Path:
    """The built site of the example."""
    return project / "site"


@pytest.fixture(scope="session")
def address(site: Path) -> Iterator[str]:
    """Where the built site is served."""
    with served(site) as address:
        yield address


REFUSED: list[str] = []
"""What the pages' own policy refused since the last test."""

WATCH = """addEventListener("securitypolicyviolation", (event) => {
  setwrightRefused(`${location.pathname}: ${event.effectiveDirective} refuses ${event.blockedURI} ${event.sourceFile}`);
});"""


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """The system's Chromium. Every page in it tells what its policy refuses."""
    if CHROMIUM is None:
        missing("Chromium")
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        plain = chromium.new_context

        def watched(**options: Any) -> BrowserContext:
            context = plain(**options)
            context.set_default_timeout(PATIENCE_MS)
            context.expose_binding("setwrightRefused", lambda source, what: REFUSED.append(what))
            context.add_init_script(WATCH)
            return context

        chromium.new_context = watched  # type: ignore[method-assign]
        Page.wait_for_function = until  # type: ignore[assignment]
        yield chromium
        chromium.close()


def until(page: Page, line: str, *, arg: object = None, timeout: float = PATIENCE_MS, polling: float = 50) -> None:
    """Wait until a line of JavaScript holds, asking from outside: Playwright's own way is eval, which pages refuse."""
    deadline = time.monotonic() + timeout / 1000
    while time.monotonic() < deadline:
        try:
            if page.evaluate(line, arg):
                return
        except Error as error:
            if "context was destroyed" not in str(error):  # the page is on its way to another one
                raise
        page.wait_for_timeout(polling)
    pytest.fail(f"never came true: {line}")


@pytest.fixture(autouse=True)
def nothing_refused() -> Iterator[None]:
    """No test with a browser may meet something that the policy of a page refuses."""
    REFUSED.clear()
    yield
    assert REFUSED == []
