"""The doses in use of an exercise, in one line: 2 to 3 sets of 8 to 10 reps; 15 to 18 % of body weight."""

from collections.abc import Iterable, Mapping
from fractions import Fraction

from setwright.dose.dose import metres
from setwright.dose.in_use import Dosage
from setwright.model.load import Band, Load, magnitude
from setwright.model.prescription import MEASURES, Measure
from setwright.wording import loads as load_words
from setwright.wording.language import Language
from setwright.wording.times import duration


def in_routines(language: Language, dosage: Dosage) -> str:
    """Return what warm-ups and cool-downs ask for."""
    return _amounts(language, dosage.in_routines)


def in_words(language: Language, dosage: Dosage) -> str:
    """Return the whole range, always the same for the same doses; 'not in use' where there is none."""
    parts = []
    if dosage.sets:
        low, high = min(dosage.sets), max(dosage.sets)
        amounts = _amounts(language, dosage.amounts)
        values = {"sets": _range(language, low, high), "amounts": amounts}
        parts.append(language.many("%(sets)s set of %(amounts)s", "%(sets)s sets of %(amounts)s", high, **values))
        parts.extend(load_ranges(language, dosage.loads))
        if dosage.loads and dosage.unloaded:
            parts.append(language.say("also without weight"))
        if dosage.tempos:
            tempos = language.either(sorted(map(str, dosage.tempos)))
            parts.append(language.say("tempo %(tempo)s", tempo=tempos))
        parts.append(language.many("at most %(num)s set a week", "at most %(num)s sets a week", dosage.weekly_sets))
    if dosage.in_routines:
        amounts = in_routines(language, dosage)
        parts.append(language.say("in warm-ups and cool-downs %(amounts)s", amounts=amounts))
    return "; ".join(parts) or language.say("not in use")


def in_plan(language: Language, dosage: Dosage) -> str:
    """Return the range of one plan; of sets without a number, what must be left and where they end in any case."""
    said = [in_words(language, dosage)]
    for leave, end in sorted(dosage.opens, key=lambda one: (one[0], one[1] or 0)):
        left = language.many(
            "sets of as many as possible, with %(num)s rep left",
            "sets of as many as possible, with %(num)s reps left",
            leave,
        )
        last = language.say("%(set)s, up to %(number)s", set=left, number=end) if end is not None else left
        said.append(last)
    return "; ".join(said)


def _amounts(language: Language, amounts: Mapping[Measure, Iterable[Fraction]]) -> str:
    return language.either(amount_range(language, m, amounts[m]) for m in MEASURES if m in amounts)


def amount_range(language: Language, measure: Measure, amounts: Iterable[Fraction]) -> str:
    """Return amounts of one measure from least to most: 6 to 10 reps, 30 s to 1 min hold, 20 to 30 m."""
    low, high = min(amounts), max(amounts)
    match measure:
        case "reps":
            number = _range(language, low, high)
            return language.many("%(number)s rep", "%(number)s reps", int(high), number=number)
        case "distance":
            return language.say("%(number)s m", number=_range(language, metres(low), metres(high)))
        case _:
            time = _times(language, int(low), int(high))
            if measure == "hold":
                return language.say("%(time)s hold", time=time)
            return language.say("%(time)s work", time=time)


def _times(language: Language, low_s: int, high_s: int) -> str:
    most = duration(language, high_s)
    if low_s == high_s:
        return most
    least = str(low_s) if high_s < 60 else duration(language, low_s)
    return language.say("%(first)s to %(last)s", first=least, last=most)


def load_ranges(language: Language, loads: Iterable[Load]) -> list[str]:
    """Return loads from lightest to heaviest, one range for each kind of load."""
    kinds: dict[tuple[str, bool], list[Load]] = {}
    for load in loads:
        kinds.setdefault((type(load).__name__, load.per_hand), []).append(load)
    return [_load_range(language, kinds[kind]) for kind in sorted(kinds)]


def _load_range(language: Language, loads: list[Load]) -> str:
    if any(isinstance(load, Band) for load in loads):
        return language.either(sorted(load_words.load(language, load) for load in loads))
    low, high = min(loads, key=magnitude), max(loads, key=magnitude)
    if low == high:
        return load_words.load(language, low)
    return load_words.load(language, high, low)


def _range(language: Language, low: int | Fraction, high: int | Fraction) -> str:
    least, most = language.number(low), language.number(high)
    return most if low == high else language.say("%(first)s to %(last)s", first=least, last=most)
