"""Dates on paper: blanks where a plan has none, and those of each group side by side."""

from typing import Any

from setwright.dose.resolve import resolve
from setwright.handouts.booklet import booklet_data
from setwright.handouts.press import Press
from setwright.handouts.session import session_data, week_data
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from support import make


def desk(plan: str, dated: bool = True) -> Desk:
    made = make.programme({"plans/plan": plan}, {} if dated else {"plans/plan": ["starts"]})
    return Desk(Site(made, resolve(made)))


def first_week(desk: Desk) -> tuple[dict[str, Any], dict[str, Any]]:
    """Return what the first session's sheet and the first week's pack show."""
    plan = desk.site.plans[0]
    week = plan.weeks[0]
    sessions = [session_data(desk, plan, session) for session in week.sessions]
    return sessions[0], week_data(desk, plan, week, sessions)


OPEN = "phases: [{name: P, aim: On., weeks: 2, sessions: [only, only]}]\nevent: {name: Race, week: 2, day: sunday}"
GROUPS = """
starts: {Early: 2027-11-29, Late: 2027-12-06}
breaks: [{from: 2027-12-20, to: 2028-01-02, why: The hut is closed.}]
"""
BREAK = "breaks: [{from: 2027-03-08, to: 2027-03-14, why: The hut is closed., coming_back: {sets: 60 %}}]"


def test_a_sheet_without_a_date_has_a_line_for_it() -> None:
    """Session 1, on any day, and a blank; the pack of its week has one, too."""
    session, week = first_week(desk(OPEN, dated=False))

    assert (session["day"], session["blank"]) == ("Session 1, on any day", True)
    assert (week["days"], week["blank"]) == ("", True)


def test_a_sheet_with_a_date_has_none() -> None:
    """Monday 1 March 2027 is printed, and nothing is left to write."""
    session, week = first_week(desk(""))

    assert (session["day"], session["blank"]) == ("Monday 1 March 2027", False)
    assert (week["days"], week["blank"]) == ("1 to 7 March 2027", False)


def test_a_sheet_carries_the_dates_of_each_group() -> None:
    """Both stand on the session's sheet and on the pack; the booklet has them below each other."""
    made = desk(GROUPS)
    session, week = first_week(made)
    booklet = booklet_data(made, made.site.plans[0])

    assert session["day"] == "Early: Monday 29 November 2027; Late: Monday 6 December 2027"
    assert week["days"] == "Early: 29 November to 5 December 2027; Late: 6 to 12 December 2027"
    assert booklet["phases"][0]["weeks"][0]["days"] == ["Early: 29 November to 5 December", "Late: 6 to 12 December"]
    assert ["Break", "20 December 2027 to 2 January 2028"] in booklet["facts"]


def test_a_booklet_without_a_date_says_when_you_like() -> None:
    """Its start is the member's, its end a week, its event a day of a week; weeks have blanks."""
    made = desk(OPEN, dated=False)
    booklet = booklet_data(made, made.site.plans[0])

    assert booklet["facts"][:3] == [
        ["Starts", "when you like"],
        ["Ends", "at the end of week 2"],
        ["Race", "Sunday of week 2"],
    ]
    assert [week["title"] for week in booklet["phases"][0]["weeks"]] == ["Week 1", "Week 2"]
    assert all(week["blank"] for week in booklet["phases"][0]["weeks"])


def test_the_week_after_a_break_says_why() -> None:
    """The booklet says so before its sessions, and so does the week's pack."""
    made = desk(BREAK)
    weeks = booklet_data(made, made.site.plans[0])["phases"][0]["weeks"]
    said = ["".join(run["text"] for run in week["after"]) if week["after"] else "" for week in weeks]

    assert said == ["", "After the break, 8 March 2027 to 14 March 2027. The hut is closed.", "", ""]


def test_booklets_of_every_kind_are_printed() -> None:
    """The typesetter takes blanks, groups and breaks."""
    press = Press()
    for made in (desk(OPEN, dated=False), desk(GROUPS), desk(BREAK)):
        data = booklet_data(made, made.site.plans[0])
        sheet: Sheet = made.sheet("booklet.pdf", "booklet", data)
        assert press.print(sheet).startswith(b"%PDF-")
