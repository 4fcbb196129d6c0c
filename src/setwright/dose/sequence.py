"""How a session goes, as one list of steps: times, the rest between sets, words and the phone's guide all read it.

A step is a set (one side of it, where the sides work one at a time) or the pause before the next one. Straight sets
finish one exercise before the next; between the two a member rests and changes over at the same time, and where the
same exercise comes again, there is nothing to change. Supersets and circuits go round by round: an exercise with fewer
rounds drops out of the last ones, and its change-over with it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final, Literal

from setwright.dose.dose import Dose
from setwright.model.amounts import Rests
from setwright.model.session import BlockKind

BETWEEN_BLOCKS_S: Final = 90
"""From one block to the next. Common practice, no source."""

StepKind = Literal["set", "rest", "change", "block", "rounds"]
"""A set; a rest, after a set, a round or an exercise that has its own; the change-over to the next exercise; the change
to the next block; as many rounds as possible in a time."""


@dataclass(frozen=True, slots=True)
class Step:
    """One step. ``block`` and ``item`` count from 0, ``round`` from 1; ``side`` is 1 or 2, or 0 where both work.

    ``seconds`` is how long a pause lasts; a set lasts as long as its dose says, and has 0 here.
    """

    kind: StepKind
    block: int
    item: int = 0
    round: int = 0
    rounds: int = 0
    side: int = 0
    seconds: int = 0


def block_steps(
    block: int,
    kind: BlockKind,
    exercises: Sequence[str],
    doses: Sequence[Dose],
    rests_s: Rests,
    change_over_s: int,
    own_rests_s: Sequence[int | None] = (),
) -> tuple[Step, ...]:
    """Return the steps of a block, from its first set to its last.

    Args:
        block: its place in the session, from 0.
        kind: how its exercises follow each other.
        exercises: which they are.
        doses: the dose of each of them.
        rests_s: the rest after every round, or after each but the last; in straight sets, each set has its own.
        change_over_s: from one exercise to the next.
        own_rests_s: the rest after each exercise of a round in the place of the change-over, where it has its own.
    """
    if kind == "straight":
        return tuple(_straight(block, exercises, doses, change_over_s))
    own = (*own_rests_s, *(None,) * (len(doses) - len(own_rests_s)))
    return tuple(_in_rounds(block, doses, rests_s, change_over_s, own))


def _straight(block: int, exercises: Sequence[str], doses: Sequence[Dose], change_over_s: int) -> Iterator[Step]:
    for item, dose in enumerate(doses):
        if item:
            rest_s = doses[item - 1].sets[-1].rest_s
            if exercises[item] == exercises[item - 1]:
                yield Step("rest", block, item, 1, len(dose.sets), seconds=rest_s)
            else:
                yield Step("change", block, item, seconds=max(rest_s, change_over_s))
        for number in range(1, len(dose.sets) + 1):
            if number > 1:
                yield Step("rest", block, item, number, len(dose.sets), seconds=dose.sets[number - 2].rest_s)
            yield from set_steps(block, item, number, len(dose.sets), dose)


def _in_rounds(
    block: int, doses: Sequence[Dose], rests_s: Rests, change_over_s: int, own_rests_s: Sequence[int | None]
) -> Iterator[Step]:
    rounds = max(len(dose.sets) for dose in doses)
    for number in range(1, rounds + 1):
        if number > 1:
            yield Step("rest", block, 0, number, rounds, seconds=rests_s[min(number - 2, len(rests_s) - 1)])
        left = [(item, dose) for item, dose in enumerate(doses) if len(dose.sets) >= number]
        for place, (item, dose) in enumerate(left):
            own_s = own_rests_s[left[place - 1][0]] if place else None
            if own_s:
                yield Step("rest", block, item, number, rounds, seconds=own_s)
            elif place and own_s is None and change_over_s:
                yield Step("change", block, item, number, rounds, seconds=change_over_s)
            yield from set_steps(block, item, number, rounds, dose)


def set_steps(block: int, item: int, number: int, rounds: int, dose: Dose) -> Iterator[Step]:
    """Yield the steps of one set: one, or one of each side.

    Args:
        block: the block's place in the session, from 0.
        item: the exercise's place in the block, from 0.
        number: which set or round it is, from 1.
        rounds: how many there are.
        dose: the exercise's dose.
    """
    for side in (1, 2) if dose.side_count == 2 else (0,):
        yield Step("set", block, item, number, rounds, side)


def session_steps(blocks: Sequence[Sequence[Step]]) -> tuple[Step, ...]:
    """Return the steps of a whole session, with the change from each block to the next."""
    steps: list[Step] = []
    for index, inside in enumerate(blocks):
        if index:
            steps.append(Step("block", index, seconds=BETWEEN_BLOCKS_S))
        steps.extend(inside)
    return tuple(steps)
