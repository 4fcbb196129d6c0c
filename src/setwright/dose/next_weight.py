"""The next owned weight, for a member who reached the top of a range of repetitions in every set.

It is one step on the rack: the next heavier weight, or, of help, the next lighter. It is never beyond a limit of the
load, nor a larger step than a limit allows in a week; then there is none. Of a share of 1RM there is none either: the
1RM grows, and the weight with it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from setwright.dose.bands import Limit, LoadBand
from setwright.dose.loads import Choice
from setwright.dose.resolved import ResolvedItem, Take
from setwright.dose.taken import lifted_kg
from setwright.dose.taking import least_help_of, limit_of
from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare, HelpShare, HelpWeight, Load, Weight

_NONE = Choice(None, "limit")


def is_ranged(item: ResolvedItem) -> bool:
    """Say whether every set asks for a range, so that a member grows inside of it."""
    return all(not one.amount.is_one for one in item.dose.working)


def next_fixed(club: Club, exercise: Exercise, item: ResolvedItem, take: Take) -> Fraction | None:
    """Return the next weight after a fixed load, the same for all members; None where there is none to take."""
    load, owned = take.load, _owned(club, item, take.load)
    if not isinstance(load, Weight | HelpWeight) or take.choice is None or take.choice.weight_kg is None:
        return None
    following = _step(club, exercise, load, take.choice.weight_kg, owned)
    if following is None:
        return None
    if isinstance(load, HelpWeight):
        least_kg = least_help_of(exercise).at(club.body_weight.to)
        return None if least_kg is not None and following < least_kg else following
    most_kg = limit_of(exercise, load.per_hand).at(club.body_weight.from_)
    return None if most_kg is not None and following > most_kg else following


def next_bands(club: Club, exercise: Exercise, item: ResolvedItem, take: Take) -> tuple[LoadBand, ...]:
    """Return the next weight after each band of a share of body weight; a band without one has no weight."""
    load, owned = take.load, _owned(club, item, take.load)
    if not isinstance(load, BodyWeightShare | HelpShare):
        return ()
    helps = isinstance(load, HelpShare)
    limit = least_help_of(exercise) if helps else limit_of(exercise, load.per_hand)
    found: list[LoadBand] = []
    for band in take.bands:
        weight = band.choice.weight_kg
        following = None if weight is None else _step(club, exercise, load, weight, owned)
        found += _within(band, following, limit, helps)
    return tuple(found)


def _within(band: LoadBand, following: Fraction | None, limit: Limit, helps: bool) -> Iterator[LoadBand]:
    """Yield a band with its next weight where the limit allows it, and without one elsewhere."""
    allowed, none = replace(band, choice=Choice(following, "near")), replace(band, choice=_NONE)
    if following is None:
        yield none
    elif limit.percent is None:
        beyond = limit.kg is not None and (following < limit.kg if helps else following > limit.kg)
        yield none if beyond else allowed
    else:
        # A heavier member may take more, and needs more help: the edge itself is within the limit.
        edge = following * 100 / limit.percent
        below, above = replace(band, to_kg=edge), replace(band, from_kg=edge)
        if not band.from_kg < edge < band.to_kg:
            inside = band.to_kg <= edge if helps else band.from_kg >= edge
            yield allowed if inside else none
        elif helps:
            yield replace(below, to_included=True, choice=allowed.choice)
            yield replace(above, from_included=False, choice=_NONE)
        else:
            yield replace(below, to_included=False, choice=_NONE)
            yield replace(above, from_included=True, choice=allowed.choice)


def _owned(club: Club, item: ResolvedItem, load: Load) -> Sequence[Fraction]:
    return club.weights_kg(item.kit, load.per_hand) if item.kit is not None else ()


def _step(
    club: Club, exercise: Exercise, load: Load, weight_kg: Fraction, owned_kg: Sequence[Fraction]
) -> Fraction | None:
    """Return the next weight on the rack, within the limit of a week's step for the lightest member."""
    if isinstance(load, HelpShare | HelpWeight):
        following = max((one for one in owned_kg if one < weight_kg), default=None)
    else:
        following = min((one for one in owned_kg if one > weight_kg), default=None)
    most = exercise.limits.weekly_step if exercise.limits is not None else None
    if following is None or most is None:
        return following
    lightest_kg = int(club.body_weight.from_)
    step = lifted_kg(load, following, lightest_kg) / lifted_kg(load, weight_kg, lightest_kg) - 1
    return following if step * 100 <= most else None
