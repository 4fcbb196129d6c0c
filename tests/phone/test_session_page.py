"""The session's page: all of it at a glance, one card an exercise, the rest folded, and the weight asked once."""

import re

import pytest
from playwright.sync_api import Page, expect

from setwright.dose.resolve import resolve
from setwright.model.programme import Programme

from .conftest import PHONE

SESSION = "plans/relay/week-07/friday/"
SMALL = {"width": 360, "height": 740}


def test_the_weight_is_asked_once_in_place_and_shown_everywhere(phone: Page, address: str) -> None:
    """Typed above the glance, it stands in the glance, in every card, and in the settings."""
    phone.goto(address + SESSION)
    field = phone.get_by_label("Your body weight")
    field.fill("6800")
    phone.get_by_role("button", name="Show my weights").click()
    expect(phone.locator("sw-own-weight")).to_contain_text("from 20 to 300 kg")
    field.fill("68,0")
    phone.get_by_role("button", name="Show my weights").click()
    expect(phone.locator("sw-own-weight")).to_contain_text("Weights for 68.0 kg of body weight.")
    on_lines = phone.locator(".sw-item summary .sw-you b")
    expect(on_lines.first).to_be_visible()
    in_glance = phone.locator(".sw-glance .sw-you b")
    in_cards = phone.locator(".sw-item .sw-you-line b")
    assert in_glance.all_inner_texts() == on_lines.all_inner_texts() == in_cards.all_text_contents()
    phone.goto(f"{address}settings/")

    expect(phone.get_by_label("Weight", exact=True)).to_have_value("68.0")


def test_the_glance_fits_a_small_phone_and_leads_to_the_cards(phone: Page, address: str, example: Programme) -> None:
    """With the weight set, each exercise is one line of a list lower than the screen; a touch goes to its card."""
    phone.set_viewport_size(SMALL)
    phone.goto(address + SESSION)
    phone.get_by_label("Your body weight").fill("68")
    phone.get_by_role("button", name="Show my weights").click()
    phone.locator(".sw-glance .sw-you").first.wait_for()
    (session,) = (
        session
        for plan in resolve(example)
        if plan.ident == "relay"
        for session in plan.weeks[6].sessions
        if session.day == "friday"
    )
    lines = phone.locator(".sw-glance a")
    sizes = [line.bounding_box() for line in lines.all()]

    assert lines.count() == len(list(session.items))
    assert all(size and size["height"] >= 44 for size in sizes)
    glance = phone.locator(".sw-glance").bounding_box()
    assert glance
    assert glance["height"] <= SMALL["height"]
    assert phone.evaluate("document.documentElement.scrollWidth") == SMALL["width"]
    lines.last.click()
    expect(phone.locator(".sw-item:target .sw-item-name")).to_be_in_viewport()
    expect(phone.locator(".sw-item:target .sw-item-name")).to_have_text(
        example.exercises[list(session.items)[-1].exercise].name
    )
    expect(phone.locator(".sw-item:target .sw-cues")).to_be_visible()


def test_when_to_stop_and_whom_it_is_not_for_are_never_folded(phone: Page, address: str) -> None:
    """What ends a set, who takes care and what is never passed stand open; all else is one touch away."""
    phone.goto(address + SESSION)
    for part in ("not-for", "stop", "care", "bound", "height"):
        for shown in phone.locator(f"[data-part='{part}']").all():
            expect(shown).to_be_visible()
    card = phone.locator("#item-2-1")
    limits = card.locator("[data-part='limits']")
    expect(limits).to_be_hidden()
    card.locator("summary").first.click()
    expect(limits).to_be_visible()
    expect(card.locator(".sw-cues")).to_be_visible()
    expect(card.locator("[data-part='easier']")).to_be_visible()


@pytest.mark.parametrize("weight", ["68", ""])
def test_a_session_is_a_few_screens_long(phone: Page, address: str, weight: str) -> None:
    """Thirteen exercises with all that must be read before them take ten screens, body weight known or not."""
    phone.goto(address + SESSION)
    phone.get_by_label("Your body weight").wait_for()
    if weight:
        phone.get_by_label("Your body weight").fill(weight)
        phone.get_by_role("button", name="Show my weights").click()
        phone.locator(".sw-glance .sw-you").first.wait_for()

    assert phone.evaluate("document.documentElement.scrollHeight") <= 10 * PHONE["height"]


@pytest.mark.parametrize("scripts", [True, False])
def test_paper_unfolds_what_the_screen_folds(phone: Page, address: str, scripts: bool) -> None:
    """Printed, each card carries its cautions and limits, by style alone or by the script."""
    phone.goto(address + SESSION)
    if scripts:
        phone.evaluate("dispatchEvent(new Event('beforeprint'))")
        assert phone.locator(".sw-fold:not([open])").count() == 0
        phone.evaluate("dispatchEvent(new Event('afterprint'))")
        assert phone.locator(".sw-fold[open]").count() == 0
        return
    phone.emulate_media(media="print")

    for care in phone.locator("[data-part='care']").all():
        expect(care).to_be_visible()
    expect(phone.locator(".sw-glance")).to_be_hidden()
    assert re.search("Take care:", phone.locator(".sw-item").first.inner_text())
