"""The first form of sign-offs, whose identity hung on English words. Nothing here may ever change.

Clubs' files hold lines of this form: digests taken over loads in words, and the dosage as a sentence. They stay valid
for as long as what they stand for is unchanged, so these words are kept as they were, whatever pages say today.
"""

from collections.abc import Iterable
from fractions import Fraction

from setwright.dose.in_use import Dosage
from setwright.model.exercise import Exercise
from setwright.model.load import (
    AddedWeight,
    Band,
    BodyWeightShare,
    Effort,
    HelpShare,
    HelpWeight,
    Load,
    OneRepMaxShare,
    Reserve,
    Weight,
    magnitude,
)
from setwright.model.prescription import MEASURES, Measure
from setwright.model.units import plain_number
from setwright.review.parts import Part, digest_of, written


def first_digest_of(exercise: Exercise, part: Part) -> str:
    """Return the digest of a part as the first form took it."""
    return digest_of(
        exercise, part, lambda key, value: _load(value) if isinstance(value, Load) else written(key, value)
    )


def sentence(dosage: Dosage) -> str:
    """Return the doses in use as the sentence that the first form kept."""
    parts = []
    if dosage.sets:
        amounts = " or ".join(_amounts(m, dosage.amounts[m]) for m in MEASURES if m in dosage.amounts)
        parts.append(f"{_range(dosage.sets)} {'set' if dosage.sets == {1} else 'sets'} of {amounts}")
        parts.extend(_loads(dosage.loads))
        if dosage.loads and dosage.unloaded:
            parts.append("also without weight")
        if dosage.tempos:
            parts.append(f"tempo {' or '.join(sorted(map(str, dosage.tempos)))}")
        parts.append(f"at most {dosage.weekly_sets} sets a week")
    if dosage.in_routines:
        routines = " or ".join(_amounts(m, dosage.in_routines[m]) for m in MEASURES if m in dosage.in_routines)
        parts.append(f"in warm-ups and cool-downs {routines}")
    return "; ".join(parts) or "not in use"


def _load(load: Load) -> str:
    hand = " in each hand" if load.per_hand else ""
    match load:
        case BodyWeightShare():
            return f"{plain_number(load.percent)} % of body weight{hand}"
        case OneRepMaxShare():
            return f"{plain_number(load.percent)} % of 1RM"
        case AddedWeight() | HelpShare() | HelpWeight():
            return str(load)  # newer than the first form: no line of it knows them
        case Weight():
            return f"{plain_number(load.number)} {load.unit}{hand}"
        case Effort():
            return f"effort {plain_number(load.rpe)} of 10"
        case Reserve():
            return f"{load.reps} {'rep' if load.reps == 1 else 'reps'} in reserve"
        case Band():
            return f"{load.name} band"


def _seconds(count: int) -> str:
    minutes, rest = divmod(count, 60)
    if not minutes:
        return f"{rest} s"
    return f"{minutes} min" + (f" {rest} s" if rest else "")


def _amounts(measure: Measure, amounts: Iterable[Fraction]) -> str:
    low, high = min(amounts), max(amounts)
    match measure:
        case "reps":
            return f"{_range((low, high))} reps"
        case "distance":
            return f"{_range((low / 100, high / 100))} m"
        case _:
            least, most = _seconds(int(low)), _seconds(int(high))
            if high < 60:
                least = str(int(low)) if low != high else least
            return f"{least if low == high else f'{least} to {most}'} {measure}"


def _loads(loads: Iterable[Load]) -> list[str]:
    kinds: dict[tuple[str, bool], list[Load]] = {}
    for load in loads:
        kinds.setdefault((type(load).__name__, load.per_hand), []).append(load)
    return [_load_range(kinds[kind]) for kind in sorted(kinds)]


def _load_range(loads: list[Load]) -> str:
    if any(isinstance(load, Band) for load in loads):
        return " or ".join(sorted(_load(load) for load in loads))
    low, high = min(loads, key=magnitude), max(loads, key=magnitude)
    if low == high:
        return _load(low)
    match low:
        case BodyWeightShare() | OneRepMaxShare() | Weight() | Effort():
            number = _first_number(_load(low))
            return _load(high).replace(_first_number(_load(high)), f"{number} to {_first_number(_load(high))}", 1)
        case Reserve():
            return f"{low.reps} to {_load(high)}"
        case _:
            return f"{_load(low)} to {_load(high)}"


def _first_number(text: str) -> str:
    return next(word for word in text.split() if word[0].isdigit())


def _range(numbers: Iterable[int | Fraction]) -> str:
    low, high = min(numbers), max(numbers)
    return plain_number(low) if low == high else f"{plain_number(low)} to {plain_number(high)}"
