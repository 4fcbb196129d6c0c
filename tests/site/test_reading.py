"""What a member meets on a phone: no sideways scrolling, no foreign request, and what stands there without a script."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from support.amount import some
from support.site import KINDS

from .conftest import Look


@pytest.fixture
def phone(browser: Browser) -> Iterator[Page]:
    """A page on a phone that notes every request and every complaint of the browser."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    yield page
    context.close()


@pytest.mark.parametrize("kind", KINDS)
def test_no_page_scrolls_sideways_at_320_pixels(look: Look, kind: str) -> None:
    """Content reflows at a width of 320 CSS pixels (WCAG 2.2, 1.4.10)."""
    page = look(KINDS[kind], (320, 640))

    assert page.evaluate("document.documentElement.scrollWidth") == 320


@pytest.mark.parametrize("kind", some(KINDS, 4))
def test_nothing_is_asked_from_another_host(phone: Page, address: str, kind: str) -> None:
    """A page makes no request to another host and the browser has nothing to complain about."""
    asked: list[str] = []
    complaints: list[str] = []
    phone.on("request", lambda request: asked.append(request.url))
    phone.on("console", lambda message: complaints.append(message.text) if message.type == "error" else None)
    phone.on("pageerror", lambda error: complaints.append(str(error)))
    phone.goto(address + KINDS[kind])
    phone.wait_for_load_state("networkidle")

    assert [url for url in asked if not url.startswith(address)] == []
    assert complaints == []


@pytest.mark.parametrize("width", [360, 1000])
@pytest.mark.parametrize("kind", ["home", "session"])
def test_the_menu_leads_to_the_plans(browser: Browser, address: str, kind: str, width: int) -> None:
    """Where the tabs have no room, a tap on the menu shows it, and a tap on Plans goes there."""
    context = browser.new_context(viewport={"width": width, "height": 740}, service_workers="block")
    page = context.new_page()
    page.goto(address + KINDS[kind])
    page.locator("label.md-header__button[for=__drawer]").click()
    page.locator(".md-sidebar--primary").get_by_role("link", name="Plans", exact=True).click()
    page.wait_for_url(f"{address}plans/")
    heading = page.get_by_role("heading", level=1).inner_text()
    context.close()

    assert heading == "Plans"


def test_a_session_is_complete_without_javascript(browser: Browser, address: str) -> None:
    """Doses, load bands, rests, cues and the way back are text on the page, script or not."""
    context = browser.new_context(viewport={"width": 390, "height": 844}, java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{address}plans/relay/week-07/friday/")
    text = page.locator("article").text_content() or ""
    context.close()

    for part in ("reps", "% of body weight", "kg", "Rest", "Too hard?", "At home", "Warm-up", "Cool-down", "Stop if"):
        assert part in text
