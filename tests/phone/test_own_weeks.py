"""A member's own weeks, by the modules that work them out: the days that the pages show, wherever the member is."""

import random
from collections.abc import Callable, Iterator
from datetime import date, timedelta
from typing import Any

import icalendar
import pytest
import vobject
from playwright.sync_api import Browser

from setwright.model.calendar import Break, week_starts
from support.serving import served
from support.site import ROOT

ASSETS = ROOT / "src" / "setwright" / "phone" / "assets"
ZONES = ["UTC", "Europe/Vienna", "America/New_York", "Pacific/Apia", "Australia/Lord_Howe"]
"""Both sides of the date line, both hemispheres' summer time, and one whose clocks move by half an hour."""

Run = Callable[..., Any]


def runs_in(browser: Browser, zone: str) -> Iterator[Run]:
    with served(ASSETS) as address:
        context = browser.new_context(timezone_id=zone)
        page = context.new_page()
        page.goto(f"{address}js/logic/week.js")

        def call(module: str, line: str, given: object = None) -> Any:
            code = f"async given => ({line})(await import('{address}js/logic/{module}.js'), given)"
            return page.evaluate(code, given)

        yield call
        context.close()


@pytest.fixture(scope="module")
def run(browser: Browser) -> Iterator[Run]:
    """Runs a line of JavaScript with a logic module and what is given."""
    yield from runs_in(browser, "Europe/Vienna")


@pytest.fixture(scope="module", params=ZONES)
def anywhere(browser: Browser, request: pytest.FixtureRequest) -> Iterator[Run]:
    """The same on devices around the world."""
    yield from runs_in(browser, request.param)


def day(weekday: int | None, number: int = 1, name: str = "Legs", at: str | None = None) -> dict[str, Any]:
    names = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
    place = f"session-{number}" if weekday is None else names[weekday] + (f"-{number}" if number > 1 else "")
    return {
        "place": place, "planned": place, "day": weekday, "number": number, "at": at, "name": name, "time": "30 min",
        "longest_s": 1790, "url": f"plans/p/{place}/",
    }  # fmt: skip


def plan(days: list[dict[str, Any]], weeks: int = 6, **more: Any) -> dict[str, Any]:
    """Return a plan as the site hands it to the phone; week 4 is lighter, the last one a taper."""
    kinds = {4: "lighter", weeks: "taper"}
    return {
        "plan": "Spring", "ident": "spring", "url": "plans/spring/", "long_gap": 2, "groups": [], "first": None,
        "breaks": [], "event": None,
        "weeks": [
            {"number": n, "url": f"plans/spring/week-{n:02}/", "kind": kinds.get(n, "normal"), "days": days}
            for n in range(1, weeks + 1)
        ],
    } | more  # fmt: skip


def own(begins: str | None = None, group: str = "", *moved: tuple[int, int]) -> dict[str, Any]:
    moves = [{"week": week, "weeks": weeks} for week, weeks in moved]
    return {"group": group, "begins": begins, "moved": moves, "left": []}


def group(starts: str, event: str | None = None, name: str = "") -> dict[str, Any]:
    return {"name": name, "slug": name.lower(), "starts": starts, "event": event}


WEEKS = "(m, given) => given.map(one => m.weeksFor(one.plan, one.own))"


def test_the_phone_finds_the_weeks_that_the_pages_show(anywhere: Run) -> None:
    """For 300 plans with breaks, from any first day: the same first day of every week as ``week_starts`` gives."""
    chance, cases, expected = random.Random(5), [], []  # noqa: S311 - a row of cases, always the same
    for _ in range(300):
        first = date(2026, 1, 1) + timedelta(days=chance.randrange(1500))
        spans, at = [], first
        for _ in range(chance.randrange(4)):
            at += timedelta(days=chance.randrange(1, 40))
            spans.append((at, at + timedelta(days=chance.randrange(30))))
            at = spans[-1][1] + timedelta(days=1)
        written = [{"from": begin.isoformat(), "to": end.isoformat(), "why": "Closed."} for begin, end in spans]
        cases.append({"plan": plan([day(2)], 12, groups=[group(first.isoformat())], breaks=written), "own": own()})
        expected.append(week_starts(first, 12, [Break.model_validate(one) for one in written]))
    found = anywhere("week", WEEKS, cases)

    assert [[date.fromisoformat(week["starts"]) for week in weeks] for weeks in found] == [
        list(one) for one in expected
    ]


def test_a_start_of_ones_own_keeps_every_distance(anywhere: Run) -> None:
    """Whichever day of four years a member begins on, sessions on weekdays and the event lie as far apart as ever."""
    days = [day(1), day(4)]
    begun = [(date(2026, 1, 1) + timedelta(days=n)).isoformat() for n in range(4 * 365)]
    event = {"name": "Race", "week": 6, "day": 6}
    cases = [{"plan": plan(days, event=event, first=0), "own": own(one)} for one in begun]
    line = """(m, given) => given.map(one => {
      const weeks = m.weeksFor(one.plan, one.own);
      return [...weeks.flatMap(week => week.days.map(day => day.date)), m.eventOf(one.plan, weeks)];
    })"""
    found = [[date.fromisoformat(one) for one in dates] for dates in anywhere("week", line, cases)]
    distances = {tuple((one - dates[0]).days for one in dates) for dates in found}

    assert distances == {(0, 3, 7, 10, 14, 17, 21, 24, 28, 31, 35, 38, 40)}
    for first, dates in zip(begun, found, strict=True):
        assert dates[0].isoformat() >= first
        assert (dates[0] - date.fromisoformat(first)).days < 7
        assert dates[0].weekday() == 1


def test_sessions_on_any_day_begin_on_any_day(anywhere: Run) -> None:
    """A plan whose days are open has weeks from the very day on which the member begins."""
    begun = [(date(2027, 3, 20) + timedelta(days=n)).isoformat() for n in range(400)]
    cases = [{"plan": plan([day(None, 1), day(None, 2)]), "own": own(one)} for one in begun]
    found = anywhere("week", WEEKS, cases)

    assert [weeks[0]["starts"] for weeks in found] == begun
    assert {one["date"] for weeks in found for week in weeks for one in week["days"]} == {None}


@pytest.mark.parametrize(
    ("today", "state", "number", "places"),
    [
        ("2027-11-28", "before", 1, []),
        ("2027-11-29", "during", 1, []),
        ("2027-11-30", "during", 1, ["tuesday", "tuesday-2"]),
        ("2027-12-19", "during", 3, []),
        ("2027-12-20", "between", 4, []),
        ("2028-01-02", "between", 4, []),
        ("2028-01-03", "during", 4, []),
        ("2028-01-23", "during", 6, []),
        ("2028-01-24", "after", 6, []),
    ],
)
def test_how_a_day_stands_to_a_plan(run: Run, today: str, state: str, number: int, places: list[str]) -> None:
    """Before, during, in a break and after a plan of six weeks from 29 November with a break of two weeks."""
    closed = [{"from": "2027-12-20", "to": "2028-01-02", "why": "Closed."}]
    days = [day(1), day(1, 2, "Trunk")]
    given = {"plan": plan(days, groups=[group("2027-11-29")], breaks=closed), "today": today}
    found = run("week", "(m, g) => m.standing(m.weeksFor(g.plan, m.nothingChosen()), g.today)", given)

    assert (found["state"], found["week"]["number"]) == (state, number)
    assert [one["place"] for one in found["today"]] == places


def test_nobody_has_dates_before_they_chose(run: Run) -> None:
    """Without a start, and with several groups, nothing is guessed."""
    two = [group("2027-11-29", name="Early"), group("2027-12-06", name="Late")]
    cases = [{"plan": plan([day(1)]), "own": own()}, {"plan": plan([day(1)], groups=two), "own": own()}]
    chosen = [{"plan": plan([day(1)], groups=two), "own": own(None, "late")}]

    assert run("week", WEEKS, cases) == [[], []]
    assert run("week", WEEKS, chosen)[0][0]["starts"] == "2027-12-06"


def logged(week: int, session: str = "Legs", on: str = "2027-12-01") -> dict[str, Any]:
    return {"plan": "Spring", "session": session, "week": week, "id": f"{on}T18:00:00", "sets": [{}]}


def test_the_log_says_what_is_next(run: Run) -> None:
    """Next is the first session that the log does not hold; one that stands twice in a week counts twice."""
    given = {"plan": plan([day(None, 1), day(None, 2), day(None, 3, "Trunk")])}
    line = """(m, g) => {
      const next = m.nextOf(g.plan, m.doneOf(g.plan, g.log));
      return next && [next.week.number, next.day.place];
    }"""

    assert run("week", line, given | {"log": []}) == [1, "session-1"]
    assert run("week", line, given | {"log": [logged(1)]}) == [1, "session-2"]
    assert run("week", line, given | {"log": [logged(1), logged(1)]}) == [1, "session-3"]
    assert run("week", line, given | {"log": [logged(1), logged(1), logged(1, "Trunk")]}) == [2, "session-1"]
    assert run("week", line, given | {"log": [logged(1) | {"plan": "Another"}]}) == [1, "session-1"]


def test_what_a_member_leaves_out_is_not_next(run: Run) -> None:
    """A session left out on purpose lies behind the member; with the last one left out, the plan is finished."""
    given = {"plan": plan([day(None, 1), day(None, 2)], 2), "log": [logged(1)]}
    line = """(m, g) => {
      const passed = m.behind(m.doneOf(g.plan, g.log), {...m.nothingChosen(), left: g.left});
      const next = m.nextOf(g.plan, passed);
      return [next ? `${next.week.number} ${next.day.place}` : "", m.isFinished(g.plan, passed)];
    }"""

    assert run("week", line, given | {"left": []}) == ["1 session-2", False]
    assert run("week", line, given | {"left": ["1 session-2"]}) == ["2 session-1", False]
    assert run("week", line, given | {"left": ["1 session-2", "2 session-1"]}) == ["2 session-2", False]
    assert run("week", line, given | {"left": ["1 session-2", "2 session-1", "2 session-2"]}) == ["", True]
    assert run("week", line, given | {"left": ["9 no-such-place"]}) == ["1 session-2", False]


def test_carrying_on_brings_the_missed_week_to_today(run: Run) -> None:
    """On each of 700 days after week 2, before a break, behind it and behind the end: in the week of that day."""
    closed = [{"from": "2027-12-20", "to": "2028-01-02", "why": "Closed."}]
    given = {
        "plan": plan([day(1)], 12, groups=[group("2027-11-29")], breaks=closed),
        "log": [logged(1), logged(2)],
        "days": [(date(2027, 12, 13) + timedelta(days=n)).isoformat() for n in range(700)],
    }
    line = """(m, g) => g.days.map(today => {
      const weeks = m.weeksFor(g.plan, m.nothingChosen());
      const missed = m.missedBy(weeks, m.doneOf(g.plan, g.log), today);
      if (!missed) return [today, null];
      const own = m.effectOf(g.plan, m.nothingChosen(), missed).moved;
      return [today, m.weeksFor(g.plan, own)[missed.week - 1].starts];
    })"""
    found = [(date.fromisoformat(today), start) for today, start in run("week", line, given)]

    assert [today.isoformat() for today, start in found if start is None][:1] == ["2027-12-13"]
    late = {(today - date.fromisoformat(start)).days for today, start in found if start is not None}
    assert late == set(range(7))


@pytest.mark.parametrize(
    ("weeks", "today", "missed"),
    [
        ([], "2027-12-20", None),  # nothing logged at all: a member who keeps no log has missed nothing
        ([1], "2027-12-06", None),  # the week after it has only begun
        ([1], "2027-12-13", {"week": 2, "weeks": 1}),
        ([1], "2027-12-20", {"week": 2, "weeks": 2}),
        ([1, 2, 3], "2027-12-20", None),
        ([2], "2027-12-20", {"week": 3, "weeks": 1}),  # week 1 lies before what was done: it is not asked for again
        ([1, 2, 3, 4, 5], "2028-01-20", {"week": 6, "weeks": 2}),  # behind the end, up to the week of today
        ([1, 2], "2028-12-20", {"week": 3, "weeks": 53}),
        ([1], "2037-12-20", {"week": 2, "weeks": 104}),  # at most two years at once
    ],
)
def test_a_missed_week_is_one_without_a_session_before_this_one(
    run: Run, weeks: list[int], today: str, missed: dict[str, int] | None
) -> None:
    """The log holds something of the plan, and then nothing of the weeks up to this one."""
    given = {
        "plan": plan([day(1)], groups=[group("2027-11-29")]),
        "log": [logged(one) for one in weeks],
        "today": today,
    }
    line = "(m, g) => m.missedBy(m.weeksFor(g.plan, m.nothingChosen()), m.doneOf(g.plan, g.log), g.today) ?? null"

    assert run("week", line, given) == missed


def test_carrying_on_moves_the_rest_of_the_weeks_and_nothing_before(run: Run) -> None:
    """From week 3 on, two weeks later; the first two stay where they were."""
    usual = plan([day(1)], groups=[group("2027-11-29")])
    plain, moved = run("week", WEEKS, [{"plan": usual, "own": own()}, {"plan": usual, "own": own(None, "", (3, 2))}])
    apart = [
        (date.fromisoformat(now["starts"]) - date.fromisoformat(was["starts"])).days
        for was, now in zip(plain, moved, strict=True)
    ]

    assert apart == [0, 0, 14, 14, 14, 14]


def test_moved_weeks_wait_behind_a_break_too(run: Run) -> None:
    """A week that is moved into a break begins behind it."""
    closed = [{"from": "2027-12-27", "to": "2028-01-02", "why": "Closed."}]
    usual = plan([day(1)], groups=[group("2027-11-29")], breaks=closed)
    (moved,) = run("week", WEEKS, [{"plan": usual, "own": own(None, "", (4, 1))}])

    assert [week["starts"] for week in moved][2:5] == ["2027-12-13", "2028-01-03", "2028-01-10"]


@pytest.mark.parametrize(
    ("move", "ends", "late", "tapers_late"),
    [((3, 1), "2028-01-16", 0, 0), ((3, 2), "2028-01-23", 1, 1), ((3, 3), "2028-01-30", 2, 1)],
)
def test_what_moving_does_to_event_and_taper(
    run: Run, move: tuple[int, int], ends: str, late: int, tapers_late: int
) -> None:
    """Six weeks from 29 November lead up to 16 January: one week to spare, then the taper is late, then more."""
    given = {
        "plan": plan(
            [day(1)], groups=[group("2027-11-29", "2028-01-16")], event={"name": "Race", "week": None, "day": None}
        ),
        "own": own(),
        "move": {"week": move[0], "weeks": move[1]},
    }
    found = run("week", "(m, g) => m.effectOf(g.plan, g.own, g.move)", given)

    assert (found["ends"], found["late"], found["tapersLate"]) == (ends, late, tapers_late)
    assert found["moved"]["moved"] == [given["move"]]


def test_the_way_back_is_the_last_lighter_week(run: Run) -> None:
    """After the fourth week it is the fourth; before it, there is none yet."""
    given = plan([day(1)])

    assert run("week", "(m, plan) => m.wayBack(plan, 5).number", given) == 4
    assert run("week", "(m, plan) => m.wayBack(plan, 3) ?? null", given) is None


def test_today_is_the_day_of_the_device(anywhere: Run) -> None:
    """Half an hour before midnight and after it, by the clock on the member's wall, whatever the day in UTC is."""
    line = "m => [[27, 23], [28, 0], [28, 23]].map(([day, hour]) => m.localDay(new Date(2027, 2, day, hour, 30)))"

    assert anywhere("day", line) == ["2027-03-27", "2027-03-28", "2027-03-28"]


@pytest.mark.parametrize(
    ("text", "is_day"),
    [
        ("2028-02-29", True),
        ("2027-02-29", False),
        ("2027-13-01", False),
        ("27-01-01", False),
        ("", False),
        ("2027-1-1", False),
    ],
)
def test_a_day_is_one_of_the_calendar(run: Run, text: str, is_day: bool) -> None:
    """The Gregorian calendar's leap years, and no other form than that of ISO 8601."""
    assert run("day", "(m, text) => m.isDay(text)", text) is is_day


FILE = """(m, g) => import('./week.js').then(w =>
  m.calendarOf(g.plan, w.weeksFor(g.plan, g.own), 'https://club.example/strength/', '20270301T101500Z'))"""


def file_of(run: Run, given: dict[str, Any]) -> str:
    return str(run("calendar", FILE, given))


def test_the_device_makes_a_calendar_that_two_readers_read(anywhere: Run) -> None:
    """Sessions on their days, one at half past six by the clock on the wall, and links back."""
    given = {
        "plan": plan([day(1), day(4, name="Evening, short; light", at="18:30")], first=0),
        "own": own("2027-03-22"),
    }
    text = file_of(anywhere, given)
    ours = list(icalendar.Calendar.from_ical(text).walk("VEVENT"))
    theirs = vobject.readOne(text).vevent_list

    assert [str(event["DTSTART"].dt) for event in ours][:4] == [
        "2027-03-23", "2027-03-26 18:30:00", "2027-03-30", "2027-04-02 18:30:00",
    ]  # fmt: skip
    assert [event.dtstart.value for event in theirs] == [event["DTSTART"].dt for event in ours]
    assert [event.summary.value for event in theirs][:2] == ["Legs", "Evening, short; light"]
    assert len({str(event["UID"]) for event in ours}) == len(ours) == 12
    assert str(ours[0]["URL"]) == "https://club.example/strength/plans/p/tuesday/"
    assert ours[1]["DURATION"].dt == timedelta(minutes=30)


def test_a_week_of_open_days_is_one_entry(run: Run) -> None:
    """It lies over the whole week and names its sessions in their order."""
    given = {"plan": plan([day(None, 1), day(None, 2, "Trunk")]), "own": own("2027-03-24")}
    events = list(icalendar.Calendar.from_ical(file_of(run, given)).walk("VEVENT"))

    assert len(events) == 6
    assert (events[0]["DTSTART"].dt, events[0]["DTEND"].dt) == (date(2027, 3, 24), date(2027, 3, 31))
    assert "1. Legs\n2. Trunk\n" in str(events[0]["DESCRIPTION"])


def test_the_devices_lines_are_folded_and_escaped(run: Run) -> None:
    """CRLF, at most 75 octets a line, no sign cut in two (RFC 5545, 3.1), and escapes (3.3.11)."""
    name = "Größe, Maß; \\ und 🏃 " * 8
    given = {"plan": plan([day(1, name=name)]), "own": own("2027-03-24")}
    text = file_of(run, given)
    lines = text.encode().split(b"\r\n")

    assert lines[-1] == b""
    assert all(len(line) <= 75 and line.decode("utf-8") for line in lines[:-1])
    assert vobject.readOne(text).vevent_list[0].summary.value == name
