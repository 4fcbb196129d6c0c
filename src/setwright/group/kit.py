"""What kit one member needs for one set: how many of which, and what else would do."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from setwright.dose.bands import choice_at
from setwright.dose.resolved import ResolvedItem
from setwright.model.club import Barbell, Club
from setwright.model.load import Band, Load

Which = Fraction | str | None
Thing = tuple[str, Which]
"""A kind of kit, and which of it: a weight in kg, a size in cm, a name, or nothing where there is but one kind."""


@dataclass(frozen=True, slots=True)
class Need:
    """So many of one thing, any of several that would do, the best first."""

    things: tuple[Thing, ...]
    amount: int = 1


def body_weights_kg(club: Club, people: int) -> tuple[Fraction, ...]:
    """Return body weights for a group of which nobody knows any: the club's range, evenly, lightest first."""
    span = club.body_weight
    return tuple(span.from_ + (span.to - span.from_) * Fraction(2 * one + 1, 2 * people) for one in range(people))


def needs(
    club: Club, item: ResolvedItem, kit: Sequence[str], load: Load | None, body_weight_kg: Fraction, lighter: bool
) -> tuple[Need, ...]:
    """Return what a member needs for a set.

    Args:
        club: whose kit it is.
        item: the exercise in its week.
        kit: what the exercise needs in this session.
        load: that of the set; None for the body alone.
        body_weight_kg: what the member weighs.
        lighter: whether the next lighter weight would do too.
    """
    found = []
    for name in _with_band(club, kit, load):
        each = tuple((name, one) for one in club.each(name))
        if name not in club.kit:
            continue
        if club.weights_kg(name) and not isinstance(club.kit[name], Barbell):
            need = _weight(club, item, name, load, body_weight_kg, lighter)
            found += [need] if need is not None else []
        elif isinstance(load, Band) and load.name in club.names(name):
            found.append(Need(((name, load.name),)))
        elif isinstance(club.kit[name], list):
            found.append(Need(_sizes(item, name, each)))
        else:
            found.append(Need(each))
    return tuple(found)


def _with_band(club: Club, kit: Sequence[str], load: Load | None) -> list[str]:
    """Return the kit with the band of a load, where that stands in no list of kit."""
    if not isinstance(load, Band) or any(load.name in club.names(name) for name in kit):
        return list(kit)
    return [*kit, *[name for name in club.kit if load.name in club.names(name)][:1]]


def _sizes(item: ResolvedItem, kit: str, each: tuple[Thing, ...]) -> tuple[Thing, ...]:
    heights = item.heights
    if heights is None:
        return each
    fitting = (heights.asked_cm,) if heights.asked_cm is not None else heights.owned_cm
    return tuple((kit, size) for size in fitting if (kit, size) in each) or each


def _weight(
    club: Club, item: ResolvedItem, kit: str, load: Load | None, body_weight_kg: Fraction, lighter: bool
) -> Need | None:
    """Return the weight of a set; any, where only effort says which; None where a member does the easier way."""
    amount = 2 if load is not None and load.per_hand else 1
    all_kg = club.weights_kg(kit, amount == 2)
    take = item.take_of(load) if kit == item.kit else None
    choice = None
    if take is not None:
        choice = take.choice or (choice_at(take.bands, body_weight_kg) if take.load.of == "body weight" else None)
    if choice is None:
        return Need(tuple((kit, kg) for kg in all_kg), amount) if all_kg else None
    if choice.weight_kg is None:
        return None
    below = [kg for kg in all_kg if kg < choice.weight_kg][-1:] if lighter else []
    return Need(tuple((kit, kg) for kg in (choice.weight_kg, *below)), amount)
