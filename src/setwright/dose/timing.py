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

from setwright.dose.dose import Dose, Set
from setwright.dose.sequence import BETWEEN_BLOCKS_S, Step
from setwright.model.session import BlockKind

USUAL_REST_S: Final[dict[BlockKind, int]] = {"straight": 90, "superset": 60, "circuit": 120}
"""Rest after a set (straight) or a round, where nothing is written. Common practice, no source."""

USUAL_CHANGE_OVER_S: Final[dict[BlockKind, int]] = {"straight": 60, "superset": 10, "circuit": 10}
"""From one exercise to the next, where nothing is written. Common practice, no source."""

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

    def __mul__(self, count: int) -> "TimeRange":
        return TimeRange(self.low_s * count, self.high_s * count)


def in_minutes(time: TimeRange) -> TimeRange:
    """Return a time in whole minutes, as it is printed: each end to the nearest, a half up, and no less than one.

    What may be left out takes no time at its quick end, and none is printed there.

    What is printed must add up, so that sums are taken of such parts. Rounding each part outwards would add a minute
    of doubt with every part.
    """
    return TimeRange(*(end_s and max(60, (end_s + 30) // 60 * 60) for end_s in (time.low_s, time.high_s)))


def set_time(dose: Dose, one: Set) -> TimeRange:
    """Return the time of one set, all sides included, rests excluded."""
    sides = dose.side_count
    at_tempo = dose.seconds_of(one) * sides
    low, high = int(at_tempo.low), int(at_tempo.high)
    if dose.measure == "reps" and one.tempo is None:
        low = int(low * QUICKER_FREE_REPS)
    if dose.measure in ("reps", "distance"):
        high = int(high * SLOWER_REPS)
    return TimeRange(low, high + (sides - 1) * SLOWER_PAUSE_S)


def step_time(step: Step, doses: Sequence[Dose]) -> TimeRange:
    """Return the time of one step of a block; a set's time stands on its first side and holds both."""
    if step.kind != "set":
        return TimeRange(step.seconds, step.seconds + SLOWER_PAUSE_S if step.seconds else 0)
    if step.side == 2:
        return TimeRange(0, 0)
    dose = doses[step.item]
    return set_time(dose, dose.sets[step.round - 1])


def block_time(steps: Sequence[Step], doses: Sequence[Dose]) -> TimeRange:
    """Return the time of a block, from its first set to its last: three sets have two rests."""
    return sum((step_time(step, doses) for step in steps), TimeRange(0, 0))


def between_blocks(blocks: Sequence[TimeRange]) -> TimeRange:
    """Return the time of all changes from one block to the next.

    A block that may take no time at all is one to leave out, and the change to it with it.
    """
    between, sure = step_time(Step("block", 0, seconds=BETWEEN_BLOCKS_S), ()), sum(block.low_s > 0 for block in blocks)
    return TimeRange(between.low_s * max(0, sure - 1), between.high_s * max(0, len(blocks) - 1))


def session_time(blocks: Sequence[TimeRange]) -> TimeRange:
    """Return the time of all blocks and the changes between them, without warm-up and cool-down."""
    return sum(blocks, between_blocks(blocks))


def seconds_until_again(steps: Sequence[Step], doses: Sequence[Dose], item: int) -> int | None:
    """Return the shortest time between two sets of one exercise of a block, quick end; None where it has but one.

    Only rests after working sets are looked at: nobody is tired after a warm-up set.
    """
    gaps: list[int] = []
    waited: int | None = None
    for step in steps:
        if step.kind == "set" and step.item == item:
            if step.side != 2 and waited is not None:
                gaps.append(waited)
            waited = 0 if doses[item].sets[step.round - 1].kind == "work" else None
        elif waited is not None:
            waited += step_time(step, doses).low_s
    return min(gaps, default=None)
