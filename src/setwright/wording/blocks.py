"""How a block of a session is gone through, in words: on the page, where each rest has its own line, and on a sheet."""

from collections.abc import Mapping
from typing import Final

from setwright.dose.resolved import Reason, ResolvedBlock, ResolvedItem, ResolvedSession
from setwright.dose.sequence import BETWEEN_BLOCKS_S
from setwright.dose.timing import TimeRange
from setwright.model.session import BlockKind
from setwright.wording.language import Language, later
from setwright.wording.pieces import Pieces, pieces, stressed
from setwright.wording.times import duration, time_range, weekday

_NAMES: Final[Mapping[BlockKind, str]] = {
    "straight": later("Straight sets"),
    "superset": later("Superset"),
    "circuit": later("Circuit"),
}


def block_name(language: Language, block: ResolvedBlock) -> str:
    """Return what a block is called: the coach's own name, or its kind, counted where there are several."""
    if block.name:
        return block.name
    name = language.say(_NAMES[block.kind])
    return f"{name} {block.number}" if block.number else name


def reason(language: Language, why: Reason) -> str:
    """Return why a session is not as planned this week."""
    if why.moved_from is None:
        return why.why
    return language.say("Moved from %(day)s: %(why)s", day=weekday(language, why.moved_from), why=why.why)


def sets(language: Language, count: int) -> str:
    """Return a number of sets: 3 sets."""
    return language.many("%(num)s set", "%(num)s sets", count)


def rounds(language: Language, count: int) -> str:
    """Return a number of rounds: 3 rounds."""
    return language.many("%(num)s round", "%(num)s rounds", count)


def how(language: Language, block: ResolvedBlock) -> Pieces:
    """Return how a block is gone through, where its rests are said elsewhere."""
    if block.rounds is None:
        if len(block.items) > 1:
            return pieces(language.say("All sets of one exercise, then the next."))
        count = stressed(sets(language, block.items[0].dose.count))
        return pieces(language.say("%(sets)s, resting after each.", sets=count))
    count = stressed(rounds(language, block.rounds))
    if len(block.items) == 2:
        return pieces(language.say("%(rounds)s of 1, then 2, then rest.", rounds=count))
    said = language.say("%(rounds)s of 1 to %(last)s in order, then rest.", rounds=count, last=len(block.items))
    return pieces(said)


def how_with_rest(language: Language, block: ResolvedBlock) -> str:
    """Return how a block is gone through, with its rest and the time to change over."""
    if block.rounds is None:
        if len(block.items) > 1:
            return language.say("All sets of one exercise, then the next.")
        return language.say("Rest after each set.")
    values = {"rounds": rounds(language, block.rounds), "rest": duration(language, block.rest_s)}
    if len(block.items) == 2:
        said = language.say("%(rounds)s of 1, then 2, then rest %(rest)s.", **values)
    else:
        last = len(block.items)
        said = language.say("%(rounds)s of 1 to %(last)s in order, then rest %(rest)s.", last=last, **values)
    if not block.change_over_s:
        return said
    return f"{said} {change_over(language, block)}"


def sets_of(language: Language, item: ResolvedItem) -> Pieces:
    """Return what stands before the amount in straight sets: 3 sets of."""
    count = item.dose.count
    return pieces(language.many("%(num)s set of", "%(num)s sets of", count, num=stressed(count)))


def only_in(language: Language, block: ResolvedBlock, item: ResolvedItem) -> str | None:
    """Return in which rounds an exercise stands, where it drops out of the last ones."""
    if block.rounds is None or item.dose.count == block.rounds:
        return None
    return language.say("only in the first %(rounds)s", rounds=rounds(language, item.dose.count))


def rest_after_set(language: Language, item: ResolvedItem) -> Pieces:
    """Return the rest after a straight set."""
    return pieces(
        language.say("Rest %(time)s after each set", time=stressed(duration(language, item.dose.first.rest_s)))
    )


def rest_after_round(language: Language, block: ResolvedBlock) -> Pieces:
    """Return the rest after a round, and what comes then."""
    rest = stressed(duration(language, block.rest_s))
    if block.rounds is None or block.rounds == 1:
        return pieces(language.say("Rest %(time)s", time=rest))
    again = rounds(language, block.rounds)
    return pieces(language.say("Rest %(time)s, then from 1 again: %(rounds)s in all", time=rest, rounds=again))


def to_next_block(language: Language) -> str:
    """Return the time to get to the next block."""
    return language.say("%(time)s to the next block", time=duration(language, BETWEEN_BLOCKS_S))


def parts_of_time(language: Language, session: ResolvedSession, warm_up: TimeRange | None) -> str:
    """Return what a session's time is made of, to read beside the times of its blocks.

    Args:
        language: the language to say it in.
        session: the session in its week.
        warm_up: its warm-ups, from the shortest to the longest, if there are any.
    """
    said = []
    if warm_up is not None:
        said.append(language.say("%(time)s of warm-up", time=time_range(language, warm_up)))
    blocks = sum((block.minutes for block in session.blocks), TimeRange(0, 0))
    said.append(language.say("%(time)s of blocks", time=time_range(language, blocks)))
    if session.minutes_between is not None:
        between = time_range(language, session.minutes_between)
        each = duration(language, BETWEEN_BLOCKS_S)
        said.append(language.say("%(time)s between blocks (%(each)s each)", time=between, each=each))
    return language.listed(said)


def change_over(language: Language, block: ResolvedBlock) -> str:
    """Return the time to get to the next exercise of a round."""
    return language.say("%(time)s to change over.", time=duration(language, block.change_over_s))
