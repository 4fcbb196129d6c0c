"""How long and how heavy the parts of a body are: published tables, nothing else.

Lengths as shares of stature: Drillis R, Contini R, Body segment parameters, New York University, technical report
1166-03, 1966 (from memory). Masses and centres of mass: de Leva P, J Biomech 1996;29:1223-1230, after Zatsiorsky and
Seluyanov; trunk from mid-shoulder to mid-hip, head from the vertex.
"""

from dataclasses import dataclass
from math import fsum
from types import MappingProxyType
from typing import Final

STATURE_CM: Final = 170.0
"""The figure's height. Shares of body weight do not depend on it."""

LENGTH: Final = MappingProxyType(
    {
        "head": 0.182,
        "trunk": 0.288,
        "upper arm": 0.186,
        "forearm": 0.146,
        "hand": 0.108,
        "thigh": 0.245,
        "shank": 0.246,
        "foot height": 0.039,
        "foot": 0.152,
    }
)
"""Length of each segment as a share of stature; the trunk from hip to shoulder, the head from shoulder to vertex."""

CM: Final = MappingProxyType({name: share * STATURE_CM for name, share in LENGTH.items()})
"""Length of each segment in centimetres."""

HALF_HIPS: Final = 0.050 * STATURE_CM
"""Half the distance between the hip joints, seen from the front, in cm. A choice for the picture, no source."""

HALF_SHOULDERS: Final = 0.110 * STATURE_CM
"""Half the distance between the shoulder joints, seen from the front, in cm. A choice for the picture, no source."""

HEEL_BEHIND: Final = 0.25 * CM["foot"]
"""From under the ankle back to the heel, in cm. Assumed, no source."""

BALL_AHEAD: Final = 0.45 * CM["foot"]
"""From under the ankle forward to the ball of the foot, in cm. Assumed, no source."""

TOE_AHEAD: Final = CM["foot"] - HEEL_BEHIND
"""From under the ankle forward to the tip of the toes, in cm."""

PALM: Final = 0.03 * STATURE_CM
"""From the wrist to the middle of the palm that carries the weight, in cm. Assumed, and printed with every share."""

GRIP: Final = 0.045 * STATURE_CM
"""From the wrist to the middle of a closed hand, in cm: about the third knuckle."""


@dataclass(frozen=True, slots=True)
class Mass:
    """A segment's mass as a share of body mass, and its centre as a share of its length from the near-trunk end."""

    share: float
    centre: float


MALE: Final = MappingProxyType(
    {
        "head": Mass(0.0694, 0.6165),  # 0.0698 of stature below the vertex, on 0.182 of stature from the shoulder up
        "trunk": Mass(0.4346, 0.5690),  # measured here from the hip
        "upper arm": Mass(0.0271, 0.5772),
        "forearm": Mass(0.0162, 0.4574),
        "hand": Mass(0.0061, 0.8667),  # on the length from the wrist to the grip
        "thigh": Mass(0.1416, 0.4095),
        "shank": Mass(0.0433, 0.4395),
        "foot": Mass(0.0137, 0.4415),
    }
)
FEMALE: Final = MappingProxyType(
    {
        "head": Mass(0.0668, 0.6264),
        "trunk": Mass(0.4257, 0.6218),
        "upper arm": Mass(0.0255, 0.5754),
        "forearm": Mass(0.0138, 0.4559),
        "hand": Mass(0.0056, 0.7467),
        "thigh": Mass(0.1478, 0.3612),
        "shank": Mass(0.0481, 0.4352),
        "foot": Mass(0.0129, 0.4014),
    }
)
PAIRED: Final = ("upper arm", "forearm", "hand", "thigh", "shank", "foot")
"""Segments that a body has two of."""


def total(masses: MappingProxyType[str, Mass]) -> float:
    """Return the sum of all shares of a table, which is one but for its rounding."""
    return fsum(mass.share * (2 if name in PAIRED else 1) for name, mass in masses.items())
