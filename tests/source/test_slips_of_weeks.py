"""A slip in starts, groups, breaks, days and turns: one error, where it is, with the likely fix."""

from pathlib import Path

import pytest

from support.reading import GOOD, good_programme, looked_at

HEAD = "name: Ready\nfor: Members.\n"
STARTS = "starts: 2027-03-01\n"
DAYS = "{tuesday: legs, thursday: trunk}"


def phases(sessions: str) -> str:
    return f"phases: [{{name: Build, aim: More., weeks: 4, sessions: {sessions}}}]\n"


def change(written: str) -> str:
    return f"changes: [{{week: 1, {written}, why: A reason.}}]\n"


def breaks(*written: str) -> str:
    return f"breaks: [{', '.join(f'{{{one}, why: Closed.}}' for one in written)}]\n"


ONE = STARTS + phases(DAYS)
OPEN = phases(DAYS)
ANY_DAY = STARTS + phases("[legs, trunk]")
TWICE = STARTS + phases("{tuesday: [legs, trunk]}")
TURNS = "{rotate: [legs, trunk], days: [tuesday, friday]}"
CLOSED = "from: 2027-03-15, to: 2027-03-21"
WHEN = "write 'date: 2027-09-26', or 'week: 12' with 'day: sunday'"

SLIPS = [
    (
        STARTS + phases("legs"),
        "on which day is 'legs'?",
        "write '{tuesday: legs}', or '[legs]' for any day of the week",
    ),
    (STARTS + phases("[legs, trnk]"), "unknown session 'trnk'", "did you mean 'trunk'?"),
    (STARTS + phases("{tuesday: [legs, trnk]}"), "unknown session 'trnk'", "did you mean 'trunk'?"),
    (STARTS + phases(TURNS.replace("trunk", "trnk")), "unknown session 'trnk'", "did you mean 'trunk'?"),
    (
        STARTS + phases("{rotate: [legs, trunk], days: [friday, friday]}"),
        "friday stands here twice",
        "write each day once",
    ),
    (
        STARTS + phases("{rotate: legs, days: [tuesday]}"),
        "'legs' is one, and a rotation goes over several",
        "write a list, such as '[legs, trunk]'",
    ),
    (
        STARTS + phases("{rotate: [legs, trunk], days: tuesday}"),
        "'tuesday' is one, and a rotation goes over several",
        "write a list, such as '[tuesday, friday]'",
    ),
    (
        STARTS + phases("{rotate: [legs, trunk]}"),
        "'days' is missing",
        "add 'days: ...', days of the week, such as [tuesday, friday]",
    ),
    (STARTS + phases(TURNS.replace("tuesday", "tusday")), "'tusday' is not known here", "did you mean 'tuesday'?"),
    (
        STARTS + phases("{tuesday: [legs, trunk, legs, trunk]}"),
        "4 sessions on one day, 3 are the most",
        "spread them over the week",
    ),
    (STARTS + phases("[]"), "at least 1 wanted here, found 0", "add what is missing, or delete the key"),
    ("starts: whenever\n" + OPEN, "'whenever' is not a date", "write year-month-day, such as 2027-07-05"),
    (
        "starts: [2027-03-01, 2027-03-08]\n" + OPEN,
        "whose starts are these?",
        "write a name for each: '{Monday group: 2027-01-04, Thursday group: 2027-01-14}'",
    ),
    ("starts: {Early: 2027-03-01}\n" + OPEN, "one group alone needs no name", "write 'starts: 2027-01-04'"),
    (
        "starts: {A group: 2027-03-01, a-group: 2027-03-08}\n" + OPEN,
        "'a-group' and 'A group' read alike in an address",
        "give the group a name of its own, with letters from a to z",
    ),
    (
        "starts: {Early: 2027-03-01, Late: 2027-03-04}\n" + OPEN,
        "weeks of 'Late' begin on a thursday, so that its days come in another order: thursday, tuesday",
        "start every group on the same weekday, or write the sessions as a list, on any day",
    ),
    (
        OPEN + "event: {name: Race, date: 2027-03-28}\n",
        "a plan without 'starts' leads up to no date",
        "write 'week: 12' with 'day: sunday', or give the plan its 'starts'",
    ),
    (OPEN + "event: {name: Race, week: 4}\n", "when is it? 'day' is missing", WHEN),
    (OPEN + "event: {name: Race, day: sunday}\n", "when is it? 'week' is missing", WHEN),
    (OPEN + "event: {name: Race}\n", "when is it? 'date' is missing", WHEN),
    (
        ONE + "event: {name: Race, date: 2027-03-28, week: 4, day: sunday}\n",
        "a date says the week and the day already",
        "write one of the two",
    ),
    (
        OPEN + "event: {name: Race, week: 9, day: sunday}\n",
        "this plan has 4 weeks, there is no week 9",
        "weeks are counted from the start of the plan",
    ),
    (
        OPEN + breaks(CLOSED),
        "a plan without 'starts' has no dates to break",
        "leave it out: without 'starts', each member moves the own weeks on the phone",
    ),
    (ONE + breaks("from: 2027-03-21, to: 2027-03-15"), "this break ends before it begins", "swap the two days"),
    (
        ONE + breaks("from: 2028-03-15, to: 2028-03-21"),
        "no week of the plan comes after this break",
        "a break lies between the first and the last day; check its dates, or delete it",
    ),
    (
        ONE + breaks(CLOSED, "from: 2027-03-20, to: 2027-03-23"),
        "this break begins before the one above ends",
        "write them in order, and two that touch as one",
    ),
    (
        ONE + breaks("from: 2027-03-15, to: 2027-11-21"),
        "this break is longer than half a year",
        "write a plan for the time after it",
    ),
    (
        ONE + breaks(f"{CLOSED}, coming_back: {{}}"),
        "what gets lighter?",
        "write 'sets: 60 %', 'reps: 80 %' or 'load: 90 %'",
    ),
    (
        "starts: {Early: 2027-03-01, Late: 2027-03-08}\n" + OPEN + breaks(f"{CLOSED}, coming_back: {{sets: 60 %}}"),
        "the way back would be week 3 of 'Early' and week 2 of 'Late': one plan has the same doses for all groups",
        "leave 'coming_back' out, or write a plan for each group",
    ),
    (ONE + "follows: regata\n", "unknown plan 'regata'", "did you mean 'regatta'?"),
    (
        ONE + "follows: regatta\n",
        "this plan follows itself",
        "name the plan that members come from, or leave 'follows' out",
    ),
    (
        ANY_DAY + change("day: tuesday, skip: true"),
        "the sessions of week 1 are on any day",
        "write which one: 'number: 1' to 'number: 2'",
    ),
    (
        ONE + change("number: 1, skip: true"),
        "the sessions of week 1 are on weekdays",
        "write the day, such as 'day: tuesday'",
    ),
    (ANY_DAY + change("number: 3, skip: true"), "week 1 has 2 sessions, there is no number 3", "write 1 to 2"),
    (
        ANY_DAY + change("number: 1, move_to: friday"),
        "the sessions of week 1 are on any day already",
        "delete this change, or write the phase's sessions with days",
    ),
    (
        ANY_DAY + change("number: 1, session: trunk, skip: true"),
        "session 1 of week 1 does not hold session 'trunk'",
        "write the number or the session, or 'legs'",
    ),
    (
        TWICE + change("day: tuesday, number: 3, skip: true"),
        "tuesday of week 1 has 2 sessions, there is no number 3",
        "write 1 to 2",
    ),
    (
        TWICE + change("day: tuesday, do_instead: legs"),
        "tuesday of week 1 has 2 sessions: which of them?",
        "write 'number: 1' or 'number: 2' beside the day",
    ),
]


@pytest.mark.parametrize(("written", "message", "hint"), SLIPS, ids=[slip[1] for slip in SLIPS])
def test_a_slip_in_weeks_is_told(written: str, message: str, hint: str, tmp_path: Path) -> None:
    """There is one error, it says what is wrong in a coach's words, and it says what to write."""
    findings, _ = looked_at(good_programme(tmp_path, {"plans/regatta.yml": HEAD + written}))

    assert [(f.message, f.hint) for f in findings if f.severity == "error"] == [(message, hint)]


CLOCKS = [
    ("at: 6.30 pm\n", "", "'6.30 pm' is not a time of day", "write '18:30'"),
    ("at: evening\n", "", "'evening' is not a time of day", "write hours and minutes of 24 hours, such as '18:30'"),
    ("at: 18:30\n", "", "on which clock? club.yml has no time zone", "add 'time_zone: Europe/Vienna', or yours, there"),
    (
        "at: 18:30\n",
        "time_zone: Vienna\n",
        "'Vienna' is not a time zone",
        "write a name of the IANA time zone database, such as 'Europe/Vienna'",
    ),
    ("", "long_gap: 3\n", "'3' is not a number of weeks", "3 of what? write '3 weeks'"),
]


@pytest.mark.parametrize(("of_session", "of_club", "message", "hint"), CLOCKS)
def test_a_slip_in_times_of_day_is_told(of_session: str, of_club: str, message: str, hint: str, tmp_path: Path) -> None:
    """A time of day is read on a clock of 24 hours, and the club says which one."""
    files = {
        "sessions/legs.yml": (GOOD / "sessions/legs.yml").read_text("utf-8") + of_session,
        "club.yml": (GOOD / "club.yml").read_text("utf-8") + of_club,
    }
    findings, _ = looked_at(good_programme(tmp_path, files))

    assert [(f.message, f.hint) for f in findings if f.severity == "error"] == [(message, hint)]


def test_plans_that_follow_each_other_lead_nowhere(tmp_path: Path) -> None:
    """A circle of plans has no first one, and each of its plans says so."""
    spring = HEAD + ONE + "follows: autumn\n"
    autumn = HEAD + ONE + "follows: regatta\n"
    findings, _ = looked_at(good_programme(tmp_path, {"plans/regatta.yml": spring, "plans/autumn.yml": autumn}))

    assert [f.message for f in findings if f.rule == "follows-itself"] == [
        "'autumn' and 'regatta' follow each other",
        "'regatta' and 'autumn' follow each other",
    ]
