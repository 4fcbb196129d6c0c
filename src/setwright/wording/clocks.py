"""Blocks by the clock in words."""

from setwright.dose.dose import Clock
from setwright.dose.resolved import ResolvedBlock
from setwright.wording.language import Language, later
from setwright.wording.times import duration


def open_rounds(language: Language, clock: Clock) -> str:
    """Return as many rounds as possible: as many rounds as possible in 12 min, 6 at most."""
    time = duration(language, clock.lasts_s or 0)
    if clock.up_to is None:
        return language.say("as many rounds as possible in %(time)s", time=time)
    return language.say("as many rounds as possible in %(time)s, %(most)s at most", time=time, most=clock.up_to)


def each_start(language: Language, clock: Clock, rounds: bool) -> str:
    """Return how often a set starts: one every 1 min; in rounds, whose exercises take turns, a start every 1 min."""
    if rounds:
        return language.say("a start every %(time)s", time=duration(language, clock.every_s or 0))
    return language.say("one every %(time)s", time=duration(language, clock.every_s or 0))


def how_by_the_clock(language: Language, block: ResolvedBlock, clock: Clock, counted: str) -> str:
    """Return how a block by the clock is gone through.

    Args:
        language: the language to say it in.
        block: the block.
        clock: what it keeps to.
        counted: its sets or rounds in words.
    """
    time = duration(language, clock.every_s or 0)
    if clock.every_s is None:
        return _open(language, block, clock)
    if block.kind != "straight":
        said = later(
            "%(rounds)s of 1 to %(last)s in order: every %(time)s the next one starts, and the rest is what is left."
        )
        return language.say(said, rounds=counted, last=len(block.items), time=time)
    if len(block.items) > 1:
        said = later("Every %(time)s a set starts, all sets of one exercise, then the next; the rest is what is left.")
        return language.say(said, time=time)
    said = later("%(sets)s: every %(time)s the next one starts, and the rest is what is left.")
    return language.say(said, sets=counted, time=time)


def _open(language: Language, block: ResolvedBlock, clock: Clock) -> str:
    values = {"last": len(block.items), "time": duration(language, clock.lasts_s or 0)}
    if clock.up_to is not None:
        said = later("As many rounds of 1 to %(last)s as possible in %(time)s, %(most)s at most. Count them.")
        return language.say(said, most=clock.up_to, **values)
    return language.say("As many rounds of 1 to %(last)s as possible in %(time)s. Count them.", **values)


def after_a_round(language: Language, block: ResolvedBlock, clock: Clock) -> str:
    """Return what comes after a round of a block by the clock."""
    if clock.every_s is not None:
        if block.rounds == 1:
            return language.say("One round only")
        return language.say("Then from 1 again, at the next start")
    time, rest_s = duration(language, clock.lasts_s or 0), block.rests_s[0]
    if not rest_s:
        return language.say("From 1 again, until %(time)s are over", time=time)
    rest = duration(language, rest_s)
    return language.say("Rest %(rest)s, then from 1 again, until %(time)s are over", rest=rest, time=time)
