"""The doses in use of an exercise, in one line: 2 to 3 sets of 8 to 10 reps; 15 to 18 % of body weight."""

from collections.abc import Iterable
from fractions import Fraction

from setwright.dose.dose import metres
from setwright.dose.in_use import Dosage
from setwright.model.load import Band, Load, Reserve, magnitude
from setwright.model.prescription import MEASURES, Measure
from setwright.model.units import plain_number
from setwright.wording.words import load_in_words, seconds


def in_routines(dosage: Dosage) -> str:
    """Return what warm-ups and cool-downs ask for."""
    return " or ".join(amount_range(m, dosage.in_routines[m]) for m in MEASURES if m in dosage.in_routines)


def in_words(dosage: Dosage) -> str:
    """Return the whole range, always the same for the same doses; 'not in use' where there is none."""
    parts = []
    if dosage.sets:
        amounts = " or ".join(amount_range(m, dosage.amounts[m]) for m in MEASURES if m in dosage.amounts)
        parts.append(f"{_range(dosage.sets)} {'set' if dosage.sets == {1} else 'sets'} of {amounts}")
        parts.extend(load_ranges(dosage.loads))
        if dosage.loads and dosage.unloaded:
            parts.append("also without weight")
        if dosage.tempos:
            parts.append(f"tempo {' or '.join(sorted(map(str, dosage.tempos)))}")
        parts.append(f"at most {dosage.weekly_sets} sets a week")
    if dosage.in_routines:
        parts.append(f"in warm-ups and cool-downs {in_routines(dosage)}")
    return "; ".join(parts) or "not in use"


def amount_range(measure: Measure, amounts: Iterable[Fraction]) -> str:
    """Return amounts of one measure from least to most: 6 to 10 reps, 30 s to 1 min hold, 20 to 30 m."""
    low, high = min(amounts), max(amounts)
    match measure:
        case "reps":
            return f"{_range((low, high))} reps"
        case "distance":
            return f"{_range((metres(low), metres(high)))} m"
        case _:
            least, most = seconds(int(low)), seconds(int(high))
            if high < 60:
                least = str(int(low)) if low != high else least
            return f"{least if low == high else f'{least} to {most}'} {measure}"


def load_ranges(loads: Iterable[Load]) -> list[str]:
    """Return loads from lightest to heaviest, one range for each kind of load."""
    kinds: dict[tuple[str, bool], list[Load]] = {}
    for load in loads:
        kinds.setdefault((type(load).__name__, load.per_hand), []).append(load)
    return [_load_range(kinds[kind]) for kind in sorted(kinds)]


def _load_range(loads: list[Load]) -> str:
    if any(isinstance(load, Band) for load in loads):
        return " or ".join(sorted(load_in_words(load) for load in loads))
    low, high = min(loads, key=magnitude), max(loads, key=magnitude)
    if low == high:
        return load_in_words(low)
    if isinstance(low, Reserve):
        return f"{low.reps} to {load_in_words(high)}"
    least, most = _first_number(load_in_words(low)), _first_number(load_in_words(high))
    return load_in_words(high).replace(most, f"{least} to {most}", 1)


def _first_number(text: str) -> str:
    return next(word for word in text.split() if word[0].isdigit())


def _range(numbers: Iterable[int | Fraction]) -> str:
    low, high = min(numbers), max(numbers)
    return plain_number(low) if low == high else f"{plain_number(low)} to {plain_number(high)}"
