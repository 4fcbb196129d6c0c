"""Steps in the hand: how much heavier the weight is that a member really takes, from one dose to another.

A step of a tenth on paper is half as much again in the hand where the next kettlebell after 4 kg has 6 kg. So a step is
judged for every body weight of the club, in the owned weights that stand for the two loads.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from setwright.dose.bands import choice_at
from setwright.dose.dose import Dose
from setwright.dose.loads import share_kg
from setwright.dose.resolved import ResolvedItem
from setwright.model.load import AddedWeight, BodyWeightShare, HelpShare, HelpWeight, Load, Weight


@dataclass(frozen=True, slots=True)
class TakenStep:
    """A step in kg, both hands together. ``body_weight_kg`` is whose step it is; None where it is everybody's.

    Where the body is lifted too, with a weight added or help taken off, it is in both. ``between_kg`` is the owned
    weight of the smallest step between the two; None where there is none.
    """

    before_kg: Fraction
    now_kg: Fraction
    body_weight_kg: int | None
    between_kg: Fraction | None

    @property
    def percent(self) -> Fraction:
        """How much heavier, in percent of the weight before."""
        return (self.now_kg / self.before_kg - 1) * 100


def taken_kg(item: ResolvedItem, body_weight_kg: int) -> Fraction | None:
    """Return the weight that a member takes, both hands together; None where there is none to take.

    With a weight added to the body, or help, it is the body weight with it, or without it.
    """
    load = item.dose.heaviest
    if not isinstance(load, BodyWeightShare | Weight | HelpShare | HelpWeight):
        return None
    fixed = isinstance(load, Weight | HelpWeight)
    choice = item.choice if fixed else choice_at(item.bands, Fraction(body_weight_kg))
    if choice is None or choice.weight_kg is None:
        return None
    return lifted_kg(load, choice.weight_kg, body_weight_kg)


def lifted_kg(load: Load, weight_kg: Fraction, body_weight_kg: int) -> Fraction:
    """Return what is lifted with a weight, both hands together; 1 kg at least, where help would lift all of it."""
    match load:
        case AddedWeight():
            return body_weight_kg + weight_kg
        case HelpShare() | HelpWeight():
            return max(Fraction(1), body_weight_kg - weight_kg)
    return weight_kg * (2 if load.per_hand else 1)


def lifts_body(load: Load | None) -> bool:
    """Say whether the body is lifted with a load, so that steps are judged with it."""
    return isinstance(load, AddedWeight | HelpShare | HelpWeight)


def least_kg(item: ResolvedItem, lightest_kg: Fraction) -> Fraction | None:
    """Return what the lightest member takes at the heaviest load, as its dose counts it: in all, or in one hand.

    None where the dose names no weight; where nothing owned stands for it, the share itself.
    """
    load = item.dose.heaviest
    match load:
        case BodyWeightShare():
            choice = choice_at(item.bands, lightest_kg)
            return choice.weight_kg if choice is not None else share_kg(load.percent, lightest_kg)
        case Weight():
            return max(load.kg, item.choice.weight_kg or load.kg) if item.choice is not None else load.kg
        case _:
            return None


def taken_steps(
    before: ResolvedItem, now: ResolvedItem, owned_kg: Sequence[Fraction], members_kg: tuple[int, int]
) -> Iterator[TakenStep]:
    """Yield the step of every body weight at which the answer can change, lightest members first.

    Args:
        before: the exercise as it was.
        now: the exercise as it is.
        owned_kg: what the club owns of the kit that is used now, on the footing (in all, per hand) of the load now.
        members_kg: the lightest and the heaviest member.
    """
    load = now.dose.heaviest
    if load is None or lifts_body(load) != lifts_body(before.dose.heaviest):
        return
    whole = {members_kg[0], *(band.whole_kg[0] for item in (before, now) for band in item.bands if band.whole_kg)}
    same_for_all = not before.bands and not now.bands and not lifts_body(load)
    for body_weight_kg in sorted(whole):
        was, is_now = taken_kg(before, body_weight_kg), taken_kg(now, body_weight_kg)
        if was is None or is_now is None:
            continue
        steps = ((lifted_kg(load, weight, body_weight_kg), weight) for weight in owned_kg)
        between = min(((step, weight) for step, weight in steps if was < step < is_now), default=None)
        hands = 2 if load.per_hand else 1
        yield TakenStep(
            was, is_now, None if same_for_all else body_weight_kg, None if between is None else between[1] * hands
        )


def in_hand(item: ResolvedItem) -> Dose:
    """Return a dose with the owned weight that stands for each fixed load; a share stays, since members differ."""

    def taken(load: Load | None) -> Load | None:
        take = item.take_of(load)
        if (
            not isinstance(load, Weight | HelpWeight)
            or take is None
            or take.choice is None
            or take.choice.weight_kg is None
        ):
            return load
        return replace(load, kg=take.choice.weight_kg)

    return replace(item.dose, sets=tuple(replace(one, load=taken(one.load)) for one in item.dose.sets))


def is_taken(item: ResolvedItem) -> bool:
    """Say whether an item's load is met by owned weights, so that its step can be judged in the hand."""
    load = item.dose.heaviest
    if isinstance(load, BodyWeightShare | HelpShare):
        return bool(item.bands)
    return isinstance(load, Weight | HelpWeight) and item.choice is not None
