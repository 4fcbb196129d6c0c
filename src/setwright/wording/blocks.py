"""How a block of a session is gone through, in words: on the page, where each rest has its own line, and on a sheet."""

from collections.abc import Mapping
from typing import Final

from setwright.dose.resolved import Reason, ResolvedBlock, ResolvedItem, ResolvedSession
from setwright.dose.sequence import BETWEEN_BLOCKS_S
from setwright.dose.timing import TimeRange
from setwright.model.session import BlockKind
from setwright.wording.clocks import after_a_round, how_by_the_clock
from setwright.wording.language import Language, later
from setwright.wording.pieces import Pieces, pieces, stressed
from setwright.wording.times import duration, durations, time_range, weekday

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
    if block.clock is not None:
        return pieces(how_by_the_clock(language, block, block.clock, _counted(language, block)))
    if block.rounds is None:
        if len(block.items) > 1:
            return pieces(language.say("All sets of one exercise, then the next."))
        count = stressed(sets(language, block.items[0].dose.count))
        return pieces(language.say("%(sets)s, resting after each.", sets=count))
    count = stressed(rounds(language, block.rounds))
    if len(block.items) == 2 and not (_work_s(block) and block.change_over_s):
        return pieces(language.say("%(rounds)s of 1, then 2, then rest.", rounds=count))
    if (work_s := _work_s(block)) and block.change_over_s:
        said = later("%(rounds)s of 1 to %(last)s in order: %(work)s of work, %(time)s to change over; then rest.")
        values = {"work": duration(language, work_s), "time": duration(language, block.change_over_s)}
        return pieces(language.say(said, rounds=count, last=len(block.items), **values))
    said = language.say("%(rounds)s of 1 to %(last)s in order, then rest.", rounds=count, last=len(block.items))
    return pieces(said)


def how_with_rest(language: Language, block: ResolvedBlock) -> str:
    """Return how a block is gone through, with its rest and the time to change over."""
    if block.clock is not None:
        said = how_by_the_clock(language, block, block.clock, _counted(language, block))
        if block.clock.every_s is not None:
            return said
        rest_s = block.rests_s[0]
        rest = language.say("Rest %(time)s after each.", time=duration(language, rest_s)) if rest_s else ""
        return " ".join(part for part in (said, rest, _changing_over(language, block)) if part)
    if block.rounds is None:
        if len(block.items) > 1:
            return language.say("All sets of one exercise, then the next.")
        return language.say("Rest after each set.")
    values = {"rounds": rounds(language, block.rounds), "rest": durations(language, between(block))}
    if len(block.items) == 2:
        said = language.say("%(rounds)s of 1, then 2, then rest %(rest)s.", **values)
    else:
        last = len(block.items)
        said = language.say("%(rounds)s of 1 to %(last)s in order, then rest %(rest)s.", last=last, **values)
    return " ".join(part for part in (said, _changing_over(language, block)) if part)


def _counted(language: Language, block: ResolvedBlock) -> str:
    return sets(language, block.items[0].dose.count) if block.rounds is None else rounds(language, block.rounds)


def _changing_over(language: Language, block: ResolvedBlock) -> str:
    """Return the time to change over, beside the time of work where that is the same for all; nothing for none."""
    if not block.change_over_s:
        return ""
    change = duration(language, block.change_over_s)
    if work_s := _work_s(block):
        return language.say("%(work)s of work, %(time)s to change over.", work=duration(language, work_s), time=change)
    return language.say("%(time)s to change over.", time=change)


def _work_s(block: ResolvedBlock) -> int | None:
    """Return the time of work in seconds, where all exercises of a block have the same."""
    amounts = {one.amount for item in block.items for one in item.dose.working if item.dose.measure == "work"}
    if len(amounts) != 1 or any(item.dose.measure != "work" for item in block.items):
        return None
    only = amounts.pop()
    return int(only.high) if only.is_one else None


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
    if item.dose.clock is not None:
        every = stressed(duration(language, item.dose.clock.every_s or 0))
        return pieces(language.say("A set starts every %(time)s; rest for what is left", time=every))
    rests = stressed(durations(language, item.dose.rests_s))
    if len(item.dose.rests_s) > 1:
        return pieces(language.say("Rest %(times)s between the sets, one after the other", times=rests))
    return pieces(language.say("Rest %(time)s after each set", time=rests))


def rest_after_round(language: Language, block: ResolvedBlock) -> Pieces:
    """Return the rest after a round, and what comes then."""
    if block.clock is not None:
        return pieces(after_a_round(language, block, block.clock))
    rest = stressed(durations(language, between(block)))
    if block.rounds is None or block.rounds == 1:
        return pieces(language.say("Rest %(time)s", time=rest))
    again = rounds(language, block.rounds)
    if len(between(block)) > 1:
        said = later("Rest %(times)s, round after round, each time from 1 again: %(rounds)s in all")
        return pieces(language.say(said, times=rest, rounds=again))
    return pieces(language.say("Rest %(time)s, then from 1 again: %(rounds)s in all", time=rest, rounds=again))


def between(block: ResolvedBlock) -> tuple[int, ...]:
    """Return the rests between the rounds of a block, in seconds; a single one where all are the same."""
    left = block.rests_s[: max(1, (block.rounds or 1) - 1)]
    return left if len(set(left)) > 1 else left[:1]


def own_rest(language: Language, item: ResolvedItem) -> str | None:
    """Return the rest after one exercise of a round, where it has its own."""
    if item.own_rest_s is None:
        return None
    return language.say("then rest %(time)s", time=duration(language, item.own_rest_s))


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
    """Return the time to get to the next exercise of a round, where ``how`` does not say it; nothing elsewhere."""
    on_the_beat = block.clock is not None and block.clock.every_s is not None
    if block.rounds is None or on_the_beat or (block.clock is None and _work_s(block)):
        return ""
    return _changing_over(language, block)


def before_next(language: Language, block: ResolvedBlock, following: int) -> str | None:
    """Return what lies before the next exercise of a round, known by its number; None where that is the change-over."""
    if block.clock is not None and block.clock.every_s is not None:
        return language.say("%(number)s at the next start", number=following)
    own_s = block.items[following - 2].own_rest_s
    if own_s:
        return language.say("Rest %(time)s, then %(number)s", time=duration(language, own_s), number=following)
    return None
