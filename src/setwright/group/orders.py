"""Which order lets a group through a block with the kit that there is, and how long somebody waits in it."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import pairwise
from typing import Final, Literal

from setwright.dose.resolved import ResolvedBlock, ResolvedSession
from setwright.dose.timing import set_time, step_time
from setwright.group.kit import Thing, body_weights_kg, needs
from setwright.group.sharing import Done, Turn, share
from setwright.model.programme import Programme

Order = Literal["together", "halves", "stations"]
"""Everyone begins with the first exercise; one half with the second; or at each exercise somebody."""

WAIT_S: Final = 60
"""Up to this, a wait is a longer rest. Common practice, no source."""


@dataclass(frozen=True, slots=True)
class Short:
    """What runs short: the kit, all things that were waited for, and how long members waited for it, all together."""

    kit: str
    things: tuple[Thing, ...]
    waits_s: int


@dataclass(frozen=True, slots=True)
class Shared:
    """How a group gets through a block.

    ``lighter`` says that whoever finds the weight in use takes the next lighter one, ``home`` how many do an exercise
    the way that needs no kit, which is the one at ``home_item``. ``longest_wait_s`` is the longest that anybody waits
    at once, ``whole_s`` when the last one is done, ``alone_s`` when one alone would be. ``short`` is what members wait
    for when they all begin with the first exercise, most waited for first; ``together_s`` the longest wait then.
    """

    block: int
    people: int
    order: Order
    lighter: bool
    home: int
    home_item: int | None
    longest_wait_s: int
    whole_s: int
    alone_s: int
    together_s: int
    short: tuple[Short, ...]

    @property
    def is_enough(self) -> bool:
        """Whether the kit is enough without any order at all."""
        return self.together_s <= WAIT_S


def session_shared(
    programme: Programme, session: ResolvedSession, people: int, wait_s: int = WAIT_S
) -> tuple[Shared, ...]:
    """Return how a group gets through each block of a session.

    Args:
        programme: whose kit and exercises these are.
        session: the session in its week.
        people: how many there are.
        wait_s: up to which a wait is nothing to do about.
    """
    return tuple(block_shared(programme, session, block, people, wait_s) for block in session.blocks)


def block_shared(
    programme: Programme, session: ResolvedSession, block: ResolvedBlock, people: int, wait_s: int = WAIT_S
) -> Shared:
    """Return the first order in which nobody waits too long; where there is none, the one with the shortest wait."""
    group = _Group(programme, session, block, people)
    alone = group.tried("together", people=1)
    first = group.tried("together")
    short = _short(first)
    orders: list[Order] = ["together"]
    if block.kind != "straight":
        orders.append("halves" if len(block.items) == 2 else "stations")
    tried: list[tuple[int, Order, bool, int, int | None, tuple[Done, ...]]] = []

    def enough(order: Order, lighter: bool, home: int = 0, home_item: int | None = None) -> bool:
        plain = order == "together" and not lighter and not home
        done = first if plain else group.tried(order, lighter, home, home_item)
        tried.append((_longest_s(done), order, lighter, home, home_item, done))
        return tried[-1][0] <= wait_s

    found = any(enough(order, False) for order in orders) or any(enough(order, True) for order in orders)
    item = group.home_way({one.kit for one in short[:1]}) if not found else None
    if item is not None:
        any(enough(orders[-1], True, home, item) for home in range(1, people))
    waits_s, order, lighter, home, home_item, done = tried[-1] if tried[-1][0] <= wait_s else min(tried, key=_wait)
    return Shared(
        block.index, people, order, lighter, home, home_item, waits_s, _end_s(done), _end_s(alone), tried[0][0], short
    )


def _wait(one: tuple[int, Order, bool, int, int | None, tuple[Done, ...]]) -> int:
    return one[0]


@dataclass(frozen=True)
class _Group:
    """A number of people in front of one block."""

    programme: Programme
    session: ResolvedSession
    block: ResolvedBlock
    people: int
    gone: dict[tuple[Fraction, bool], tuple[Turn, ...]] = field(default_factory=dict)
    """The turns by body weight, and whether the next lighter weight would do: worked out once."""

    def tried(
        self,
        order: Order,
        lighter: bool = False,
        home: int = 0,
        home_item: int | None = None,
        people: int | None = None,
    ) -> tuple[Done, ...]:
        """Return how an order goes; the last so many do an exercise at its home way."""
        club, count = self.programme.club, people or self.people
        turns = []
        for person, body_weight_kg in enumerate(body_weights_kg(club, count)):
            own = turned(self._turns(body_weight_kg, lighter), self._first(order, person, count))
            if person >= count - home:
                own = tuple(replace(turn, needs=()) if turn.item == home_item else turn for turn in own)
            turns.append(own)
        return share(turns, club.things)

    def _first(self, order: Order, person: int, people: int) -> int:
        """Return the exercise that somebody begins with, from 0: neighbours in weight begin at different ones."""
        return 0 if order == "together" or people == 1 else person % len(self.block.items)

    def _turns(self, body_weight_kg: Fraction, lighter: bool) -> tuple[Turn, ...]:
        known = self.gone.get((body_weight_kg, lighter))
        if known is None:
            known = self.gone[body_weight_kg, lighter] = tuple(self._worked_out(body_weight_kg, lighter))
        return known

    def _worked_out(self, body_weight_kg: Fraction, lighter: bool) -> list[Turn]:
        items, doses = self.block.items, [item.dose for item in self.block.items]
        turns: list[Turn] = []
        for step in self.block.steps:
            if step.kind != "set":
                turns[-1] = replace(turns[-1], pause_s=turns[-1].pause_s + step_time(step, doses).low_s)
            elif step.side != 2:
                item, one = items[step.item], doses[step.item].sets[step.round - 1]
                kit = self._kit(step.item)
                own = needs(self.programme.club, item, kit, one.load, body_weight_kg, lighter)
                turns.append(Turn(step.item, step.round, max(1, set_time(item.dose, one).low_s), 0, own))
        return turns

    def _kit(self, place: int) -> Sequence[str]:
        item = self.block.items[place]
        written = self.programme.sessions[self.session.session].written(item.slot)
        return written.kit or self.programme.exercises[item.exercise].kit

    def home_way(self, kit: set[str]) -> int | None:
        """Return the exercise with a way at home that needs some kit; None where there is none."""
        exercises = self.programme.exercises
        for place, item in enumerate(self.block.items):
            if exercises[item.exercise].at_home is not None and not kit.isdisjoint(self._kit(place)):
                return place
        return None


def turned(turns: Sequence[Turn], first: int) -> tuple[Turn, ...]:
    """Return turns that begin with another exercise: what came before it is done after all else, in the same order.

    Sets of one exercise keep their order, and the pause after the last one is that after a round.
    """
    start = next((place for place, turn in enumerate(turns) if turn.item == first), 0)
    if not start:
        return tuple(turns)
    ends = [turn.pause_s for turn, after in pairwise(turns) if after.item < turn.item]
    whole = (*turns[:-1], replace(turns[-1], pause_s=ends[0] if ends else turns[start - 1].pause_s))
    moved, seen = [], Counter[int]()
    by_set = {(turn.item, turn.number): turn for turn in whole}
    for turn in (*whole[start:], *whole[:start]):
        seen[turn.item] += 1
        own = by_set[turn.item, seen[turn.item]]
        moved.append(replace(turn, number=own.number, work_s=own.work_s, needs=own.needs))
    return tuple(moved)


def _longest_s(done: Sequence[Done]) -> int:
    return max((one.waits_s for one in done), default=0)


def _end_s(done: Sequence[Done]) -> int:
    return max((one.ends_s for one in done), default=0)


def _short(done: Sequence[Done]) -> tuple[Short, ...]:
    waited: dict[str, Counter[Thing]] = {}
    for one in done:
        if one.lacked is not None and one.waits_s:
            waited.setdefault(one.lacked[0], Counter())[one.lacked] += one.waits_s
    found = (Short(kit, tuple(things), things.total()) for kit, things in waited.items())
    return tuple(sorted(found, key=lambda one: -one.waits_s))


def counted(programme: Programme, session: ResolvedSession, ways: Sequence[Shared]) -> dict[str, int]:
    """Return how many of each kind of kit to lay out: what is in use at once in any block, never more than there is.

    Args:
        programme: whose kit and exercises these are.
        session: the session in its week.
        ways: how a group gets through each of its blocks.
    """
    most: dict[str, int] = {}
    for block, shared in zip(session.blocks, ways, strict=True):
        done = _Group(programme, session, block, shared.people).tried(
            shared.order, shared.lighter, shared.home, shared.home_item
        )
        for kit, count in _at_once(done).items():
            most[kit] = max(most.get(kit, 0), count)
    return most


def _at_once(done: Sequence[Done]) -> dict[str, int]:
    changes = sorted(
        (moment, sign * amount, thing[0])
        for one in done
        for thing, amount in one.held
        for moment, sign in ((one.begins_s, 1), (one.ends_s, -1))
    )
    now, most = Counter[str](), dict[str, int]()
    for _, amount, kit in changes:
        now[kit] += amount
        most[kit] = max(most.get(kit, 0), now[kit])
    return most
