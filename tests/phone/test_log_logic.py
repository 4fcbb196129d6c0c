"""The log's arithmetic and its table."""

import csv
import io
import re
from collections.abc import Callable
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

Run = Callable[..., Any]

NAMES = st.text(
    st.characters(codec="utf-8", exclude_categories=("Cs", "Cc")) | st.sampled_from("\",\n\r;'"), max_size=20
)


def session(day: str, effort: int | None, minutes: int) -> dict[str, Any]:
    """Return a logged session without sets."""
    return {
        "id": f"{day}T18:00:00",
        "plan": "P",
        "session": "S",
        "week": 1,
        "sets": [],
        "effort": effort,
        "minutes": minutes,
    }


@pytest.mark.parametrize(("effort", "minutes", "load"), [(7, 40, 280), (0, 40, 0), (10, 1, 10), (None, 40, 0)])
def test_session_load_is_effort_times_minutes(run: Run, effort: int | None, minutes: int, load: int) -> None:
    """Foster C, Med Sci Sports Exerc 1998;30:1164-1168: effort integrated with duration."""
    assert run("log", "m => m.sessionLoad(given)", session("2027-08-20", effort, minutes)) == load


def test_a_week_begins_on_monday(run: Run) -> None:
    """ISO 8601 weeks, as Python's calendar has them, over a leap year and two turns of the year."""
    days = [date(2027, 12, 20) + timedelta(days=n) for n in range(0, 800, 3)]
    mondays = run("log", "m => given.map(m.mondayOf)", [day.isoformat() for day in days])

    assert mondays == [(day - timedelta(days=day.weekday())).isoformat() for day in days]


def test_a_week_without_a_session_is_a_week_of_nothing(run: Run) -> None:
    """The chart leaves a gap where nobody trained, so that weeks stay comparable."""
    sessions = [session("2027-08-02", 5, 40), session("2027-08-05", 6, 50), session("2027-08-18", 7, 30)]
    weeks = run("log", "m => m.weeksOf(given, 16)", sessions)

    assert [(week["monday"], week["load"], week["sessions"]) for week in weeks] == [
        ("2027-08-02", 500, 2),
        ("2027-08-09", 0, 0),
        ("2027-08-16", 210, 1),
    ]


@given(name=NAMES, load=NAMES, effort=st.none() | st.integers(0, 10), amount=st.integers(0, 100))
def test_the_table_is_csv_and_comes_back_whole(run: Run, name: str, load: str, effort: int | None, amount: int) -> None:
    """RFC 4180: Python's csv module reads the same fields, and restoring gives the same session."""
    one = session("2027-08-20", effort, 45)
    entry = {"exercise": "x", "name": f"n{name}", "block": name, "set": 1, "measure": "reps", "amount": amount}
    one["sets"] = [
        entry | {"sides": 2, "load": load, "effort": effort},
        entry | {"sides": 1, "load": "", "effort": None},
    ]
    text = run("csv", "m => m.csvOf([given], 'Here')", one)
    read = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    back = run("csv", "m => m.sessionsIn(given, 'Here')", text)

    assert text.endswith("\r\n")
    assert {len(line) for line in read} == {17}
    assert [line[9] for line in read[1:]] == [f"n{name}"] * 2
    assert back == {"sessions": [one], "skipped": 0, "of": ""}


SIGNS = "=+-@\t\r"
"""What a spreadsheet takes for a formula where a field begins with it (OWASP, CSV Injection; from memory)."""


@given(name=st.tuples(st.text("'", max_size=2), st.sampled_from(SIGNS), NAMES).map("".join), load=NAMES)
def test_no_field_of_the_table_is_a_formula(run: Run, name: str, load: str) -> None:
    """A text that begins with a sign gets an apostrophe, and reading gives the text back as it was."""
    one = session("2027-08-20", 7, 45)
    entry = {"exercise": "x", "name": name, "block": name, "set": 1, "measure": "reps", "amount": 5}
    one["sets"] = [entry | {"sides": 2, "load": load, "effort": None}]
    text = run("csv", "m => m.csvOf([given], 'Here')", one)
    (_, line) = csv.reader(io.StringIO(text, newline=""), strict=True)

    assert [field for field in line if field.startswith(tuple(SIGNS)) and not _is_number(field)] == []
    assert run("csv", "m => m.sessionsIn(given, 'Here')", text)["sessions"] == [one]


def _is_number(field: str) -> bool:
    return re.fullmatch(r"[+-]?\d+(\.\d+)?", field) is not None


@pytest.mark.parametrize("number", ["-5", "+2.5", "0", "12"])
def test_a_number_in_the_table_stays_a_number(run: Run, number: str) -> None:
    """A spreadsheet goes on counting with it."""
    one = session("2027-08-20", 7, 45) | {"plan": number}
    (_, line) = csv.reader(io.StringIO(run("csv", "m => m.csvOf([given], 'Here')", one), newline=""))

    assert line[1] == number


def test_a_line_that_is_none_of_the_table_is_skipped_and_counted(run: Run) -> None:
    """The other lines are read; an empty line at the end, as editors leave it, is no loss."""
    one = session("2027-08-20", 7, 45)
    text = run("csv", "m => m.csvOf([given], 'Here')", one) + "a,b,c\r\n\r\n"

    assert run("csv", "m => m.sessionsIn(given, 'Here')", text) == {"sessions": [one], "skipped": 1, "of": ""}


def test_a_field_of_millions_of_letters_is_read(run: Run) -> None:
    """A table with one huge field neither hangs the page nor breaks it."""
    assert run("csv", "m => m.fieldsOf('\"' + 'a\"\"b'.repeat(1e6) + '\",x')[0].map(f => f.length)") == [3_000_000, 1]
    assert run("csv", "m => m.fieldsOf('\"' + 'a'.repeat(1e6))") == []


@pytest.mark.parametrize("text", ["", "a,b\r\n1,2\r\n", '"open', "{}", "started\r\n"])
def test_another_table_is_refused(run: Run, text: str) -> None:
    """Only the log's own table is read; nothing is guessed."""
    assert run("csv", "m => m.sessionsIn(given) === undefined", text)


@pytest.mark.parametrize(
    "value",
    [
        None,
        7,
        "x",
        [],
        {},
        {"id": "2027-08-20", "sets": []},
        {"id": "2027-08-20T18:00:00"},
        {"id": "../../x", "sets": []},
        {"id": "2027-13-45T18:00:00", "sets": []},
        {"id": "2027-02-29T18:00:00", "sets": []},
        {"id": "2027-08-20T24:00:00", "sets": []},
        {"id": "2027-08-20T18:60:00", "sets": []},
        {"id": "9999-12-31T18:00:00", "sets": []},
        {"id": "0000-01-01T18:00:00", "sets": []},
    ],
)
def test_what_is_no_session_is_left_out(run: Run, value: object) -> None:
    """A file or a storage with something else in it does not break the log."""
    assert run("log", "m => m.loggedFrom(given) === undefined", value)


def test_odd_values_in_a_file_become_plain_ones(run: Run) -> None:
    """Numbers stay in range and texts stay texts, whatever a file says."""
    wild = session("2027-08-20", 99, -5) | {"plan": {"a": 1}, "sets": [{"name": 5, "amount": "many", "effort": 11}]}
    found = run("log", "m => m.loggedFrom(given)", wild)

    assert (found["effort"], found["minutes"], found["plan"]) == (None, 0, "")
    assert (found["sets"][0]["name"], found["sets"][0]["amount"], found["sets"][0]["effort"]) == ("", 0, None)


@pytest.mark.parametrize("time", ["1970-01-01T00:00:07", "2028-02-29T23:59:59", "2199-12-31T12:00:00"])
def test_what_a_calendar_has_is_a_time(run: Run, time: str) -> None:
    """A leap day, and the year that a device tells whose battery was flat (common practice, no source)."""
    assert run("log", "m => m.loggedFrom(given).id", {"id": time, "sets": []}) == time


def test_values_out_of_any_range_are_counted(run: Run) -> None:
    """Minutes of more than a day, endless repetitions, a text without end, more sets than a session can have."""
    wild = session("2027-08-20", 7, 0) | {"minutes": 1e308, "plan": "x" * 5000}
    wild["sets"] = [{"amount": 1e300, "measure": "miles"}] + [None] * 3 + [{}] * 600
    found, mended = run("log", "m => { const c = {count: 0}; return [m.loggedFrom(given, c), c.count]; }", wild)

    assert (found["minutes"], len(found["plan"]), found["sets"][0]["amount"], len(found["sets"])) == (0, 200, 0, 497)
    assert mended == 2 + 2 + 3 + 104
    assert run("log", "m => m.sessionLoad(given)", found) == 0


def test_sessions_of_two_centuries_make_a_short_chart(run: Run) -> None:
    """A session with a wrong date leaves no list of thousands of weeks: the newest sixteen are shown."""
    weeks = run("log", "m => m.weeksOf(given, 16)", [session("1970-01-01", 5, 40), session("2199-12-31", 5, 40)])

    assert len(weeks) == 16
    assert (weeks[-1]["monday"], weeks[-1]["load"], weeks[0]["load"]) == ("2199-12-30", 200, 0)


def test_a_session_of_a_wrong_clock_hides_no_week(run: Run) -> None:
    """A chart ends with this week: what is dated later is counted. Where all is later, this clock is wrong."""
    days = ["2027-08-02", "2027-08-22", "2027-08-23", "2199-12-31"]
    sessions = [session(day, 5, 40) for day in days]
    line = "m => { const {until, later} = m.untilWeekOf(given[0], given[1]); return [until.map(o => o.id), later]; }"

    def until(today: str) -> Any:
        ids, later = run("log", line, [sessions, f"{today}T12:00:00"])
        return [ident[:10] for ident in ids], later

    assert until("2027-08-18") == (days[:2], 2)  # a Wednesday: its week ends on Sunday the 22nd, ISO 8601
    assert until("2027-08-23") == (days[:3], 1)
    assert until("1970-01-01") == (days, 0)


def test_half_of_what_is_counted_becomes_whole(run: Run) -> None:
    """Sets, repetitions, sides, weeks, minutes and efforts are counted; a fraction becomes the nearest one."""
    parts = session("2027-08-20", 7, 40) | {"week": 1.5, "effort": 6.4, "minutes": 42.5}
    parts["sets"] = [{"set": 1.2, "amount": 8.5, "sides": 1.4, "effort": 7.6}]
    found, mended = run("log", "m => { const c = {count: 0}; return [m.loggedFrom(given, c), c.count]; }", parts)

    assert (found["week"], found["effort"], found["minutes"]) == (2, 6, 43)
    assert [found["sets"][0][key] for key in ("set", "amount", "sides", "effort")] == [1, 9, 1, 8]
    assert mended == 7


def test_a_table_says_of_which_club_it_is(run: Run) -> None:
    """Another club's name is given back; one's own, and a table of earlier versions without any, give none."""
    one = session("2027-08-20", 7, 45)
    text = run("csv", "m => m.csvOf([given], 'Reedmere, Paddlers')", one)
    earlier = text.replace(",club", "", 1).replace(',"Reedmere, Paddlers"', "")

    assert run("csv", "m => m.sessionsIn(given, 'Reedmere, Paddlers')", text)["of"] == ""
    assert run("csv", "m => m.sessionsIn(given, 'Here')", text)["of"] == "Reedmere, Paddlers"
    assert run("csv", "m => m.sessionsIn(given, 'Here')", earlier) == {"sessions": [one], "skipped": 0, "of": ""}


PLACES = st.lists(st.sampled_from(["0.0.1", "0.0.2", "0.1.1", "1.0.1"]), unique=True)


@given(stored=PLACES, mine=PLACES, changed=PLACES)
def test_two_windows_of_one_session_lose_no_set(
    run: Run, stored: list[str], mine: list[str], changed: list[str]
) -> None:
    """Every set that either window has is there once; where both have it, what was changed here counts."""
    there = session("2027-08-20", None, 40) | {"sets": [{"place": p, "amount": 1} for p in stored]}
    here = session("2027-08-20", 6, 41) | {"sets": [{"place": p, "amount": 2} for p in mine]}
    whole = run("log", "m => m.merged(given[0], given[1], what => given[2].includes(what))", [there, here, changed])

    assert {s["place"]: s["amount"] for s in whole["sets"]} == {
        place: 2 if place in mine and (place in changed or place not in stored) else 1 for place in {*stored, *mine}
    }
    assert len(whole["sets"]) == len({*stored, *mine})
    assert (whole["effort"], whole["minutes"]) == (6, 40)
