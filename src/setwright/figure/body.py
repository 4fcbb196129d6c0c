"""Forward kinematics: from the hips' place and eleven angles to the place of every joint.

A place is a complex number in centimetres, x to the right and y upwards, so that a turn is a product. The state of a
body is an array whose last axis holds ``STATE``: the hips' x and y in cm, then angles in degrees. All functions take
any number of states at once. Standing upright is all zeros. Positive bends fold a joint the way it folds: hip and
shoulder forward, knee back, elbow forward, ankle toes up. From the front, hip and shoulder open sideways.
"""

from collections.abc import Mapping
from math import fsum
from types import MappingProxyType
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from setwright.figure.segments import (
    BALL_AHEAD,
    CM,
    GRIP,
    HALF_HIPS,
    HALF_SHOULDERS,
    HEEL_BEHIND,
    MALE,
    STATURE_CM,
    TOE_AHEAD,
    Mass,
)
from setwright.model.figure import SIDES, Segment, Side, View

Floats = NDArray[np.float64]
Places = NDArray[np.complex128]

JOINTS: Final = ("hip", "knee", "ankle", "shoulder", "elbow")
STATE: Final = ("x", "y", "trunk", *(f"{side} {joint}" for side in SIDES for joint in JOINTS))
AT: Final[Mapping[str, int]] = MappingProxyType({name: index for index, name in enumerate(STATE)})
"""Where each number stands in a state."""

Shortened = Mapping[tuple[Side, Segment], Any]
"""The share of a limb's length that is seen, by side and segment: a number, or one a state; 1 where none is named."""


_LIMBS: Final = ("thigh", "shank", "foot", "upper arm", "forearm")


class Skeleton:
    """Joints and directions of one or many states of the body, seen from one side.

    ``points`` are places by name, such as ``hip`` or ``near knee``; ``angles`` are how each limb hangs, in degrees: 0
    straight down, positive towards the right; for the trunk its lean forward, for a foot the tilt of its sole. From the
    side, ``turn_deg`` turns the chest towards the viewer: the far shoulder comes forward, the near one goes back.
    """

    def __init__(self, state: Floats, view: View, shortened: Shortened | None = None, turn_deg: Any = 0.0) -> None:
        short = shortened or {}
        self.view = view
        outward = np.array([1.0, 1.0 if view == "side" else -1.0])
        lean = state[..., AT["trunk"]]
        bends = state[..., 3:].reshape(*state.shape[:-1], 2, len(JOINTS)) * outward[:, None]
        thigh = bends[..., 0] - lean[..., None]
        shank = thigh - bends[..., 1]
        sole = shank + bends[..., 2]
        upper = bends[..., 3] - lean[..., None]
        fore = upper + bends[..., 4]
        turns = np.stack([thigh, shank, sole, upper, fore], axis=-1)
        down = -1j * np.exp(1j * np.radians(turns))
        ahead = np.exp(-1j * np.radians(lean))
        up = 1j * ahead
        hips = state[..., 0] + 1j * state[..., 1]
        neck = hips + CM["trunk"] * up

        def seen(segment: Segment) -> Any:
            if not short:
                return CM[segment]
            shares = np.broadcast_arrays(*(short.get((side, segment), 1.0) for side in SIDES))
            return CM[segment] * np.stack(shares, axis=-1)

        sideways = outward * (view == "front")
        hip = hips[..., None] + HALF_HIPS * sideways * ahead[..., None]
        turned = np.array([-1.0, 1.0]) * np.sin(np.radians(np.asarray(turn_deg, dtype=float)))[..., None]
        apart = sideways if view == "front" else turned
        shoulder = neck[..., None] + HALF_SHOULDERS * apart * ahead[..., None]
        knee = hip + seen("thigh") * down[..., 0]
        ankle = knee + seen("shank") * down[..., 1]
        elbow = shoulder + seen("upper arm") * down[..., 3]
        wrist = elbow + seen("forearm") * down[..., 4]
        if view == "side":
            under, along = ankle + CM["foot height"] * down[..., 2], 1j * down[..., 2]
            heel, ball, toe = under - HEEL_BEHIND * along, under + BALL_AHEAD * along, under + TOE_AHEAD * along
        else:
            heel = ball = toe = ankle + CM["foot height"] * down[..., 2]
        both = {
            "hip": hip, "knee": knee, "ankle": ankle, "heel": heel, "ball": ball, "toe": toe,
            "thigh": hip + 0.5 * (knee - hip), "above knee": hip + 0.8 * (knee - hip),
            "shoulder": shoulder, "elbow": elbow, "wrist": wrist, "grip": wrist + GRIP * down[..., 4],
        }  # fmt: skip
        front = 1.0 if view == "side" else 0.0
        self.points: dict[str, Places] = {
            "hip": hips,
            "shoulder": neck,
            "vertex": neck + CM["head"] * up,
            "chest": hips + 0.75 * CM["trunk"] * up + 10 * front * ahead,
            "head": neck + 0.112 * STATURE_CM * up + 2 * front * ahead,
        }
        self.angles: dict[str, Floats] = {"trunk": lean}
        for index, side in enumerate(SIDES):
            self.points |= {f"{side} {name}": place[..., index] for name, place in both.items()}
            self.angles |= {f"{side} {name}": turns[..., index, limb] for limb, name in enumerate(_LIMBS)}


_ENDS: Final[Mapping[str, tuple[str, str]]] = MappingProxyType(
    {
        "upper arm": ("shoulder", "elbow"),
        "forearm": ("elbow", "wrist"),
        "hand": ("wrist", "grip"),
        "thigh": ("hip", "knee"),
        "shank": ("knee", "ankle"),
        "foot": ("heel", "toe"),
    }
)


def centre_of_mass(
    points: Mapping[str, Places], masses: Mapping[str, Mass] = MALE, held: tuple[tuple[str, float], ...] = ()
) -> Places:
    """Return the common centre of mass of the body and of what it holds, in cm.

    Args:
        points: the joints of a ``Skeleton``.
        masses: a table of ``segments``.
        held: points that carry a weight, each with its mass as a share of body mass.
    """
    weights: dict[str, float] = {}
    parts = [(masses["trunk"], "hip", "shoulder"), (masses["head"], "shoulder", "vertex")]
    for side in SIDES:
        parts += [(masses[name], f"{side} {a}", f"{side} {b}") for name, (a, b) in _ENDS.items()]
    for mass, upper, lower in parts:
        weights[upper] = weights.get(upper, 0.0) + mass.share * (1 - mass.centre)
        weights[lower] = weights.get(lower, 0.0) + mass.share * mass.centre
    for name, share in held:
        weights[name] = weights.get(name, 0.0) + share
    moment: Any = sum(weight * points[name] for name, weight in weights.items())
    centre: Places = moment / fsum(weights.values())
    return centre
