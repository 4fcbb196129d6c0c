"""Weeks and days of a plan: dates, sessions held twice, and progressions across phases."""

from datetime import date

import pytest

from setwright.dose.resolve import resolve
from setwright.wording.doses import dose_in_words
from setwright.wording.language import ENGLISH
from support import make

TWICE = "phases: [{name: All, aim: To go on., weeks: 3, sessions: {monday: only, thursday: only}}]"
CLIMB = (
    "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, progress: {reps: {add: 1, up_to: 20}}}]}]"
)


def test_session_twice_a_week_counts_once() -> None:
    """Monday and Thursday of a week have the same dose, and the next week is one step on. A rule of this tool."""
    plan = make.resolved({"plans/plan": TWICE, "sessions/only": CLIMB})
    said = [(s.week, s.day, dose_in_words(ENGLISH, item.dose)) for s in plan.sessions for item in s.items]

    assert said == [
        (1, "monday", "3 sets of 8 reps"),
        (1, "thursday", "3 sets of 8 reps"),
        (2, "monday", "3 sets of 9 reps"),
        (2, "thursday", "3 sets of 9 reps"),
        (3, "monday", "3 sets of 10 reps"),
        (3, "thursday", "3 sets of 10 reps"),
    ]


def test_session_twice_a_week_counts_even_if_one_is_skipped() -> None:
    """A week in which the session is trained at least once counts."""
    changes = "changes: [{week: 1, day: thursday, skip: true, why: The hut is let.}]"
    plan = make.resolved({"plans/plan": f"{TWICE}\n{changes}", "sessions/only": CLIMB})

    assert [session.trained for session in plan.sessions] == [0, 1, 1, 2, 2]


def test_progression_goes_on_across_phases() -> None:
    """The same session in the next phase goes on where it stood; a session that paused does so too."""
    phases = """
phases:
  - {name: One, aim: To begin., weeks: 2, sessions: {monday: only}}
  - {name: Two, aim: To pause., weeks: 1, sessions: {monday: other}}
  - {name: Three, aim: To go on., weeks: 1, sessions: {monday: only}}
"""
    plan = make.resolved({"plans/plan": phases, "sessions/only": CLIMB, "sessions/other": CLIMB})

    assert [(s.session, s.trained) for s in plan.sessions] == [("only", 0), ("only", 1), ("other", 0), ("only", 2)]


DAYS = [
    # the first day (a Monday, a Wednesday, a Sunday), a day of the week, its date in week 2 (dates: ISO 8601 calendar)
    ("2027-03-01", "monday", "2027-03-08"),
    ("2027-03-01", "sunday", "2027-03-14"),
    ("2027-03-03", "wednesday", "2027-03-10"),
    ("2027-03-03", "monday", "2027-03-15"),
    ("2027-03-03", "tuesday", "2027-03-16"),
    ("2027-03-07", "sunday", "2027-03-14"),
    ("2027-03-07", "saturday", "2027-03-20"),
    ("2027-12-27", "sunday", "2028-01-09"),
]


@pytest.mark.parametrize(("starts", "day", "in_week_two"), DAYS)
def test_weeks_run_from_the_weekday_of_the_start(starts: str, day: str, in_week_two: str) -> None:
    """Week 2 begins seven days after the first day, whatever weekday that is, and holds each weekday once."""
    phases = f"starts: {starts}\nphases: [{{name: All, aim: To go on., weeks: 2, sessions: {{{day}: only}}}}]"
    plan = make.resolved({"plans/plan": phases})

    assert [session.date for session in plan.weeks[1].sessions] == [date.fromisoformat(in_week_two)]


@pytest.mark.parametrize("starts", ["2027-03-01", "2027-03-03", "2027-03-07"])
def test_every_day_falls_into_its_week(starts: str) -> None:
    """Seven sessions on seven weekdays fill each week from its first day to its last, in order of date."""
    names = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
    days = ", ".join(f"{name}: only" for name in names)
    phases = f"starts: {starts}\nphases: [{{name: All, aim: To go on., weeks: 2, sessions: {{{days}}}}}]"
    plan = make.resolved({"plans/plan": phases})
    dates = [session.date.toordinal() for session in plan.sessions]
    first = date.fromisoformat(starts).toordinal()

    assert dates == list(range(first, first + 14))
    assert all(names[s.date.weekday()] == s.day for s in plan.sessions)


def test_first_time_is_the_first_week_of_a_session() -> None:
    """A session is new in its first week and never again."""
    plan = make.resolved({"plans/plan": "phases: [{name: All, aim: To go on., weeks: 3, sessions: {monday: only}}]"})

    assert [session.first_time for session in plan.sessions] == [True, False, False]


def test_plans_stand_in_order_of_their_first_day() -> None:
    """The plan that begins first comes first; of two that begin on one day, the one whose id does."""
    later, same = "starts: 2027-03-08", "starts: 2027-03-01"
    made = make.programme({"plans/alpha": later, "plans/zulu": same, "plans/mike": same})

    assert [plan.ident for plan in resolve(made)] == ["mike", "plan", "zulu", "alpha"]


def test_a_week_ends_on_its_seventh_day() -> None:
    """A week that begins on Wednesday 3 March 2027 ends on Tuesday 9 March (ISO 8601 calendar)."""
    week = make.resolved({"plans/plan": "starts: 2027-03-03"}).weeks[0]

    assert (week.starts, week.ends) == (date(2027, 3, 3), date(2027, 3, 9))


def test_sessions_and_skipped_ones_stand_in_order_of_their_dates() -> None:
    """A plan that starts on a Thursday has its Fridays before its Mondays, trained or not."""
    trained, skipped = (
        make.resolved(
            {
                "plans/plan": "starts: 2027-03-04\n"
                "phases: [{name: All, aim: To go on., weeks: 1, sessions: {monday: only, friday: only}}]\n"
                f"changes: [{changes}]"
            }
        ).weeks[0]
        for changes in ("", "{week: 1, session: only, skip: true, why: Camp.}")
    )

    assert [session.day for session in trained.sessions] == ["friday", "monday"]
    assert [session.day for session in skipped.skipped] == ["friday", "monday"]


def test_blocks_of_one_kind_are_counted() -> None:
    """Superset 1 and superset 2, whatever stands between; one with its own name, or alone of its kind, has none."""
    kinds = (
        ("superset", ""),
        ("circuit", ""),
        ("superset", "name: Finish, "),
        ("superset", ""),
        ("straight", "name: Sets, "),
    )
    blocks = ", ".join(
        f"{{kind: {kind}, {name}{'sets' if kind == 'straight' else 'rounds'}: 2, "
        "exercises: [{exercise: lift, reps: 8}, {exercise: lift, reps: 8}]}"
        for kind, name in kinds
    )
    session = make.resolved({"sessions/only": f"blocks: [{blocks}]"}).weeks[0].sessions[0]

    assert [block.number for block in session.blocks] == [1, None, None, 2, None]
