"""How long a session takes, as a range.

The quick end is what is written: every repetition at its tempo, every rest and change-over as prescribed. The slow end
allows a quarter more for each repetition and ten seconds more for every rest, change-over and change of side. Common
practice, no source: members are seldom quicker than the sheet and often slower. Where the sheet gives no tempo, they
may well be quicker, and the quick end takes a quarter off.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from setwright.dose.dose import Dose
from setwright.model.session import BlockKind
from setwright.model.tempo import Tempo

USUAL_TEMPO: Final = Tempo(2, 0, 2, 0)
"""The pace of a repetition where nothing is written: 2 s down, 2 s up. Common practice, no source."""

USUAL_REST_S: Final[dict[BlockKind, int]] = {"straight": 90, "superset": 60, "circuit": 120}
"""Rest after a set (straight) or a round, where nothing is written. Common practice, no source."""

USUAL_CHANGE_OVER_S: Final[dict[BlockKind, int]] = {"straight": 60, "superset": 10, "circuit": 10}
"""From one exercise to the next, where nothing is written. Common practice, no source."""

BETWEEN_BLOCKS_S: Final = 90
CARRY_CM_PER_S: Final = 100
"""A loaded walk is counted at 1 m/s. Common practice, no source."""

SLOWER_REPS: Final = Fraction(5, 4)
QUICKER_FREE_REPS: Final = Fraction(3, 4)
"""Repetitions without a tempo take 3 to 5 s: so a circuit of five exercises, 40 repetitions and two half minutes takes
3 to 4 minutes a round. Common practice, no source."""
SLOWER_PAUSE_S: Final = 10


@dataclass(frozen=True, slots=True)
class TimeRange:
    """Seconds, from quick to slow."""

    low_s: int
    high_s: int

    def __add__(self, other: "TimeRange") -> "TimeRange":
        return TimeRange(self.low_s + other.low_s, self.high_s + other.high_s)


def set_time(dose: Dose) -> TimeRange:
    """Return the time of one set, all sides included, rests excluded."""
    sides = dose.side_count
    if dose.measure == "reps":
        exact = int(dose.amount) * (dose.tempo or USUAL_TEMPO).rep_s * sides
        slow = int(exact * SLOWER_REPS)
        if dose.tempo is None:
            exact = int(exact * QUICKER_FREE_REPS)
    elif dose.measure == "distance":
        exact = int(dose.amount * sides / CARRY_CM_PER_S)
        slow = int(exact * SLOWER_REPS)
    else:
        exact = slow = int(dose.amount) * sides
    return TimeRange(exact, slow + (sides - 1) * SLOWER_PAUSE_S)


def pauses(count: int, seconds: int) -> TimeRange:
    """Return the time of several rests or change-overs."""
    return TimeRange(count * seconds, count * (seconds + SLOWER_PAUSE_S) if seconds else 0)


def block_time(kind: BlockKind, doses: Sequence[Dose], rest_s: int, change_over_s: int) -> TimeRange:
    """Return the time of a block. Rests stand between sets or rounds: three sets have two rests.

    In a superset or circuit where a change left exercises with different numbers of rounds, the longest counts.
    """
    total = pauses(0, 0)
    if kind == "straight":
        for dose in doses:
            total += _times(set_time(dose), dose.sets) + pauses(dose.sets - 1, dose.rest_s)
        return total + pauses(len(doses) - 1, change_over_s)
    rounds = max(dose.sets for dose in doses)
    for dose in doses:
        total += _times(set_time(dose), dose.sets)
    return total + pauses(rounds * (len(doses) - 1), change_over_s) + pauses(rounds - 1, rest_s)


def session_time(blocks: Sequence[TimeRange]) -> TimeRange:
    """Return the time of all blocks and the changes between them, without warm-up and cool-down."""
    return sum(blocks, TimeRange(0, 0)) + pauses(max(0, len(blocks) - 1), BETWEEN_BLOCKS_S)


def _times(time: TimeRange, count: int) -> TimeRange:
    return TimeRange(time.low_s * count, time.high_s * count)
