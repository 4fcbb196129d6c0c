"""My log as a member keeps it: looked at, put right, taken out as a table and brought back."""

import csv
import io
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

SQUAT = {"exercise": "goblet-squat", "name": "Goblet squat", "block": "B", "measure": "reps", "sides": 1, "place": ""}
HOLD = {
    "exercise": "wall-sit",
    "name": "Wall sit",
    "block": "B",
    "measure": "hold",
    "sides": 1,
    "load": "",
    "place": "",
}


def one(day: str, sets: list[dict[str, Any]], effort: int | None = 5) -> dict[str, Any]:
    """Return a logged session of 40 minutes at six in the evening."""
    numbered = [{"set": number, "effort": None} | each for number, each in enumerate(sets, 1)]
    whole = {"id": f"{day}T18:00:00", "plan": "P", "session": "Legs", "week": 3, "minutes": 40}
    return whole | {"sets": numbered, "effort": effort}


LOG = [
    one("2027-07-06", [SQUAT | {"amount": 8, "load": "12 kg"}, SQUAT | {"amount": 12, "load": "8 kg"}]),
    one("2027-08-10", [SQUAT | {"amount": 8, "load": "16 kg"}, HOLD | {"amount": 30}]),
    one("2027-08-17", [SQUAT | {"amount": 9, "load": "12.5 kg"}, HOLD | {"amount": 45}]),
]


@pytest.fixture
def log(phone: Page, address: str) -> Page:
    """My log with three sessions of two months, in a small window."""
    phone.set_viewport_size({"width": 360, "height": 740})
    phone.goto(f"{address}safety/")
    line = "all => all.forEach(one => localStorage.setItem('setwright:/:log/' + one.id, JSON.stringify(one)))"
    phone.evaluate(line, LOG)
    phone.goto(f"{address}log/")
    return phone


def stored(page: Page) -> list[Any]:
    """Return the sessions on the device, oldest first."""
    line = "Object.entries(localStorage).filter(([k]) => k.includes(':log/')).map(([, v]) => JSON.parse(v))"
    return sorted(page.evaluate(line), key=lambda session: str(session["id"]))


def choose(page: Page, file: Path) -> None:
    """Choose a file to restore from."""
    with page.expect_file_chooser() as choosing:
        page.get_by_role("button", name="Restore from a file").click()
    choosing.value.set_files(file)


def test_sessions_stand_by_month(log: Page) -> None:
    """August open with two sessions and their load, July a line."""
    months = log.locator("details.sw-month")
    expect(months.first).to_contain_text("August 2027 2 sessions, session load 400")
    expect(months.first.locator("details.sw-logged")).to_have_count(2)
    expect(months.nth(1).locator("details.sw-logged")).to_have_count(0)


def open_newest(page: Page) -> None:
    """Open the newest session."""
    page.locator("details.sw-logged > summary").first.click()


def test_a_set_can_be_put_right(log: Page) -> None:
    """Amount, load and effort of one set; the others stay as they are."""
    open_newest(log)
    log.get_by_role("button", name="Change Goblet squat, set 1").click()
    log.get_by_label("Repetitions").fill("7")
    log.get_by_label("Load", exact=True).fill("16 kg")
    log.locator(".sw-log-sets select").select_option("8")
    log.get_by_role("button", name="Save", exact=True).click()
    expect(log.locator(".sw-log-sets li").first).to_contain_text("7 reps, 16 kg, effort 8")

    changed, same = stored(log)[-1]["sets"]
    assert (changed["amount"], changed["load"], changed["effort"]) == (7, "16 kg", 8)
    assert same == LOG[-1]["sets"][1]


def test_a_set_can_be_deleted(log: Page) -> None:
    """Asked first, and gone for good."""
    log.on("dialog", lambda dialog: dialog.accept())
    open_newest(log)
    log.get_by_role("button", name="Change Wall sit, set 2").click()
    log.get_by_role("button", name="Delete this set").click()
    expect(log.locator(".sw-log-sets li")).to_have_count(1)
    log.reload()

    assert [each["name"] for each in stored(log)[-1]["sets"]] == ["Goblet squat"]


def test_what_is_no_number_changes_nothing(log: Page) -> None:
    """An odd amount is refused in words."""
    open_newest(log)
    log.get_by_role("button", name="Change Goblet squat, set 1").click()
    log.get_by_label("Repetitions").fill("-3")
    log.get_by_role("button", name="Save", exact=True).click()
    expect(log.locator(".sw-status")).to_contain_text("Nothing was changed")

    assert stored(log) == LOG


def test_one_exercise_over_time_has_its_axis_its_table_and_its_bests(log: Page) -> None:
    """Heaviest load of each session from 0 up, the numbers beside it, and the best sets as plain facts."""
    part = log.locator(".sw-one-exercise")
    part.get_by_label("Exercise").select_option(label="Goblet squat")
    expect(part.locator(".sw-scale span")).to_have_text(["16 kg", "0"])
    heights = part.locator("rect").evaluate_all("all => all.map(one => Number(one.getAttribute('height')))")
    part.get_by_text("The numbers").click()
    rows = part.locator("tbody tr").evaluate_all("all => all.map(row => [...row.cells].map(cell => cell.textContent))")

    assert heights == [45, 60, 46.9]  # 12, 16 and 12.5 of 16, of a height of 60
    assert [row[1] for row in rows] == ["12.5 kg", "16 kg", "12 kg"]
    expect(part.locator(".sw-facts")).to_contain_text("Heaviest set16 kg, 8 reps 10 Aug 2027")
    expect(part.locator(".sw-facts")).to_contain_text("Most repetitions8 kg, 12 reps 6 Jul 2027")
    part.get_by_label("Exercise").select_option(label="Wall sit")
    expect(part.locator(".sw-scale span")).to_have_text(["45 s", "0"])
    expect(part.locator(".sw-facts")).to_contain_text("Longest time45 s hold 17 Aug 2027")


def test_a_restore_says_first_what_it_would_bring(log: Page, tmp_path: Path) -> None:
    """One new session, one that lacks a set, one value that differs: looked at, left, then taken; nothing lowered."""
    lower = LOG[1] | {"sets": [LOG[1]["sets"][0] | {"amount": 3}]}
    shorter = LOG[2] | {"sets": [*LOG[2]["sets"], {"set": 3, "effort": None} | HOLD | {"amount": 20}]}
    file = tmp_path / "copy.json"
    file.write_text(json.dumps({"version": 1, "log": [lower, shorter, one("2027-08-24", [])]}), "utf-8")
    choose(log, file)
    preview = log.get_by_role("group", name="What the file would bring")
    expect(preview).to_contain_text("1 session is new. 1 are here and get what they lack (1 sets).")
    expect(preview).to_contain_text("1 value differs: yours stays.")
    preview.get_by_role("button", name="Leave it").click()
    assert stored(log) == LOG
    choose(log, file)
    preview.get_by_role("button", name="Take it").click()
    log.get_by_text("Restored:").wait_for()
    now = stored(log)

    assert [session["id"][:10] for session in now] == ["2027-07-06", "2027-08-10", "2027-08-17", "2027-08-24"]
    assert now[1]["sets"][0]["amount"] == 8
    assert len(now[2]["sets"]) == 3


def test_an_empty_file_gets_an_answer(log: Page, tmp_path: Path) -> None:
    """Nothing in it is not the same as no file picked."""
    (tmp_path / "empty.csv").write_text("")
    choose(log, tmp_path / "empty.csv")
    expect(log.locator(".sw-status")).to_contain_text("This file is empty. Nothing was changed.")


@pytest.mark.parametrize("before", ["", "\ufeff", "sep=;\r\n", "\ufeffsep=;\r\n"])
def test_a_table_that_a_spreadsheet_saved_with_semicolons_is_read(run: Callable[..., Any], before: str) -> None:
    """As spreadsheets write where numbers have commas: semicolons, a byte-order mark, a first line that names them."""
    table = csv.reader(io.StringIO(run("csv", "m => m.csvOf(given)", LOG), newline=""))
    out = io.StringIO(newline="")
    csv.writer(out, delimiter=";").writerows(table)

    read = run("csv", "m => m.sessionsIn(given).sessions", before + out.getvalue())
    assert [one | {"sets": [each | {"place": ""} for each in one["sets"]]} for one in read] == LOG


def test_a_comma_in_a_number_of_such_a_table_is_a_point(run: Callable[..., Any]) -> None:
    """7,5 repetitions' worth of effort is 7.5, and not nothing."""
    text = run("csv", "m => m.csvOf(given)", [one("2027-08-17", [], 7)]).replace(",", ";").replace(";7;280", ";7,5;300")
    (read,) = run("csv", "m => m.sessionsIn(given).sessions", text)

    assert read["effort"] == 7.5


def test_weeks_and_bests_count_any_unit(run: Callable[..., Any]) -> None:
    """35 lb are 15.9 kg (0.45359237 kg, 1959): heavier than 12 kg, lighter than 16 kg."""
    sessions = [
        one("2027-08-17", [SQUAT | {"amount": 5, "load": "16 kg"}]),
        one("2027-08-10", [SQUAT | {"amount": 5, "load": "35 lb"}]),
    ]
    found = run("history", "m => m.historyOf(given, 'goblet-squat')", sessions)
    best = run("history", "m => m.bestsOf(m.historyOf(given, 'goblet-squat')).heaviest.best.load", sessions)

    assert [row["value"] for row in found["rows"]] == [15.9, 16]
    assert best == "16 kg"
    assert date.fromisoformat(found["rows"][0]["id"][:10]) == date(2027, 8, 10)
