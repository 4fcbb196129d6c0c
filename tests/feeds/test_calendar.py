"""Calendar files: RFC 5545 in the bytes, and the same days when other readers take them apart."""

import re
import shutil
import subprocess
from collections.abc import Mapping
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import icalendar
import pytest
import vobject
from hypothesis import given
from hypothesis import strategies as st

from setwright import publish
from setwright.dose.resolve import resolve
from setwright.feeds.calendar import Revision, files
from setwright.feeds.revisions import revisions
from setwright.outline.site import Site
from support import make
from support.any_programme import names, prose
from support.reading import good_programme

URL = "https://club.example/strength/"
WINTER = """
starts: {Early: 2027-10-25, Late: 2027-11-01}
event: {name: "Race; night, one", date: 2027-12-05}
breaks: [{from: 2027-11-15, to: 2027-11-21, why: "The hut is closed, sorry."}]
phases:
  - {name: First, aim: To begin., weeks: 2, sessions: {tuesday: [only, evening], friday: evening}}
  - {name: Second, aim: To go on., weeks: 2, sessions: [only, evening]}
"""
CLUB = "time_zone: Europe/Vienna"


def calendars(
    plan: str = WINTER, revision: Revision | None = None, url: str | None = URL, more: Mapping[str, str] | None = None
) -> dict[str, bytes]:
    """Return the calendars of a small club whose evening session begins at half past six."""
    evening = "name: Evening\nat: 18:30"
    made = make.programme({"club": CLUB, "sessions/evening": evening, "plans/plan": plan, **(more or {})})
    known = {"plan": revision} if revision else {}
    return dict(files(Site(made, resolve(made)), url, known))


def events(raw: bytes) -> dict[str, icalendar.Event]:
    """Return the entries of a file by identity, as its maker's own library reads them."""
    return {str(event["UID"]): event for event in icalendar.Calendar.from_ical(raw).walk("VEVENT")}


def test_each_group_has_a_file() -> None:
    """Two groups, two files; a plan without a start has none, since nobody knows its dates."""
    assert set(calendars()) == {"feeds/plan-early.ics", "feeds/plan-late.ics"}
    assert set(calendars("starts: 2027-03-01")) == {"feeds/plan.ics"}
    made = make.programme(leave_out={"plans/plan": ["starts"]})
    assert dict(files(Site(made, resolve(made)), URL, {})) == {}


def test_the_same_programme_gives_the_same_bytes() -> None:
    """Nothing of the hour at which it is made stands in a file."""
    assert calendars() == calendars()


def test_a_second_reader_finds_the_same_days() -> None:
    """Another library than the one that wrote the file reads every entry with its day, its hour and its words."""
    raw = calendars()["feeds/plan-early.ics"]
    ours = events(raw)
    theirs = {event.uid.value: event for event in vobject.readOne(raw.decode()).vevent_list}

    assert theirs.keys() == ours.keys()
    for uid, event in theirs.items():
        assert event.summary.value == str(ours[uid]["SUMMARY"])
        assert event.description.value == str(ours[uid]["DESCRIPTION"])
        start, wanted = event.dtstart.value, ours[uid]["DTSTART"].dt
        assert start == wanted
        if isinstance(wanted, datetime):
            assert start.utcoffset() == wanted.utcoffset()


def test_sessions_stand_on_the_days_of_their_group() -> None:
    """Tuesday 26 October with two sessions, Friday; a week of open days as one entry; the break; the race."""
    found = events(calendars()["feeds/plan-early.ics"])
    days = {uid.split("@")[0].removeprefix("plan-early-"): event["DTSTART"].dt for uid, event in found.items()}
    vienna = found["plan-early-week-01-friday@club.example"]["DTSTART"].dt.tzinfo

    assert days["week-01-tuesday"] == date(2027, 10, 26)
    assert days["week-01-tuesday-2"] == datetime(2027, 10, 26, 18, 30, tzinfo=vienna)
    assert days["week-03-any-day"] == date(2027, 11, 8)
    assert days["week-04-any-day"] == date(2027, 11, 22)
    assert days["break-2027-11-15"] == date(2027, 11, 15)
    assert days["event"] == date(2027, 12, 5)
    assert len(days) == 10
    last = found["plan-early-week-03-any-day@club.example"]
    assert last["DTEND"].dt == date(2027, 11, 15)
    assert "1. A session" in last["DESCRIPTION"]
    assert "2. Evening" in last["DESCRIPTION"]


def test_half_past_six_stays_half_past_six_when_clocks_change() -> None:
    """Vienna goes back on 31 October 2027 (Directive 2000/84/EC: last Sunday of October): 16:30, then 17:30 UTC."""
    found = events(calendars()["feeds/plan-early.ics"])
    fridays = [found[f"plan-early-week-0{week}-friday@club.example"]["DTSTART"].dt for week in (1, 2)]

    assert [day.date() for day in fridays] == [date(2027, 10, 29), date(2027, 11, 5)]
    assert [day.astimezone(UTC).hour for day in fridays] == [16, 17]
    assert [day.strftime("%H:%M") for day in fridays] == ["18:30", "18:30"]


def test_the_time_zone_is_told_in_the_file() -> None:
    """Each TZID that is used has its VTIMEZONE, with the change of 31 October 2027 in it (RFC 5545, 3.6.5)."""
    text = calendars()["feeds/plan-early.ics"].decode()

    assert set(re.findall(r"TZID[=:]([\w/]+)", text)) == {"Europe/Vienna"}
    assert "BEGIN:VTIMEZONE" in text
    assert "DTSTART:20271031T030000" in text


def test_no_time_zone_where_nothing_begins_at_an_hour() -> None:
    """All days are whole days then, and a whole day has no zone (RFC 5545, 3.3.4)."""
    text = calendars("starts: 2027-03-01")["feeds/plan.ics"].decode()

    assert "TZ" not in text
    assert text.count("DTSTART;VALUE=DATE:") == text.count("BEGIN:VEVENT") == 4


def test_lines_are_folded_and_end_as_the_standard_says() -> None:
    """CRLF after each line, at most 75 octets in each, no sign cut in two (RFC 5545, 3.1)."""
    long = {"sessions/only": f"aim: {'Bläue Größe überall. ' * 30}"}
    for raw in calendars(more=long).values():
        lines = raw.split(b"\r\n")
        assert lines[-1] == b""
        assert all(len(line) <= 75 and b"\n" not in line for line in lines)
        assert all(line.decode("utf-8") for line in lines[:-1])
        assert any(line.startswith(b" ") for line in lines)


def test_texts_are_escaped() -> None:
    """Comma, semicolon, backslash and line break have a backslash (RFC 5545, 3.3.11), in the name of a file, too."""
    text = calendars(f'name: "Winter, spring; all"\n{WINTER}')["feeds/plan-early.ics"].decode().replace("\r\n ", "")

    assert "NAME:Winter\\, spring\\; all (Early)\r\n" in text
    assert "SUMMARY:Race\\; night\\, one\r\n" in text


@pytest.mark.parametrize("rule", ["UID", "DTSTAMP", "DTSTART", "SUMMARY"])
def test_what_every_entry_must_have_stands_once(rule: str) -> None:
    """UID and DTSTAMP are required and stand once; so do a start and a name here (RFC 5545, 3.6.1)."""
    for raw in calendars().values():
        for part in raw.decode().split("BEGIN:VEVENT")[1:]:
            assert len(re.findall(rf"^{rule}[:;]", part, re.MULTILINE)) == 1


def test_a_file_says_what_it_is() -> None:
    """PRODID and VERSION stand once, and no alarm goes off that a member did not set."""
    for raw in calendars().values():
        text = raw.decode()
        assert text.startswith("BEGIN:VCALENDAR\r\nPRODID:")
        assert text.count("\r\nVERSION:2.0\r\n") == 1
        assert "VALARM" not in text
        assert "METHOD" not in text


def test_an_entry_keeps_its_identity_when_it_moves() -> None:
    """Moved from Tuesday to Thursday, a session is the same entry on another day, and links to its page there."""
    usual = "starts: 2027-03-01\nphases: [{name: P, aim: On., weeks: 2, sessions: {tuesday: only}}]"
    moved = f"{usual}\nchanges: [{{week: 2, day: tuesday, move_to: thursday, why: The hall is let.}}]"
    before, after = (events(calendars(plan)["feeds/plan.ics"]) for plan in (usual, moved))
    second = "plan-week-02-tuesday@club.example"

    assert before.keys() == after.keys()
    assert before[second]["DTSTART"].dt == date(2027, 3, 9)
    assert after[second]["DTSTART"].dt == date(2027, 3, 11)
    assert str(after[second]["URL"]) == f"{URL}plans/plan/week-02/thursday/"


def test_entries_lead_back_to_their_pages() -> None:
    """Where the site has an address, each session has its own; without one, none is made up."""
    found = events(calendars()["feeds/plan-early.ics"])
    nowhere = events(calendars(url=None)["feeds/plan-early.ics"])

    assert str(found["plan-early-week-01-tuesday-2@club.example"]["URL"]) == f"{URL}plans/plan/week-01/tuesday-2/"
    assert {uid.split("@")[1] for uid in nowhere} == {"a-club.invalid"}
    assert not any("URL" in event for event in nowhere.values())


def test_a_revision_is_told_by_its_count_and_its_time() -> None:
    """LAST-MODIFIED and SEQUENCE grow with the commits of the plan's files; where none is known, there is neither."""
    at = datetime(2027, 9, 1, 12, tzinfo=UTC)
    known = events(calendars(revision=Revision(3, at))["feeds/plan-early.ics"]).values()
    unknown = events(calendars()["feeds/plan-early.ics"]).values()

    assert {(event["SEQUENCE"], event["LAST-MODIFIED"].dt, event["DTSTAMP"].dt) for event in known} == {(2, at, at)}
    assert not any("SEQUENCE" in event or "LAST-MODIFIED" in event for event in unknown)


@given(names, prose, st.dates(date(2026, 1, 1), date(2030, 1, 1)))
def test_any_words_come_through(name: str, why: str, first: date) -> None:
    """Whatever names and reasons hold, both readers find one entry for each session, on its day."""
    made = make.programme()
    plan = made.plans["plan"].model_copy(update={"name": " ".join(name.split()), "starts": first})
    made.plans["plan"] = plan
    session = made.sessions["only"].model_copy(update={"aim": why})
    made.sessions["only"] = session
    (resolved,) = resolve(made)
    ((_, raw),) = files(Site(made, (resolved,)), URL, {})
    days = [one.date for one in resolved.sessions]

    assert [event["DTSTART"].dt for event in events(raw).values()] == days
    assert [event.dtstart.value for event in vobject.readOne(raw.decode()).vevent_list] == days
    assert [event["DTEND"].dt - event["DTSTART"].dt for event in events(raw).values()] == [timedelta(days=1)] * len(
        days
    )


GIT = shutil.which("git")


def commit(folder: Path, when: str) -> None:
    """Commit everything in a repository at a time."""
    who = ("-c", "user.name=A coach", "-c", "user.email=coach@club.example")
    for words in (("add", "-A"), (*who, "commit", "-qm", "A change")):
        subprocess.run([str(GIT), *words], cwd=folder, check=True, env={"GIT_COMMITTER_DATE": when, "PATH": "/usr/bin"})


@pytest.mark.skipif(GIT is None, reason="git is not installed")
def test_a_revision_grows_with_a_change_of_the_plan_and_with_nothing_else(tmp_path: Path) -> None:
    """A commit of another file leaves it as it is, one of the plan's counts; an edit that is not committed is none."""
    program = good_programme(tmp_path)
    subprocess.run([str(GIT), "init", "-q", str(tmp_path)], check=True)

    def known() -> dict[str, Revision]:
        looked = publish.look(program, "program")
        assert looked.programme is not None
        return revisions(program, looked.programme)

    assert known() == {}
    commit(tmp_path, "2027-01-01T12:00:00+0000")
    first = known()["regatta"]
    assert first == Revision(1, datetime(2027, 1, 1, 12, tzinfo=UTC))

    row = program / "exercises" / "row.yml"
    row.write_text(row.read_text("utf-8") + "# a word\n", "utf-8")
    commit(tmp_path, "2027-01-02T12:00:00+0000")
    assert known()["regatta"] == first

    plan = program / "plans" / "regatta.yml"
    plan.write_text(plan.read_text("utf-8").replace("The boathouse is let.", "The boathouse is lent."), "utf-8")
    assert known() == {}
    commit(tmp_path, "2027-01-03T12:00:00+0000")
    assert known()["regatta"] == Revision(2, datetime(2027, 1, 3, 12, tzinfo=UTC))
