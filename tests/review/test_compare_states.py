"""Two states compared, value by value: exercises, plans, days, sessions and doses that come, go and change."""

from dataclasses import replace

from setwright.dose.dose import Dose
from setwright.dose.timing import TimeRange
from setwright.review.compare import DayChange, DoseChange, compare
from setwright.review.parts import PARTS, Line
from setwright.review.state import DayState, DoseState, State
from support import make

EIGHT, NINE = make.dose("{reps: 8}"), make.dose("{reps: 9}")
TIME = TimeRange(600, 900)


def day(*doses: tuple[str, Dose], session: str = "legs", on: str = "2027-03-01", time: TimeRange = TIME) -> DayState:
    return DayState(session, on, time, [DoseState(ident, False, dose) for ident, dose in doses])


def plan(weeks: dict[int, dict[str, DayState]], ident: str = "spring") -> State:
    return State(plans={ident: "Spring"}, days={ident: weeks}, names={"squat": "Squat", "hop": "Hop"})


def exercises(**cues: str) -> State:
    """Return exercises with one cue each."""
    return State(
        exercises={
            ident: {part: [Line("cues 1", cue, "cues")] if part == "cues" else [] for part in PARTS}
            for ident, cue in cues.items()
        },
        names={ident: ident.title() for ident in cues},
    )


def test_exercises_come_go_and_change() -> None:
    """One that is gone keeps the name that it had; one that is the same is not told."""
    found = compare(exercises(squat="Tall", hop="Soft", row="Slow"), exercises(squat="Taller", row="Slow", leap="Far"))

    assert [(e.ident, e.name, e.way, [p.part for p in e.parts]) for e in found.exercises] == [
        ("hop", "Hop", "removed", []),
        ("leap", "Leap", "added", []),
        ("squat", "Squat", "changed", ["cues"]),
    ]
    assert found.names == {"squat": "Squat", "hop": "Hop", "row": "Row", "leap": "Leap"}


def test_plans_come_and_go() -> None:
    """A plan that only one state has is told as such, and not week by week."""
    old, new = plan({1: {"monday": day(("squat", EIGHT))}}), plan({1: {"monday": day(("squat", EIGHT))}}, "autumn")
    found = compare(old, new)

    assert found.plans == (("spring", "plan spring is gone"), ("autumn", "plan autumn is new"))
    assert (found.sessions, found.days) == ((), ())


def test_days_that_move_and_hold_something_else() -> None:
    """A day is told where its session or its date is another, and where one state alone has it; other days are not."""
    old = plan({1: {"monday": day(), "friday": day(on="2027-03-05")}, 2: {"monday": day(on="2027-03-08")}})
    new = plan(
        {
            1: {"monday": day(session="arms"), "friday": day(on="2027-03-05")},
            2: {"tuesday": day(on="2027-03-09")},
            3: {"monday": day(on="2027-03-15")},
        }
    )

    assert compare(old, new).days == (
        DayChange("spring", 1, "monday", "legs, 2027-03-01", "arms, 2027-03-01"),
        DayChange("spring", 2, "monday", "legs, 2027-03-08", "nothing"),
        DayChange("spring", 2, "tuesday", "nothing", "legs, 2027-03-09"),
        DayChange("spring", 3, "monday", "nothing", "legs, 2027-03-15"),
    )


def test_a_day_of_another_date_is_another_day() -> None:
    """A plan that starts a week later has the same days on other dates."""
    (found,) = compare(plan({1: {"monday": day()}}), plan({1: {"monday": day(on="2027-03-08")}})).days

    assert (found.old, found.new) == ("legs, 2027-03-01", "legs, 2027-03-08")


def test_doses_of_several_weeks_are_told_together() -> None:
    """The same change in two weeks is one; an exercise that comes or goes has no dose on one side."""
    old = plan({week: {"monday": day(("squat", EIGHT), ("row", EIGHT))} for week in (1, 2, 3)})
    new = plan(
        {
            1: {"monday": day(("squat", NINE), ("row", EIGHT))},
            2: {"monday": day(("squat", NINE), ("row", EIGHT))},
            3: {"monday": day(("squat", EIGHT), ("hop", EIGHT))},
        }
    )
    (found,) = compare(old, new).sessions

    assert (found.plan, found.session, found.times) == ("spring", "legs", ())
    assert found.doses == (
        DoseChange("squat", "3 sets of 8 reps", "3 sets of 9 reps", (1, 2)),
        DoseChange("row", "3 sets of 8 reps", "", (3,)),
        DoseChange("hop", "", "3 sets of 8 reps", (3,)),
    )


def test_an_exercise_that_stands_twice_is_compared_place_by_place() -> None:
    """Its first dose with its first, its second with its second; one place more is new."""
    old = plan({1: {"monday": day(("squat", EIGHT), ("squat", NINE))}})
    new = plan({1: {"monday": day(("squat", EIGHT), ("squat", EIGHT), ("squat", NINE))}})
    (found,) = compare(old, new).sessions

    assert found.doses == (
        DoseChange("squat", "3 sets of 9 reps", "3 sets of 8 reps", (1,)),
        DoseChange("squat", "", "3 sets of 9 reps", (1,)),
    )


def test_an_exercise_put_in_before_the_others_does_not_move_them() -> None:
    """What stands behind a new exercise is compared with itself."""
    old = plan({1: {"monday": day(("squat", EIGHT), ("row", NINE))}})
    new = plan({1: {"monday": day(("hop", EIGHT), ("squat", EIGHT), ("row", NINE))}})
    (found,) = compare(old, new).sessions

    assert found.doses == (DoseChange("hop", "", "3 sets of 8 reps", (1,)),)


def test_a_session_twice_a_week_is_compared_day_by_day() -> None:
    """Its first day with its first, whatever weekday that is; a day more is told as a day, and not as doses."""
    old = plan({1: {"monday": day(("squat", EIGHT)), "friday": day(("squat", NINE), on="2027-03-05")}})
    new = plan(
        {
            1: {
                "monday": day(("squat", EIGHT)),
                "wednesday": day(("squat", NINE), on="2027-03-03"),
                "friday": day(("squat", EIGHT), on="2027-03-05"),
            }
        }
    )
    found = compare(old, new)

    assert found.sessions == ()
    assert [change.day for change in found.days] == ["wednesday"]


def test_only_weeks_and_sessions_of_both_states_are_compared() -> None:
    """A session that came new, and a week that is gone, have no dose before or after."""
    old = plan({1: {"monday": day(("squat", EIGHT))}, 2: {"monday": day(("squat", EIGHT))}})
    new = plan({1: {"monday": day(("hop", EIGHT), session="arms")}})

    assert compare(old, new).sessions == ()


def test_rest_is_said_where_it_is_the_rest_that_differs() -> None:
    """Two doses that read alike are told apart by their rest; else the rest is left out."""
    longer = EIGHT.with_sets(rest_s=EIGHT.first.rest_s + 30)
    (found,) = compare(
        plan({1: {"monday": day(("squat", EIGHT))}}), plan({1: {"monday": day(("squat", longer))}})
    ).sessions

    assert found.doses == (
        DoseChange("squat", "3 sets of 8 reps, rest 1 min 30 s", "3 sets of 8 reps, rest 2 min", (1,)),
    )


def test_times_are_told_with_their_weeks() -> None:
    """A session that takes longer in two weeks says so once; a minute that nobody reads is no change."""
    old = {week: {"monday": day()} for week in (1, 2, 3)}
    longer = replace(day(), time=TimeRange(1200, 1500))
    new = {1: {"monday": longer}, 2: {"monday": longer}, 3: {"monday": replace(day(), time=TimeRange(601, 900))}}
    (found,) = compare(plan(old), plan(new)).sessions

    assert found.doses == ()
    assert [weeks for _, _, weeks in found.times] == [(1, 2)]
