"""Warm-up sets in weights that the club owns: lighter sets that lead up to the first working set.

They take time, and count for nothing else. Each takes the owned weight nearest to its share, the lighter on a tie, and
never a heavier one than the working set takes; where all are heavier than the share, it is the lightest. So a
limit that binds the working set binds them too.
"""

from bisect import bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor
from typing import Final

from setwright.dose.bands import LoadBand, choice_at, written_down
from setwright.dose.dose import Dose, Set
from setwright.dose.loads import Choice, nearest, share_kg
from setwright.dose.progression import with_magnitude
from setwright.dose.resolved import Take
from setwright.model.load import BodyWeightShare, Load, OneRepMaxShare, Weight, magnitude
from setwright.model.ramp import RampSet
from setwright.model.span import Span

RAMP_REST_S: Final = 60
"""Rest after a warm-up set, in seconds: about what it takes to change the weights. Common practice, no source."""


def led_up_to(dose: Dose, ramp: Iterable[RampSet]) -> Dose:
    """Return a dose with its warm-up sets first, each with a share of the first working set's load."""
    first = dose.first
    if first.load is None or not first.load.weighed:
        return dose
    load = first.load
    leading = (
        Set(
            amount=Span.of(one.reps),
            load=with_magnitude(load, magnitude(load) * one.of_load / 100),
            tempo=first.tempo,
            rest_s=RAMP_REST_S,
            kind="ramp",
        )
        for one in ramp
    )
    return replace(dose, sets=(*leading, *dose.working))


def ramp_takes(dose: Dose, work: Take | None, owned_kg: Sequence[Fraction]) -> tuple[Take, ...]:
    """Return what to take for each warm-up set, in their order.

    Args:
        dose: the dose with its warm-up sets.
        work: what to take for the first working set.
        owned_kg: the owned weights on the footing of its load, lightest first.
    """
    if work is None:
        return ()
    return tuple(_take(one.load, work, owned_kg) for one in dose.ramp if one.load is not None)


def _take(load: Load, work: Take, owned_kg: Sequence[Fraction]) -> Take:
    if isinstance(load, Weight) and work.choice is not None:
        return Take(load, (), below(load.kg, owned_kg, work.choice))
    if isinstance(load, BodyWeightShare | OneRepMaxShare) and work.bands:
        return Take(load, _bands_below(load.percent, owned_kg, work.bands), None)
    return Take(load, (), None)


def below(exact_kg: Fraction, owned_kg: Sequence[Fraction], work: Choice) -> Choice:
    """Return the owned weight for a warm-up set before a working set; none where that one has none to take."""
    if work.weight_kg is None:
        return work
    return Choice(nearest(exact_kg, owned_kg[: bisect_right(owned_kg, work.weight_kg)]), "near")


def _bands_below(percent: Fraction, owned_kg: Sequence[Fraction], work: Sequence[LoadBand]) -> tuple[LoadBand, ...]:
    start, end = work[0].from_kg, work[-1].to_kg

    def choose(base_kg: Fraction) -> Choice:
        return below(share_kg(percent, base_kg), owned_kg, choice_at(work, base_kg) or work[-1].choice)

    points = {(lighter + heavier) / 2 * 100 / percent for lighter, heavier in pairwise(owned_kg)}
    points.update(edge for band in work for edge in (band.from_kg, band.to_kg))
    return written_down(choose, sorted(points), start, end)


@dataclass(frozen=True, slots=True)
class Rungs:
    """A stretch of whole kilograms of body weight (or of 1RM), and what to take there for each warm-up set."""

    first_kg: int
    last_kg: int
    choices: tuple[Choice, ...]


def side_by_side(takes: Sequence[Take]) -> tuple[Rungs, ...]:
    """Return the bands of several warm-up sets in one table, since a member looks it up once."""
    found: list[Rungs] = []
    if not takes or not all(take.bands for take in takes):
        return ()
    for base_kg in range(ceil(takes[0].bands[0].from_kg), floor(takes[0].bands[-1].to_kg) + 1):
        choices = tuple(one for take in takes if (one := choice_at(take.bands, Fraction(base_kg))) is not None)
        if found and found[-1].choices == choices:
            found[-1] = replace(found[-1], last_kg=base_kg)
        else:
            found.append(Rungs(base_kg, base_kg, choices))
    return tuple(found)
