"""A member's phone: a small screen that notes every request and every complaint of the browser."""

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page

PHONE = {"width": 390, "height": 844}


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A phone's browser with nothing stored, without the copy of the site."""
    context = browser.new_context(viewport=PHONE, has_touch=True, service_workers="block")
    yield context
    context.close()


@pytest.fixture
def phone(context: BrowserContext, address: str) -> Iterator[Page]:
    """A page on the phone. No request may leave for another host, and the browser may complain of nothing."""
    page = context.new_page()
    asked: list[str] = []
    complaints: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    page.on("pageerror", lambda error: complaints.append(str(error)))
    yield page

    assert [url for url in asked if not url.startswith((address, "blob:", "data:"))] == []
    assert complaints == []


@pytest.fixture(scope="session")
def run(browser: Browser, address: str) -> Iterator[Callable[..., Any]]:
    """Runs a line of JavaScript with the site's logic modules: ``run("bands", "m => m.rows(given)", given)``."""
    context = browser.new_context(viewport=PHONE, service_workers="block")
    page = context.new_page()
    page.goto(f"{address}safety/")

    def call(module: str, line: str, given: object = None) -> Any:
        code = f"async given => ({line})(await import('{address}assets/js/logic/{module}.js'))"
        return page.evaluate(code, given)

    yield call
    context.close()
