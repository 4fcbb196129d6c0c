"""Training at home without the club's kit: the home way everywhere, and the club's weight nowhere."""

import pytest
from playwright.sync_api import Locator, Page, expect

from .test_guide import Training, stored

SETTINGS = {"weight": {"number": "68", "unit": "kg"}, "place": "home", "kit": {}}


@pytest.fixture
def at_home(phone: Page, address: str) -> Page:
    """A member of 68 kg who trains at home, with none of the kit."""
    phone.set_viewport_size({"width": 360, "height": 740})
    phone.goto(f"{address}safety/")
    phone.evaluate("mine => localStorage.setItem('setwright:/:settings', JSON.stringify(mine))", SETTINGS)
    return phone


def squat(page: Page) -> Locator:
    """Return what the page says of an exercise that takes a kettlebell at the club."""
    return page.locator("[data-item]").filter(has=page.get_by_role("heading", name="Goblet squat"))


@pytest.mark.parametrize("media", ["screen", "print"])
def test_screen_and_print_say_the_home_way(at_home: Page, address: str, media: str) -> None:
    """What is lacking and what to do instead; no kettlebell to take, and none of its weights."""
    at_home.goto(f"{address}plans/relay/week-07/friday/")
    item = squat(at_home)
    item.locator(".sw-home-first").wait_for(state="attached")
    at_home.emulate_media(media="screen" if media == "screen" else "print")
    expect(item.locator(".sw-home-first")).to_be_visible()
    if media == "screen":
        item.locator("summary").first.click()
    expect(item.locator(".sw-home-first")).to_contain_text("Without kettlebell:")
    expect(item.locator(".sw-you-line")).to_have_text("You: the home option")
    text = item.inner_text()

    assert "16 kg" not in text
    assert "kettlebell" not in text.replace("Without kettlebell:", "").split("At home")[0]


def test_the_guide_and_its_log_take_no_club_weight(at_home: Page, address: str) -> None:
    """The set says the home option, and the log notes no weight that nobody lifted."""
    at_home.goto(f"{address}plans/relay/week-07/friday/")
    training = Training.__new__(Training)
    training.page = at_home
    training.start()
    training.go_to("Goblet squat")
    expect(at_home.locator(".sw-session .sw-s-load")).to_have_text("the home option")
    expect(at_home.locator(".sw-session .sw-home-first")).to_contain_text("Without kettlebell:")
    training.press()
    noted = [one for one in stored(at_home, "log/")[0]["sets"] if one["exercise"] == "goblet-squat"]

    assert [one["load"] for one in noted] == [""]


def test_home_names_no_club_weight(at_home: Page, address: str) -> None:
    """The card of the day has no weights of the club for someone who is not there."""
    at_home.goto(f"{address}?on=2027-08-20")
    card = at_home.locator(".sw-day")
    expect(card).to_contain_text("the home options")

    assert "kg" not in card.inner_text()


def test_at_a_glance_a_fixed_weight_of_the_club_is_no_ones(at_home: Page, address: str) -> None:
    """A kettlebell of 8 kg for everyone is not named to somebody who has none, in the list and on the line."""
    at_home.goto(f"{address}plans/starter/week-01/session-2/")
    fixed = at_home.locator(".sw-load-what[data-weight]").first.locator("xpath=ancestor::*[@data-item]")
    place = fixed.get_attribute("id")
    for line in (at_home.locator(f".sw-glance a[href='#{place}']"), fixed.locator("summary").first):
        expect(line).to_contain_text("the home option")
        assert " kg" not in line.inner_text()


def test_beside_the_sheet_stands_for_whom_it_is(at_home: Page, address: str) -> None:
    """A PDF is made for everybody; the page's own print is for this member."""
    at_home.goto(f"{address}plans/relay/week-07/friday/")
    expect(at_home.locator("sw-print")).to_contain_text("The PDF is for the club's kit.")
