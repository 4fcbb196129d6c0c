"""Without signal: what is said is true, what costs money is asked, and a half-published site shows the copy."""

import shutil

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from .test_offline import SESSION, WEEK, Host, host, kept, member

__all__ = ["host", "member"]

METERED = "Object.defineProperty(navigator, 'connection', {value: {type: 'cellular', saveData: false}})"
FREE = "Object.defineProperty(navigator, 'connection', {value: {type: 'wifi', saveData: false}})"
SAVING = "Object.defineProperty(navigator, 'connection', {value: {saveData: true}})"
COPIES = "async () => (await caches.keys()).length"


def test_a_sheet_is_said_not_to_be_kept(member: BrowserContext, host: Host) -> None:
    """A PDF is published, and not in the copy: the page says that, and nothing of a newer plan."""
    page = member.new_page()
    kept(page, host)
    host.up = False
    page.goto(f"{host.address}offline/?page={host.address}handouts/relay.pdf")
    expect(page.locator("sw-offline")).to_contain_text("PDF sheets are not in the copy.")
    expect(page.locator("sw-offline")).not_to_contain_text("not published")


@pytest.mark.parametrize("address", [WEEK.rstrip("/"), SESSION.rstrip("/"), "log"])
def test_an_address_without_its_slash_finds_its_page(member: BrowserContext, host: Host, address: str) -> None:
    """As people type it, and as some links have it."""
    page = member.new_page()
    kept(page, host)
    host.up = False
    page.goto(host.address + address)
    expect(page).to_have_url(f"{host.address}{address}/")
    expect(page.get_by_role("heading", level=1)).to_be_visible()


@pytest.mark.parametrize("tells", [METERED, SAVING])
def test_on_mobile_data_the_copy_is_asked_for(member: BrowserContext, host: Host, tells: str) -> None:
    """Nothing is loaded before the member says so; then it is."""
    page = member.new_page()
    page.add_init_script(tells)
    page.goto(host.address)
    page.mouse.click(5, 400)
    page.get_by_role("button", name="Keep them").wait_for()
    assert page.evaluate("async () => (await navigator.serviceWorker.getRegistrations()).length") == 0
    page.get_by_role("button", name="Keep them").click()
    page.wait_for_function("navigator.serviceWorker.controller !== null")


def test_who_says_not_now_is_not_asked_again_and_keeps_none(member: BrowserContext, host: Host) -> None:
    """Until there is a connection that costs nothing."""
    page = member.new_page()
    page.add_init_script(METERED)
    page.goto(host.address)
    page.mouse.click(5, 400)
    page.get_by_role("button", name="Not now").click()
    page.reload()
    page.mouse.click(5, 400)
    page.wait_for_timeout(500)
    expect(page.get_by_role("button", name="Keep them")).to_have_count(0)
    assert page.evaluate("async () => (await navigator.serviceWorker.getRegistrations()).length") == 0
    free = member.new_page()
    free.add_init_script(FREE)
    kept(free, host)


def read(page: Page, host: Host) -> None:
    """The session is there whole, with what its scripts make of it."""
    page.goto(host.address + SESSION)
    expect(page.get_by_role("button", name="Start the guided session")).to_be_visible()
    expect(page.locator("article")).to_contain_text("Squat and row")


def test_a_server_that_knows_no_page_shows_the_copy(member: BrowserContext, host: Host) -> None:
    """404 for all, as hosts answer while they are set up anew: what the phone has is more than that."""
    page = member.new_page()
    kept(page, host)
    worker = (host.site / "service-worker.js").read_bytes()
    shutil.rmtree(host.site)
    host.site.mkdir()
    (host.site / "service-worker.js").write_bytes(worker)
    read(page, host)


def test_a_new_page_without_its_script_shows_the_copy(member: BrowserContext, host: Host) -> None:
    """Half way through a new plan: the page is there, what runs it is not."""
    page = member.new_page()
    kept(page, host)
    session = host.site / SESSION / "index.html"
    session.write_text(session.read_text("utf-8").replace("Squat and row", "Squat, then row"), "utf-8")
    shutil.rmtree(host.site / "assets" / "js")
    read(page, host)
