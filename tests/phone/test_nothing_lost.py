"""Nothing costs a member a set: no odd entry, no full or blocked storage, no other window, no file."""

import json
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Dialog, Page, expect

from .conftest import PHONE

SLIP_MS = 420
SESSION = "plans/relay/week-07/tuesday/"
GOOD = {"id": "2027-08-20T18:00:00", "plan": "P", "session": "Legs", "week": 3, "sets": [], "effort": 5, "minutes": 40}
SET = {"exercise": "x", "name": "Squat", "block": "B", "set": 1, "measure": "reps", "amount": 8, "sides": 1}
"""As a session in the storage has it, without load, effort and place."""

FULL = """() => {
  for (let size = 1 << 23; size >= 1; size >>= 1) {
    try { localStorage.setItem('junk' + size, 'x'.repeat(size)); } catch { /* half as much, then */ }
  }
}"""
ROOM = "Object.keys(localStorage).filter(key => key.startsWith('junk')).forEach(key => localStorage.removeItem(key))"


def keep(page: Page, entries: dict[str, Any]) -> None:
    """Put values into the storage, each under its key; a text as it stands."""
    for key, value in entries.items():
        text = value if isinstance(value, str) else json.dumps(value)
        page.evaluate("([key, text]) => localStorage.setItem('setwright:/:' + key, text)", [key, text])


def sessions(page: Page) -> list[Any]:
    """Return what lies under the keys of the log."""
    line = "Object.entries(localStorage).filter(([k]) => k.includes(':log/')).map(([, v]) => JSON.parse(v))"
    return list(page.evaluate(line))


def choose(page: Page, file: Path) -> None:
    """Choose a file as a member does."""
    with page.expect_file_chooser() as choosing:
        page.get_by_role("button", name="Restore from a file").click()
    choosing.value.set_files(file)


def restore(page: Page, file: Path) -> None:
    """Choose a file, look at what it would bring, and take it."""
    choose(page, file)
    page.get_by_role("button", name="Take it").click()


BAD = {
    "log/2027-13-45T18:00:00": GOOD | {"id": "2027-13-45T18:00:00"},
    "log/9999-12-31T18:00:00": GOOD | {"id": "9999-12-31T18:00:00"},
    "log/2027-08-21T18:00:00": "{half a",
}


def test_a_bad_entry_never_stops_the_page(phone: Page, address: str, tmp_path: Path) -> None:
    """The good session is shown, the bad ones are counted, kept as they stand, saved and deleted only when asked."""
    phone.goto(f"{address}safety/")
    keep(phone, {"log/2027-08-20T18:00:00": GOOD} | BAD)
    before = phone.evaluate("({...localStorage})")
    phone.goto(f"{address}log/")

    expect(phone.locator("sw-log .sw-unreadable")).to_contain_text("3 entries cannot be read")
    expect(phone.locator("sw-log details.sw-logged")).to_have_count(1)
    expect(phone.locator("sw-log figcaption")).to_contain_text("Highest: 200.")
    assert phone.evaluate("({...localStorage})") == before

    with phone.expect_download() as saving:
        phone.get_by_role("button", name="Save what cannot be read").click()
    saving.value.save_as(tmp_path / "bad.json")
    kept = json.loads((tmp_path / "bad.json").read_text("utf-8"))
    assert kept == {key: value if isinstance(value, str) else json.dumps(value) for key, value in BAD.items()}

    phone.on("dialog", lambda dialog: dialog.accept())
    phone.get_by_role("button", name="Delete what cannot be read").click()
    expect(phone.locator("sw-log .sw-unreadable")).to_have_count(0)
    assert [one["id"] for one in sessions(phone)] == [GOOD["id"]]


def test_minutes_beyond_a_day_draw_no_chart_of_their_own(phone: Page, address: str) -> None:
    """1e308 minutes count as none; the week beside them keeps its bar."""
    phone.clock.set_fixed_time("2027-08-21T12:00:00")
    phone.goto(f"{address}safety/")
    endless = '{"id": "2027-08-13T18:00:00", "sets": [], "effort": 9, "minutes": 1e308}'
    keep(phone, {"log/2027-08-20T18:00:00": GOOD, "log/2027-08-13T18:00:00": endless})
    phone.goto(f"{address}log/")

    expect(phone.locator("sw-log figcaption")).to_contain_text("Highest: 200.")
    assert phone.locator(".sw-load-chart rect").evaluate_all("all => all.map(one => one.getAttribute('height'))") == [
        "0",
        "60",
    ]


@pytest.mark.parametrize("place", ["settings/", "log/"])
def test_a_file_with_bad_entries_brings_the_good_ones(phone: Page, address: str, tmp_path: Path, place: str) -> None:
    """How many were skipped, and how many values could not be, is said; the settings that are fine are taken."""
    phone.goto(address + place)
    file = tmp_path / "copy.json"
    log = [GOOD, *[value for value in BAD.values() if not isinstance(value, str)], 7]
    settings = {"weight": {"number": "9999", "unit": "kg"}, "text": "large", "lifts": {"a": {"number": "x"}}}
    file.write_text(json.dumps({"version": 1, "log": log, "settings": settings}), "utf-8")
    restore(phone, file)

    expect(phone.locator(".sw-status").last).to_contain_text("1 session. 3 entries were skipped")
    assert [one["id"] for one in sessions(phone)] == [GOOD["id"]]
    if place == "settings/":
        expect(phone.locator(".sw-status").last).to_contain_text("2 values that cannot be")
        expect(phone.get_by_label("Large", exact=True)).to_be_checked()
        expect(phone.get_by_label("Weight", exact=True)).to_have_value("")


@pytest.mark.parametrize(("place", "kind"), [("settings/", "json"), ("log/", "json"), ("log/", "csv")])
def test_a_file_of_another_club_is_restored_only_when_asked(
    phone: Page, address: str, tmp_path: Path, place: str, kind: str
) -> None:
    """Both clubs are named; "no" changes nothing, "yes" restores."""
    phone.goto(address + place)
    file = tmp_path / f"copy.{kind}"
    log = phone.evaluate(
        "async one => (await import(new URL('/assets/js/logic/csv.js', location.href))).csvOf([one], 'Reedmere')", GOOD
    )
    copy = {"of": "Reedmere", "version": 1, "log": [GOOD], "settings": {"text": "large"}}
    file.write_text(log if kind == "csv" else json.dumps(copy), "utf-8")
    asked: list[str] = []
    answers = iter((False, True))

    def answer(dialog: Dialog) -> None:
        asked.append(dialog.message)
        dialog.accept() if next(answers) else dialog.dismiss()

    phone.on("dialog", answer)
    choose(phone, file)
    expect(phone.locator(".sw-status").last).to_have_text("Nothing was changed.")
    assert (len(asked), sessions(phone)) == (1, [])

    restore(phone, file)
    expect(phone.locator(".sw-status").last).to_contain_text("1 session.")
    assert "Reedmere" in asked[1]
    assert "Tarnbeck Orienteers" in asked[1]
    assert [one["id"] for one in sessions(phone)] == [GOOD["id"]]


def test_a_session_of_another_century_leaves_the_chart_to_the_real_weeks(phone: Page, address: str) -> None:
    """It stands in the list, where it can be deleted, and the chart says that it is left out."""
    phone.clock.set_fixed_time("2027-08-21T12:00:00")
    phone.goto(f"{address}safety/")
    wrong = GOOD | {"id": "2199-12-31T18:00:00", "minutes": 90}
    keep(phone, {"log/2027-08-20T18:00:00": GOOD, "log/2199-12-31T18:00:00": wrong})
    phone.goto(f"{address}log/")

    expect(phone.locator("sw-log figcaption")).to_contain_text("Highest: 200. 1 session is dated later than this week")
    phone.locator("sw-log details.sw-month > summary").last.click()
    expect(phone.locator("sw-log details.sw-logged")).to_have_count(2)


def test_a_weight_in_an_unknown_unit_is_no_weight_in_kilograms(phone: Page, address: str, tmp_path: Path) -> None:
    """68 stone are not 68 kg, nor are 150 "lbs" 150 kg, for which a member would take twice the load."""
    phone.goto(f"{address}settings/")
    file = tmp_path / "copy.json"
    lift = {"number": "150", "unit": "lbs", "reps": 1, "low": "150", "high": "150"}
    settings = {"weight": {"number": "68", "unit": "stone"}, "lifts": {"goblet-squat": lift}}
    file.write_text(json.dumps({"version": 1, "log": [], "settings": settings}), "utf-8")
    restore(phone, file)

    expect(phone.locator(".sw-status").last).to_contain_text("2 values that cannot be")
    expect(phone.get_by_label("Weight", exact=True)).to_have_value("")


def test_a_copy_without_settings_leaves_mine(phone: Page, address: str, tmp_path: Path) -> None:
    """Restoring a session that was saved alone is no reason to forget a body weight."""
    phone.goto(f"{address}safety/")
    keep(phone, {"settings": {"weight": {"number": "68", "unit": "kg"}}})
    phone.goto(f"{address}settings/")
    file = tmp_path / "session.json"
    file.write_text(json.dumps({"version": 1, "log": [GOOD]}), "utf-8")
    restore(phone, file)
    phone.get_by_text("Restored: 1 session.").wait_for()

    expect(phone.get_by_label("Weight", exact=True)).to_have_value("68")


def test_an_older_copy_takes_no_set_away(phone: Page, address: str, tmp_path: Path) -> None:
    """A copy from the middle of a session is restored after its end: all that the log has stays as it is."""
    phone.goto(f"{address}log/")
    later = [SET, SET | {"set": 2}]
    keep(phone, {"log/2027-08-20T18:00:00": GOOD | {"sets": later}})
    file = tmp_path / "copy.json"
    file.write_text(json.dumps({"version": 1, "log": [GOOD | {"sets": [SET | {"amount": 9}]}]}), "utf-8")
    restore(phone, file)
    phone.get_by_text("Restored: 1 session.").wait_for()

    assert [(s["set"], s["amount"]) for s in sessions(phone)[0]["sets"]] == [(1, 8), (2, 8)]


def begin(page: Page, address: str) -> None:
    """Open the guided session and warm up."""
    page.goto(address + SESSION)
    page.get_by_role("button", name="Start the guided session").click()
    main(page)


def main(page: Page) -> None:
    """Press the large button, and not so fast again that it would count as a slip."""
    page.wait_for_timeout(SLIP_MS)
    page.locator(".sw-s-main").click()


def test_two_windows_log_into_one_session(context: BrowserContext, address: str) -> None:
    """The same session in a second window: both stand at one place, and what either logs stays."""
    first, second = context.new_page(), context.new_page()
    begin(first, address)
    main(first)
    second.goto(address + SESSION)
    second.locator(".sw-s-title").wait_for()
    main(second)  # the rest is skipped
    main(second)
    first.get_by_role("button", name="Drop and stick: less").click()
    (kept,) = sessions(first)

    assert [(s["set"], s["amount"]) for s in kept["sets"]] == [(1, 4), (2, 3)]


def test_effort_given_in_the_log_keeps_what_came_meanwhile(context: BrowserContext, address: str) -> None:
    """My log lies open in another window while the session goes on."""
    training, log = context.new_page(), context.new_page()
    begin(training, address)
    main(training)
    log.goto(f"{address}log/")
    log.locator("summary").first.click()
    main(training)
    main(training)
    log.locator("details.sw-logged > summary").first.click()
    log.get_by_label("Effort of the whole session").select_option("6")
    log.get_by_text("Saved on this device.").wait_for()
    (kept,) = sessions(log)

    assert (len(kept["sets"]), kept["effort"]) == (2, 6)


def test_a_setting_changed_in_another_window_stays(context: BrowserContext, address: str) -> None:
    """A page that slept through the change puts its own change on top, and not everything that it remembers."""
    page = context.new_page()
    page.goto(f"{address}settings/")
    page.get_by_label("Sound").wait_for()
    # A page in the browser's cache of pages hears of no change.
    keep(page, {"settings": {"weight": {"number": "68", "unit": "kg"}}})
    page.get_by_label("Largest").check()
    page.get_by_text("Saved on this device.").wait_for()
    page.reload()

    expect(page.get_by_label("Weight", exact=True)).to_have_value("68")
    expect(page.get_by_label("Largest")).to_be_checked()


def test_a_session_that_finds_no_room_is_not_dropped(phone: Page, address: str, tmp_path: Path) -> None:
    """Full to the end: said in the session and after it; its sets go into a file, which My log restores."""
    begin(phone, address)
    main(phone)
    phone.evaluate(FULL)
    main(phone)
    main(phone)
    expect(phone.locator(".sw-s-warning")).to_contain_text("The sets of this session are on this page only")
    phone.get_by_role("button", name="Stop").click()
    phone.get_by_role("button", name="End the session").click()
    main(phone)
    rescue = phone.get_by_role("alert")
    expect(rescue).to_contain_text("This session is not saved on this device.")
    with phone.expect_download() as saving:
        rescue.get_by_role("button", name="Save the sets as a file").click()
    file = tmp_path / "session.json"
    saving.value.save_as(file)
    phone.evaluate(ROOM)
    rescue.get_by_role("button", name="Try again").click()
    expect(phone.locator(".sw-saved")).to_contain_text("Session saved on this device.")
    (kept,) = sessions(phone)
    assert len(kept["sets"]) == 2

    phone.evaluate("localStorage.clear()")
    phone.goto(f"{address}log/")
    restore(phone, file)
    phone.get_by_text("Restored: 1 session.").wait_for()
    assert [one["sets"] for one in sessions(phone)] == [kept["sets"]]


def test_leaving_the_page_with_unsaved_sets_asks_first(context: BrowserContext, address: str) -> None:
    """The browser's own question stands between a member and sets that are nowhere else."""
    page = context.new_page()
    begin(page, address)
    page.evaluate(FULL)
    main(page)
    expect(page.locator(".sw-s-warning")).to_contain_text("no room left")
    with page.expect_event("dialog") as asking:
        page.close(run_before_unload=True)

    assert asking.value.type == "beforeunload"
    asking.value.accept()


def test_blocked_storage_is_said_before_the_session(browser: Browser, address: str) -> None:
    """With storage switched off the page says so before the first set; the session runs, and its sets can be saved."""
    context = browser.new_context(viewport=PHONE, service_workers="block")
    context.add_init_script("Storage.prototype.setItem = () => { throw new DOMException('no', 'SecurityError'); }")
    page = context.new_page()
    page.goto(address + SESSION)
    expect(page.locator("sw-guide")).to_contain_text("keeps nothing for this site")
    begin(page, address)
    main(page)
    with page.expect_download() as saving:
        page.locator(".sw-s-warning").get_by_role("button", name="Save the sets as a file").click()
    log = json.loads(Path(saving.value.path()).read_text("utf-8"))["log"]
    context.close()

    assert [s["name"] for s in log[0]["sets"]] == ["Drop and stick"]


@pytest.mark.parametrize(
    "change", [{"at": 9999}, {"at": 1.5}, {"at": -1}, {"started": 1e300}, {"begun": "x", "at": "y"}, {"more": 1e300}]
)
def test_a_spoilt_place_begins_anew(phone: Page, address: str, change: dict[str, Any]) -> None:
    """Where a session's place cannot be one, the page offers a fresh start instead of breaking."""
    begin(phone, address)
    keep(phone, {"now": json.loads(phone.evaluate("localStorage.getItem('setwright:/:now')")) | change})
    phone.reload()

    expect(phone.get_by_role("button", name="Start the guided session")).to_be_visible()


def test_minutes_that_were_typed_stay(phone: Page, address: str) -> None:
    """Minutes first, effort after: the log has the minutes as typed."""
    phone.clock.install(time=datetime(2027, 8, 17, 18))
    begin(phone, address)
    main(phone)
    phone.get_by_role("button", name="Stop").click()
    phone.get_by_role("button", name="End the session").click()
    phone.get_by_label("Minutes").fill("52")
    phone.get_by_label("Minutes").press("Tab")
    phone.get_by_label("How hard was all of it?").select_option("7")
    expect(phone.locator(".sw-s-sum")).to_have_text("Session load: 7 × 52 = 364")

    assert (sessions(phone)[0]["effort"], sessions(phone)[0]["minutes"]) == (7, 52)


def test_a_log_of_years_draws_what_is_looked_at(phone: Page, address: str) -> None:
    """A thousand sessions: the newest month is open, the others are a line each until they are opened."""
    phone.goto(f"{address}safety/")
    phone.evaluate(
        """good => {
          for (let n = 0; n < 1000; n += 1) {
            const id = new Date(Date.UTC(2021, 0, 1 + 2 * n, 18)).toISOString().slice(0, 19);
            localStorage.setItem('setwright:/:log/' + id, JSON.stringify({...good, id}));
          }
        }""",
        GOOD | {"sets": [SET]},
    )
    phone.goto(f"{address}log/")
    months = phone.locator("details.sw-month")
    expect(months.first).to_contain_text("June 2026")
    newest = phone.locator("details.sw-logged").count()
    months.nth(1).locator("> summary").click()

    assert months.count() == 66
    assert newest < 16
    expect(phone.locator("details.sw-logged")).to_have_count(newest + 16)
