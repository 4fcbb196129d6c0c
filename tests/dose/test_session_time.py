"""How long sets, blocks and sessions take: from what is written at the quick end, to what members make of it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.dose import Dose
from setwright.dose.sequence import Step, block_steps
from setwright.dose.timing import TimeRange, block_time, session_time, set_time, step_time
from setwright.model.session import BlockKind
from support import make
from support.strategies import doses

TEMPO = "{reps: 8, tempo: 3-1-1-0}"


def straight(*written: Dose, change_over_s: int = 60) -> TimeRange:
    return block_time(block_steps(0, "straight", "ABCDE", written, (0,), change_over_s), written)


def test_three_sets_have_two_rests() -> None:
    """3 x 8 at 3-1-1-0 with 90 s rest takes 3 x 40 + 2 x 90 = 300 s (computed)."""
    dose = make.dose(TEMPO, block="{kind: straight, sets: 3, rest: 90 s}")

    assert straight(dose).low_s == 300


def test_slow_end_allows_a_quarter_more_and_ten_seconds_a_pause() -> None:
    """The same sets take 3 x 50 + 2 x 100 = 350 s at the slow end. Common practice, no source."""
    dose = make.dose(TEMPO, block="{kind: straight, sets: 3, rest: 90 s}")

    assert straight(dose).high_s == 350


@pytest.mark.parametrize(
    ("written", "exercise", "low_s", "high_s"),
    [
        ("{hold: 30 s}", "", 30, 30),  # a clock runs as fast for everyone
        ("{hold: 30 s}", "sides: one at a time", 60, 70),  # and changing sides takes up to ten seconds
        ("{work: 45 s}", "sides: alternating", 45, 45),
        ("{distance: 20 m}", "", 20, 25),  # a loaded walk, at 1 m/s
        ("{distance: 20 m}", "sides: one at a time", 40, 60),
        ("{reps: 10}", "", 30, 50),  # no tempo: 3 to 5 s each
        ("{reps: 10}", "tempo: 2-0-2-0", 40, 50),  # the same pace, asked for
        ("{reps: 10, tempo: 3-0-1-0}", "sides: one at a time", 80, 110),
    ],
)
def test_one_set(written: str, exercise: str, low_s: int, high_s: int) -> None:
    """A set's time by what it counts. Common practice, no source."""
    dose = make.dose(written, exercise)

    assert set_time(dose, dose.first) == TimeRange(low_s, high_s)


def test_straight_sets_change_over_between_exercises() -> None:
    """Two exercises have one change-over between them, or the rest where that is longer: 2 x 300 s and 90 s."""
    dose = make.dose(TEMPO, block="{kind: straight, sets: 3, rest: 90 s}")

    assert straight(dose, dose).low_s == 690
    assert straight(dose, dose, change_over_s=120).low_s == 720


def test_superset_rests_after_the_round() -> None:
    """Two exercises of 40 s, three rounds, 10 s between the two and 60 s between rounds: 240 + 30 + 120 s."""
    dose = make.dose(TEMPO, block="{kind: superset, rounds: 3}")

    assert (
        block_time(block_steps(0, "superset", "AB", (dose, dose), rests_s=(60,), change_over_s=10), (dose, dose)).low_s
        == 390
    )


def test_session_adds_ninety_seconds_between_blocks() -> None:
    """Blocks of 300 and 390 s make 780 s with the change between them. Common practice, no source."""
    assert session_time([TimeRange(300, 350), TimeRange(390, 480)]) == TimeRange(780, 930)


def test_a_set_of_two_sides_takes_its_time_on_the_first() -> None:
    """Nobody stops the clock between the sides: the time of both, and the change between them, stands on the first."""
    dose = make.dose("{hold: 30 s}", "sides: one at a time", "{kind: straight, sets: 1}")
    times = [step_time(step, (dose,)) for step in block_steps(0, "straight", "A", (dose,), (0,), 0)]

    assert times == [TimeRange(60, 70), TimeRange(0, 0)]


def test_no_pause_is_none_at_the_slow_end_either() -> None:
    """Where one thing follows the other at once, nobody dawdles; a pause of a second may become eleven."""
    none, one = (step_time(Step("change", 0, seconds=seconds), ()) for seconds in (0, 1))

    assert (none, one) == (TimeRange(0, 0), TimeRange(1, 11))


def test_resolved_session_takes_the_time_of_its_blocks() -> None:
    """A session as a coach writes it, three sets of eight at 3-1-1-0 with 90 s rest, says 300 to 350 s."""
    only = "blocks: [{kind: straight, sets: 3, rest: 90 s, exercises: [{exercise: lift, reps: 8, tempo: 3-1-1-0}]}]"
    week = make.resolved({"sessions/only": only}).weeks[0]

    assert [session.time for session in week.sessions] == [TimeRange(300, 350)]


@given(st.lists(doses, min_size=2, max_size=5), st.integers(0, 300), st.integers(0, 60))
def test_slow_end_is_never_before_the_quick_end(several: list[Dose], rest_s: int, change_over_s: int) -> None:
    """Whatever stands in a block, its range is one."""
    kinds: tuple[BlockKind, ...] = ("straight", "superset", "circuit")
    times = [
        block_time(
            block_steps(0, kind, [str(place) for place in range(len(several))], several, (rest_s,), change_over_s),
            several,
        )
        for kind in kinds
    ]

    assert all(0 < time.low_s <= time.high_s for time in times)
