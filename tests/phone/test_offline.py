"""Without signal: the whole plan is there, a new one comes whole, and a page that is not kept says so.

The site lies in a sub-folder, as on a forge's pages.
"""

import functools
import http.server
import json
import os
import re
import shutil
import threading
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect
from playwright.sync_api import TimeoutError as TooLate

from setwright.outline.packaged import package_files
from setwright.phone import offline
from support.serving import Server

from .conftest import PHONE

WEEK = "plans/relay/week-09/"
SESSION = "plans/relay/week-07/friday/"


FIRST_PLAN = 1_700_000_000
"""When the first plan was published, in seconds."""
LONG_MS, SHORT_MS = 120_000, 300
"""How long the worker waits for a silent net: beyond any test where the net is to win, shorter where the copy is."""


class Host:
    """A web server with one club's site in a sub-folder, whose cable can be pulled, and which can fall silent."""

    def __init__(self, folder: Path) -> None:
        self.site = folder / "club"
        self.up = True
        self.published = 0
        self.held: Callable[[str], str] = lambda path: ""
        self.released, self.resume = threading.Event(), threading.Event()
        host = self

        class Handler(http.server.SimpleHTTPRequestHandler):
            def do_GET(self) -> None:
                self.held = host.held(self.path)
                if self.held == "before":
                    host.released.wait()
                if self.held == "until":
                    host.resume.wait()
                if host.up and not host.released.is_set():
                    super().do_GET()
                else:
                    self.close_connection = True

            def end_headers(self) -> None:
                super().end_headers()
                if self.held == "within":
                    self.wfile.flush()
                    host.released.wait()

            def log_message(self, *args: object) -> None:
                pass

        self.server = Server(("127.0.0.1", 0), functools.partial(Handler, directory=folder))
        threading.Thread(target=self.server.serve_forever, daemon=True).start()
        self.address = f"http://127.0.0.1:{self.server.server_port}/club/"

    def publish(self, changes: dict[str, tuple[str, str]], patience_ms: int = LONG_MS) -> None:
        """Publish a new version: replace words in files, and list all of them anew in one step."""
        for name, (old, new) in changes.items():
            file = self.site / name
            text = file.read_text("utf-8")
            assert old in text
            file.write_text(text.replace(old, new), "utf-8")
        source = dict(package_files("phone", "root"))[offline.WORKER].decode()
        assert source.count("PATIENCE_MS = 4000") == 1
        files = {path.relative_to(self.site).as_posix(): path for path in self.site.rglob("*") if path.is_file()}
        listed = {name: path.read_bytes() for name, path in files.items()}
        worker = offline.worker(source.replace("PATIENCE_MS = 4000", f"PATIENCE_MS = {patience_ms}"), listed)
        self.replace(worker.encode())

    def replace(self, worker: bytes) -> None:
        """Put another worker there: a browser that asks meanwhile gets one or the other, and never half of one."""
        self.published += 1
        following = self.site.parent / "next"
        following.write_bytes(worker)
        # This server tells one plan from the next by whole seconds, and a test publishes two within one.
        os.utime(following, (FIRST_PLAN + self.published, FIRST_PLAN + self.published))
        following.replace(self.site / offline.WORKER)

    def close(self) -> None:
        """Stop serving."""
        self.released.set()
        self.resume.set()
        self.server.shutdown()
        self.server.server_close()


@pytest.fixture
def host(site: Path, tmp_path: Path) -> Iterator[Host]:
    """The example site, published."""
    left_out = shutil.ignore_patterns("*.pdf", "*.map", "lunr")
    shutil.copytree(site, tmp_path / "club", ignore=left_out)
    host = Host(tmp_path)
    host.publish({})
    yield host
    host.close()


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
    page.locator(".sw-item summary").first.click()
    page.locator(".sw-item-page a").first.click()
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
        re.compile(r"This device keeps every page with its pictures: \d{3} pages and files, \d+\.\d MB, copied \d+ ")
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


KEPT = """async () => {
  const { active } = await navigator.serviceWorker.getRegistration();
  return await new Promise((resolve) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = ({ data }) => resolve(data);
    active.postMessage("what is kept", [channel.port2]);
  });
}"""
"""What the worker in charge says of its copy."""


UPDATE = "async () => { await (await navigator.serviceWorker.getRegistration()).update().catch(() => 0); }"
SETTLED = "async () => (await navigator.serviceWorker.getRegistration()).installing === null"


WAKING_MS = 20_000
"""How long a page may take before its worker counts as stuck."""


def all_asleep(member: BrowserContext) -> None:
    """End every worker, as closing the browser does.

    Seen twice in some hundred runs on busy machines: after a page was closed while workers changed, the next one waited
    for minutes. A tool that watches holds each worker at its start until it has looked at it; that it then stays held
    is a guess, and no member's browser holds one.
    """
    page = member.new_page()
    session = member.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.stopAllWorkers")
    page.close()


def renewed(member: BrowserContext, host: Host, old: str) -> Page:
    """Visit the home page until another copy than the old one is in charge, as a member's next visits do."""
    # The browser changes workers when the old one falls idle; a tool that watches the page may keep it awake. It need
    # not wait where no page is open.
    for _ in range(60):
        page = member.new_page()
        try:
            page.goto(host.address, timeout=WAKING_MS)
        except TooLate:
            all_asleep(member)
            page.close()
            continue
        copy = page.evaluate(KEPT)
        if copy and copy["build"] != old:
            assert copy["whole"]
            return page
        page.evaluate(UPDATE)
        page.wait_for_function(SETTLED)
        page.close()
    raise AssertionError("the old copy is still in charge")


def test_a_new_plan_comes_at_once_and_its_copy_follows(member: BrowserContext, host: Host) -> None:
    """Online the new page shows at the first visit; the copy is renewed behind it; offline all of it is new."""
    page = member.new_page()
    kept(page, host)
    (old,) = page.evaluate("caches.keys()")
    host.publish(NEW_PLAN)
    page.goto(host.address + WEEK)
    expect(page.locator("h1")).to_have_text("Week nine of Ready for the autumn relay")
    page.close()
    page = renewed(member, host, old)
    host.up = False
    page.goto(host.address + SESSION)

    expect(page.locator("article")).to_contain_text("Squat, then row")
    expect(page.get_by_role("button", name="Begin the guided session")).to_be_visible()


def test_a_file_of_the_same_time_is_told_from_the_old_one(member: BrowserContext, host: Host) -> None:
    """A server that knows files by their times calls a new file unchanged where a build gives all files one time."""
    page = member.new_page()
    kept(page, host)
    (old,) = page.evaluate("caches.keys()")
    times = {name: (host.site / name).stat().st_mtime for name in NEW_PLAN}
    host.publish(NEW_PLAN)
    for name, time in times.items():
        os.utime(host.site / name, (time, time))
    page.close()
    page = renewed(member, host, old)
    host.up = False
    page.goto(host.address + SESSION)

    expect(page.locator("article")).to_contain_text("Squat, then row")


ASKED = """async (address) => {
  window.got = undefined;
  window.got = await (await fetch(address)).text();
}"""
"""Asks for a file as a page's own script does, and notes what came."""


def asleep(member: BrowserContext, page: Page) -> None:
    """Put the worker in charge to sleep, as a browser does after some seconds without a touch; no other one."""
    session = member.new_cdp_session(page)
    versions: dict[str, str] = {}

    def note(told: dict[str, Any]) -> None:
        versions.update({one["versionId"]: one["status"] for one in told["versions"]})

    session.on("ServiceWorker.workerVersionUpdated", note)
    session.send("ServiceWorker.enable")
    while "activated" not in versions.values():
        page.evaluate("0")
    for version, status in versions.items():
        if status == "activated":
            session.send("ServiceWorker.stopWorker", {"versionId": version})
    session.detach()


@pytest.mark.parametrize("visit", ["first", "second"])
def test_a_silent_net_hangs_no_kept_file(member: BrowserContext, host: Host, visit: str) -> None:
    """The net accepts and never answers, and the worker was asleep: the search list comes from the copy."""
    host.publish({}, SHORT_MS)
    page = member.new_page()
    kept(page, host)
    if visit == "second":
        page.goto(host.address + WEEK)
        page.wait_for_load_state("networkidle")
    asleep(member, page)
    host.held = lambda path: "before"
    page.evaluate(f"address => {{ ({ASKED})(address); }}", f"{host.address}search/search_index.json")
    page.wait_for_function("window.got")

    assert json.loads(page.evaluate("window.got")).keys() >= {"docs"}


@pytest.mark.parametrize("where", ["before", "within"])
def test_a_silent_net_hangs_no_kept_page(member: BrowserContext, host: Host, where: str) -> None:
    """Silence before the answer, or after its first line: the copy is shown, its scripts and pictures too."""
    host.publish({}, SHORT_MS)
    page = member.new_page()
    kept(page, host)
    asleep(member, page)
    host.held = lambda path: where
    page.goto(host.address + SESSION, wait_until="commit")

    expect(page.get_by_role("button", name="Start the guided session")).to_be_visible()


def test_an_open_page_keeps_its_own_scripts(member: BrowserContext, host: Host) -> None:
    """A new copy takes over while a page is open: what that page still asks for comes from the plan that it shows."""
    script = "assets/js/elements/guide.js"
    page = member.new_page()
    kept(page, host)
    page.goto(host.address + SESSION)
    page.wait_for_load_state("networkidle")
    build = page.evaluate(KEPT)["build"]
    host.publish(NEW_PLAN)
    page.evaluate(UPDATE)
    page.wait_for_function(SETTLED)
    asleep(member, page)  # no event is under way any more, so that the new worker takes over
    page.wait_for_function(f"async (build) => (await ({KEPT})())?.build !== build", arg=build)
    page.evaluate(ASKED, host.address + script)
    assert '"Start the guided session"' in page.evaluate("window.got")

    other = member.new_page()
    other.goto(host.address + SESSION)
    expect(other.get_by_role("button", name="Begin the guided session")).to_be_visible()


def test_the_copy_before_goes_once_its_pages_are_closed(member: BrowserContext, host: Host) -> None:
    """One copy is left after the next visits, and not one for each plan there ever was."""
    page = member.new_page()
    kept(page, host)
    (old,) = page.evaluate("caches.keys()")
    page.goto(host.address + SESSION)
    host.publish(NEW_PLAN)
    page.close()
    page = renewed(member, host, old)
    # A page that is only just on its way counts as open for a minute: turn the notes' clock.
    page.evaluate(
        """async () => {
          for (const name of await caches.keys()) {
            const cache = await caches.open(name);
            for (const { url } of await cache.keys()) {
              if (!url.includes('/served-as/')) continue;
              const note = await (await cache.match(url)).json();
              await cache.put(url, new Response(JSON.stringify({ ...note, at: note.at - 3600_000 })));
            }
          }
        }"""
    )
    asleep(member, page)
    page.goto(host.address + WEEK)
    page.wait_for_function("async (old) => !(await caches.keys()).includes(old)", arg=old)

    assert page.evaluate("caches.keys()") == [page.evaluate(KEPT)["build"]]


def test_a_copy_that_is_being_made_is_left_alone(member: BrowserContext, host: Host) -> None:
    """Two plans in a row: the second one's copy is half made while the first one's takes over, and comes out whole."""
    page = member.new_page()
    kept(page, host)
    (old,) = page.evaluate("caches.keys()")
    host.publish(NEW_PLAN)
    page.evaluate(UPDATE)
    page.wait_for_function(SETTLED)
    host.held = lambda path: "until" if path.endswith("numbers/") else ""
    host.publish({"numbers/index.html": ("<article", "<article data-new")})
    page.evaluate(UPDATE)
    asleep(member, page)
    page.wait_for_function(f"async (old) => (await ({KEPT})())?.build !== old", arg=old)
    second = page.evaluate(KEPT)["build"]
    host.held = lambda path: ""
    host.resume.set()
    page.wait_for_function(SETTLED)
    page.close()
    page = renewed(member, host, second)

    assert page.evaluate(KEPT)["whole"]


def test_a_deleted_copy_stays_deleted(member: BrowserContext, host: Host) -> None:
    """What a page still asks for makes no empty copy that would look like one."""
    page = member.new_page()
    kept(page, host)
    page.evaluate("async () => { for (const name of await caches.keys()) await caches.delete(name); }")
    page.evaluate(ASKED, f"{host.address}search/search_index.json")
    page.goto(host.address + WEEK)
    page.wait_for_load_state("networkidle")

    assert page.evaluate("caches.keys()") == []


def test_an_open_page_says_that_there_is_a_newer_plan(member: BrowserContext, host: Host) -> None:
    """A line at the foot of the screen, and one touch shows the new plan."""
    page = member.new_page()
    kept(page, host)
    page.reload()
    host.publish(NEW_PLAN | {"index.html": ("How a session goes", "On this day")})
    page.evaluate(UPDATE)
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
    (old,) = page.evaluate("caches.keys()")
    host.publish(NEW_PLAN)
    # The list is the new one; one file that it names is already of the next plan.
    session = host.site / SESSION / "index.html"
    session.write_text(session.read_text("utf-8").replace("Squat, then row", "Half a plan"), "utf-8")
    page.evaluate(UPDATE)
    page.wait_for_function(SETTLED)
    assert page.evaluate(KEPT)["build"] == old
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
    host.replace(dict(package_files("phone", "root"))[offline.WORKER])
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
