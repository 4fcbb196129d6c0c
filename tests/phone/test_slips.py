"""Slips and second thoughts in a guided session: the log says what was done, and nothing is lost by a touch."""

from datetime import datetime

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from .test_guide import SESSION, Training, stored

OTHER = "plans/relay/week-07/friday/"


@pytest.fixture
def training(phone: Page, address: str) -> Training:
    """A session that has just begun, in a small window."""
    phone.set_viewport_size({"width": 360, "height": 740})
    return Training(phone, address)


def last(training: Training) -> dict[str, object]:
    """Return the newest set of the log."""
    entry: dict[str, object] = stored(training.page, "log/")[0]["sets"][-1]
    return entry


def test_a_hold_that_is_done_again_has_its_new_time(training: Training) -> None:
    """Stopped at 12 of 35 seconds, gone back, and held to the end: 35 in the log."""
    training.go_to("Wall sit")
    training.press()
    training.passes(3 + 12)
    training.press()
    assert last(training)["amount"] == 12
    training.page.get_by_role("button", name="Back", exact=True).click()
    training.press()
    training.passes(3 + 36)

    assert (last(training)["exercise"], last(training)["amount"]) == ("wall-sit", 35)


@pytest.mark.parametrize("skipped", ["First side", "Other side", ""])
def test_one_side_that_was_skipped_is_not_in_the_log(training: Training, skipped: str) -> None:
    """One side done is one side logged, whichever it was; both are both."""
    training.go_to("Box step-down", "First side")
    for side in ("First side", "Other side"):
        assert training.where()[2] == side
        if side == skipped:
            training.page.get_by_role("button", name="Skip", exact=True).click()
        else:
            training.press()

    assert last(training)["exercise"] == "box-step-down"
    assert last(training)["sides"] == (1 if skipped else 2)


def test_of_two_sides_the_shorter_hold_is_logged(training: Training) -> None:
    """30 seconds on one side and 12 on the other are 12 on each."""
    training.go_to("Side plank", "First side")
    training.press()
    training.passes(3 + 31)
    training.press()
    training.passes(3 + 12)
    training.press()

    assert (last(training)["amount"], last(training)["sides"]) == (12, 2)


def test_every_set_can_be_put_right_at_the_end(training: Training) -> None:
    """The last block's last round too, after which no rest comes."""
    training.go_to("All done")
    row = training.page.locator(".sw-s-row").filter(has_text="Band press-out").last
    row.locator("summary").click()
    before = stored(training.page, "log/")[0]["sets"][-1]["amount"]
    row.get_by_role("button", name="less").last.click()

    kept = stored(training.page, "log/")[0]["sets"]
    assert kept[-1]["exercise"] == "band-press-out"
    assert kept[-1]["amount"] < before
    assert training.page.locator(".sw-s-row").count() == len({one["exercise"] for one in kept})


def test_the_end_says_what_last_time_was_and_what_comes_next(training: Training) -> None:
    """Against the session of the same name before, by exercise; then the next session with its date."""
    training.go_to("All done")
    kept = stored(training.page, "log/")[0]
    expect(training.page.locator(".sw-s-end")).to_contain_text("Friday 20 August")
    earlier = kept | {"id": "2027-08-10T18:00:00", "week": 6}
    earlier["sets"] = [one | {"amount": 2} for one in kept["sets"] if one["exercise"] == "drop-and-stick"]
    training.page.evaluate("one => localStorage.setItem('setwright:/:log/' + one.id, JSON.stringify(one))", earlier)
    training.page.reload()
    expect(training.page.locator(".sw-s-row").first).to_contain_text(f"Last time: {len(earlier['sets'])} × 2 reps")
    expect(training.page.locator(".sw-s-row").nth(1)).to_contain_text("Not done last time")


def test_minutes_that_were_typed_before_the_effort_stay(training: Training) -> None:
    """Typed at the end, then back for one more set, then effort 0: the minutes are as typed."""
    training.go_to("Rest")
    training.page.get_by_role("button", name="Stop").click()
    training.page.get_by_role("button", name="End the session").click()
    training.page.get_by_label("Minutes").fill("52")
    training.page.get_by_label("Minutes").press("Tab")
    training.page.get_by_role("button", name="Back", exact=True).click()
    training.press()
    training.press()
    training.go_to("All done")
    training.page.get_by_label("How hard was all of it?").select_option("0")

    assert (stored(training.page, "log/")[0]["minutes"], stored(training.page, "log/")[0]["effort"]) == (52, 0)


def test_a_second_tap_on_done_does_not_skip_the_rest(training: Training) -> None:
    """Two taps within a third of a second are one."""
    training.go_to("Drop and stick")
    training.passes(2)
    main = training.page.locator(".sw-s-main")
    main.click()
    training.passes(0.2)
    main.click()
    training.passes(1)

    assert training.where()[1] == "Rest"


def test_ending_by_mistake_leads_back_to_where_it_was(training: Training) -> None:
    """Stop, End the session, and Back: the same set, not the cool-down."""
    training.go_to("Push-up")
    where = training.where()
    training.page.get_by_role("button", name="Stop").click()
    training.page.get_by_role("button", name="End the session").click()
    training.page.reload()
    training.page.locator(".sw-s-title").wait_for()
    training.page.get_by_role("button", name="Back", exact=True).click()

    assert training.where() == where


def test_a_second_session_asks_before_it_drops_the_first(training: Training, address: str) -> None:
    """Back to it, neither, or end it: nothing is lost by starting another one."""
    page = training.page
    training.go_to("Push-up")
    page.keyboard.press("Escape")
    page.goto(address + OTHER)
    start = page.get_by_role("button", name="Start the guided session")
    start.click()
    ask = page.get_by_role("dialog", name="is under way")
    expect(ask).to_contain_text("Build A, land and lower")
    ask.get_by_role("button", name="Neither").click()
    assert SESSION in stored(page, "now")[0]["page"]
    start.click()
    ask.get_by_role("link", name="Back to it").click()
    page.locator(".sw-s-title").wait_for()
    assert training.where()[1] == "Push-up"
    page.goto(address + OTHER)
    start.click()
    ask.get_by_role("button", name="End it and start this one").click()
    expect(page.locator(".sw-s-title")).to_have_text("Warm up")

    assert len(stored(page, "log/")) == 1


def test_two_windows_stand_at_one_place(context: BrowserContext, address: str) -> None:
    """What one does the other shows; ended in one, it is ended in both."""
    pages = [context.new_page(), context.new_page()]
    for page in pages:
        page.goto(address + SESSION)
    one, other = pages
    one.get_by_role("button", name="Start the guided session").click()
    expect(one.locator(".sw-s-title")).to_have_text("Warm up")
    other.reload()
    expect(other.locator(".sw-s-title")).to_have_text("Warm up")
    one.locator(".sw-s-main").click()
    expect(other.locator(".sw-s-title")).to_have_text("Drop and stick")
    other.locator(".sw-s-main").click()
    expect(one.locator(".sw-s-title")).to_have_text("Rest")
    one.get_by_role("button", name="Drop and stick: less").click()
    one.get_by_role("button", name="Stop").click()
    one.get_by_role("button", name="End the session").click()
    one.locator(".sw-s-main").click()
    expect(other.get_by_role("button", name="Start the guided session")).to_be_visible()

    assert [s["amount"] for s in stored(one, "log/")[0]["sets"]] == [3]


@pytest.mark.parametrize(("weight", "side"), [("30", "below"), ("160", "above")])
def test_outside_the_table_there_is_advice(phone: Page, address: str, weight: str, side: str) -> None:
    """A share of body weight alone helps nobody: the guide says whom to ask."""
    phone.goto(f"{address}safety/")
    mine = {"weight": {"number": weight, "unit": "kg"}}
    phone.evaluate("mine => localStorage.setItem('setwright:/:settings', JSON.stringify(mine))", mine)
    phone.clock.install(time=datetime(2027, 8, 20, 18))
    phone.goto(f"{address}{OTHER}#go")
    phone.locator(".sw-s-title").wait_for()
    phone.clock.pause_at(datetime(2027, 8, 20, 18, 1))
    training = Training.__new__(Training)
    training.page = phone
    training.go_to("Goblet squat")
    expect(phone.locator(".sw-session")).to_contain_text(f"Your body weight is {side} this table. Ask your coach")
