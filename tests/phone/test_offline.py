"""Without signal: the whole plan is there, a new one comes whole, and a page that is not kept says so.

The site lies in a sub-folder, as on a forge's pages.
"""

import functools
import http.server
import re
import shutil
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from setwright.outline.packaged import package_files
from setwright.phone import offline
from support.serving import Server

from .conftest import PHONE

WEEK = "plans/relay/week-09/"
SESSION = "plans/relay/week-07/friday/"


class Host:
    """A web server with one club's site in a sub-folder, whose cable can be pulled."""

    def __init__(self, folder: Path) -> None:
        self.site = folder / "club"
        self.up = True
        host = self

        class Handler(http.server.SimpleHTTPRequestHandler):
            def do_GET(self) -> None:
                if host.up:
                    super().do_GET()
                else:
                    self.close_connection = True

            def log_message(self, *args: object) -> None:
                pass

        self.server = Server(("127.0.0.1", 0), functools.partial(Handler, directory=folder))
        threading.Thread(target=self.server.serve_forever, daemon=True).start()
        self.address = f"http://127.0.0.1:{self.server.server_port}/club/"

    def publish(self, changes: dict[str, tuple[str, str]]) -> None:
        """Publish a new version: replace words in files, and list all of them anew."""
        for name, (old, new) in changes.items():
            file = self.site / name
            text = file.read_text("utf-8")
            assert old in text
            file.write_text(text.replace(old, new), "utf-8")
        (self.site / offline.WORKER).write_bytes(dict(package_files("phone", "root"))[offline.WORKER])
        offline.finish(self.site)


@pytest.fixture
def host(site: Path, tmp_path: Path) -> Iterator[Host]:
    """The example site, published."""
    left_out = shutil.ignore_patterns("*.pdf", "*.map", "lunr")
    shutil.copytree(site, tmp_path / "club", ignore=left_out)
    host = Host(tmp_path)
    yield host
    host.server.shutdown()
    host.server.server_close()


@pytest.fixture
def member(browser: Browser) -> Iterator[BrowserContext]:
    """A phone that may keep a copy. No request may leave the club's own address."""
    context = browser.new_context(viewport=PHONE)
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    yield context
    context.close()

    assert [url for url in asked if not url.startswith("http://127.0.0.1:")] == []


def kept(page: Page, host: Host) -> None:
    """Visit the home page and wait until the copy is made."""
    page.goto(host.address)
    page.wait_for_load_state("networkidle")
    page.mouse.click(5, 400)
    page.wait_for_function("navigator.serviceWorker.controller !== null")


def test_the_whole_plan_is_there_without_signal(member: BrowserContext, host: Host) -> None:
    """After one visit to the home page: a week, its session with the member's own weight, and its exercises."""
    page = member.new_page()
    kept(page, host)
    host.up = False
    page.goto(host.address + WEEK)
    expect(page.locator("h1")).to_have_text("Week 9 of Ready for the autumn relay")
    page.get_by_role("link", name="Open the session").first.click()
    expect(page.get_by_role("button", name="Start the guided session")).to_be_visible()
    page.locator(".sw-item-name a").first.click()
    expect(page.get_by_role("heading", name="How to do it")).to_be_visible()
    page.goto(f"{host.address}settings/")
    expect(page.get_by_label("Weight", exact=True)).to_be_visible()
    widths = page.evaluate("[...document.images].map(image => image.naturalWidth)")
    assert 0 not in widths


def test_the_page_says_what_is_kept(member: BrowserContext, host: Host) -> None:
    """How many files, how heavy, and since when."""
    page = member.new_page()
    kept(page, host)
    page.goto(f"{host.address}offline/")

    expect(page.locator("sw-offline .sw-lead")).to_contain_text(
        re.compile(r"This device keeps all of it: \d{3} pages and files, \d+\.\d MB, copied \d+ ")
    )


def test_a_page_that_is_not_published_says_so(member: BrowserContext, host: Host) -> None:
    """Offline, an address that no copy holds leads to the page that explains, and not to the browser's own error."""
    page = member.new_page()
    kept(page, host)
    host.up = False
    page.goto(f"{host.address}plans/relay/week-99/")

    expect(page.locator("sw-offline")).to_contain_text("that page is not published, or it is newer than the copy")
    expect(page.locator("sw-offline")).to_contain_text("plans/relay/week-99/")
    host.up = True
    answer = page.goto(f"{host.address}plans/relay/week-99/")
    assert answer is not None
    assert answer.status == 404


NEW_PLAN = {
    f"{WEEK}index.html": ("Week 9 of Ready", "Week nine of Ready"),
    f"{SESSION}index.html": ("Squat and row", "Squat, then row"),
    "assets/js/elements/guide.js": ('"Start the guided session"', '"Begin the guided session"'),
}


RENEWED = """async (old) => {
  await (await navigator.serviceWorker.getRegistration()).update().catch(() => 0);
  const names = await caches.keys();
  return names.length === 1 && names[0] !== old;
}"""
"""Whether only the new copy is there. Asks again, as each visit does: a copy that failed halfway leaves the old one."""


def test_a_new_plan_comes_at_once_and_its_copy_follows(member: BrowserContext, host: Host) -> None:
    """Online the new page shows at the first visit; the copy is renewed behind it; offline all of it is new."""
    page = member.new_page()
    kept(page, host)
    (old,) = page.evaluate("caches.keys()")
    host.publish(NEW_PLAN)
    page.goto(host.address + WEEK)
    expect(page.locator("h1")).to_have_text("Week nine of Ready for the autumn relay")
    page.wait_for_function("async () => (await caches.keys()).length > 1")
    page.wait_for_function("async () => (await navigator.serviceWorker.getRegistration()).installing === null")
    page.close()  # a phone's browser may wait for the old worker to fall idle; without an open page it need not
    page = member.new_page()
    page.goto(host.address)
    page.wait_for_function(RENEWED, arg=old, polling=300)
    host.up = False
    page.goto(host.address + SESSION)

    expect(page.locator("article")).to_contain_text("Squat, then row")
    expect(page.get_by_role("button", name="Begin the guided session")).to_be_visible()


def test_an_open_page_says_that_there_is_a_newer_plan(member: BrowserContext, host: Host) -> None:
    """A line at the foot of the screen, and one touch shows the new plan."""
    page = member.new_page()
    kept(page, host)
    page.reload()
    host.publish(NEW_PLAN | {"index.html": ("Today", "On this day")})
    page.evaluate("async () => { await (await navigator.serviceWorker.getRegistration()).update(); }")
    # The browser changes workers when the old one falls idle; a tool that watches the page may keep it awake.
    page.wait_for_function("async () => (await caches.keys()).length > 1")
    page.evaluate("navigator.serviceWorker.dispatchEvent(new Event('controllerchange'))")
    with page.expect_navigation():
        page.get_by_role("button", name="Show it").click()

    expect(page.locator("article")).to_contain_text("On this day")


def test_old_and_new_are_never_mixed(member: BrowserContext, host: Host) -> None:
    """A server half way through a new plan: what is kept stays the old plan, page and script alike."""
    page = member.new_page()
    kept(page, host)
    host.publish({"assets/js/elements/guide.js": ('"Start the guided session"', '"Begin the guided session"')})
    # The list is the new one; one file behind it is already of the next plan.
    session = host.site / SESSION / "index.html"
    session.write_text(session.read_text("utf-8").replace("Squat and row", "Half a plan"), "utf-8")
    page.evaluate("async () => { await (await navigator.serviceWorker.getRegistration()).update().catch(() => 0); }")
    page.wait_for_function("async () => (await navigator.serviceWorker.getRegistration()).installing === null")
    host.up = False
    page.goto(host.address + SESSION)

    expect(page.locator("article")).to_contain_text("Squat and row")
    expect(page.get_by_role("button", name="Start the guided session")).to_be_visible()


def test_the_copy_can_be_deleted_and_made_again(member: BrowserContext, host: Host) -> None:
    """Deleting unregisters the worker and keeps none; settings and log stay."""
    page = member.new_page()
    kept(page, host)
    page.goto(f"{host.address}offline/")
    page.evaluate("localStorage.setItem('setwright:/club/:settings', '{}')")
    page.get_by_role("button", name="Delete the copy").click()
    page.get_by_text("Deleted.").wait_for()
    page.reload()

    assert page.evaluate("caches.keys()") == []
    assert page.evaluate("async () => (await navigator.serviceWorker.getRegistrations()).length") == 0
    assert page.evaluate("localStorage.getItem('setwright:/club/:settings')") == "{}"
    page.get_by_role("button", name="Keep a copy again").click()
    page.wait_for_function("navigator.serviceWorker.controller !== null")


def test_without_a_list_what_was_opened_is_kept(member: BrowserContext, host: Host) -> None:
    """An engine that runs no plugin leaves the list empty: then visited pages are kept, and others say so."""
    (host.site / offline.WORKER).write_bytes(dict(package_files("phone", "root"))[offline.WORKER])
    page = member.new_page()
    kept(page, host)
    for address in (f"{host.address}offline/", host.address + WEEK):
        page.goto(address)
        page.wait_for_load_state("networkidle")
    host.up = False
    page.goto(host.address + WEEK)
    expect(page.locator("h1")).to_have_text("Week 9 of Ready for the autumn relay")
    page.goto(host.address + SESSION)

    expect(page.locator("sw-offline")).to_contain_text("keeps the pages that you opened before")


def test_the_home_screen_takes_the_site(member: BrowserContext, host: Host) -> None:
    """The manifest is found from any page, and its addresses lie below it (W3C Web Application Manifest)."""
    page = member.new_page()
    page.goto(host.address + SESSION)
    manifest = page.evaluate(
        "async () => { const link = document.querySelector('link[rel=manifest]').href;"
        " const found = await (await fetch(link)).json();"
        " const sizes = await Promise.all(found.icons.map(async icon => {"
        "  const bitmap = await createImageBitmap(await (await fetch(new URL(icon.src, link))).blob());"
        "  return `${bitmap.width}x${bitmap.height}`; }));"
        " return {...found, link, drawn: sizes}; }"
    )

    assert manifest["link"] == f"{host.address}manifest.webmanifest"
    assert (manifest["start_url"], manifest["scope"], manifest["display"]) == ("./", "./", "standalone")
    assert manifest["drawn"] == [icon["sizes"] for icon in manifest["icons"]] == ["192x192", "512x512", "512x512"]
    assert {icon["purpose"] for icon in manifest["icons"]} == {"any", "maskable"}
