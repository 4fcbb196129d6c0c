"""Load bands: the list "53 to 66 kg of body weight: take 10 kg" behind a percentage of body weight.

The bands are the direct choice (``loads.choose_weight``) written down for every body weight of a range, with exact
edges: they are found by evaluating that one function at and between every point where its answer can change.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from math import ceil, floor

from setwright.dose.loads import NEAR_KG, NEAR_SHARE, Choice, choose_help, choose_weight, share_kg


@dataclass(frozen=True, slots=True)
class LoadBand:
    """A range of body weight (or of 1RM) and the choice that holds all through it. All in kg."""

    from_kg: Fraction
    to_kg: Fraction
    from_included: bool
    to_included: bool
    choice: Choice

    def holds(self, base_kg: Fraction) -> bool:
        """Say whether a body weight falls into this band."""
        above = base_kg >= self.from_kg if self.from_included else base_kg > self.from_kg
        below = base_kg <= self.to_kg if self.to_included else base_kg < self.to_kg
        return above and below

    @property
    def whole_kg(self) -> tuple[int, int] | None:
        """The first and last whole kilogram inside, or None for a band narrower than that."""
        first = ceil(self.from_kg)
        if first == self.from_kg and not self.from_included:
            first += 1
        last = floor(self.to_kg)
        if last == self.to_kg and not self.to_included:
            last -= 1
        return (first, last) if first <= last else None


@dataclass(frozen=True, slots=True)
class Limit:
    """The heaviest weight allowed: a share of body weight, a weight, or both unset."""

    percent: Fraction | None = None
    kg: Fraction | None = None

    def at(self, base_kg: Fraction) -> Fraction | None:
        """Return the limit in kg at a body weight."""
        if self.percent is not None:
            return share_kg(self.percent, base_kg)
        return self.kg


def load_bands(
    percent: Fraction,
    owned_kg: Sequence[Fraction],
    from_kg: Fraction,
    to_kg: Fraction,
    limit: Limit | None = None,
    helps: bool = False,
) -> tuple[LoadBand, ...]:
    """Return the bands that cover a range of body weights without gap or overlap, lightest members first.

    Args:
        percent: the prescribed share, such as 15 for 15 %.
        owned_kg: the owned weights, lightest first, at least one.
        from_kg: the lightest body weight covered, included.
        to_kg: the heaviest body weight covered, included.
        limit: the physiotherapist's limit, if any: the heaviest weight, or the least help.
        helps: whether the weight is taken off the body.
    """
    limit = limit or Limit()

    def choose(base_kg: Fraction) -> Choice:
        return (choose_help if helps else choose_weight)(share_kg(percent, base_kg), owned_kg, limit.at(base_kg))

    return written_down(choose, sorted(_turning_points(percent, owned_kg, limit, from_kg, to_kg)), from_kg, to_kg)


def _turning_points(
    percent: Fraction, owned_kg: Sequence[Fraction], limit: Limit, from_kg: Fraction, to_kg: Fraction
) -> set[Fraction]:
    """Return every body weight between two at which the choice can change."""
    # The nearest weight to a load stands beside it on the rack, so that no other turns anything.
    first = bisect_left(owned_kg, share_kg(percent, from_kg))
    last = bisect_right(owned_kg, share_kg(percent, to_kg))
    in_reach = owned_kg[max(0, first - 1) : last + 1]
    loads = {(lighter + heavier) / 2 for lighter, heavier in pairwise(in_reach)}
    for weight in in_reach:
        loads.update((weight / (1 + NEAR_SHARE), weight / (1 - NEAR_SHARE), weight - NEAR_KG, weight + NEAR_KG))
    points = {load * 100 / percent for load in loads}
    if limit.percent:
        points.update(weight * 100 / limit.percent for weight in owned_kg)
    return points


def choice_at(bands: Sequence[LoadBand], base_kg: Fraction) -> Choice | None:
    """Return the owned weight for a body weight (or a 1RM), from the bands of a load."""
    return next((band.choice for band in bands if band.holds(base_kg)), None)


def written_down(
    choose: Callable[[Fraction], Choice], points: Sequence[Fraction], from_kg: Fraction, to_kg: Fraction
) -> tuple[LoadBand, ...]:
    """Return a choice for every body weight as bands, found at and between the points where it can change.

    Args:
        choose: the choice for one body weight.
        points: every body weight at which it can change, lightest first.
        from_kg: the lightest body weight covered, included.
        to_kg: the heaviest body weight covered, included.
    """
    edges = [from_kg, *(p for p in points if from_kg < p < to_kg), to_kg]
    bands = [LoadBand(from_kg, from_kg, True, True, choose(from_kg))]
    for left, right in pairwise(edges):
        between, at_right = choose((left + right) / 2), choose(right)
        for stretch in (LoadBand(left, right, False, False, between), LoadBand(right, right, True, True, at_right)):
            last = bands[-1]
            if last.choice == stretch.choice:
                bands[-1] = LoadBand(last.from_kg, stretch.to_kg, last.from_included, stretch.to_included, last.choice)
            else:
                bands.append(stretch)
    return tuple(bands)
