"""A session at a glance: a line for each block and each exercise, short enough for one screen of a phone."""

from setwright.dose.resolved import ResolvedBlock, ResolvedItem
from setwright.wording import blocks, doses
from setwright.wording.language import Language
from setwright.wording.times import duration, durations


def of_block(language: Language, block: ResolvedBlock) -> str:
    """Return how a block is gone through: 3 rounds, rest 1 min 15 s; for straight sets of several exercises nothing."""
    if block.clock is not None and block.clock.every_s is not None:
        return language.say("one every %(time)s", time=duration(language, block.clock.every_s))
    if block.clock is not None:
        time = duration(language, block.clock.lasts_s or 0)
        return language.say("as many rounds as possible in %(time)s", time=time)
    if block.rounds is not None:
        counted, rests_s = blocks.rounds(language, block.rounds), blocks.between(block)
        if block.rounds == 1 or not any(rests_s):
            return counted
        return language.listed((counted, language.say("rest %(time)s", time=durations(language, rests_s))))
    if len(block.items) > 1:
        return ""
    return language.say("rest %(time)s", time=duration(language, block.items[0].dose.first.rest_s))


def of_item(language: Language, block: ResolvedBlock, item: ResolvedItem) -> str:
    """Return an exercise's amount: in a round 10 reps each side, in straight sets 3 sets of 10 reps."""
    dose = item.dose
    amount = f"{doses.amount(language, dose)} {doses.sides(language, dose)}".strip()
    if block.rounds is None:
        return language.many("%(num)s set of %(amount)s", "%(num)s sets of %(amount)s", dose.count, amount=amount)
    only = blocks.only_in(language, block, item)
    return language.listed((amount, only)) if only else amount
