"""Home opens on one thing: what to do today, on six kinds of day, and what a tap leads to."""

import gzip
import json
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

SMALL = {"width": 360, "height": 740}
"""A cheap phone's window."""


@pytest.fixture
def small(phone: Page) -> Page:
    """A page in a small window."""
    phone.set_viewport_size(SMALL)
    return phone


def open_on(page: Page, address: str, day: str, stored: dict[str, Any] | None = None) -> None:
    """Open the home page on a day of this device's own calendar, with something stored before."""
    page.clock.install(time=datetime.fromisoformat(f"{day}T09:00:00"))
    keep(page, address, stored or {})
    page.goto(f"{address}?on=")
    page.locator(".sw-day, .sw-pick-plan").first.wait_for()


def keep(page: Page, address: str, stored: dict[str, Any]) -> None:
    """Put values into the storage, each under its key."""
    page.goto(f"{address}safety/")
    line = (
        "kept => Object.entries(kept).forEach(([k, v]) => localStorage.setItem('setwright:/:' + k, JSON.stringify(v)))"
    )
    page.evaluate(line, stored)


def done(session: str, week: int, at: str = "2027-08-17T18:00:00") -> dict[str, Any]:
    """Return a logged session with one set, by its key."""
    one = {"exercise": "x", "name": "X", "block": "B", "set": 1, "measure": "reps", "amount": 3, "sides": 1, "load": ""}
    whole = {"id": at, "plan": "Ready for the autumn relay", "session": session, "week": week, "sets": [one]}
    return {f"log/{at}": whole | {"effort": 5, "minutes": 50}}


def test_on_a_training_day_the_session_stands_above_the_fold(small: Page, address: str) -> None:
    """Name, place in the plan, time, kit, the member's weights and Start, without a touch, at 360 by 740."""
    open_on(small, address, "2027-08-20", {"settings": {"weight": {"number": "68", "unit": "kg"}}})
    card = small.locator(".sw-day")

    expect(card).to_contain_text("Week 7 of 12, Build")
    expect(card.get_by_role("heading", name="Build B, squat, lift and climb")).to_be_in_viewport(ratio=1)
    expect(card).to_contain_text("50 to 59 min")
    expect(card).to_contain_text("kettlebell 16 kg")
    start = card.get_by_role("link", name="Start")
    expect(start).to_be_in_viewport(ratio=1)
    bar = small.get_by_role("navigation", name="Main pages").bounding_box()
    button = start.bounding_box()
    assert bar
    assert button
    assert button["y"] + button["height"] <= bar["y"]


def test_start_leads_into_the_guided_session(small: Page, address: str) -> None:
    """One tap from home, and the first step is on the screen."""
    open_on(small, address, "2027-08-20")
    small.get_by_role("link", name="Start").click()
    expect(small.locator(".sw-s-title")).to_have_text("Warm up")


def test_without_a_body_weight_the_card_asks_for_it(small: Page, address: str) -> None:
    """No weight is invented: the card leads to the settings."""
    open_on(small, address, "2027-08-20")
    small.locator(".sw-day").get_by_role("link", name="Set your body weight").click()
    expect(small).to_have_url(f"{address}settings/")


@pytest.mark.parametrize(
    ("day", "says"),
    [
        ("2027-06-01", ["Your plan has not begun", "Monday 5 July", "First session", "Foundation A", "Tuesday 6 July"]),
        ("2027-08-18", ["Rest today", "Tuesday, Friday", "Interval evening", "Next session", "Friday 20 August"]),
        ("2027-08-15", ["Rest today", "Key session of the week", "Long run", "Tuesday 17 August"]),
        ("2027-08-10", ["Rest today", "is left out today", "The two-day race", "Friday 13 August"]),
        ("2027-09-24", ["Rest today", "is on Thursday 23 September", "Two full days", "Autumn relay"]),
        ("2027-09-23", ["Power B", "Moved from Friday", "Taper", "Start"]),
        ("2027-07-27", ["Lighter week", "Start"]),
        ("2027-09-26", ["Autumn relay", "Today is the day"]),
        ("2027-10-01", ["This plan has ended", "Look back at the plan"]),
    ],
)
def test_every_kind_of_day_says_what_it_is_and_what_is_next(
    small: Page, address: str, day: str, says: list[str]
) -> None:
    """Before the plan, at rest, on the key session's day, left out, moved, lighter, at the event, and after."""
    open_on(small, address, day, {"settings": {"plan": "relay"}})
    text = small.locator(".sw-day").inner_text()

    assert [words for words in says if words not in text] == []


def test_no_day_of_a_plan_points_to_a_session_that_is_past(small: Page, address: str) -> None:
    """On a rest day nothing dated before it is offered as what to do."""
    open_on(small, address, "2027-08-21")
    dates = small.locator(".sw-day time").evaluate_all("all => all.map(one => one.dateTime)")

    assert dates
    assert min(dates) >= "2027-08-21"


def test_a_done_session_is_ticked_from_the_log(small: Page, address: str) -> None:
    """Done on Tuesday: ticked in the week; today's done session offers no second start as if nothing were."""
    open_on(small, address, "2027-08-17", done("Build A, land and lower", 7))
    expect(small.locator(".sw-day")).to_contain_text("✓ done")
    expect(small.get_by_role("link", name="Do it again")).to_be_visible()
    ticked = small.locator(".sw-week-days li").filter(has_text="✓")
    expect(ticked).to_have_count(1)
    expect(ticked).to_contain_text("Tuesday 17 August")


def test_the_page_goes_over_into_the_next_day_by_itself(small: Page, address: str) -> None:
    """Left open over midnight, and out of sight over another: it shows the day that it is."""
    open_on(small, address, "2027-08-19")
    expect(small.locator(".sw-day h2")).to_have_text("Rest today")
    small.clock.run_for("15:00:30")
    expect(small.locator(".sw-day h2")).to_have_text("Build B, squat, lift and climb")
    small.clock.fast_forward("24:00:00")
    small.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    expect(small.locator(".sw-day h2")).to_have_text("Rest today")


def test_of_several_plans_mine_is_asked_once(small: Page, address: str) -> None:
    """Two plans are still to come, and one begins on any day: the member says which, and is not asked again."""
    open_on(small, address, "2027-04-10")
    expect(small.get_by_role("heading", name="Which plan is yours?")).to_be_visible()
    small.get_by_role("button", name="First six weeks of strength").click()
    expect(small.locator(".sw-day h2")).to_contain_text("Starter")
    small.reload()
    expect(small.locator(".sw-day h2")).to_contain_text("Starter")
    small.locator(".sw-plans > summary").click()
    small.get_by_role("button", name="Ready for the autumn relay").click()
    expect(small.locator(".sw-day h2")).to_have_text("Your plan has not begun")


def test_ended_plans_fold_away(small: Page, address: str) -> None:
    """In October the relay's plan is behind a fold of its own; one that begins on any day has not ended."""
    open_on(small, address, "2027-10-01")
    small.locator(".sw-plans > summary").click()
    expect(small.locator(".sw-plan[data-plan='starter']")).to_be_visible()
    expect(small.locator(".sw-plan[data-plan='relay']")).to_be_hidden()
    small.get_by_text("Plans that have ended").click()
    expect(small.locator(".sw-plan[data-plan='relay']")).to_be_visible()


def test_after_a_plan_the_one_that_follows_is_offered(small: Page, address: str) -> None:
    """In October the relay's plan has ended; its member picks the winter's, which asks for a group."""
    open_on(small, address, "2027-10-01", done("Power A, jump and squat", 12, "2027-09-21T18:00:00"))
    expect(small.locator(".sw-day h2")).to_have_text("This plan has ended.")
    other = small.locator("sw-home .sw-pick-plan")
    expect(other.get_by_role("heading")).to_have_text("It goes on in")
    other.get_by_role("button", name="Through the dark months").click()
    expect(small.locator(".sw-day")).to_contain_text("Choose your group")


def test_a_plan_without_a_first_day_ends_with_its_last_session(small: Page, address: str) -> None:
    """The log holds the sixth week's second session: nothing of the plan is still to come."""
    kept = done("Starter B, hinge, step and carry", 6) | {"settings": {"plan": "starter"}}
    next(iter(kept.values()))["plan"] = "First six weeks of strength"
    open_on(small, address, "2027-04-10", kept)
    expect(small.locator(".sw-day h2")).to_have_text("This plan has ended.")
    expect(small.locator(".sw-day")).to_contain_text("Ask your coach what comes next.")
    expect(small.locator("sw-home .sw-pick-plan h2")).to_have_text("Other plans")


@pytest.mark.parametrize(
    ("day", "says"),
    [
        ("2027-11-30", ["Week 1 of 6", "Foundation A", "Your group: Hut group."]),
        ("2027-12-24", ["A break. The next week begins on Monday 3 January", "closed over the holidays"]),
        ("2028-01-04", ["Week 4 of 6", "Lighter week", "Foundation A"]),
        ("2028-01-24", ["This plan has ended."]),
    ],
)
def test_a_group_in_winter(small: Page, address: str, day: str, says: list[str]) -> None:
    """The Hut group begins a week later, and comes back from the holidays with its lighter week."""
    hut = {"group": "hut-group", "begins": None, "moved": []}
    open_on(small, address, day, {"settings": {"plan": "winter", "plans": {"winter": hut}}})
    text = small.locator(".sw-day").inner_text()

    assert [words for words in says if words not in text] == []


def test_a_plan_of_groups_is_over_when_all_of_them_are(small: Page, address: str) -> None:
    """Nobody said a group: in its last week it is asked for, and a day later the plan has ended."""
    open_on(small, address, "2028-01-23", {"settings": {"plan": "winter"}})
    expect(small.locator(".sw-day")).to_contain_text("Choose your group")
    small.goto(f"{address}?on=2028-01-24")
    expect(small.locator(".sw-day h2")).to_have_text("This plan has ended.")


def test_a_plan_without_a_first_day_ends_with_the_members_last_week(small: Page, address: str) -> None:
    """Begun on 1 March, its six weeks are over on Monday 12 April, logged or not."""
    begun = {"settings": {"plan": "starter", "plans": {"starter": {"group": "", "begins": "2027-03-01", "moved": []}}}}
    open_on(small, address, "2027-04-11", begun)
    expect(small.locator(".sw-day")).to_contain_text("Week 6 of 6")
    small.goto(f"{address}?on=2027-04-12")
    expect(small.locator(".sw-day h2")).to_have_text("This plan has ended.")


def test_a_week_of_open_days_says_that_it_is_done(small: Page, address: str) -> None:
    """Both sessions of the first week are logged: none of them is offered again as if nothing were."""
    first = done("Starter A, sit, pull and push", 1, "2027-03-02T18:00:00")
    second = done("Starter B, hinge, step and carry", 1, "2027-03-04T18:00:00")
    for kept in (*first.values(), *second.values()):
        kept["plan"] = "First six weeks of strength"
    begun = {"settings": {"plan": "starter", "plans": {"starter": {"group": "", "begins": "2027-03-01", "moved": []}}}}
    open_on(small, address, "2027-03-05", first | second | begun)
    expect(small.locator(".sw-day h2")).to_have_text("This week's sessions are done")
    expect(small.locator(".sw-week-days li").filter(has_text="✓")).to_have_count(2)


@pytest.mark.parametrize("begins", [None, "2027-03-01"])
@pytest.mark.parametrize(("day", "is_long"), [("2027-03-09", False), ("2027-04-06", True)])
def test_after_a_long_gap_home_says_first_to_start_easier(
    small: Page, address: str, begins: str | None, day: str, is_long: bool
) -> None:
    """A week after the last entry nothing is said; five weeks after it, before anything else, whom to ask as well."""
    kept = done("Starter A, sit, pull and push", 1, "2027-03-02T18:00:00")
    next(iter(kept.values()))["plan"] = "First six weeks of strength"
    own = {"starter": {"group": "", "begins": begins, "moved": []}}
    open_on(small, address, day, kept | {"settings": {"plan": "starter", "plans": own}})
    text = small.locator(".sw-day").inner_text()

    assert text.startswith("After a gap as long as this, start easier") is is_long
    assert ("Ask a doctor or a physiotherapist before you go on." in text) is is_long


def test_who_logs_another_plan_is_shown_that_one(small: Page, address: str) -> None:
    """While the relay's plan runs, a member whose newest entry is of the starter plan is led on in it."""
    kept = done("Starter A, sit, pull and push", 1)
    next(iter(kept.values()))["plan"] = "First six weeks of strength"
    open_on(small, address, "2027-08-20", kept)
    expect(small.locator(".sw-day h2")).to_have_text("Starter B, hinge, step and carry")


def test_the_members_weeks_go_by_the_day_of_the_demonstration(small: Page, address: str) -> None:
    """The plan's page counts weeks from the day that the site shows, and from another one that home was asked for."""
    small.goto(f"{address}plans/relay/")
    expect(small.locator("sw-my-weeks")).to_contain_text("This is week 7.")
    small.goto(f"{address}?on=2027-07-13")
    small.locator(".sw-day").wait_for()
    small.goto(f"{address}plans/relay/")
    expect(small.locator("sw-my-weeks")).to_contain_text("This is week 2.")


def test_home_is_a_list_without_javascript(browser: Browser, address: str) -> None:
    """Every plan with its phases, none folded."""
    context = browser.new_context(viewport=SMALL, java_script_enabled=False)
    page = context.new_page()
    page.goto(address)
    shown = page.locator(".sw-plan").evaluate_all("all => all.filter(one => one.checkVisibility()).length")
    links = page.locator(".sw-phases a").count()
    context.close()

    assert shown == 3
    assert links == 7


def test_the_example_shows_a_day_in_its_plan_and_says_so(small: Page, address: str) -> None:
    """Years before or after, a visitor sees a training day; another day by the address; and the real one by a tap."""
    small.clock.install(time=datetime(2031, 1, 1, 9))
    small.goto(address)
    expect(small.locator(".sw-demonstration")).to_contain_text("20 August 2027")
    expect(small.locator(".sw-day h2")).to_have_text("Build B, squat, lift and climb")
    small.goto(f"{address}?on=2027-09-26")
    expect(small.locator(".sw-day h2")).to_have_text("Autumn relay")
    small.get_by_role("link", name="Show the real day").click()
    expect(small.locator(".sw-day h2")).to_contain_text("Starter")
    expect(small.locator(".sw-demonstration")).to_have_count(0)


@pytest.fixture
def plain_home(small: Page, address: str, site: Path) -> Iterator[Page]:
    """The home page of a club that sets no demonstration."""
    html = (site / "index.html").read_text("utf-8")
    assert html.count(' data-demonstration="2027-08-20"') == 1
    own = html.replace(' data-demonstration="2027-08-20"', "")
    small.route(f"{address}?on=*", lambda route: route.fulfill(body=own, content_type="text/html"))
    return small


def test_a_clubs_own_site_knows_no_other_day(plain_home: Page, address: str) -> None:
    """Without the setting, an address with a day in it changes nothing."""
    plain_home.clock.install(time=datetime(2027, 8, 18, 9))
    plain_home.goto(f"{address}?on=2027-08-20")
    expect(plain_home.locator(".sw-day h2")).to_have_text("Rest today")
    expect(plain_home.locator(".sw-demonstration")).to_have_count(0)


def test_the_list_of_days_is_light(site: Path) -> None:
    """What home asks for, for all plans together, is below a tenth of what a first visit may weigh (250 kB gzipped)."""
    files = list((site / "assets" / "days").glob("*.json"))
    assert all(json.loads(file.read_text("utf-8"))["weeks"] for file in files)
    assert sum(len(gzip.compress(file.read_bytes(), 9)) for file in files) < 25_000
