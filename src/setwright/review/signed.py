"""The doses in use as a sign-off keeps them: values in the coach's own written form, whatever words pages use."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Any

from setwright.dose.in_use import Dosage
from setwright.model.load import Band, Load, magnitude
from setwright.model.prescription import MEASURES, Measure
from setwright.model.sign_off import InRoutines, SignedDosage
from setwright.model.units import exact_number

_UNITS = {"reps": "", "hold": " s", "work": " s", "distance": " cm"}


def signed(dosage: Dosage) -> SignedDosage:
    """Return the doses in use as they are signed: the least and the most of everything."""
    return SignedDosage(
        **_ends(dosage.amounts),
        sets=(min(dosage.sets), max(dosage.sets)) if dosage.sets else None,
        load=list(_extremes(dosage.loads)),
        without_weight=dosage.unloaded and bool(dosage.loads),
        tempo=sorted(dosage.tempos, key=str),
        weekly_sets=dosage.weekly_sets or None,
        routines=InRoutines(**_ends(dosage.in_routines)) if dosage.in_routines else None,
    )


def as_dosage(doses: SignedDosage) -> Dosage:
    """Return signed doses as doses in use, to be said in the same words."""
    return Dosage(
        sets=set(doses.sets or ()),
        weekly_sets=doses.weekly_sets or 0,
        amounts=_amounts(doses),
        loads=set(doses.load),
        unloaded=doses.without_weight or not doses.load,
        tempos=set(doses.tempo),
        in_routines=_amounts(doses.routines) if doses.routines else {},
    )


def text_of(doses: SignedDosage) -> str:
    """Return signed doses as one flow mapping of YAML: ``{reps: [8, 10], sets: [2, 3], load: [12 kg], ...}``."""
    parts = list(_texts(doses))
    if doses.sets is not None:
        parts.append(f"sets: [{doses.sets[0]}, {doses.sets[1]}]")
    if doses.load:
        parts.append(f"load: [{', '.join(map(str, doses.load))}]")
    if doses.without_weight:
        parts.append("without_weight: true")
    if doses.tempo:
        parts.append(f"tempo: [{', '.join(map(str, doses.tempo))}]")
    if doses.weekly_sets is not None:
        parts.append(f"weekly_sets: {doses.weekly_sets}")
    if doses.routines is not None:
        parts.append(f"routines: {{{', '.join(_texts(doses.routines))}}}")
    return f"{{{', '.join(parts)}}}"


def _ends(amounts: Mapping[Measure, Iterable[Fraction]]) -> dict[str, Any]:
    """Return the least and the most of each measure, as a coach writes them."""
    return {
        measure: tuple(f"{exact_number(end(numbers))}{_UNITS[measure]}" for end in (min, max))
        for measure, numbers in amounts.items()
    }


def _amounts(doses: InRoutines) -> dict[Measure, set[Fraction]]:
    ends = {measure: getattr(doses, measure) for measure in MEASURES}
    return {measure: {Fraction(number) for number in pair} for measure, pair in ends.items() if pair is not None}


def _texts(doses: InRoutines) -> Iterable[str]:
    for measure in MEASURES:
        pair = getattr(doses, measure)
        if pair is not None:
            yield f"{measure}: [{', '.join(f'{exact_number(number)}{_UNITS[measure]}' for number in pair)}]"


def _extremes(loads: Iterable[Load]) -> Iterable[Load]:
    """Yield the lightest and the heaviest load of each kind, and every band, in a fixed order."""
    kinds: dict[tuple[str, bool], list[Load]] = {}
    for load in loads:
        kinds.setdefault((type(load).__name__, load.per_hand), []).append(load)
    for kind in sorted(kinds):
        same = kinds[kind]
        if isinstance(same[0], Band):
            yield from sorted(same, key=str)
        else:
            yield from dict.fromkeys((min(same, key=magnitude), max(same, key=magnitude)))
