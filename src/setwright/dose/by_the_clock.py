"""Blocks by the clock: a set on every full minute, and as many rounds as possible in a time.

With ``every``, each set starts so long after the one before, whatever is left of it is the rest, and the block lasts as
long as its starts and its last set. As many rounds as possible last exactly as long as they are given; in totals they
count as the whole rounds that fit in at the written pace, quick end. Common practice, no source.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from setwright.dose.dose import Clock, Dose
from setwright.dose.sequence import Step, block_steps, set_steps
from setwright.dose.timing import TimeRange, block_time, set_time
from setwright.model.amounts import Rests
from setwright.model.session import BlockKind


def on_the_beat(block: int, kind: BlockKind, doses: Sequence[Dose], every_s: int) -> tuple[Step, ...]:
    """Return the steps of a block in which a set starts every so often; its rests are what is left at the quick end.

    Args:
        block: its place in the session, from 0.
        kind: straight sets, one exercise after the other, or a circuit, in which the exercises take turns.
        doses: the dose of each exercise.
        every_s: from one start to the next.
    """
    return tuple(_on_the_beat(block, _turns(kind, doses), doses, every_s))


def _turns(kind: BlockKind, doses: Sequence[Dose]) -> list[tuple[int, int]]:
    """Return each set as exercise and number, in the order in which they are done."""
    if kind == "straight":
        return [(item, number) for item, dose in enumerate(doses) for number in range(1, len(dose.sets) + 1)]
    rounds = range(1, max(len(dose.sets) for dose in doses) + 1)
    return [(item, number) for number in rounds for item, dose in enumerate(doses) if number <= len(dose.sets)]


def _on_the_beat(block: int, turns: Sequence[tuple[int, int]], doses: Sequence[Dose], every_s: int) -> Iterator[Step]:
    left_s: int | None = None
    for item, number in turns:
        dose = doses[item]
        if left_s is not None:
            yield Step("rest", block, item, number, len(dose.sets), seconds=left_s)
        yield from set_steps(block, item, number, len(dose.sets), dose)
        left_s = left_of(dose, number - 1, every_s)


def left_of(dose: Dose, place: int, every_s: int) -> int:
    """Return the rest that is left after the set in a place, from 0, at the quick end."""
    return max(0, every_s - set_time(dose, dose.sets[place]).low_s)


def with_what_is_left(dose: Dose, every_s: int) -> Dose:
    """Return a dose in which the rest after each set is what is left until the next start."""
    rests = (left_of(dose, place, every_s) for place in range(len(dose.sets)))
    return replace(dose, sets=tuple(replace(one, rest_s=rest_s) for one, rest_s in zip(dose.sets, rests, strict=True)))


def time_on_the_beat(kind: BlockKind, doses: Sequence[Dose], every_s: int) -> TimeRange:
    """Return how long such a block takes: all starts, and the last set."""
    turns = _turns(kind, doses)
    item, number = turns[-1]
    starts_s = every_s * (len(turns) - 1)
    return TimeRange(starts_s, starts_s) + set_time(doses[item], doses[item].sets[number - 1])


def rounds_in(
    clock: Clock, doses: Sequence[Dose], rests_s: Rests, change_over_s: int, own: Sequence[int | None]
) -> int:
    """Return what as many rounds as possible count as: the whole rounds that fit in, one at least.

    Args:
        clock: how long they go on, and where they end in any case.
        doses: the dose of each exercise, of one round.
        rests_s: the rest after a round.
        change_over_s: from one exercise to the next.
        own: the rest after each exercise, where it has its own.
    """
    once = block_steps(0, "circuit", [""] * len(doses), [dose.of(1) for dose in doses], rests_s, change_over_s, own)
    round_s = block_time(once, doses).low_s
    fit = ((clock.lasts_s or 0) + rests_s[0]) // max(1, round_s + rests_s[0])
    return max(1, min(fit, clock.up_to or fit, MOST_ROUNDS))


MOST_ROUNDS = 100
"""More than this is a round of nothing; it keeps pages finite."""
