"""Weeks of plans with groups, breaks, open days and sessions that take turns."""

from collections import Counter
from datetime import date, timedelta
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedPlan
from setwright.model.calendar import Break, week_after, week_starts
from setwright.model.plan import Plan
from setwright.model.programme import Programme
from support import make

FIRST = st.dates(date(2027, 1, 1), date(2028, 12, 31))
EVENINGS = {"sessions/legs": "name: Legs", "sessions/arms": "name: Arms", "sessions/trunk": "name: Trunk"}


def broken(*spans: tuple[date, date]) -> list[Break]:
    return [Break.model_validate({"from": first, "to": last, "why": "Closed."}) for first, last in spans]


@st.composite
def breaks_from(draw: st.DrawFn, first: date) -> list[Break]:
    """Up to three breaks in order after a day, none of which touches another."""
    spans, day = [], first
    for _ in range(draw(st.integers(0, 3))):
        day += timedelta(days=draw(st.integers(1, 40)))
        last = day + timedelta(days=draw(st.integers(0, 30)))
        spans.append((day, last))
        day = last + timedelta(days=1)
    return broken(*spans)


@given(st.data(), FIRST, st.integers(1, 20))
def test_weeks_never_overlap_go_back_or_touch_a_break(data: st.DataObject, first: date, count: int) -> None:
    """Each week begins a week or more after the one before, on the same weekday, and no break lies in it."""
    breaks = data.draw(breaks_from(first))
    starts = week_starts(first, count, breaks)

    assert len(starts) == count
    assert all(later - earlier >= timedelta(weeks=1) for earlier, later in pairwise(starts))
    assert {day.weekday() for day in starts} == {first.weekday()}
    for day in starts:
        assert not any(one.from_ <= day + timedelta(days=6) and one.to >= day for one in breaks)


@given(st.data(), FIRST, st.integers(1, 20))
def test_no_week_waits_longer_than_a_break_asks(data: st.DataObject, first: date, count: int) -> None:
    """A week that waits would touch a break if it began a week earlier."""
    breaks = data.draw(breaks_from(first))
    starts = week_starts(first, count, breaks)

    for earlier, later in zip((first - timedelta(weeks=1), *starts), starts, strict=False):
        if later - earlier > timedelta(weeks=1):
            before = later - timedelta(weeks=1)
            assert any(one.from_ <= before + timedelta(days=6) and one.to >= before for one in breaks)


WAYS = ["[legs, arms]", "[legs]", "{tuesday: legs, friday: arms}", "{monday: [legs, arms], thursday: trunk}"]
TURNS = [
    "{rotate: [legs, arms, trunk], days: [tuesday, friday]}",
    "{rotate: [legs, arms], days: [friday, monday, tuesday]}",
]


@st.composite
def plans(draw: st.DrawFn) -> ResolvedPlan:
    """A plan of two phases, with no start, one, or two on the same weekday, and with breaks where there is one."""
    ways = st.tuples(st.integers(1, 5), st.sampled_from(WAYS + TURNS))
    phases = [f"{{name: P, aim: On., weeks: {count}, sessions: {way}}}" for count, way in (draw(ways), draw(ways))]
    first = draw(FIRST)
    starts = draw(
        st.sampled_from(["", f"starts: {first}\n", f"starts: {{One: {first}, Two: {first + timedelta(weeks=2)}}}\n"])
    )
    whole = f"{starts}phases: [{', '.join(phases)}]"
    left_out = {"plans/plan": ["starts"]} if not starts else {}
    programme = make.programme({**EVENINGS, "plans/plan": whole}, left_out)
    plan = programme.plans["plan"]
    if starts:
        found = [one for one in draw(breaks_from(first)) if week_after(week_starts(first, plan.week_count, [one]), one)]
        plan = plan.model_copy(update={"breaks": found})
    return next(one for one in resolve(_with(programme, plan)) if one.ident == "plan")


def _with(programme: Programme, plan: Plan) -> Programme:
    programme.plans["plan"] = plan
    return programme


@given(plans())
def test_every_session_of_a_plan_stands_exactly_once(plan: ResolvedPlan) -> None:
    """Each place of each week is one session with an address of its own, and none is lost or doubled."""
    for week in plan.weeks:
        planned = plan.plan.planned(week.number)
        assert Counter(s.session for s in week.sessions) == Counter(one.session for one in planned)
        assert sorted(s.place for s in week.sessions) == sorted(one.place for one in planned)
        assert len({s.place for s in week.sessions}) == len(week.sessions)


@given(plans())
def test_sessions_go_forwards_for_every_group(plan: ResolvedPlan) -> None:
    """Neither the days of a group nor the order that checks go by ever step back, from week to week and inside one."""
    order = [session.since_start for session in plan.sessions]
    assert order == sorted(order)
    for group in plan.groups:
        days = [group.date_of(s.week, s.day) for s in plan.sessions if s.day is not None]
        assert days == sorted(days)
        for week in plan.weeks:
            first, last = group.span_of(week.number)
            assert all(first <= group.date_of(s.week, s.day) <= last for s in week.sessions if s.day is not None)


@given(plans())
def test_the_order_that_checks_go_by_is_that_of_the_dates(plan: ResolvedPlan) -> None:
    """With a start, the days between two sessions on fixed days are those between their dates."""
    dated = [session for session in plan.sessions if session.date is not None]
    for first, second in pairwise(dated):
        assert first.date is not None
        assert second.date is not None
        assert (second.date - first.date).days == second.since_start - first.since_start


def test_sessions_take_turns_over_days_and_weeks() -> None:
    """Three sessions on two evenings: a b, c a, b c, and a b again in the fourth week."""
    turns = "{rotate: [legs, arms, trunk], days: [friday, tuesday]}"
    plan = make.resolved({**EVENINGS, "plans/plan": f"phases: [{{name: P, aim: On., weeks: 4, sessions: {turns}}}]"})

    assert [[(s.place, s.session) for s in week.sessions] for week in plan.weeks] == [
        [("tuesday", "legs"), ("friday", "arms")],
        [("tuesday", "trunk"), ("friday", "legs")],
        [("tuesday", "arms"), ("friday", "trunk")],
        [("tuesday", "legs"), ("friday", "arms")],
    ]


def test_a_session_that_takes_turns_climbs_by_the_weeks_in_which_it_stands() -> None:
    """A progression counts the weeks of its own session, and a week without it is none."""
    lift = "{exercise: lift, reps: 8, progress: {reps: {add: 1, up_to: 12}}}"
    files = {
        "sessions/legs": f"blocks: [{{kind: straight, sets: 3, exercises: [{lift}]}}]",
        "sessions/arms": "name: Arms",
        "plans/plan": "phases: [{name: P, aim: On., weeks: 4, sessions: {rotate: [legs, arms], days: [monday]}}]",
    }
    reps = [next(s.items).dose.first.amount.high for s in make.resolved(files).sessions if s.session == "legs"]

    assert reps == [8, 9]


def test_the_second_session_of_a_day_has_an_address_of_its_own() -> None:
    """The first keeps the day's address, so that adding an evening to a morning breaks no link."""
    day = "{tuesday: [legs, arms]}"
    plan = make.resolved({**EVENINGS, "plans/plan": f"phases: [{{name: P, aim: On., weeks: 1, sessions: {day}}}]"})

    assert [(s.place, s.session) for s in plan.sessions] == [("tuesday", "legs"), ("tuesday-2", "arms")]


def test_a_session_moved_onto_a_free_day_keeps_the_identity_of_its_place() -> None:
    """Its page is at the new day; what calendars know it by stays that of the day it was planned on."""
    files = {
        **EVENINGS,
        "plans/plan": "phases: [{name: P, aim: On., weeks: 1, sessions: {tuesday: [legs, arms]}}]\n"
        "changes: [{week: 1, day: tuesday, number: 2, move_to: friday, why: The hall is let.}]",
    }
    moved = list(make.resolved(files).sessions)[1]

    assert (moved.place, moved.planned, moved.session) == ("friday", "tuesday-2", "arms")


CLOSED = "breaks: [{from: 2027-03-15, to: 2027-03-28, why: Closed., coming_back: {sets: 60 %, load: 90 %}}]"


def test_a_break_moves_the_weeks_behind_it_and_the_next_one_is_lighter() -> None:
    """Two weeks closed after the second: the third begins behind them, with 60 % of 3 sets, and holds the climb."""
    lift = "{exercise: lift, reps: 8, load: 20 kg, progress: {reps: {add: 1, up_to: 12}}}"
    files = {
        "sessions/only": f"blocks: [{{kind: straight, sets: 3, exercises: [{lift}]}}]",
        "plans/plan": CLOSED,
    }
    plan = make.resolved(files)
    doses = [next(s.items).dose for s in plan.sessions]

    assert [week.starts for week in plan.weeks] == [
        date(2027, 3, 1),
        date(2027, 3, 8),
        date(2027, 3, 29),
        date(2027, 4, 5),
    ]
    assert [week.remains.kind for week in plan.weeks] == ["normal", "normal", "lighter", "normal"]
    assert [dose.count for dose in doses] == [3, 3, 2, 3]
    assert [dose.first.amount.high for dose in doses] == [8, 9, 9, 10]
    assert str(doses[2].heaviest) == "18 kg"
    assert [week.after is not None for week in plan.weeks] == [False, False, True, False]


def test_the_week_after_a_break_keeps_the_smaller_share_where_it_is_lighter_anyway() -> None:
    """A lighter week of 50 % of the sets and all of the load, behind a break that asks for 60 % and 90 %."""
    phases = "phases: [{name: P, aim: On., weeks: 4, sessions: {monday: only}, lighter: {weeks: [3], sets: 50 %}}]"
    third = make.resolved({"plans/plan": f"{CLOSED}\n{phases}"}).weeks[2].remains

    assert (third.kind, third.sets, third.load) == ("lighter", Fraction(50), Fraction(90))


def test_groups_that_break_off_in_different_weeks_share_their_doses() -> None:
    """The same break comes a week earlier for those who began a week later; no page says which week is next."""
    plan = make.resolved(
        {
            "plans/plan": "starts: {Early: 2027-03-01, Late: 2027-03-08}\n"
            "breaks: [{from: 2027-03-15, to: 2027-03-21, why: Closed.}]"
        }
    )
    early, late = plan.groups

    assert early.starts[1:3] == (date(2027, 3, 8), date(2027, 3, 22))
    assert late.starts[:2] == (date(2027, 3, 8), date(2027, 3, 22))
    assert [week.after for week in plan.weeks] == [None] * 4


@pytest.mark.parametrize(("week", "on"), [(4, date(2027, 3, 28)), (5, date(2027, 4, 4))])
def test_an_event_is_a_distance_from_the_start(week: int, on: date) -> None:
    """Sunday of the fourth week of a plan from 1 March 2027, and of the week after its last."""
    plan = make.resolved({"plans/plan": f"event: {{name: Race, week: {week}, day: sunday}}"})

    assert plan.event_on(plan.groups[0]) == on
