"""Kit that goes round: a simulation of members who each go through their own turns and wait for what is in use.

Whoever has been ready longest begins first, and takes all that a set needs at once or nothing, so that nobody waits for
somebody who waits. A member gives everything back when the set is over and needs nothing while resting; whoever finds
the kit free begins as soon as the rest is over. Pauses are never shorter than written.
"""

import heapq
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from setwright.group.kit import Need, Thing


@dataclass(frozen=True, slots=True)
class Turn:
    """One set: which exercise of the block, from 0, which set of it, from 1; its seconds, and the pause after."""

    item: int
    number: int
    work_s: int
    pause_s: int
    needs: tuple[Need, ...] = ()


@dataclass(frozen=True, slots=True)
class Done:
    """A turn as it came: who, which of their turns, when they were ready for it, and what they held from when to when.

    ``lacked`` is the first thing that was in use when they were ready; None where they did not wait for anything.
    """

    person: int
    turn: Turn
    ready_s: int
    begins_s: int
    held: tuple[tuple[Thing, int], ...]
    lacked: Thing | None = None

    @property
    def ends_s(self) -> int:
        """When it is over."""
        return self.begins_s + self.turn.work_s

    @property
    def waits_s(self) -> int:
        """How long they stood ready."""
        return self.begins_s - self.ready_s


def share(turns: Sequence[Sequence[Turn]], owned: Mapping[Thing, int]) -> tuple[Done, ...]:
    """Return every turn of every member, in the order in which they begin.

    Args:
        turns: by member, what they do, in order; each takes a second at least.
        owned: how many there are of each thing. What a set needs more of than there is, it does with all that there is.
    """
    free, done = dict(owned), list[Done]()
    coming = [(0, 1, person) for person, own in enumerate(turns) if own]  # time, 0 for an end and 1 for ready, who
    heapq.heapify(coming)
    at, under_way = [0] * len(turns), dict[int, Done]()
    queue: list[tuple[int, int]] = []
    lacked: dict[int, Thing | None] = {}
    while coming:
        now_s = coming[0][0]
        while coming and coming[0][0] == now_s:
            _, ready, person = heapq.heappop(coming)
            if ready:
                queue.append((now_s, person))
                continue
            over = under_way.pop(person)
            for thing, amount in over.held:
                free[thing] += amount
            at[person] += 1
            if at[person] < len(turns[person]):
                heapq.heappush(coming, (now_s + over.turn.pause_s, 1, person))
        for ready_s, person in sorted(queue):
            turn = turns[person][at[person]]
            held, missing = _taken(turn.needs, free, owned)
            if missing is not None:
                lacked.setdefault(person, missing)
                continue
            queue.remove((ready_s, person))
            for thing, amount in held:
                free[thing] -= amount
            under_way[person] = Done(person, turn, ready_s, now_s, held, lacked.pop(person, None))
            done.append(under_way[person])
            heapq.heappush(coming, (now_s + max(1, turn.work_s), 0, person))
    return tuple(done)


def _taken(
    needs: Sequence[Need], free: Mapping[Thing, int], owned: Mapping[Thing, int]
) -> tuple[tuple[tuple[Thing, int], ...], Thing | None]:
    """Return what a set takes now, or the first thing that it lacks."""
    held: dict[Thing, int] = {}
    for need in needs:
        most = max((owned.get(thing, 0) for thing in need.things), default=0)
        amount = min(need.amount, most)
        fitting = (thing for thing in need.things if free.get(thing, 0) - held.get(thing, 0) >= amount)
        thing = next(fitting, None)
        if thing is None:
            return (), need.things[0]
        if amount:
            held[thing] = held.get(thing, 0) + amount
    return tuple(held.items()), None
