"""What to take: prescribed loads met by the weights that a club owns, within the physiotherapist's limit."""

from fractions import Fraction
from typing import Final

from setwright.dose.bands import Limit, LoadBand, load_bands
from setwright.dose.loads import Choice, choose_help, choose_weight
from setwright.model.exercise import Exercise
from setwright.model.limits import NoWeight
from setwright.model.load import BodyWeightShare, HelpShare, HelpWeight, Load, OneRepMaxShare, Weight
from setwright.model.prescription import Prescription
from setwright.model.programme import Programme

LEAST_KG: Final = Fraction(1)
"""The lightest 1RM for which a weight is worked out."""


class Weights:
    """The club's own weights against what is prescribed; bands are computed once for each different prescription."""

    def __init__(self, programme: Programme) -> None:
        self.club = programme.club
        self.known: dict[object, tuple[LoadBand, ...]] = {}

    def weighted_kit(self, written: Prescription, exercise: Exercise) -> str | None:
        """Return the first kit of the exercise that comes in weights."""
        return next((k for k in written.kit or exercise.kit if self.club.weights_kg(k)), None)

    def owned_kg(self, load: Load | None, kit: str | None) -> tuple[Fraction, ...]:
        """Return the weights that the club owns of a kit, on the footing of a load."""
        return tuple(self.club.weights_kg(kit, load.per_hand)) if kit is not None and load is not None else ()

    def over(self, load: Load | None, kit: str | None, exercise: Exercise) -> tuple[LoadBand, ...]:
        """Return the bands of a load that is a share of something; none where nothing owned fits its footing."""
        if kit is None or not isinstance(load, BodyWeightShare | OneRepMaxShare | HelpShare):
            return ()
        owned = self.club.weights_kg(kit, load.per_hand)
        if not owned:
            return ()
        helps = isinstance(load, HelpShare)
        limit = least_help_of(exercise) if helps else limit_of(exercise, load.per_hand)
        key = (load, kit, limit)
        if key not in self.known:
            start, end = self.club.body_weight.from_, self.club.body_weight.to
            if isinstance(load, OneRepMaxShare):
                start, end = LEAST_KG, max(LEAST_KG, min(owned[-1] * 100 / load.percent, self.club.one_rep_max.to))
                limit = Limit(kg=limit.kg)  # a share of body weight says nothing about a share of 1RM
            self.known[key] = load_bands(load.percent, owned, start, end, limit, helps)
        return self.known[key]

    def shown_from(self, load: Load | None, kit: str | None) -> Fraction | None:
        """Return the 1RM with which a table begins: the club's, or that of the lightest weight."""
        if kit is None or not isinstance(load, OneRepMaxShare) or not self.club.weights_kg(kit):
            return None
        return self.club.one_rep_max.from_ or self.club.weights_kg(kit)[0] * 100 / load.percent

    def fixed(self, load: Load | None, kit: str | None, exercise: Exercise) -> Choice | None:
        """Return the owned weight for a fixed load; None where the load is of another kind."""
        if kit is None or not isinstance(load, Weight | HelpWeight):
            return None
        owned = self.club.weights_kg(kit, load.per_hand)
        if isinstance(load, HelpWeight):
            # The least help as a share of body weight must hold for the heaviest member too.
            return choose_help(load.kg, owned, least_help_of(exercise).at(self.club.body_weight.to)) if owned else None
        # A limit as a share of body weight must hold for the lightest member too.
        limit_kg = limit_of(exercise, load.per_hand).at(self.club.body_weight.from_)
        return choose_weight(load.kg, owned, limit_kg) if owned else None


def limit_of(exercise: Exercise, per_hand: bool) -> Limit:
    """Return an exercise's load limit on the same footing as a load: in all, or in each hand.

    A limit in all is halved for each hand. One for each hand is never doubled: what hangs from one hand may be all.
    """
    limit = exercise.limits.load if exercise.limits else None
    if isinstance(limit, NoWeight):
        return Limit(kg=Fraction(0))
    if not isinstance(limit, BodyWeightShare | Weight):
        return Limit()
    exact = limit.percent if isinstance(limit, BodyWeightShare) else limit.kg
    if per_hand and not limit.per_hand:
        exact = exact / 2
    return Limit(percent=exact) if isinstance(limit, BodyWeightShare) else Limit(kg=exact)


def least_help_of(exercise: Exercise) -> Limit:
    """Return the least help that an exercise's load limit asks for: a share of body weight, a weight, or none."""
    limit = exercise.limits.load if exercise.limits else None
    match limit:
        case HelpShare(percent=percent):
            return Limit(percent=percent)
        case HelpWeight(kg=kg):
            return Limit(kg=kg)
    return Limit()
