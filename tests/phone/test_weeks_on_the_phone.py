"""What a member sees of the own weeks, by a clock that the test turns: no start, groups, a break, a missed week."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import icalendar
import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from phone.conftest import PHONE
from support.serving import served
from support.shared import made_once
from support.site import build
from support.weeks import weeks_project

KEPT = "setwright:/:"


@pytest.fixture(scope="session")
def weeks_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A site whose plans have no start, several, and a break, built once."""
    return made_once(tmp_path_factory, "weeks", _build_weeks) / "site"


def _build_weeks(folder: Path) -> None:
    built = build(weeks_project(folder), sheets="left out")
    assert built.site is not None, (built.looked.findings, built.broken)


@pytest.fixture(scope="session")
def weeks_address(weeks_site: Path) -> Iterator[str]:
    """Where that site is served."""
    with served(weeks_site) as address:
        yield address


def phone_in(browser: Browser, zone: str) -> BrowserContext:
    return browser.new_context(viewport=PHONE, has_touch=True, service_workers="block", timezone_id=zone)


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A phone in the club's time zone, with nothing stored; nothing may leave it but the site's own files."""
    context = phone_in(browser, "Europe/Vienna")
    page = context.new_page()
    asked: list[tuple[str, str]] = []
    page.on("request", lambda request: asked.append((request.method, request.url)))
    yield page
    context.close()

    assert {method for method, _ in asked} <= {"GET"}
    assert [url for _, url in asked if "?" in url or not url.startswith(("http://127.0.0.1", "blob:"))] == []


def at(page: Page, moment: str) -> None:
    """Set the phone's clock, as its own time zone has it."""
    page.clock.set_fixed_time(datetime.fromisoformat(moment))


def train(page: Page, plan: str, session: str, week: int, day: str) -> None:
    """Put a session into the log, as the guided session does."""
    one = {"exercise": "x", "name": "X", "block": "B", "set": 1, "measure": "reps", "amount": 3, "sides": 1, "load": ""}
    entry = {
        "id": f"{day}T18:00:00",
        "plan": plan,
        "session": session,
        "week": week,
        "sets": [one],
        "effort": 6,
        "minutes": 30,
    }
    page.evaluate(
        "([key, entry]) => localStorage.setItem(key, JSON.stringify(entry))", [f"{KEPT}log/{entry['id']}", entry]
    )


def today(page: Page, address: str, plan: str) -> str:
    """Return what the home page says today to a member whose plan it is."""
    page.goto(address)
    pick = """([key, plan]) => {
      const kept = JSON.parse(localStorage.getItem(key) ?? "{}");
      localStorage.setItem(key, JSON.stringify({ ...kept, plan }));
    }"""
    page.evaluate(pick, [f"{KEPT}settings", plan])
    page.goto(address)
    home = page.locator("sw-home")
    home.locator("section").first.wait_for()
    return home.inner_text()


OPEN, HOLIDAYS = "Six weeks at your own pace", "Through the holidays"
STARTER_A, STARTER_B = "Starter A, sit, pull and push", "Starter B, hinge, step and carry"


def test_without_a_start_the_log_is_the_guide(page: Page, weeks_address: str) -> None:
    """First the first session; then, by the log, the second; a choice of the first day is offered."""
    at(page, "2027-12-08T09:00:00")
    first = today(page, weeks_address, "open")
    train(page, OPEN, STARTER_A, 1, "2027-12-07")
    second = today(page, weeks_address, "open")

    assert "Begin when you like" in first
    assert STARTER_A in first
    assert "Next, by your log, in week 1" in second
    assert STARTER_B in second
    assert "Choose your first day" in second


def test_a_first_day_gives_dates_from_then_on(page: Page, weeks_address: str) -> None:
    """Chosen on the plan's page, it stands on home, on the week and on the session, and another window knows it."""
    at(page, "2027-12-08T09:00:00")
    page.goto(f"{weeks_address}plans/open/")
    page.get_by_label("On which day do you begin?").fill("2027-12-06")
    page.get_by_label("On which day do you begin?").blur()
    expect(page.locator("sw-my-weeks")).to_contain_text("Your weeks run from Monday 6 December to Sunday 16 January.")
    expect(page.locator("sw-my-weeks")).to_contain_text("First hill run: Sunday 16 January.")

    assert "This week, in this order" in today(page, weeks_address, "open")
    page.goto(f"{weeks_address}plans/open/week-02/")
    expect(page.locator("sw-own-dates")).to_contain_text("For you: Monday 13 December to Sunday 19 December.")
    page.goto(f"{weeks_address}plans/open/week-02/session-1/")
    expect(page.locator("sw-own-dates")).to_contain_text("For you: Monday 13 December")


def test_the_group_is_picked_in_the_settings(page: Page, weeks_address: str) -> None:
    """Before it, home asks; after it, home has the dates of the Late group."""
    at(page, "2027-12-06T09:00:00")
    assert "Choose your group" in today(page, weeks_address, "groups")

    page.goto(f"{weeks_address}settings/")
    page.locator("sw-my-weeks[data-plan='groups']").get_by_label("Your group").select_option("Late group")
    expect(page.locator("sw-my-weeks[data-plan='groups'] .sw-status")).to_contain_text("Saved on this device.")

    said = today(page, weeks_address, "groups")
    assert "Your group: Late group." in said
    assert "Look at it first" in said
    assert "Monday 6 December" in said


def test_groups_stand_side_by_side_without_javascript(browser: Browser, weeks_address: str) -> None:
    """Week and session show the dates of both groups; nothing of the page waits for a script."""
    context = browser.new_context(viewport=PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{weeks_address}plans/groups/week-02/")
    week = page.locator("article").inner_text()
    page.goto(f"{weeks_address}plans/groups/week-02/monday/")
    session = page.locator("article").inner_text()
    context.close()

    assert "Monday group: 6 to 12 December 2027; Late group: 13 to 19 December 2027" in week
    assert "Monday group: Monday 6 December 2027; Late group: Monday 13 December 2027" in session


@pytest.mark.parametrize(
    ("moment", "says"),
    [
        ("2027-11-29T23:30:00", "It starts on Tuesday 30 November"),
        ("2027-11-30T00:30:00", "Look at it first"),
        ("2027-12-01T12:00:00", "Rest today"),
        ("2027-12-20T23:30:00", "Rest today"),
        ("2027-12-21T00:30:00", "A break. The next week begins on Tuesday 4 January"),
        ("2028-01-03T23:30:00", "A break. The next week begins on Tuesday 4 January"),
        ("2028-01-04T00:30:00", "Look at it first"),
        ("2028-01-25T12:00:00", "This plan has ended."),
    ],
)
@pytest.mark.parametrize("zone", ["Europe/Vienna", "Pacific/Auckland", "America/Anchorage"])
def test_today_goes_by_the_clock_on_the_wall(
    browser: Browser, weeks_address: str, moment: str, says: str, zone: str
) -> None:
    """Before, during, in the break and after, half an hour on either side of midnight, in three time zones."""
    context = phone_in(browser, zone)
    page = context.new_page()
    page.clock.set_fixed_time(datetime.fromisoformat(f"{moment}{OFFSETS[zone]}"))
    said = today(page, weeks_address, "break")
    context.close()

    assert says in said


OFFSETS = {"Europe/Vienna": "+01:00", "Pacific/Auckland": "+13:00", "America/Anchorage": "-09:00"}
"""From UTC in December and January (IANA time zone database): summer in Auckland."""


def test_in_a_break_its_reason_is_told(page: Page, weeks_address: str) -> None:
    """On Christmas Eve: the hut is closed, and on which day it goes on."""
    at(page, "2027-12-24T09:00:00")
    said = today(page, weeks_address, "break")

    assert "The hut is closed over the holidays." in said
    assert "The next week begins on Tuesday 4 January" in said


def test_days_stay_days_when_clocks_go_forward(page: Page, weeks_address: str) -> None:
    """Begun on Monday 22 March 2027: Sunday 28 March, with an hour less, ends week 1, and Monday begins week 2."""
    page.goto(weeks_address)
    own = {"plans": {"open": {"group": "", "begins": "2027-03-22", "moved": []}}}
    page.evaluate("([key, own]) => localStorage.setItem(key, JSON.stringify(own))", [f"{KEPT}settings", own])

    page.clock.set_fixed_time(datetime.fromisoformat("2027-03-28T23:30:00+02:00"))
    assert "All of week 1" in today(page, weeks_address, "open")
    page.clock.set_fixed_time(datetime.fromisoformat("2027-03-29T00:30:00+02:00"))
    assert "All of week 2" in today(page, weeks_address, "open")


def test_a_missed_week_is_carried_on_from(page: Page, weeks_address: str) -> None:
    """Nothing logged in week 2: the phone offers to go on, says what that does, moves the weeks and undoes it."""
    page.goto(weeks_address)
    train(page, HOLIDAYS, "Foundation A, squat and step down", 1, "2027-11-30")
    at(page, "2027-12-14T09:00:00")
    assert "Your log holds nothing of the last week." in today(page, weeks_address, "break")

    page.locator("sw-home").get_by_text("Carry on where you stopped").click()
    weeks = page.locator("sw-my-weeks")
    expect(weeks).to_contain_text("Your last week then ends on Monday 31 January.")
    expect(weeks).to_contain_text("1 week of the plan then begins after Night relay on Sunday 23 January.")
    expect(weeks).to_contain_text("Ask a doctor or a physiotherapist before you go on.")
    weeks.get_by_role("button", name="Carry on where I stopped").click()
    expect(weeks).to_contain_text("From week 2 on, 1 week later.")
    expect(weeks).to_contain_text("This is week 2.")

    weeks.get_by_role("button", name="Undo").click()
    expect(weeks).to_contain_text("This is week 3.")


def test_a_long_gap_proposes_the_way_back(page: Page, weeks_address: str) -> None:
    """After two weeks and more: start easier, with the lighter week; after illness or injury, a clinician decides."""
    page.goto(weeks_address)
    own = {"plans": {"open": {"group": "", "begins": "2027-11-01", "moved": []}}}
    page.evaluate("([key, own]) => localStorage.setItem(key, JSON.stringify(own))", [f"{KEPT}settings", own])
    for week, day in ((1, "2027-11-02"), (2, "2027-11-09"), (3, "2027-11-16"), (4, "2027-11-23")):
        train(page, OPEN, STARTER_A, week, day)
    at(page, "2027-12-14T09:00:00")
    page.goto(f"{weeks_address}plans/open/")
    weeks = page.locator("sw-my-weeks")

    expect(weeks).to_contain_text("start easier than you stopped")
    expect(weeks).to_contain_text("Ask a doctor or a physiotherapist before you go on.")
    expect(weeks.get_by_role("link", name="week 4, a lighter one")).to_have_attribute(
        "href", "../../plans/open/week-04/"
    )


def test_the_own_dates_go_into_a_file(page: Page, weeks_address: str) -> None:
    """Made on the device: six weeks, each an entry over its own days, with the member's own start."""
    page.goto(weeks_address)
    own = {"plans": {"open": {"group": "", "begins": "2027-11-01", "moved": []}}}
    page.evaluate("([key, own]) => localStorage.setItem(key, JSON.stringify(own))", [f"{KEPT}settings", own])
    page.goto(f"{weeks_address}plans/open/")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save my dates as a calendar file").click()
    calendar = icalendar.Calendar.from_ical(Path(saved.value.path()).read_bytes())
    days = [str(event["DTSTART"].dt) for event in calendar.walk("VEVENT")]

    assert saved.value.suggested_filename == "six-weeks-at-your-own-pace.ics"
    assert days == ["2027-11-01", "2027-11-08", "2027-11-15", "2027-11-22", "2027-11-29", "2027-12-06"]


def test_the_plans_page_leads_to_each_groups_calendar(page: Page, weeks_address: str) -> None:
    """Two groups, two files, each a calendar; the plan without a start leads to none."""
    page.goto(f"{weeks_address}plans/groups/")
    links = page.locator("a[href$='.ics']")

    assert links.all_inner_texts() == ["Monday group", "Late group"]
    for link in links.all():
        raw = page.request.get(f"{weeks_address}plans/groups/{link.get_attribute('href')}").body()
        assert icalendar.Calendar.from_ical(raw).walk("VEVENT")
    page.goto(f"{weeks_address}plans/open/")
    assert page.locator("a[href$='.ics']").count() == 0


def test_the_own_weeks_are_in_a_saved_copy(page: Page, weeks_address: str) -> None:
    """A copy of the settings holds group, first day and moves, and erasing takes them away."""
    page.goto(weeks_address)
    own = {"plans": {"open": {"group": "", "begins": "2027-11-01", "moved": [{"week": 2, "weeks": 1}]}}}
    page.evaluate("([key, own]) => localStorage.setItem(key, JSON.stringify(own))", [f"{KEPT}settings", own])
    page.goto(f"{weeks_address}settings/")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save a copy as a file").click()

    assert '"begins":"2027-11-01"' in Path(saved.value.path()).read_text("utf-8").replace(" ", "").replace("\n", "")


def keep(page: Page, key: str, text: str) -> None:
    """Put a text into the storage as it is."""
    page.evaluate("([key, text]) => localStorage.setItem(key, text)", [KEPT + key, text])


def test_a_session_may_be_left_out_and_taken_back(page: Page, weeks_address: str) -> None:
    """Without dates and with them the next one comes; no tick, and the plan's page lists what is left."""
    at(page, "2027-12-08T09:00:00")
    assert STARTER_A in today(page, weeks_address, "open")
    home = page.locator("sw-home")
    home.get_by_role("button", name="Leave it out").click()
    expect(home.locator("h2").first).to_have_text(STARTER_B)
    expect(home).to_contain_text(f"You leave out {STARTER_A} of week 1.")
    home.get_by_role("button", name="Undo").click()
    expect(home.locator("h2").first).to_have_text(STARTER_A)

    home.get_by_role("button", name="Leave it out").click()
    page.goto(f"{weeks_address}plans/open/")
    page.get_by_label("On which day do you begin?").fill("2027-12-06")
    page.get_by_label("On which day do you begin?").blur()
    expect(page.locator("sw-my-weeks")).to_contain_text(f"You leave out {STARTER_A} of week 1.")
    said = today(page, weeks_address, "open")
    assert f"{STARTER_A}: left out" in said
    assert "✓" not in said
    expect(home.locator("h2").first).to_have_text(STARTER_B)


def test_after_a_year_carrying_on_begins_this_week(page: Page, weeks_address: str) -> None:
    """Two weeks done, then nothing for a year: one touch, and week 3 is this week's; it says to start easier."""
    page.goto(weeks_address)
    keep(page, "settings", '{"plans": {"open": {"group": "", "begins": "2027-11-01", "moved": []}}}')
    train(page, OPEN, STARTER_A, 1, "2027-11-02")
    train(page, OPEN, STARTER_A, 2, "2027-11-09")
    at(page, "2028-11-15T09:00:00")
    assert "Your log holds nothing of the last 52 weeks." in today(page, weeks_address, "open")
    page.goto(f"{weeks_address}plans/open/")
    weeks = page.locator("sw-my-weeks")
    expect(weeks).to_contain_text("start easier than you stopped")
    weeks.get_by_role("button", name="Carry on where I stopped").click()

    expect(weeks).to_contain_text("This is week 3.")
    assert STARTER_A in today(page, weeks_address, "open")


def test_a_copy_brings_the_own_weeks_to_another_phone(browser: Browser, page: Page, weeks_address: str) -> None:
    """Saved on one phone and read on another with nothing stored: the same days, moves and what was left out."""
    page.goto(weeks_address)
    own = '{"group": "", "begins": "2027-11-01", "moved": [{"week": 2, "weeks": 1}], "left": ["1 session-2"]}'
    keep(page, "settings", f'{{"plan": "open", "plans": {{"open": {own}}}}}')
    page.goto(f"{weeks_address}settings/")
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save a copy as a file").click()
    context = phone_in(browser, "America/New_York")
    other = context.new_page()
    other.goto(f"{weeks_address}settings/")
    with other.expect_file_chooser() as chooser:
        other.get_by_role("button", name="Restore from a file").click()
    chooser.value.set_files({"name": "copy.json", "mimeType": "application/json", "buffer": _read(saved.value.path())})
    other.get_by_role("button", name="Take it").click()
    expect(other.locator("article")).to_contain_text("Restored: your settings")
    other.goto(f"{weeks_address}plans/open/")
    said = other.locator("sw-my-weeks")
    expect(said).to_contain_text("Your weeks run from Monday 1 November to Sunday 19 December.")
    expect(said).to_contain_text("From week 2 on, 1 week later.")
    expect(said).to_contain_text(f"You leave out {STARTER_B} of week 1.")
    context.close()


def _read(path: Path) -> bytes:
    return path.read_bytes()


NONSENSE = [
    "[1, {}, null]", "1e308", "null", '"x"', "{", '{"plan": 1e308, "plans": [[]]}', '{"plan": "open", "plans": 5}',
    '{"plan": "open", "plans": {"open": []}}', '{"plans": {"open": {"group": [], "begins": {}, "moved": {}}}}',
    '{"plans": {"open": {"group": "", "begins": "2027-02-30", "moved": []}}}',
    '{"plans": {"open": {"group": "", "begins": "9999-12-31", "moved": [{"week": 1e308, "weeks": -1}]}}}',
    '{"plans": {"open": {"group": "", "begins": "2027-11-01", "moved": [null, [], {"week": "2", "weeks": 1}]}}}',
    '{"plans": {"open": {"group": "", "begins": "2027-11-01", "moved": [], "left": {"0": 1}}}}',
    '{"plans": {"open": {"group": "", "begins": "2027-11-01", "moved": [], "left": [null, 1e308, [], "x"]}}}',
    '{"plan": "groups", "plans": {"groups": {"group": "no such group", "begins": "2199-12-31", "moved": []}}}',
]  # fmt: skip
"""What a storage may hold that these pages never wrote."""


def test_nonsense_in_the_storage_leaves_every_page_standing(page: Page, weeks_address: str) -> None:
    """Impossible days, numbers beyond all bounds and lists for tables: home and the plan's page still speak."""
    wrong: list[str] = []
    page.on("pageerror", lambda error: wrong.append(str(error)))
    at(page, "2027-12-08T09:00:00")
    for text in NONSENSE:
        page.goto(f"{weeks_address}safety/")
        page.evaluate("localStorage.clear()")
        keep(page, "settings", text)
        keep(page, "log/2027-02-30T99:00:00", text)
        keep(page, "log/2027-12-01T18:00:00", text)
        for path, element in (("", "sw-home"), ("plans/open/", "sw-my-weeks"), ("plans/groups/", "sw-my-weeks")):
            page.goto(weeks_address + path)
            page.locator(f"{element} > *").first.wait_for()
            said = page.locator(element).inner_text()
            assert said.strip(), (text, path)
            assert not [word for word in ("undefined", "NaN", "Invalid", "[object") if word in said], (text, path, said)

    assert wrong == []


def test_two_windows_tell_each_other(page: Page, weeks_address: str) -> None:
    """A first day chosen in one stands in the other; storage emptied in one asks again in the other."""
    at(page, "2027-12-08T09:00:00")
    page.goto(f"{weeks_address}plans/open/")
    other = page.context.new_page()
    at(other, "2027-12-08T09:00:00")
    other.goto(f"{weeks_address}plans/open/")
    page.get_by_label("On which day do you begin?").fill("2027-12-06")
    page.get_by_label("On which day do you begin?").blur()
    expect(other.get_by_label("On which day do you begin?")).to_have_value("2027-12-06")
    expect(other.locator("sw-my-weeks")).to_contain_text("This is week 1.")

    other.evaluate("localStorage.clear()")
    expect(page.get_by_label("On which day do you begin?")).to_have_value("")


@pytest.mark.parametrize(
    ("zone", "begins", "before", "after"),
    [
        ("America/New_York", "2027-03-08", "2027-03-14T23:30:00-04:00", "2027-03-15T00:30:00-04:00"),
        ("America/New_York", "2027-11-01", "2027-11-07T23:30:00-05:00", "2027-11-08T00:30:00-05:00"),
        ("Pacific/Auckland", "2027-09-20", "2027-09-26T23:30:00+13:00", "2027-09-27T00:30:00+13:00"),
        ("Europe/Vienna", "2027-10-25", "2027-10-31T23:30:00+01:00", "2027-11-01T00:30:00+01:00"),
    ],
)
def test_weeks_turn_at_midnight_when_clocks_change(
    browser: Browser, weeks_address: str, zone: str, begins: str, before: str, after: str
) -> None:
    """On the night after clocks were moved, west and east of Greenwich (IANA time zone database)."""
    context = phone_in(browser, zone)
    page = context.new_page()
    page.goto(weeks_address)
    keep(page, "settings", f'{{"plans": {{"open": {{"group": "", "begins": "{begins}", "moved": []}}}}}}')
    for moment, week in ((before, 1), (after, 2)):
        page.clock.set_fixed_time(datetime.fromisoformat(moment))
        assert f"All of week {week}" in today(page, weeks_address, "open")
    context.close()
