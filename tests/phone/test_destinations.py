"""Getting about on a phone of 360 by 740: five destinations within the thumb's reach, and the menu in any order."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Page, expect

FIVE = {
    "Today": ("", "Tarnbeck Orienteers"),
    "Plan": ("plans/", "Plans"),
    "Exercises": ("exercises/", "Exercises"),
    "Log": ("log/", "My log"),
    "Settings": ("settings/", "My settings"),
}


@pytest.fixture
def small(phone: Page) -> Page:
    """A page in a small window."""
    phone.set_viewport_size({"width": 360, "height": 740})
    return phone


def test_five_destinations_are_one_tap_away(small: Page, address: str) -> None:
    """From deep in a plan: each is at the foot of the screen, 44 px each way, and leads there."""
    small.goto(f"{address}plans/relay/week-07/friday/")
    for name, (where, title) in FIVE.items():
        link = small.get_by_role("navigation", name="Main pages").get_by_role("link", name=name, exact=True)
        expect(link).to_be_in_viewport(ratio=1)
        box = link.bounding_box()
        assert box
        assert box["width"] >= 44
        assert box["height"] >= 44
        assert box["y"] > 740 / 2
        link.tap()
        expect(small).to_have_url(address + where)
        expect(small.get_by_role("heading", level=1)).to_have_text(title)
        expect(link).to_have_attribute("aria-current", "true" if name in ("Plan", "Exercises") else "page")


def test_the_rest_is_under_one_more(small: Page, address: str) -> None:
    """What members need now and then comes first; the coach's and the physiotherapist's pages stand apart."""
    small.goto(address)
    small.get_by_role("navigation", name="Main pages").get_by_role("link", name="More").tap()
    expect(small.get_by_role("heading", name="For the coach and the physiotherapist")).to_be_visible()
    links = small.locator("article .sw-tiles a").evaluate_all(
        "all => all.map(one => [one.closest('ul').previousElementSibling.id, one.querySelector('strong').textContent])"
    )

    assert [name for part, name in links if part == "coach"] == [
        "Review",
        "Weekly load",
        "Checks",
        "Data",
        "Figures",
    ]
    assert {"Warm-ups", "Cool-downs", "Find", "Safety"} <= {name for part, name in links if part == "training"}


def search_first(page: Page) -> None:
    page.wait_for_load_state("networkidle")
    page.locator("label.md-header__button[for=__search]").tap()
    page.get_by_role("textbox", name="Search").press_sequentially("squat")
    page.locator(".md-search-result__link").first.wait_for()
    page.get_by_role("button", name="Clear").click()
    page.keyboard.press("Escape")


def back_first(page: Page) -> None:
    page.get_by_role("navigation", name="Main pages").get_by_role("link", name="Log").tap()
    page.wait_for_url("**/log/")
    page.go_back()


def hash_first(page: Page) -> None:
    page.evaluate("location.hash = 'stop-if'")
    expect(page.locator("#stop-if")).to_be_in_viewport()


@pytest.mark.parametrize("before", [search_first, back_first, hash_first])
def test_the_menu_opens_whatever_came_before(small: Page, address: str, before: Callable[[Page], None]) -> None:
    """After a search, after going back, after a jump within the page: menu, Plans, and there."""
    small.goto(f"{address}plans/relay/week-07/friday/")
    before(small)
    small.locator("label.md-header__button[for=__drawer]").tap()
    small.locator(".md-sidebar--primary").get_by_role("link", name="Plans", exact=True).tap()
    expect(small).to_have_url(f"{address}plans/")


def test_the_menu_has_the_coachs_pages_behind_a_tap(small: Page, address: str) -> None:
    """Menu, the coach's and physiotherapist's part, Review."""
    small.goto(address)
    menu = small.locator(".md-sidebar--primary")
    expect(menu.get_by_role("link", name="Review")).to_be_hidden()
    small.locator("label.md-header__button[for=__drawer]").tap()
    menu.get_by_text("Coach and physiotherapist").first.tap()
    menu.get_by_role("link", name="Review").tap()
    expect(small).to_have_url(f"{address}review/")


@pytest.mark.parametrize("where", ["", "plans/relay/week-07/friday/", "settings/"])
def test_what_has_the_focus_is_never_covered(small: Page, address: str, where: str) -> None:
    """Tab by tab down a page: neither the header nor the bar at the foot lies over it (WCAG 2.2, 2.4.11)."""
    small.goto(address + where)
    covered = """() => {
      const one = document.activeElement;
      if (!one || one === document.body || one.closest('.md-header, .sw-destinations, .md-skip')) return '';
      const { top, bottom, left, right } = one.getBoundingClientRect();
      const head = document.querySelector('.md-header').getBoundingClientRect().bottom;
      const foot = document.querySelector('.sw-destinations').getBoundingClientRect().top;
      const tall = bottom - top > foot - head;
      return !tall && (top < head - 1 || bottom > foot + 1) ? `${one.outerHTML.slice(0, 90)} ${top} ${bottom}` : '';
    }"""
    found = []
    for key in ["Tab"] * 40 + ["Shift+Tab"] * 20:
        small.keyboard.press(key)
        found.append(small.evaluate(covered))

    assert [one for one in found if one] == []
