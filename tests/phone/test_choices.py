"""Choices on the phone: a member's own way stands in front on page and in the guide; without a script all are there."""

from collections.abc import Callable
from typing import Any

from playwright.sync_api import Browser, Page, expect

from .conftest import PHONE

SESSION = "plans/relay/week-01/tuesday/"
"""A squat and a press of it have other ways; its last exercise is optional."""


def tick(page: Page, address: str, *choices: str) -> None:
    """Say something of oneself in the settings."""
    page.goto(f"{address}settings/")
    for choice in choices:
        page.locator(f"#sw-choice-{choice}").check()


def test_the_settings_keep_what_was_ticked(phone: Page, address: str) -> None:
    """What was ticked is ticked after a reload; what speaks of pain is described by a line about clinicians."""
    tick(phone, address, "arm-overhead-hurts")
    phone.reload()

    expect(phone.locator("#sw-choice-arm-overhead-hurts")).to_be_checked()
    expect(phone.locator("#sw-choice-first-season")).not_to_be_checked()
    expect(phone.locator("#sw-choice-says-arm-overhead-hurts")).to_contain_text("a clinician decides")
    expect(phone.locator("#sw-choice-says-first-season")).to_have_count(0)


def test_a_members_own_way_comes_first_and_the_other_is_folded(phone: Page, address: str) -> None:
    """The front holds the band, its note and the line about clinicians; the press is one tap away, and comes back."""
    tick(phone, address, "arm-overhead-hurts")
    phone.goto(address + SESSION)
    item = phone.locator(".sw-item[data-chosen]")

    expect(item).to_have_count(1)
    expect(item.locator(":scope > .sw-fold > .sw-item-head")).to_contain_text("Band press-out")
    expect(item.locator(":scope > [data-part='clinician']")).to_be_visible()
    expect(item.locator("summary:visible").last).to_contain_text("For everyone else Half-kneeling press")
    phone.goto(f"{address}settings/")
    # Before the script has filled the form, the box is not ticked, and there would be nothing to take back.
    expect(phone.locator("#sw-choice-arm-overhead-hurts")).to_be_checked()
    phone.locator("#sw-choice-arm-overhead-hurts").uncheck()
    phone.goto(address + SESSION)
    expect(phone.locator("sw-guide button")).to_be_visible()
    expect(phone.locator(".sw-item[data-chosen]")).to_have_count(0)


def test_the_guide_and_the_log_follow_the_choice(phone: Page, address: str) -> None:
    """The first set is a sit to the box, without the squat's weight, and is kept under its own name."""
    tick(phone, address, "first-season")
    phone.goto(address + SESSION)
    phone.locator(".sw-start").click()
    phone.locator(".sw-s-main").click()

    expect(phone.locator(".sw-s-title")).to_have_text("Sit to box")
    expect(phone.locator(".sw-session .sw-s-load")).to_have_count(0)
    phone.wait_for_timeout(500)  # a second touch right after the first is a slip
    phone.locator(".sw-s-main").click()
    kept = phone.evaluate(
        "() => Object.entries(localStorage).filter(([key]) => key.includes('log/')).map(([, v]) => v)"
    )
    assert len(kept) == 1
    assert '"exercise":"sit-to-box"' in kept[0]


def test_a_running_session_keeps_the_choice_with_which_it_began(phone: Page, address: str) -> None:
    """Settings that change meanwhile do not exchange an exercise under a member's hands, nor lose the place."""
    tick(phone, address, "first-season")
    phone.goto(address + SESSION)
    phone.locator(".sw-start").click()
    phone.locator(".sw-s-main").click()
    phone.goto(f"{address}settings/")
    expect(phone.locator("#sw-choice-first-season")).to_be_checked()
    phone.locator("#sw-choice-first-season").uncheck()
    phone.goto(address + SESSION)

    expect(phone.locator(".sw-s-title")).to_have_text("Sit to box")


def test_what_is_optional_can_be_left_out_in_the_guide(run: Callable[..., Any]) -> None:
    """An exercise is left with its pauses: in rounds to what comes next, in straight sets past all sets."""
    rounds = [("set", 0, 0), ("change", 0, 1), ("set", 0, 1), ("rest", 0, 0), ("set", 0, 0), ("finish", 0, 0)]
    straight = [("set", 0, 0), ("rest", 0, 0), ("set", 0, 0), ("change", 0, 1), ("set", 0, 1), ("block", 1, 0)]

    def left(steps: list[tuple[str, int, int]], at: int, whole: bool = False) -> int:
        given = [{"kind": kind, "block": block, "item": item} for kind, block, item in steps]
        return int(
            run("steps", "m => m.after(given.steps, given.at, given.whole)", {"steps": given, "at": at, "whole": whole})
        )

    assert (left(rounds, 0), left(rounds, 2), left(rounds, 4)) == (1, 3, 5)
    assert (left(straight, 0), left(straight, 4), left(straight, 0, whole=True)) == (3, 5, 5)


def test_the_first_way_that_fits_counts(run: Callable[..., Any]) -> None:
    """Of two ways, the first with a ticked choice; none where nothing fits."""
    ways = [{"choices": ["a"]}, {"choices": ["b", "c"]}]
    picks = [
        run("steps", "m => m.pickOf(given[0], given[1])", [ways, ticked]) for ticked in (["c", "a"], ["c"], ["d"], [])
    ]

    assert picks == [1, 2, 0, 0]


def test_odd_choices_in_a_file_are_left_out(run: Callable[..., Any]) -> None:
    """Ids that are no texts, doubles, and what is no list at all."""
    kept = run("settings", "m => m.settingsFrom({choices: ['a', 7, 'a', null, 'b']}).choices")

    assert kept == ["a", "b"]
    assert run("settings", "m => m.settingsFrom({choices: 'a'}).choices") == []


def test_without_a_script_every_way_is_on_the_page(browser: Browser, address: str) -> None:
    """Each way is said with its dose in a line that opens without a script, with its own words about care."""
    context = browser.new_context(viewport=PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(address + SESSION)
    ways = page.locator(".sw-instead")

    assert ways.count() == 2
    for index in range(2):
        ways.nth(index).locator(":scope > summary").click()
        expect(ways.nth(index).locator("[data-part='amount']")).to_be_visible()
    expect(ways.nth(1).locator("[data-part='stop']")).to_be_visible()
    expect(ways.nth(1).locator("[data-part='care']")).to_be_visible()
    context.close()


def test_the_choice_is_printed_first_and_alone(phone: Page, address: str) -> None:
    """Who made a choice prints their own sheet; without one, every way is on the paper, folded or not."""
    phone.goto(address + SESSION)
    phone.emulate_media(media="print")
    expect(phone.locator(".sw-instead-inside [data-part='amount']").first).to_be_visible()
    phone.emulate_media(media="screen")
    tick(phone, address, "first-season")
    phone.goto(address + SESSION)
    phone.wait_for_selector("[data-chosen]")
    phone.emulate_media(media="print")

    expect(phone.locator("[data-chosen] > .sw-fold > .sw-item-head").first).to_contain_text("Sit to box")
    expect(phone.locator("[data-chosen] > .sw-instead").first).to_be_hidden()
