"""Estimating the one-repetition maximum from a set to failure.

The formulas were made from sets in which one more repetition was not possible; a set that ended earlier gives too low
a number. Each is an estimate for a population, and they differ by several percent: show them as a range, and never
round up. None is used here beyond ten repetitions: keep linear equations to ten or fewer (Reynolds JM et al., J
Strength Cond Res 2006;20:584-592).
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import exp
from typing import Final

MOST_REPS: Final = 10


@dataclass(frozen=True, slots=True)
class Formula:
    """One published estimate: its name, how it is written, who published it, and the arithmetic.

    ``seen`` says whether its constants were seen in print, if only in a second source; all of the citations, and the
    other constants, are from memory.
    """

    name: str
    written: str
    source: str
    estimate_kg: Callable[[float, int], float]
    seen: bool = False


FORMULAS: Final = (
    Formula(
        "Epley",
        "w × (1 + r / 30)",
        "Epley B, Poundage chart, in Boyd Epley Workout, 1985",
        lambda w, r: w * (1 + r / 30),
        seen=True,
    ),
    Formula(
        "Brzycki",
        "w × 36 / (37 − r)",
        "Brzycki M, J Phys Educ Recreat Dance 1993;64(1):88-90",
        lambda w, r: w * 36 / (37 - r),
    ),
    Formula("Lombardi", "w × r^0.10", "Lombardi VP, Beginning Weight Training, 1989", lambda w, r: w * float(r**0.10)),
    Formula(
        "Mayhew",
        "100 w / (52.2 + 41.9 e^(−0.055 r))",
        "Mayhew JL et al., J Appl Sport Sci Res 1992;6:200-206",
        lambda w, r: 100 * w / (52.2 + 41.9 * exp(-0.055 * r)),
        seen=True,
    ),
    Formula(
        "Wathan",
        "100 w / (48.8 + 53.8 e^(−0.075 r))",
        "Wathan D, in Baechle TR (ed.), Essentials of Strength Training and Conditioning, 1994, 435-446",
        lambda w, r: 100 * w / (48.8 + 53.8 * exp(-0.075 * r)),
    ),
    Formula(
        "O'Conner",
        "w × (1 + 0.025 r)",
        "O'Conner B et al., Weight Training Today, 1989",
        lambda w, r: w * (1 + 0.025 * r),
    ),
    Formula(
        "Lander",
        "100 w / (101.3 − 2.67123 r)",
        "Lander J, Natl Strength Cond Assoc J 1985;6(6):60-61",
        lambda w, r: 100 * w / (101.3 - 2.67123 * r),
    ),
)


@dataclass(frozen=True, slots=True)
class Estimate:
    """The lowest and highest of the published estimates, in kg."""

    low_kg: float
    high_kg: float


def estimate_range(weight_kg: float, reps: int) -> Estimate:
    """Return the span of all formulas for a set of ``reps`` repetitions with ``weight_kg`` taken to failure.

    Raises:
        ValueError: for a weight of zero or less, or outside 2 to 10 repetitions, where the formulas do not hold.
    """
    if weight_kg <= 0:
        raise ValueError("a weight above 0 kg is needed")
    if not 2 <= reps <= MOST_REPS:
        raise ValueError(f"the formulas hold for 2 to {MOST_REPS} repetitions")
    estimates = [formula.estimate_kg(weight_kg, reps) for formula in FORMULAS]
    return Estimate(min(estimates), max(estimates))
