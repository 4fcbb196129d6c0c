"""A conditioning circuit takes as long as coaches know it to take.

Common practice, no source: one round of 30 s front plank, 12 slow dead bugs, 30 s walking heel raises, 12 alternating
bird dogs and 8 side-lying hip raises a side takes 3 to 4 minutes, change-overs included, and 2 minutes of rest stand
between two rounds.

What is asked of the range: its quick end, where everybody keeps to the sheet, lies within those 3 to 4 minutes. Its
slow end may lie beyond them, since it allows for people who dawdle at every station. A sheet that asks for five or six
seconds a repetition is slower than this practice, and its time must say so.
"""

import pytest

from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedBlock
from setwright.dose.timing import TimeRange
from setwright.model.programme import Programme
from setwright.model.session import Session
from support import make

THREE_MIN_S, FOUR_MIN_S = 180, 240
REST_S = 120

STATIONS = ("front-plank", "dead-bug", "walking-heel-raise", "bird-dog", "side-lying-hip-raise")
DOSES = ("hold: 30 s", "reps: 12", "work: 30 s", "reps: 12", "reps: 8")
SIDES = ("both together", "alternating", "alternating", "alternating", "one at a time")
BRISK = ("", "tempo: 2-0-2-0", "", "tempo: 1-0-1-1", "tempo: 1-0-1-0")
"""Slow dead bugs, bird dogs held for a second, hip raises at an even pace."""


def circuit(rounds: int, tempos: tuple[str, ...] = ("",) * 5) -> str:
    stations = (
        f"{{exercise: {ident}, {dose}{', ' + tempo if tempo else ''}}}"
        for ident, dose, tempo in zip(STATIONS, DOSES, tempos, strict=True)
    )
    return f"blocks: [{{kind: circuit, rounds: {rounds}, rest: {REST_S} s, exercises: [{', '.join(stations)}]}}]"


def of_block(made: Programme, written: Session) -> ResolvedBlock:
    """Resolve one session with a programme's own exercises."""
    plan = make.plan("phases: [{name: One, aim: To go round., weeks: 1, sessions: {monday: only}}]")
    alone = Programme(made.club, {"plan": plan}, {"only": written}, made.exercises, made.routines)
    return next(iter(resolve(alone)[0].sessions)).blocks[0]


@pytest.fixture
def self_made() -> Programme:
    """Five exercises without a tempo, as a coach writes them first."""
    files = {f"exercises/{ident}": f"sides: {sides}" for ident, sides in zip(STATIONS, SIDES, strict=True)}
    return make.programme(files)


def test_round_without_tempos_takes_3_to_4_minutes(self_made: Programme) -> None:
    """Where no tempo is written, 3 to 5 s a repetition count, and the quick end is 3 min 40 s."""
    time = of_block(self_made, make.session(circuit(1))).time

    assert THREE_MIN_S <= time.low_s <= FOUR_MIN_S
    assert time == TimeRange(60 + 40 * 3 + 4 * 10, 60 + 40 * 5 + 10 + 4 * 20)


def test_round_of_the_example_at_a_brisk_tempo_takes_3_to_4_minutes(example: Programme) -> None:
    """With the example programme's own exercises, at tempos of two to four seconds, the quick end is 3 min 36 s."""
    time = of_block(example, make.session(circuit(1, BRISK))).time

    assert THREE_MIN_S <= time.low_s <= FOUR_MIN_S
    assert time.low_s == 60 + 12 * 4 + 12 * 3 + 8 * 2 * 2 + 4 * 10


def test_round_of_the_example_at_its_own_tempos_is_what_its_pages_ask_for(example: Programme) -> None:
    """Slower tempos on the exercise pages make the round longer by exactly those seconds, and by nothing else."""
    reps = {"dead-bug": 12, "bird-dog": 12, "side-lying-hip-raise": 16}
    tempos = {ident: example.exercises[ident].tempo for ident in reps}
    asked_s = sum(count * tempo.rep_s for ident, count in reps.items() if (tempo := tempos[ident]))

    assert of_block(example, make.session(circuit(1))).time.low_s == 60 + asked_s + 4 * 10


def test_example_has_these_exercises_as_the_trade_does_them(example: Programme) -> None:
    """Dead bugs, heel raises and bird dogs alternate; hip raises are done on one side, then on the other."""
    assert tuple(example.exercises[ident].sides for ident in STATIONS) == SIDES


def test_two_minutes_stand_between_two_rounds(self_made: Programme) -> None:
    """Two rounds are twice one round and one rest of 2 minutes, not two."""
    once, twice = (of_block(self_made, make.session(circuit(rounds))).time for rounds in (1, 2))

    assert twice == TimeRange(2 * once.low_s + REST_S, 2 * once.high_s + REST_S + 10)
    assert 2 * THREE_MIN_S + REST_S <= twice.low_s <= 2 * FOUR_MIN_S + REST_S


def test_usual_rest_of_a_circuit_is_two_minutes(self_made: Programme) -> None:
    """Where the coach writes no rest, a circuit has 2 minutes between its rounds. Common practice, no source."""
    unwritten = circuit(2).replace(f", rest: {REST_S} s", "")

    assert of_block(self_made, make.session(unwritten)).rests_s == (REST_S,)
