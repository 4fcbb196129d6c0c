"""My settings: entered once, seen everywhere, saved to a file, erased, restored."""

import json
import re
from fractions import Fraction
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, Route, expect

from setwright.dose.bands import choice_at
from setwright.dose.resolve import resolve
from setwright.model.programme import Programme
from setwright.model.units import KG_PER_LB, plain_number
from setwright.outline.addresses import folder_of, session_path
from setwright.outline.site import Site
from setwright.pages import settings
from setwright.pages.renderer import Renderer
from support import make

from .conftest import PHONE


def weigh(page: Page, address: str, number: str, unit: str = "kg") -> None:
    """Enter a body weight as a member does."""
    page.goto(f"{address}settings/")
    page.get_by_label("Weight", exact=True).fill(number)
    page.get_by_label(unit, exact=True).check()
    page.get_by_label(unit, exact=True).press("Tab")
    page.get_by_text("Saved on this device.").wait_for()


@pytest.mark.parametrize(("number", "unit"), [("68", "kg"), ("150", "lb")])
def test_the_right_weight_is_on_three_sessions(
    phone: Page, address: str, example: Programme, number: str, unit: str
) -> None:
    """68 kg, or 150 lb (68.04 kg): each load shows what the arithmetic chooses, and the table is one tap away.

    Who chose pounds reads the same in pounds beside it (the international pound, 1959).
    """
    weigh(phone, address, number, unit)
    sessions = [s for plan in resolve(example) if plan.ident == "relay" for s in plan.sessions]
    for session in (sessions[0], sessions[9], sessions[16]):
        phone.goto(address + folder_of(session_path(session)))
        wanted = []
        for item in session.items:
            choice = choice_at(item.bands, Fraction(68) if unit == "kg" else 150 * KG_PER_LB)
            if choice and choice.weight_kg is not None:
                beside = f" ({plain_number(choice.weight_kg / KG_PER_LB, 1)} lb)" if unit == "lb" else ""
                wanted.append(f"{plain_number(choice.weight_kg)} kg{beside}")
        phone.locator(".sw-you-line").first.wait_for(state="attached")
        phone.locator(".sw-item > .sw-fold:has(.sw-bands) > summary").first.click()
        table = phone.locator("sw-load .sw-bands").first

        assert phone.locator(".sw-you-line b").all_text_contents() == wanted
        assert table.is_hidden()
        phone.get_by_role("button", name="All body weights").first.click()
        assert table.is_visible()


def test_the_week_shows_my_weights_too(phone: Page, address: str, example: Programme) -> None:
    """In the list of a whole week each load has the member's weight beside it."""
    weigh(phone, address, "68")
    phone.goto(f"{address}plans/relay/week-07/")
    phone.locator("sw-load .sw-you").first.wait_for()
    (relay,) = (plan for plan in resolve(example) if plan.ident == "relay")
    items = [item for session in relay.weeks[6].sessions for item in session.items]
    chosen = [choice_at(item.bands, Fraction(68)) for item in items]
    wanted = [f"You: {plain_number(c.weight_kg)} kg" for c in chosen if c and c.weight_kg is not None]

    assert phone.locator("sw-load .sw-you").all_inner_texts() == wanted


def test_a_weight_keeps_the_unit_that_it_was_typed_in(phone: Page, address: str) -> None:
    """150 lb stay 150 lb over any number of visits: nothing is converted and converted back."""
    weigh(phone, address, "150", "lb")
    for _ in range(3):
        phone.reload()
        phone.get_by_label("lb", exact=True).wait_for()

        assert phone.get_by_label("Weight", exact=True).input_value() == "150"
        assert phone.get_by_label("lb", exact=True).is_checked()
    assert "That is 68 kg" in phone.locator("#sw-weight-says").inner_text()


@pytest.mark.parametrize("number", ["12", "400", "heavy"])
def test_a_weight_that_cannot_be_is_refused(phone: Page, address: str, number: str) -> None:
    """What was saved before stays."""
    weigh(phone, address, "68")
    phone.get_by_label("Weight", exact=True).fill(number)
    phone.get_by_label("Weight", exact=True).press("Tab")
    phone.get_by_text("Nothing was changed").wait_for()
    phone.reload()

    expect(phone.get_by_label("Weight", exact=True)).to_have_value("68")


def test_outside_the_table_the_coach_decides(phone: Page, address: str) -> None:
    """Below and above the club's range no weight is invented."""
    weigh(phone, address, "130")
    phone.goto(f"{address}plans/relay/week-07/friday/")

    expect(phone.locator(".sw-you-line").first).to_have_text(
        "Your body weight is above this table. Ask your coach what to take."
    )


def test_at_home_what_is_missing_comes_first(phone: Page, address: str) -> None:
    """With kettlebells of 8 and 20 kg: the squat takes 8; where a dumbbell is missing, the home option leads."""
    weigh(phone, address, "68")
    phone.get_by_label("At home").check()
    phone.get_by_label("Kettlebell").check()
    phone.locator("#sw-weights-kettlebell").fill("8, 20 kg")
    phone.locator("#sw-weights-kettlebell").press("Tab")
    phone.goto(f"{address}plans/relay/week-07/friday/")
    squat = phone.locator("[data-item]").filter(has=phone.get_by_role("heading", name="Goblet squat"))
    row = phone.locator("[data-item]").filter(has=phone.get_by_role("heading", name="Bent-over row with two dumbbells"))

    expect(squat.locator(".sw-you-line")).to_have_text("You: 8 kg")
    expect(squat.locator("div.sw-you")).to_contain_text("not above the planned 16 kg")
    expect(squat.locator(".sw-home-first")).to_have_count(0)
    expect(row.locator(".sw-home-first")).to_contain_text("Without dumbbell:")


def test_a_weight_for_everyone_is_in_the_members_unit_too(phone: Page, address: str) -> None:
    """8 kg are 17.6 lb (the international pound, 1959); who reads kilograms sees nothing beside it."""
    phone.goto(f"{address}plans/starter/week-01/session-2/")
    fixed = phone.locator(".sw-load-what[data-weight='8 kg']").first
    expect(fixed).to_have_text("8 kg")
    phone.goto(f"{address}settings/")
    phone.get_by_label("lb", exact=True).check()
    phone.goto(f"{address}plans/starter/week-01/session-2/")

    expect(fixed).to_have_text("8 kg (17.6 lb)")


def with_lifts(route: Route) -> None:
    """Serve the settings of a club that prescribes a goblet squat in shares of 1RM, which the example does not."""
    squat = "{name: Goblet squat, kit: [kettlebell]}"
    share = "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, load: 60 % 1RM}]}]"
    made = make.programme({"exercises/lift": squat, "sessions/only": share})
    site = Site(made, resolve(made))
    page = Renderer(site).render(next(settings.pages(site)))
    fields = re.search(r'<fieldset class="sw-lifts">.*?</fieldset>', page, re.S)
    assert fields is not None
    answer = route.fetch()
    before, after = answer.text().split("</fieldset>", 1)
    route.fulfill(response=answer, body=f"{before}</fieldset>{fields[0]}{after}")


def test_a_best_lift_is_asked_for_in_the_members_own_unit(phone: Page, address: str) -> None:
    """A member who chose pounds gives pounds, and reads their 1RM in pounds."""
    phone.route("**/settings/", with_lifts)
    phone.goto(f"{address}settings/")
    phone.locator("label[for='sw-lb']").click()
    phone.get_by_label("Weight, lb").fill("45")
    phone.get_by_role("button", name="Keep this lift").click()

    expect(phone.locator(".sw-lift-list li")).to_contain_text("Goblet squat: 45 lb, 1RM")


def test_a_best_set_becomes_a_range_and_the_lower_end_is_used(phone: Page, address: str) -> None:
    """8 repetitions with 20 kg: from 20 × 1.2 (O'Conner) to 20 × 1.2764 (Wathan), rounded outwards to a tenth."""
    phone.route("**/settings/", with_lifts)
    phone.goto(f"{address}settings/")
    phone.get_by_label("Exercise").select_option(label="Goblet squat")
    phone.get_by_label("Repetitions").select_option("8")
    phone.get_by_label("Weight, kg").fill("20")
    says = phone.locator("#sw-lift-says")
    expect(says).to_have_text("1RM: between 24 and 25.6 kg. Pages use the lower one.")
    phone.get_by_role("button", name="Keep this lift").click()
    phone.reload()

    expect(phone.locator(".sw-lift-list li")).to_contain_text("Goblet squat: 20 kg, 8 reps, 1RM 24 to 25.6 kg")


def test_everything_can_be_saved_erased_and_restored(phone: Page, address: str, tmp_path: Path) -> None:
    """The file holds settings and log as plain JSON; erasing leaves nothing; restoring brings all of it back."""
    weigh(phone, address, "68.5")
    phone.get_by_label("Largest").check()
    with phone.expect_download() as saving:
        phone.get_by_role("button", name="Save a copy as a file").click()
    copy = tmp_path / "copy.json"
    saving.value.save_as(copy)
    phone.on("dialog", lambda dialog: dialog.accept())
    phone.get_by_role("button", name="Erase everything").click()
    phone.get_by_text("Erased.").wait_for()

    assert json.loads(copy.read_text("utf-8"))["settings"]["weight"] == {"number": "68.5", "unit": "kg"}
    assert phone.evaluate("Object.keys(localStorage).filter(key => key.startsWith('setwright'))") == []
    expect(phone.get_by_label("Weight", exact=True)).to_have_value("")

    with phone.expect_file_chooser() as choosing:
        phone.get_by_role("button", name="Restore from a file").click()
    choosing.value.set_files(copy)
    phone.get_by_role("button", name="Take it").click()
    phone.get_by_text("Restored").wait_for()

    expect(phone.get_by_label("Weight", exact=True)).to_have_value("68.5")
    expect(phone.locator("html")).to_have_attribute("data-sw-text", "largest")


@pytest.mark.parametrize("content", ["", "not json", "[]", '{"version": 9, "log": []}', '{"version": 1}'])
def test_another_file_changes_nothing(phone: Page, address: str, tmp_path: Path, content: str) -> None:
    """A file that these pages did not save is refused whole."""
    weigh(phone, address, "68")
    wrong = tmp_path / "wrong.json"
    wrong.write_text(content or " ")
    with phone.expect_file_chooser() as choosing:
        phone.get_by_role("button", name="Restore from a file").click()
    choosing.value.set_files(wrong)
    phone.get_by_text("This is not a copy that these pages saved").wait_for()

    expect(phone.get_by_label("Weight", exact=True)).to_have_value("68")


def test_where_nothing_can_be_stored_the_page_says_so(browser: Browser, address: str) -> None:
    """With storage switched off, the member is told, and the page goes on working."""
    context = browser.new_context(viewport=PHONE, service_workers="block")
    context.add_init_script("Storage.prototype.setItem = () => { throw new DOMException('no', 'SecurityError'); }")
    page = context.new_page()
    page.goto(f"{address}settings/")
    page.get_by_label("Weight", exact=True).fill("68")
    page.get_by_label("Weight", exact=True).press("Tab")

    expect(page.locator("sw-settings .sw-status")).to_contain_text("keeps nothing for this site")
    context.close()


def test_the_settings_are_a_text_without_javascript(browser: Browser, address: str) -> None:
    """Without script there is no dead form, and the statement of what is kept is there."""
    context = browser.new_context(viewport=PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{address}settings/")

    expect(page.locator("sw-settings form")).to_be_hidden()
    expect(page.get_by_text("This page needs JavaScript.")).to_be_visible()
    expect(page.get_by_text("no server behind it")).to_be_visible()
    context.close()


def test_two_clubs_on_one_address_keep_apart(phone: Page, address: str) -> None:
    """What is kept carries the site's own path in its name."""
    weigh(phone, address, "68")

    assert phone.evaluate("Object.keys(localStorage).filter(key => key.startsWith('setwright'))") == [
        "setwright:/:settings"
    ]
