"""A member's phone: a small screen that notes every request and every complaint of the browser."""

from collections.abc import Callable, Iterator, Set
from dataclasses import dataclass
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, CDPSession, Error, Page, Request

PHONE = {"width": 390, "height": 844}
USUAL_CLOCK = "/native code/.test(Function.prototype.toString.call(Date))"


@dataclass(frozen=True)
class Lent:
    """A phone's browser. Its first page stays blank: where none is open, the next takes as long as a new phone."""

    context: BrowserContext
    storage: CDPSession


def new_phone(browser: Browser) -> Lent:
    context = browser.new_context(viewport=PHONE, has_touch=True, service_workers="block")
    return Lent(context, context.new_cdp_session(context.new_page()))


@pytest.fixture(scope="session")
def spare(browser: Browser) -> Iterator[list[Lent]]:
    """Phones that a test has given back as they were."""
    spare: list[Lent] = []
    yield spare
    for lent in spare:
        lent.context.close()


@pytest.fixture
def context(browser: Browser, spare: list[Lent]) -> Iterator[BrowserContext]:
    """A phone's browser with nothing stored, without the copy of the site."""
    lent = spare.pop() if spare else new_phone(browser)
    hosts: set[str] = set()

    def note(request: Request) -> None:
        hosts.add("/".join(request.url.split("/")[:3]))

    lent.context.on("request", note)
    yield lent.context
    lent.context.remove_listener("request", note)
    if given_back(lent, hosts):
        spare.append(lent)
    else:
        lent.context.close()


def given_back(lent: Lent, hosts: Set[str]) -> bool:
    """Empty a phone, and return whether it is as new: a clock that was turned cannot be set right again."""
    _, *pages = lent.context.pages
    try:
        if not pages or not all(page.evaluate(USUAL_CLOCK) for page in pages):
            return False
    except Error:  # one that is just closing
        return False
    for page in pages:
        page.close()
    for host in hosts:
        if host.startswith("http"):
            lent.storage.send("Storage.clearDataForOrigin", {"origin": host, "storageTypes": "all"})
    lent.context.clear_cookies()
    lent.context.clear_permissions()
    return True


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
