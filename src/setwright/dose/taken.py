"""Steps in the hand: how much heavier the weight is that a member really takes, from one dose to another.

A step of a tenth on paper is half as much again in the hand where the next kettlebell after 4 kg has 6 kg. So a step is
judged for every body weight of the club, in the owned weights that stand for the two loads.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from setwright.dose.bands import choice_at
from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem
from setwright.model.load import BodyWeightShare, Load, Weight


@dataclass(frozen=True, slots=True)
class TakenStep:
    """A step in kg, both hands together. ``body_weight_kg`` is whose step it is; None where it is everybody's.

    ``between_kg`` is the lightest weight that the club owns between the two; None where there is none.
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
    """Return the weight that a member takes, both hands together; None where there is none to take."""
    load = item.dose.heaviest
    if not isinstance(load, BodyWeightShare | Weight):
        return None
    choice = item.choice if isinstance(load, Weight) else choice_at(item.bands, Fraction(body_weight_kg))
    if choice is None or choice.weight_kg is None:
        return None
    return choice.weight_kg * (2 if load.per_hand else 1)


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
    hands = 2 if now.dose.heaviest is not None and now.dose.heaviest.per_hand else 1
    whole = {members_kg[0], *(band.whole_kg[0] for item in (before, now) for band in item.bands if band.whole_kg)}
    same_for_all = not before.bands and not now.bands
    for body_weight_kg in sorted(whole):
        was, is_now = taken_kg(before, body_weight_kg), taken_kg(now, body_weight_kg)
        if was is None or is_now is None:
            continue
        between_kg = next((weight * hands for weight in owned_kg if was < weight * hands < is_now), None)
        yield TakenStep(was, is_now, None if same_for_all else body_weight_kg, between_kg)


def in_hand(item: ResolvedItem) -> Dose:
    """Return a dose with the owned weight that stands for each fixed load; a share stays, since members differ."""

    def taken(load: Load | None) -> Load | None:
        take = item.take_of(load)
        if not isinstance(load, Weight) or take is None or take.choice is None or take.choice.weight_kg is None:
            return load
        return replace(load, kg=take.choice.weight_kg)

    return replace(item.dose, sets=tuple(replace(one, load=taken(one.load)) for one in item.dose.sets))


def is_taken(item: ResolvedItem) -> bool:
    """Say whether an item's load is met by owned weights, so that its step can be judged in the hand."""
    load = item.dose.heaviest
    return (
        bool(item.bands) if isinstance(load, BodyWeightShare) else isinstance(load, Weight) and item.choice is not None
    )
