"""One exercise of a session in words: everything that a page and a sheet say about its dose, decided once."""

from dataclasses import dataclass
from fractions import Fraction

from setwright.dose.dose import Dose
from setwright.dose.heights import Heights
from setwright.dose.phases import Manner
from setwright.dose.resolved import ResolvedItem, Take
from setwright.model.limits import Limits
from setwright.model.load import BodyWeightShare, HelpShare, HelpWeight, Load, Weight
from setwright.model.span import Open
from setwright.wording import doses, loads
from setwright.wording.language import Language, capital
from setwright.wording.limits import bound, centimetres
from setwright.wording.pieces import Piece, Pieces, pieces, stressed
from setwright.wording.ramps import RampWords, ramp_words
from setwright.wording.times import duration, durations


@dataclass(frozen=True, slots=True)
class BandRow:
    """A stretch of body weight (or of 1RM) and what to take there.

    ``span`` is in whole kilograms without a unit; ``label`` says of what, with its unit; ``fit`` is the choice's.
    """

    span: str
    label: str
    take: str
    fit: str


@dataclass(frozen=True, slots=True)
class BandWords:
    """The weights to take, and what stands before them.

    ``title`` in a sentence on the page, ``before`` where that is printed, ``short`` on a sheet.
    """

    label: str
    title: str
    before: str
    short: str
    rows: tuple[BandRow, ...]


@dataclass(frozen=True, slots=True)
class LoadWords:
    """One load of an exercise in words.

    ``sets`` says which sets it is for, where others have another. ``kit`` is what it is taken with. ``take`` says what
    to take where the load alone does not, ``bands`` where that depends on the member. ``remark`` is about some of the
    weights, ``held_back`` says that the physiotherapist's limit keeps some lighter. ``of`` is what all of it is said
    about.
    """

    of: Take
    sets: str | None
    load: str
    kit: str | None
    take: Pieces
    bands: BandWords | None
    remark: str | None
    held_back: str | None


@dataclass(frozen=True, slots=True)
class ItemWords:
    """One exercise's dose in words.

    ``number`` and ``unit`` are the amount for large type, ``in_words`` where it is no number; ``loads`` what is lifted,
    if anything, and ``feels`` how hard a set with that should feel. ``bound`` is the physiotherapist's limit, where the
    load alone does not keep to it; ``height`` is that of a box or step. ``tempo_code`` are the four numbers of a tempo.
    ``ramp`` are warm-up sets.
    """

    number: str
    unit: str
    in_words: bool
    amount: str
    sides: str
    loads: tuple[LoadWords, ...]
    feels: str | None
    bound: str | None
    height: str | None
    tempo: str | None
    tempo_code: str | None
    rest: str
    ramp: RampWords | None


def item_words(
    language: Language, item: ResolvedItem, limits: Limits | None, unit: str, manner: Manner = "lowers first"
) -> ItemWords:
    """Return an exercise's dose in words.

    Args:
        language: the language to say it in.
        item: the exercise in its week.
        limits: what the physiotherapist allows of it, if anything is limited.
        unit: the club's unit of weights, ``kg`` or ``lb``.
        manner: how a repetition goes.
    """
    dose, tempo = item.dose, item.dose.first.tempo
    number, word = doses.big_amount(language, dose)
    return ItemWords(
        number=number,
        unit=word,
        in_words=any(isinstance(one.amount, Open) for one in dose.working),
        amount=doses.amount(language, dose),
        sides=doses.sides(language, dose),
        loads=tuple(_load(language, item, take, unit) for take in item.takes),
        feels=feels(language, dose.feels),
        bound=bound(language, limits, dose.loads),
        height=_height(language, item.heights) if item.heights else None,
        tempo=doses.tempo_words(language, tempo, manner) if tempo else None,
        tempo_code=str(tempo) if tempo else None,
        rest=_rest(language, dose),
        ramp=ramp_words(language, item, unit),
    )


def _rest(language: Language, dose: Dose) -> str:
    """Return the rest after a set, behind the word for it."""
    if dose.clock is not None and dose.clock.every_s is not None:
        return language.say("for what is left of %(time)s", time=duration(language, dose.clock.every_s))
    return durations(language, dose.rests_s)


def _load(language: Language, item: ResolvedItem, take: Take, unit: str) -> LoadWords:
    return LoadWords(
        of=take,
        sets=_sets(language, item, take.load) if len(item.takes) > 1 else None,
        load=capital(loads.load(language, take.load)),
        kit=item.kit_name if take.bands or take.choice else None,
        take=_take(language, take, unit),
        bands=_bands(language, take, unit) if take.bands and not take.choice else None,
        remark=_remark(language, item, take),
        held_back=_held_back(language, take),
    )


def feels(language: Language, effort: Load | None) -> str | None:
    """Return how hard a set with its load should feel, and what to do where it feels harder."""
    if effort is None:
        return None
    return language.say(
        "Should feel like %(effort)s; take less if it feels harder.", effort=loads.load(language, effort)
    )


def _sets(language: Language, item: ResolvedItem, load: Load) -> str:
    """Return which sets have a load: Set 1; Sets 2, 3; Rounds 1, 2."""
    places = [place for place, one in enumerate(item.dose.working, 1) if one.load == load]
    numbers = language.listed(map(str, places))
    if item.rounds:
        return language.many("Round %(numbers)s", "Rounds %(numbers)s", len(places), numbers=numbers)
    return language.many("Set %(numbers)s", "Sets %(numbers)s", len(places), numbers=numbers)


def _take(language: Language, take: Take, unit: str) -> Pieces:
    load, choice = take.load, take.choice
    if choice:
        if choice.fit == "over-limit":
            return _one(language.say("The physiotherapist's limit rules this out: do the easier option."))
        if choice.weight_kg is None:
            if isinstance(load, HelpWeight):
                return _one(language.say("The club owns nothing that helps enough: do the easier option."))
            return _one(language.say("The club owns nothing light enough: do the easier option."))
        if isinstance(load, HelpWeight) and choice.weight_kg != load.kg:
            weight = stressed(loads.mass(language, choice.weight_kg, unit))
            return pieces(language.say("Set %(weight)s of help, the nearest that the club owns.", weight=weight))
        if isinstance(load, Weight) and choice.weight_kg != load.kg:
            weight = stressed(loads.mass(language, choice.weight_kg, unit))
            return pieces(language.say("Take %(weight)s, the nearest that the club owns.", weight=weight))
    elif take.bands:
        return ()
    elif isinstance(load, BodyWeightShare):
        said = language.say(
            "Multiply your body weight by %(percent)s and divide by 100. Take nothing heavier than that.",
            percent=language.number(load.percent),
        )
        return _one(said)
    elif isinstance(load, HelpShare):
        said = language.say(
            "Multiply your body weight by %(percent)s and divide by 100. Take no less help than that.",
            percent=language.number(load.percent),
        )
        return _one(said)
    return ()


def _one(said: str) -> Pieces:
    return (Piece(said, False),)


def _bands(language: Language, take: Take, unit: str) -> BandWords:
    of_max, per_hand = take.load.of == "1RM", take.load.per_hand
    rows = []
    for band in take.shown:
        if band.whole_kg is None:
            continue
        first, last = band.whole_kg
        span = f"{first}" if first == last else f"{first}–{last}"
        label = language.say("1RM %(span)s kg", span=span) if of_max else language.say("%(span)s kg", span=span)
        rows.append(BandRow(span, label, loads.to_take(language, band.choice, unit), band.choice.fit))
    before = language.say("Your 1RM") if of_max else language.say("You weigh")
    if of_max:
        label = language.say("Weight to take by 1RM")
        title, short = language.say("Your 1RM, and what to take:"), language.say("Your 1RM, kg")
    elif isinstance(take.load, HelpShare):
        label = language.say("Help to set by body weight")
        title = language.say("Your body weight, and how much help to set:")
        short = language.say("You weigh, kg: help")
    elif per_hand:
        label = language.say("Weight to take by body weight")
        title = language.say("Your body weight, and what to take in each hand:")
        short = language.say("You weigh, kg: each hand")
    else:
        label = language.say("Weight to take by body weight")
        title, short = language.say("Your body weight, and what to take:"), language.say("You weigh, kg")
    return BandWords(label, title, before, short, tuple(rows))


def _remark(language: Language, item: ResolvedItem, take: Take) -> str | None:
    if all(band.choice.fit != "lighter" for band in take.shown):
        return None
    if isinstance(take.load, HelpShare):
        return language.say(
            "For some members the nearest %(kit)s helps more than planned. That is fine.", kit=item.kit_name
        )
    return language.say(
        "For some members the nearest %(kit)s is lighter than planned. That is fine.", kit=item.kit_name
    )


def _held_back(language: Language, take: Take) -> str | None:
    if all(band.choice.fit != "limit" for band in take.shown):
        return None
    if isinstance(take.load, HelpShare):
        return language.say("The physiotherapist's limit keeps some help higher.")
    return language.say("The physiotherapist's limit keeps some weights lighter.")


def _height(language: Language, heights: Heights) -> str:
    if heights.asked_cm is not None:
        return language.say("%(height)s high", height=centimetres(language, heights.asked_cm))
    if heights.owned_cm:
        sizes = language.either(centimetres(language, size) for size in heights.owned_cm)
        return language.say("%(heights)s high, no higher", heights=sizes)
    return language.say("No higher than %(height)s", height=centimetres(language, heights.most_cm or Fraction(0)))
