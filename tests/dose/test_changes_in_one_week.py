"""Changes in one week: a number is set, a session skipped, moved or swapped; the progression does not notice."""

import pytest

from setwright.dose.resolved import Reason, ResolvedWeek
from setwright.dose.timing import USUAL_CHANGE_OVER_S, USUAL_REST_S
from setwright.wording.doses import dose_in_words
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration
from support import make

TWO_DAYS = "phases: [{name: All, aim: To go on., weeks: 3, sessions: {tuesday: only, friday: other}}]"
ONE_NAME = "phases: [{name: All, aim: To go on., weeks: 3, sessions: {tuesday: only, friday: only}}]"
SESSION = """
blocks:
  - kind: straight
    sets: 3
    rest: 60 s
    exercises:
      - {exercise: lift, reps: 8, load: 8 kg, progress: {reps: {add: 1, up_to: 20}}}
      - {exercise: row, reps: 10}
"""


def weeks(change: str, phases: str = TWO_DAYS) -> tuple[ResolvedWeek, ...]:
    files = {
        "plans/plan": f"{phases}\nchanges: [{change}]",
        "sessions/only": SESSION,
        "sessions/other": SESSION,
        "exercises/row": "",
    }
    return make.resolved(files).weeks


def said(week: ResolvedWeek) -> list[str]:
    """Say each session of a week: day, id, and the dose of each exercise."""
    return [f"{s.day} {s.session}: {'; '.join(dose_in_words(ENGLISH, i.dose) for i in s.items)}" for s in week.sessions]


FELT = "{reps: 8, load: 10 kg, feels_like: RPE 8}"


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ("load: 12 kg", "3 sets of 8 reps, 12 kg, effort 8 of 10"),
        ("load: RPE 6", "3 sets of 8 reps, effort 6 of 10"),
        ("load: 3 reps in reserve", "3 sets of 8 reps, 3 reps in reserve"),
        ("feels_like: RPE 6", "3 sets of 8 reps, 10 kg, effort 6 of 10"),
        ("load: 8 kg, feels_like: 4 reps in reserve", "3 sets of 8 reps, 8 kg, 4 reps in reserve"),
    ],
)
def test_a_set_never_feels_two_ways(change: str, said: str) -> None:
    """A week whose load is an effort has no other one beside it; a change may say anew how a load should feel."""
    changes = f"[{{week: 2, session: only, exercise: lift, {change}, why: A cold.}}]"
    made = make.one_exercise(FELT, changes=changes)
    doses = [item.dose for week in (1, 2, 3) if (item := make.in_week(made, week))]

    usual = "3 sets of 8 reps, 10 kg, effort 8 of 10"
    assert [dose_in_words(ENGLISH, dose) for dose in doses] == [usual, said, usual]


USUAL = "3 sets of 9 reps, 8 kg; 3 sets of 10 reps"
CASES = [
    # a change in week 2, and what that week holds
    ("session: only, sets: 2", ["tuesday only: 2 sets of 9 reps, 8 kg; 2 sets of 10 reps", f"friday other: {USUAL}"]),
    ("day: tuesday, sets: 2", ["tuesday only: 2 sets of 9 reps, 8 kg; 2 sets of 10 reps", f"friday other: {USUAL}"]),
    (
        "session: only, exercise: lift, reps: 5",
        ["tuesday only: 3 sets of 5 reps, 8 kg; 3 sets of 10 reps", f"friday other: {USUAL}"],
    ),
    (
        "session: only, exercise: lift, load: 6 kg, tempo: 4-0-1-0",
        ["tuesday only: 3 sets of 9 reps, 6 kg, tempo 4-0-1-0; 3 sets of 10 reps", f"friday other: {USUAL}"],
    ),
    ("day: tuesday, skip: true", [f"friday other: {USUAL}"]),
    ("session: other, skip: true", [f"tuesday only: {USUAL}"]),
    ("day: friday, move_to: thursday", [f"tuesday only: {USUAL}", f"thursday other: {USUAL}"]),
    ("day: friday, move_to: monday", [f"monday other: {USUAL}", f"tuesday only: {USUAL}"]),
    ("day: friday, do_instead: only", [f"tuesday only: {USUAL}", f"friday only: {USUAL}"]),
]


@pytest.mark.parametrize(("change", "expected"), CASES)
def test_changed_week(change: str, expected: list[str]) -> None:
    """A change does to its week what it says, and to nothing else in it."""
    assert said(weeks(f"{{week: 2, {change}, why: Because.}}")[1]) == expected


@pytest.mark.parametrize(("change", "expected"), CASES)
def test_weeks_around_a_change_are_as_without_it(change: str, expected: list[str]) -> None:
    """The week before is untouched, and so is the week after, unless training was left out or held another time."""
    changed, plain = weeks(f"{{week: 2, {change}, why: Because.}}"), weeks("")
    moves_the_count = "skip" in change or "do_instead" in change

    assert said(changed[0]) == said(plain[0])
    assert (said(changed[2]) == said(plain[2])) is not moves_the_count


def test_do_instead_counts_for_the_session_that_was_done() -> None:
    """The session put in goes on by itself; the one left out goes on later from where it stood."""
    third = weeks("{week: 2, day: friday, do_instead: only, why: Camp.}")[2]

    assert [(session.session, session.trained) for session in third.sessions] == [("only", 2), ("other", 1)]


def test_skip_is_kept_with_its_reason() -> None:
    """Members read why there is no session."""
    second = weeks("{week: 2, day: tuesday, skip: true, why: Race weekend.}")[1]

    assert [(s.day, s.session, s.why) for s in second.skipped] == [("tuesday", "only", "Race weekend.")]


def test_moved_session_says_from_where() -> None:
    """A moved session carries the day it comes from, and the reason."""
    second = weeks("{week: 2, day: friday, move_to: thursday, why: Race on Saturday.}")[1]

    assert second.sessions[1].reasons == (Reason("Race on Saturday.", moved_from="friday"),)


def test_session_put_in_says_why() -> None:
    """A session done in another's place carries the coach's reason, and comes from no other day."""
    second = weeks("{week: 2, day: friday, do_instead: only, why: The rack is lent.}")[1]

    assert second.sessions[1].reasons == (Reason("The rack is lent."),)


def test_change_of_another_day_stands_in_no_ones_way() -> None:
    """A day is moved as written, although a change of another day is written before it."""
    second = weeks(
        "{week: 2, day: tuesday, skip: true, why: Camp.}, {week: 2, day: friday, move_to: monday, why: Camp.}"
    )

    assert said(second[1]) == [f"monday other: {USUAL}"]


def test_two_changes_of_one_day_both_hold() -> None:
    """A day may be moved and have its session swapped in the same week, in whatever order that is written."""
    move, swap = (
        "{week: 2, day: friday, " + what + ", why: Camp.}" for what in ("move_to: monday", "do_instead: only")
    )

    assert (
        said(weeks(f"{move}, {swap}")[1])
        == said(weeks(f"{swap}, {move}")[1])
        == [
            f"monday only: {USUAL}",
            f"tuesday only: {USUAL}",
        ]
    )


def test_day_and_session_together_mean_that_day_alone() -> None:
    """Where a session stands twice in a week, naming its day too changes that day and not the other."""
    second = weeks("{week: 2, day: friday, session: only, sets: 1, why: Tired.}", ONE_NAME)[1]

    assert said(second) == [f"tuesday only: {USUAL}", "friday only: 1 set of 9 reps, 8 kg; 1 set of 10 reps"]


def test_session_alone_means_each_day_that_holds_it() -> None:
    """Where a session stands twice in a week, naming it alone changes both days."""
    second = weeks("{week: 2, session: only, sets: 1, why: Tired.}", ONE_NAME)[1]

    assert said(second) == [f"{day} only: 1 set of 9 reps, 8 kg; 1 set of 10 reps" for day in ("tuesday", "friday")]


def test_rest_changes_for_one_week() -> None:
    """A change of rest holds for every exercise of the session, for one week."""
    changed = weeks("{week: 2, session: only, rest: 2 min, why: Heat.}")
    rests = [w.sessions[0].blocks[0].items[1].dose.first.rest_s for w in changed]

    assert [duration(ENGLISH, one) for one in rests] == ["1 min", "2 min", "1 min"]


def test_rest_of_a_block_changes_with_the_session_alone() -> None:
    """A whole session's new rest is that of its blocks too; one exercise's own is not."""
    rests = [
        weeks(f"{{week: 2, session: only, {change}, why: Heat.}}")[1].sessions[0].blocks[0].rests_s
        for change in ("rest: 2 min", "exercise: lift, rest: 2 min")
    ]

    assert rests == [(120,), (60,)]


def test_change_over_is_the_blocks_own_where_it_has_one() -> None:
    """Ten seconds from one exercise of a circuit to the next, unless the coach writes another time, or none at all."""
    two = "exercises: [{exercise: lift, reps: 8}, {exercise: lift, reps: 8}]"
    times = [
        make.resolved({"sessions/only": f"blocks: [{{kind: circuit, rounds: 2, {written}{two}}}]"})
        .weeks[0]
        .sessions[0]
        .blocks[0]
        .change_over_s
        for written in ("", "change_over: 30 s, ", "change_over: 0 s, ")
    ]

    assert times == [10, 30, 0]


def test_usual_pauses() -> None:
    """A minute to the next exercise of straight sets, ten seconds within a round; 90, 60 and 120 s of rest.

    Common practice, no source.
    """
    assert USUAL_CHANGE_OVER_S == {"straight": 60, "superset": 10, "circuit": 10}
    assert USUAL_REST_S == {"straight": 90, "superset": 60, "circuit": 120}


def test_reason_of_a_whole_session_stands_on_the_session() -> None:
    """A reason that is about all of a session is not said again beside each of its exercises."""
    second = weeks(
        "{week: 2, session: only, sets: 2, why: Heat.}, {week: 2, session: only, exercise: lift, reps: 5, why: Legs.}"
    )
    only = second[1].sessions[0]

    assert only.reasons == (Reason("Heat."),)
    assert [item.reasons for item in only.items] == [("Legs.",), ()]


def test_reason_stands_beside_the_exercise_that_it_is_about() -> None:
    """A changed exercise carries the reason; its neighbours do not."""
    second = weeks("{week: 2, session: only, exercise: lift, reps: 5, why: Race legs.}")[1]

    assert [item.reasons for item in second.sessions[0].items] == [("Race legs.",), ()]
