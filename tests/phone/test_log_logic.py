"""The log's arithmetic and its table."""

import csv
import io
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
    text = run("csv", "m => m.csvOf([given])", one)
    read = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    back = run("csv", "m => m.sessionsIn(given)", text)

    assert text.endswith("\r\n")
    assert {len(line) for line in read} == {16}
    assert [line[9] for line in read[1:]] == [f"n{name}"] * 2
    assert back == [one]


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
