"""What members with different choices come to: each combination of ways through a block, and how long it may take."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from setwright.dose.sequence import Step
from setwright.dose.timing import TimeRange
from setwright.model.choices import Alternative
from setwright.model.session import Block

Picks = tuple[int, ...]
"""For each exercise of a block, what is done: 0 is the exercise itself, 1 the first of what may be done instead."""


@dataclass(frozen=True, slots=True)
class Course:
    """How a block goes for members with some choices."""

    picks: Picks
    steps: tuple[Step, ...]


def picks_in(block: Block) -> tuple[Picks, ...]:
    """Return every combination of ways that some members come to, each once; the exercises as they stand come first.

    Of several ways that fit a member, the first one counts.
    """
    ticked = [set(some) for size in range(len(block.choices) + 1) for some in combinations(block.choices, size)]
    return tuple(dict.fromkeys(tuple(_pick(written.instead, some) for written in block.exercises) for some in ticked))


def _pick(ways: Sequence[Alternative], ticked: set[str]) -> int:
    fitting = (place for place, way in enumerate(ways, 1) if not ticked.isdisjoint(way.for_))
    return next(fitting, 0)


def any_of(times: Sequence[TimeRange]) -> TimeRange:
    """Return the time that any of several ways may take, from the quickest to the slowest."""
    return TimeRange(min(one.low_s for one in times), max(one.high_s for one in times))
