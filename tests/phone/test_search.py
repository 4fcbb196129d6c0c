"""What a member finds by searching: members' pages first, and no boxes that are there to write in."""

import json
from pathlib import Path

import pytest
from playwright.sync_api import Page

COACHS = ("checks/", "review/", "weekly-load/", "figures/", "numbers/", "sources/")


@pytest.mark.parametrize("word", ["rest", "load", "sets", "squat", "weight"])
def test_members_pages_come_first(phone: Page, address: str, word: str) -> None:
    """The first page that a search finds is one to train with, whatever the coach's pages say of the word."""
    phone.set_viewport_size({"width": 360, "height": 740})
    phone.goto(address)
    phone.wait_for_load_state("networkidle")
    phone.locator("label.md-header__button[for=__search]").tap()
    phone.get_by_role("textbox", name="Search").press_sequentially(word)
    phone.locator(".md-search-result__link").first.wait_for()
    found = phone.locator(".md-search-result__link").evaluate_all("all => all.map(one => one.href)")
    kinds = [href.removeprefix(address).startswith(COACHS) for href in found]

    assert kinds[0] is False
    assert kinds[:3].count(True) == 0


def test_boxes_to_write_in_are_not_found(site: Path) -> None:
    """They stand on the page for paper; nobody looks for "repskgeffort"."""
    index = json.loads((site / "search" / "search_index.json").read_text("utf-8"))

    assert [one["location"] for one in index["docs"] if "repskg" in one["text"].replace(" ", "")] == []
