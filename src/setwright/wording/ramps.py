"""The warm-up sets of an exercise in words, the same on page and sheet."""

from dataclasses import dataclass

from setwright.dose.ramping import RAMP_REST_S, side_by_side
from setwright.dose.resolved import ResolvedItem, Take
from setwright.model.load import Weight, magnitude
from setwright.wording import loads
from setwright.wording.doses import measured
from setwright.wording.language import Language
from setwright.wording.times import duration


@dataclass(frozen=True, slots=True)
class RampSetWords:
    """One warm-up set: ``said`` is what to do with which weight, ``of`` what that is said about."""

    said: str
    of: Take


@dataclass(frozen=True, slots=True)
class RampWords:
    """All of them. ``rows`` are stretches of body weight (or of 1RM) with what to take for each set, in order.

    ``title`` stands above the rows on a page, ``short`` on a sheet; ``line`` says all of it in one line.
    """

    heading: str
    sets: tuple[RampSetWords, ...]
    rest: str
    line: str
    title: str
    short: str
    rows: tuple[tuple[str, str], ...]


def ramp_words(language: Language, item: ResolvedItem, unit: str) -> RampWords | None:
    """Return the warm-up sets of an exercise in words; None where it has none.

    Args:
        language: the language to say it in.
        item: the exercise in its week.
        unit: the club's unit of weights, ``kg`` or ``lb``.
    """
    if not item.ramp_takes:
        return None
    pairs = zip(item.dose.ramp, item.ramp_takes, strict=True)
    sets = tuple(
        RampSetWords(_said(language, item, measured(language, item.dose.measure, one.amount), take, unit), take)
        for one, take in pairs
    )
    heading = language.many("%(num)s warm-up set first", "%(num)s warm-up sets first", len(sets))
    rest = language.say("%(time)s rest after each", time=duration(language, RAMP_REST_S))
    if item.ramp_takes[0].load.of == "1RM":
        title = language.say("Your 1RM, and what to take, set by set:")
        short = language.say("Your 1RM, kg: set by set")
    else:
        title = language.say("Your body weight, and what to take, set by set:")
        short = language.say("You weigh, kg: set by set")
    listed = language.listed(one.said for one in sets)
    line = language.say("%(heading)s: %(sets)s; %(rest)s.", heading=heading, sets=listed, rest=rest)
    return RampWords(heading, sets, rest, line, title, short, _rows(language, item, unit))


def _said(language: Language, item: ResolvedItem, amount: str, take: Take, unit: str) -> str:
    if isinstance(take.load, Weight):
        weight = take.choice.weight_kg if take.choice else take.load.kg
        if weight is None:
            return language.say("%(amount)s with less weight", amount=amount)
        said = loads.mass(language, weight, unit)
        if take.load.per_hand:
            said = language.say("%(weight)s in each hand", weight=said)
        return language.say("%(amount)s with %(load)s", amount=amount, load=said)
    first = item.dose.first.load
    percent = magnitude(take.load) * 100 / magnitude(first) if first is not None else magnitude(take.load)
    return language.say(
        "%(amount)s with %(percent)s %% of that weight", amount=amount, percent=language.number(percent, 0)
    )


def _rows(language: Language, item: ResolvedItem, unit: str) -> tuple[tuple[str, str], ...]:
    rows = []
    for row in side_by_side(item.ramp_takes):
        span = f"{row.first_kg}" if row.first_kg == row.last_kg else f"{row.first_kg}–{row.last_kg}"
        # Where the first working set has no weight to take, none of these has: that is said once.
        choices = row.choices[:1] if row.choices[0].weight_kg is None else row.choices
        rows.append((span, language.listed(loads.to_take(language, choice, unit) for choice in choices)))
    return tuple(rows)
