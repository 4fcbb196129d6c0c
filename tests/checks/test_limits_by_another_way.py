"""A limit is not got round: by effort, by the other hand, in a warm-up, beside a dose, by a box or by many jumps."""

import pytest

from setwright.model.exercise import Exercise
from support import make

FOUR_WEEKS = "[{name: All, aim: To go on., weeks: 4, sessions: {monday: only}}]"


def said(files: dict[str, str], *rules: str) -> list[str]:
    """Return what the checks say of a small programme, under some rules."""
    return [f.message for f in make.verdict(make.programme(files)).findings if f.rule in rules]


BY_EFFORT = ["RPE 6", "4 reps in reserve", "60 % 1RM", "heavy band"]


@pytest.mark.parametrize("load", BY_EFFORT)
@pytest.mark.parametrize("also", ["", ", top_effort: RPE 7", ", least_reserve: 3 reps in reserve"])
def test_a_load_that_no_scale_knows_needs_a_limit_of_effort(load: str, also: str) -> None:
    """Under a load limit it is refused, unless the limits bound the effort too."""
    made = make.one_exercise(
        f"{{reps: 5, load: {load}}}",
        phases=FOUR_WEEKS,
        lift=f"{{kit: [dumbbell], limits: {{load: 20 % bodyweight{also}}}}}",
    )
    found = [f for f in make.verdict(made).findings if f.rule == "load-escapes-limit"]

    expected = [f"lift: {load} in week 1 of plan may weigh more than the limit of 20 % bodyweight"]
    assert [f.message for f in found] == ([] if also else expected)


def test_a_load_that_turns_into_an_effort_later_is_refused_too() -> None:
    """The first week by weight does not excuse the third by effort, and the message names the week."""
    written = "{reps: 5, load: 10 kg, progress: {load: {weeks: [10 kg, 10 kg, RPE 9]}}}"
    made = make.one_exercise(written, phases=FOUR_WEEKS, lift="limits: {load: 20 kg}")
    found = [f.message for f in make.verdict(made).findings if f.rule == "load-escapes-limit"]

    assert found == ["lift: RPE 9 in week 3 of plan may weigh more than the limit of 20 kg"]


def test_a_change_of_one_week_is_refused_too() -> None:
    """An effort in one week alone is found at the change."""
    changes = "[{week: 2, session: only, exercise: lift, load: RPE 9, why: A test.}]"
    made = make.one_exercise("{reps: 5, load: 10 kg}", phases=FOUR_WEEKS, changes=changes, lift="limits: {load: 20 kg}")
    found = [f for f in make.verdict(made).findings if f.rule == "load-escapes-limit"]

    assert [f.message for f in found] == ["lift: RPE 9 in week 2 of plan may weigh more than the limit of 20 kg"]
    assert found[0].position.file == "program/plans/plan.yml"


HELD = "figure: {holds: {dumbbell: %s}, poses: [{trunk: 2}]}\nkit: [dumbbell]\nlimits: {load: 12 kg%s}"
HANDS = [
    # how the figure holds it, the limit's hand, the dose, whether it can be read twice
    ("each hand", " per hand", "10 kg", True),
    ("each hand", " per hand", "10 kg per hand", False),
    ("each hand", "", "10 kg", True),
    ("each hand", "", "5 % bodyweight", True),
    ("each hand", " per hand", "RPE 7", False),
    ("both hands", " per hand", "10 kg", False),
    ("near hand", " per hand", "10 kg", False),
]


@pytest.mark.parametrize(("hold", "hand", "load", "unclear"), HANDS)
def test_one_in_each_hand_wants_per_hand(hold: str, hand: str, load: str, unclear: bool) -> None:
    """Under a load limit, a dose of a weight in each hand says 'per hand'; it is not doubled, and not guessed."""
    made = make.one_exercise(f"{{reps: 5, load: {load}}}", phases=FOUR_WEEKS, lift=HELD % (hold, hand))
    found = [f for f in make.verdict(made).findings if f.rule == "per-hand-missing"]

    assert [f.severity for f in found] == (["error"] if unclear else [])


def test_a_limit_of_one_hand_is_never_doubled() -> None:
    """7 kg in one piece are more than 6 kg in each hand allow, since they may hang from one."""
    made = make.one_exercise("{reps: 5, load: 7 kg}", phases=FOUR_WEEKS, lift="limits: {load: 6 kg per hand}")
    found = [f.message for f in make.verdict(made).findings if f.rule == "dose-beyond-limit"]

    assert found == ["lift: 7 kg in week 1 of plan is beyond the limit of 6 kg per hand"]


EASY = "name: Easy\nsteps: [Move.]\n"
WEEKLY = [
    # the way to sets beyond the three of the session, what is found under a limit of five
    ("routine", "lift: 6 sets, 3 of them as a way of another exercise or in a routine, in week 1 of plan"),
    ("easier", "easy: 6 sets, 3 of them as a way of another exercise or in a routine, in week 1 of plan"),
    ("at home", "easy: 6 sets, 3 of them as a way of another exercise or in a routine, in week 1 of plan"),
    ("change", "lift: 6 sets in week 2 of plan"),
]


def way_to(way: str, limits: str) -> dict[str, str]:
    """Return a programme in which a limited exercise is reached in one more way than by its own dose."""
    both = "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8}, {exercise: easy, reps: 8}]}]"
    match way:
        case "routine":
            return {
                "exercises/lift": limits,
                "routines/warm": "rounds: 3\nexercises: [{exercise: lift, reps: 5}]",
            }
        case "easier":
            return {"exercises/easy": EASY + limits, "exercises/lift": "easier: [easy]", "sessions/only": both}
        case "at home":
            home = 'at_home: {use: a stair, how: "Do [this](exercise:easy)."}'
            return {"exercises/easy": EASY + limits, "exercises/lift": home, "sessions/only": both}
        case _:
            return {
                "exercises/lift": limits,
                "plans/plan": "changes: [{week: 2, session: only, exercise: lift, sets: 6, why: A test.}]",
            }


@pytest.mark.parametrize(("way", "crossed"), WEEKLY)
def test_sets_of_a_week_count_every_way(way: str, crossed: str) -> None:
    """A warm-up, an easier way, a way at home and a change of one week all count."""
    found = said(way_to(way, "limits: {weekly_sets: 5}"), "dose-beyond-limit")

    assert found == [f"{crossed} are beyond the limit of 5"]


@pytest.mark.parametrize("way", ["routine", "easier", "at home"])
def test_the_first_phase_counts_every_way(way: str) -> None:
    """An exercise that waits for phase two is not offered in phase one: in no warm-up, and beside no dose."""
    files = way_to(way, "limits: {earliest_phase: 2}")
    sessions = {"sessions/only": ""} if way != "routine" else {"sessions/only": make.SESSION.replace("lift", "other")}
    files = files | sessions | ({"exercises/other": "name: Other"} if way == "routine" else {})
    found = said(files, "dose-beyond-limit")

    assert len(found) == 1
    assert "week 1 of plan is in phase 1 (First)" in found[0]
    assert "before phase 2, the earliest allowed" in found[0]


def test_an_exercise_put_in_its_place_for_a_day_comes_too_early() -> None:
    """Another session for one day is a way to an exercise, too."""
    files = {
        "exercises/late": "name: Late\nlimits: {earliest_phase: 2}",
        "sessions/other": "name: Other\nblocks: [{kind: straight, sets: 1, exercises: [{exercise: late, reps: 5}]}]",
        "plans/plan": "changes: [{week: 1, day: monday, do_instead: other, why: The hall is shut.}]",
    }

    assert len(said(files, "dose-beyond-limit")) == 1


def test_the_dose_stays_within_the_limits_of_what_may_be_done_instead() -> None:
    """Eight repetitions beside an easier way of six at most: the member would do eight of it."""
    files = {"exercises/easy": EASY + "limits: {reps: 6}", "exercises/lift": "easier: [easy]"}

    assert said(files, "dose-beyond-limit") == [
        "easy: 8 reps in week 1 of plan, as the easier way of lift, is beyond the limit of 6"
    ]


JUMPS = "pattern: jump\nlimits: {contacts: %s}"
SPLIT = """
blocks:
  - {kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8}]}
  - {kind: straight, sets: 2, exercises: [{exercise: hop, reps: 10}]}
"""


@pytest.mark.parametrize(("limit", "crossed"), [(54, False), (53, True)])
def test_landings_of_a_session_are_added_up(limit: int, crossed: bool) -> None:
    """24 landings of one jump, 20 of another and 10 in the warm-up are 54, whichever of them carries the limit."""
    files = {
        "exercises/lift": JUMPS % limit,
        "exercises/hop": "name: Hop\npattern: jump",
        "sessions/only": SPLIT,
        "routines/warm": "exercises: [{exercise: hop, reps: 10}]",
    }
    found = said(files, "dose-beyond-limit")

    whole = "lift: 54 landings in week 1 of plan, all jumps of the session and its warm-up together,"
    assert found == ([f"{whole} are beyond the limit of 53"] if crossed else [])


BOX = "kit: [box]\nlimits: {height: 30 cm}\nfigure: {props: {box: {height: %s}}, poses: [{trunk: 2}]}"
CLUB = "kit: {box: [%s cm, 40 cm], kettlebell: [4 kg], mat: 8}"
HEIGHTS = [
    # figure, session, lowest of the club, what is found
    ("30 cm", "height: 30 cm", 20, None),
    ("30 cm", "note: The 20 cm box.", 20, None),
    ("31 cm", "reps: 8", 20, "a box of 31 cm in the figure"),
    ("30 cm", "height: 40 cm", 20, "a height of 40 cm in the session only"),
    ("30 cm", "reps: 8", 35, "the club's lowest, 35 cm, in the session only"),
]


@pytest.mark.parametrize(("drawn", "written", "lowest", "crossed"), HEIGHTS)
def test_no_box_is_higher_than_the_limit(drawn: str, written: str, lowest: int, crossed: str | None) -> None:
    """In the picture, in the dose or in the cupboard: a height above the limit is found."""
    one = f"{{exercise: lift, reps: 8, {written}}}" if "reps" not in written else "{exercise: lift, reps: 8}"
    files = {
        "club": CLUB % lowest,
        "exercises/lift": BOX % drawn,
        "sessions/only": f"blocks: [{{kind: straight, sets: 3, exercises: [{one}]}}]",
    }
    found = said(files, "dose-beyond-limit")

    assert found == ([f"lift: {crossed} is beyond the limit of 30 cm"] if crossed else [])


UNCLEAR = [
    # a limit that binds nothing, what is said of it
    ("load: RPE 7", "a limit of RPE 7 cannot be compared with a weight"),
    ("top_effort: 20 kg", "a limit of 20 kg cannot be compared with an effort"),
    ("least_reserve: RPE 7", "a limit of RPE 7 cannot be compared with reps in reserve"),
]


@pytest.mark.parametrize(("limit", "message"), UNCLEAR)
def test_a_limit_of_the_wrong_kind_is_refused(limit: str, message: str) -> None:
    """Each limit is written in what it is compared with."""
    with pytest.raises(ValueError, match=message):
        Exercise.model_validate(make.filled(make.EXERCISE, f"limits: {{{limit}}}"))
