"""A dose: the explicit numbers of one exercise in one week."""

from dataclasses import dataclass
from fractions import Fraction

from setwright.model.load import Load
from setwright.model.prescription import Measure
from setwright.model.tempo import Tempo
from setwright.model.vocabulary import Sides


@dataclass(frozen=True, slots=True)
class Dose:
    """Everything a member needs to know about one exercise this week.

    ``amount`` is reps (a count), hold or work (seconds), or distance (centimetres), as ``measure`` says; on each side
    where the sides work one at a time, in all where they alternate. ``sets`` are rounds in a superset or circuit.
    """

    sets: int
    measure: Measure
    amount: int | Fraction
    sides: Sides
    tempo: Tempo | None
    load: Load | None
    rest_s: int

    @property
    def side_count(self) -> int:
        """How often a set's amount is done: twice where the sides work one at a time."""
        return 2 if self.sides == "one at a time" else 1
