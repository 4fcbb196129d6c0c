"""What pages carry for the browser in attributes: bands and multiples, so that no script computes a load.

Bands are written as intervals, with exact edges: ``[40, 160/3) 8 kg; [160/3, 70] 10 kg``. A square bracket takes its
edge in, a round one leaves it out. Edges are kilograms of body weight (or of 1RM), as whole numbers or fractions.
"""

from collections.abc import Mapping
from fractions import Fraction
from math import ceil, floor
from typing import Final, Literal

from markupsafe import Markup, escape

from setwright.dose.bands import LoadBand
from setwright.dose.one_rep_max import MOST_REPS, estimate_range
from setwright.dose.resolved import ResolvedItem, Take
from setwright.model.limits import Limits
from setwright.model.load import AddedWeight, BodyWeightShare, HelpShare, HelpWeight, Load, OneRepMaxShare
from setwright.model.units import KG_PER_LB, plain_number

EASIER: Final = "easier"
"""What a band holds in place of a weight where none may be taken."""

_SHARE_PLACES: Final = 10**6


def bands(rows: tuple[LoadBand, ...], unit: str) -> str:
    """Return bands as intervals with the weight to take in the club's unit."""
    return "; ".join(
        f"{'[' if row.from_included else '('}{row.from_kg}, {row.to_kg}{']' if row.to_included else ')'} "
        f"{EASIER if row.choice.weight_kg is None else weight(row.choice.weight_kg, unit)}"
        for row in rows
    )


def weight(kg: Fraction, unit: str) -> str:
    """Return a weight as data, a plain number and its unit: ``12.5 kg``."""
    return f"{plain_number(kg if unit == 'kg' else kg / KG_PER_LB, 2 if unit == 'kg' else 1)} {unit}"


def load(item: ResolvedItem, take: Take, unit: str) -> Markup:
    """Return the attributes of a load that stands in bands: whose bands, and how the weight is held."""
    share = take.load
    return attributes(
        {
            "data-of": "1rm" if isinstance(share, OneRepMaxShare) else "body-weight",
            "data-bands": bands(take.bands, unit),
            "data-hand": "each" if share.per_hand else None,
            "data-way": way(share),
            "data-kit": item.kit,
            "data-exercise": item.exercise,
        }
    )


LoadWay = Literal["help", "added"]


def way(one: Load) -> LoadWay | None:
    """Return what a load does where it is not just held: it helps, or is added to the body's own weight."""
    if isinstance(one, HelpShare | HelpWeight):
        return "help"
    return "added" if isinstance(one, AddedWeight) else None


def cap(limits: Limits | None, unit: str) -> Markup | None:
    """Return the attributes of a limit in shares of body weight, to be said in the member's own weight; else None."""
    if limits is None or not isinstance(limits.load, BodyWeightShare):
        return None
    share = {"data-share": limits.load.percent / 100, "data-hand": "each" if limits.load.per_hand else None}
    return attributes({**share, "data-unit": unit})


def multiples() -> str:
    """Return the lowest and highest 1RM for one kilogram at each number of repetitions: ``2 1.03 1.09; 3 ...``.

    Every formula is proportional to the weight, so a browser multiplies and holds no formula. Rounded outwards, to a
    millionth.
    """
    rows = []
    for reps in range(2, MOST_REPS + 1):
        span = estimate_range(1, reps)
        low = Fraction(floor(span.low_kg * _SHARE_PLACES), _SHARE_PLACES)
        high = Fraction(ceil(span.high_kg * _SHARE_PLACES), _SHARE_PLACES)
        rows.append(f"{reps} {float(low):.6f} {float(high):.6f}")
    return "; ".join(rows)


def attributes(pairs: Mapping[str, object]) -> Markup:
    """Return HTML attributes, escaped; those without a value are left out."""
    return Markup(" ").join(
        Markup('{}="{}"').format(name, escape(value)) for name, value in pairs.items() if value is not None
    )
