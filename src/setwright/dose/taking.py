"""What to take: prescribed loads met by the weights that a club owns, within the physiotherapist's limit."""

from fractions import Fraction

from setwright.dose.bands import Limit, LoadBand, load_bands
from setwright.dose.loads import Choice, choose_weight
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare, Load, OneRepMaxShare, Weight
from setwright.model.prescription import Prescription
from setwright.model.programme import Programme


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
        if kit is None or not isinstance(load, BodyWeightShare | OneRepMaxShare):
            return ()
        owned = self.club.weights_kg(kit, load.per_hand)
        if not owned:
            return ()
        limit = limit_of(exercise, load.per_hand)
        key = (load, kit, limit)
        if key not in self.known:
            start, end = self.club.body_weight.from_, self.club.body_weight.to
            if isinstance(load, OneRepMaxShare):
                start, end = (owned[0] * 100 / load.percent, owned[-1] * 100 / load.percent)
                limit = Limit(kg=limit.kg)  # a share of body weight says nothing about a share of 1RM
            self.known[key] = load_bands(load.percent, owned, start, end, limit)
        return self.known[key]

    def fixed(self, load: Load | None, kit: str | None, exercise: Exercise) -> Choice | None:
        """Return the owned weight for a fixed load; None where the load is of another kind."""
        if kit is None or not isinstance(load, Weight):
            return None
        owned = self.club.weights_kg(kit, load.per_hand)
        # A limit as a share of body weight must hold for the lightest member too.
        limit_kg = limit_of(exercise, load.per_hand).at(self.club.body_weight.from_)
        return choose_weight(load.kg, owned, limit_kg) if owned else None


def limit_of(exercise: Exercise, per_hand: bool) -> Limit:
    """Return an exercise's load limit on the same footing as a load: in all, or in each hand.

    A limit in all is halved for each hand. One for each hand is never doubled: what hangs from one hand may be all.
    """
    limit = exercise.limits.load if exercise.limits else None
    if not isinstance(limit, BodyWeightShare | Weight):
        return Limit()
    exact = limit.percent if isinstance(limit, BodyWeightShare) else limit.kg
    if per_hand and not limit.per_hand:
        exact = exact / 2
    return Limit(percent=exact) if isinstance(limit, BodyWeightShare) else Limit(kg=exact)
