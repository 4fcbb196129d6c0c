"""Tempo and time under tension.

Order and X as in Wilk M, Zajac A, Tufano JJ, Sports Med 2021;51:1629-1650: seconds of lowering, pause, lifting, pause.
What each place means is from memory. Times are computed: repetitions times the sum of the four numbers.
"""

import pytest

from setwright.dose.phases import Phase, phases
from setwright.dose.timing import set_time
from setwright.model.tempo import Tempo, parse_tempo
from support import make

UNDER_TENSION = [
    # a set, its seconds, three of them
    ("{reps: 8, tempo: 3-1-1-0}", 40, 120),
    ("{reps: 10, tempo: 2-0-2-0}", 40, 120),
    ("{reps: 6, tempo: 4-0-1-1}", 36, 108),
    ("{reps: 6, tempo: 5-0-3-0}", 48, 144),
    ("{reps: 8, tempo: 2-0-2-0}", 32, 96),
]


@pytest.mark.parametrize(("written", "one_s", "three_s"), UNDER_TENSION)
def test_time_under_tension(written: str, one_s: int, three_s: int) -> None:
    """A set lasts its repetitions times its tempo."""
    dose = make.dose(written)

    assert (set_time(dose, dose.first).low_s, set_time(dose, dose.first).low_s * dose.count) == (one_s, three_s)


def test_time_counts_both_sides() -> None:
    """12 repetitions a side at 3-1-1-0 take 120 s (computed), since both sides are done."""
    dose = make.dose("{reps: 12, tempo: 3-1-1-0}", "sides: one at a time")

    assert set_time(dose, dose.first).low_s == 120


def test_alternating_repetitions_count_once() -> None:
    """12 alternating repetitions are 12 in all, 6 a side: 48 s at 2-0-2-0. Common practice, no source."""
    dose = make.dose("{reps: 12, tempo: 2-0-2-0}", "sides: alternating")

    assert set_time(dose, dose.first).low_s == 48


@pytest.mark.parametrize("written", ["2-0-2-0", "5-0-3-0", "6-0-4-0", "3-1-1-0", "10-0-10-2"])
def test_first_number_is_the_lowering(written: str) -> None:
    """The four numbers are lowering, pause, lifting, pause, and are printed as they were written."""
    lowering, low, lifting, high = map(int, written.split("-"))
    tempo = parse_tempo(written)

    assert tempo == Tempo(lowering, low, lifting, high)
    assert str(tempo) == written


@pytest.mark.parametrize(("written", "rep_s"), [("2-0-X-0", 3), ("4-0-X-0", 5), ("6-0-X-0", 7), ("1-0-X-2", 4)])
def test_fast_lift_counts_as_one_second(written: str, rep_s: int) -> None:
    """X has no published duration; here it stands for one second, a rule of this tool that the page states."""
    assert parse_tempo(written).rep_s == rep_s


def test_tempo_of_the_session_goes_before_the_exercise() -> None:
    """An exercise brings its usual tempo; a session that writes another gets that."""
    usual = make.dose("{reps: 8}", "tempo: 3-0-1-0")
    own = make.dose("{reps: 8, tempo: 2-0-X-0}", "tempo: 3-0-1-0")

    assert (str(usual.first.tempo), str(own.first.tempo)) == ("3-0-1-0", "2-0-X-0")


def test_holds_have_no_tempo() -> None:
    """Nothing is lowered or lifted in a hold."""
    assert make.dose("{hold: 30 s}", "tempo: 3-0-1-0").first.tempo is None


def test_phases_come_in_the_order_of_the_movement() -> None:
    """A squat goes down first, a row up first; what takes no time is left out, and only X is fast."""
    down, up = (Phase("lower", 3), Phase("pause", 1)), (Phase("lift", 1, fast=True),)

    assert phases(parse_tempo("3-1-X-0")) == (*down, *up)
    assert phases(parse_tempo("3-1-X-0"), "lifts first") == (*up, *down)
    assert [(one.kind, one.seconds, one.fast) for one in phases(parse_tempo("3-0-2-1"))] == [
        ("lower", 3, False),
        ("lift", 2, False),
        ("hold", 1, False),
    ]
