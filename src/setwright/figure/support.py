"""Which share of body weight the hands carry in push-ups: a straight, still body that balances on its feet or knees.

The share is the centre of mass's distance from the pivot over the hands' distance, both along the floor. Where hands
and feet stand at different heights, a push between them shares in the balance, which statics alone cannot settle: the
rules below name the usual ways out, and a page shows the span between them. Masses and lengths as in ``segments``.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Final, Literal

import numpy as np

from setwright.figure.body import AT, STATE, Floats, Skeleton, centre_of_mass
from setwright.figure.contacts import surfaces, touches
from setwright.figure.motion import solved
from setwright.figure.segments import CM, FEMALE, MALE, PALM, Mass
from setwright.model.exercise import Exercise
from setwright.model.figure import SIDES

Rule = Literal["under the shoulders", "square", "halfway", "halfway, along the arm", "square, along the arm"]
RULES: Final[Mapping[Rule, str]] = {
    "under the shoulders": "wrists under the shoulders, arms upright; the hands push straight down",
    "square": "arms square to the trunk; the hands push straight down",
    "halfway": "arms halfway between upright and square; the hands push straight down",
    "halfway, along the arm": "arms halfway between upright and square; the hands push along the arm",
    "square, along the arm": "arms square to the trunk; the hands push along the arm",
}
"""Where the hands stand and which way they push. The palm carries the weight, 0.03 of stature ahead of the wrist."""

SHOWN: Final[Rule] = "halfway, along the arm"
SPAN: Final[tuple[Rule, Rule]] = ("under the shoulders", "square, along the arm")
"""The rule whose number pages show, and those that make the span around it."""

ROUGH_ABOVE_CM: Final = 45.0
"""With hands raised more than this, the answer hangs on which way they push: the estimate is called rough."""

_WRIST_CM: Final = 4.5
_BALL_CM: Final = 1.5
_KNEE_CM: Final = 5.4
_ANKLE_DEG: Final = 10.0
_KNEE_DEG: Final = 90.0
_STRAIGHT_DEG: Final = 15.0


@dataclass(frozen=True, slots=True)
class PushUp:
    """A variation: how high hands and feet stand, in cm, and whether the knees carry instead of the feet."""

    hands_cm: float = 0.0
    feet_cm: float = 0.0
    kneeling: bool = False


@dataclass(frozen=True, slots=True)
class SupportShare:
    """The share of body weight on the hands in whole percent: what pages show, and the span by where the hands are."""

    about_percent: int
    low_percent: int
    high_percent: int
    rough: bool
    kneeling: bool


def _state(lean_deg: float, shoulder_deg: float, elbow_deg: float, kneeling: bool) -> Floats:
    q = np.zeros(len(STATE))
    q[AT["trunk"]] = lean_deg
    for side in SIDES:
        q[AT[f"{side} ankle"]] = _ANKLE_DEG
        q[AT[f"{side} knee"]] = _KNEE_DEG if kneeling else 0.0
        q[AT[f"{side} shoulder"]] = shoulder_deg
        q[AT[f"{side} elbow"]] = elbow_deg
    return q


@dataclass(frozen=True, slots=True)
class _Line:
    """A straight body as seen from its pivot, in cm: shoulder, wrist, centre of mass."""

    shoulder: complex
    wrist: complex
    centre: complex

    @staticmethod
    def of(state: Floats, kneeling: bool, masses: Mapping[str, Mass]) -> "_Line":
        points = Skeleton(state, "side").points
        pivot = complex(points["near knee" if kneeling else "near ball"])
        return _Line(
            complex(points["shoulder"]) - pivot,
            complex(points["near wrist"]) - pivot,
            complex(centre_of_mass(points, masses)) - pivot,
        )


def _pivot_height(variation: PushUp) -> float:
    return variation.feet_cm + (_KNEE_CM if variation.kneeling else _BALL_CM)


def _shoulder_deg(rule: Rule, lean_deg: float) -> float:
    if rule == "under the shoulders":
        return lean_deg
    return 90.0 if rule.startswith("square") else (90.0 + lean_deg) / 2


def _lean(rule: Rule, variation: PushUp) -> float:
    """Return the lean in degrees at which straight arms reach from the shoulders to the hands' surface."""
    wanted = variation.hands_cm + _WRIST_CM - _pivot_height(variation)
    low, high = 0.0, 125.0
    for _ in range(50):
        middle = (low + high) / 2
        line = _Line.of(_state(middle, _shoulder_deg(rule, middle), 0.0, variation.kneeling), variation.kneeling, MALE)
        low, high = (middle, high) if line.wrist.imag > wanted else (low, middle)
    return (low + high) / 2


@lru_cache(maxsize=512)
def _shares(variation: PushUp, rule: Rule) -> tuple[float, float]:
    lean = _lean(rule, variation)
    state = _state(lean, _shoulder_deg(rule, lean), 0.0, variation.kneeling)
    found = [_share(_Line.of(state, variation.kneeling, masses), rule, variation) for masses in (MALE, FEMALE)]
    return found[0], found[1]


def _share(line: _Line, rule: Rule, variation: PushUp) -> float:
    along = line.wrist.real + PALM
    if rule.endswith("along the arm"):
        palm = line.wrist + PALM - 1j * _WRIST_CM
        arm = line.shoulder - palm
        along -= (variation.hands_cm - variation.feet_cm) * arm.real / arm.imag
    return 100 * line.centre.real / along


def share_percent(variation: PushUp, rule: Rule = SHOWN, sex: Literal["male", "female"] = "male") -> float:
    """Return the share of body weight on the hands, in percent, arms straight."""
    return _shares(variation, rule)[0 if sex == "male" else 1]


def lowered_percent(variation: PushUp, shoulders_cm: float, sex: Literal["male", "female"] = "male") -> float:
    """Return the share with the shoulders lowered to a height, in percent; hands stay where upright arms put them."""
    masses = MALE if sex == "male" else FEMALE
    lean_up = _lean("under the shoulders", variation)
    wrist = _Line.of(_state(lean_up, lean_up, 0.0, variation.kneeling), variation.kneeling, masses).wrist
    low, high = lean_up, 125.0
    for _ in range(50):
        middle = (low + high) / 2
        line = _Line.of(_state(middle, 0.0, 0.0, variation.kneeling), variation.kneeling, masses)
        height = line.shoulder.imag + _pivot_height(variation)
        low, high = (middle, high) if height > shoulders_cm else (low, middle)
    lean = (low + high) / 2
    shoulder = _Line.of(_state(lean, 0.0, 0.0, variation.kneeling), variation.kneeling, masses).shoulder
    hang, elbow = _bent_arm(wrist - shoulder)
    state = _state(lean, hang + lean, elbow, variation.kneeling)
    return _share(_Line.of(state, variation.kneeling, masses), "under the shoulders", variation)


def _bent_arm(reach: complex) -> tuple[float, float]:
    """Return how the upper arm hangs and how far the elbow bends, in degrees; ``reach`` is from shoulder to wrist."""
    upper, fore, distance = CM["upper arm"], CM["forearm"], abs(reach)
    at_elbow = math.degrees(math.acos((upper**2 + fore**2 - distance**2) / (2 * upper * fore)))
    at_shoulder = math.degrees(math.acos((upper**2 + distance**2 - fore**2) / (2 * upper * distance)))
    return math.degrees(math.atan2(reach.real, -reach.imag)) - at_shoulder, 180.0 - at_elbow


def support(variation: PushUp) -> SupportShare:
    """Return what a page says about a variation: whole percent, and whether the estimate is rough."""
    ends = [value for rule in SPAN for value in _shares(variation, rule)]
    about = math.fsum(_shares(variation, SHOWN)) / 2
    return SupportShare(
        about_percent=round(about),
        low_percent=min(round(about), *(round(end) for end in ends)),
        high_percent=max(round(about), *(round(end) for end in ends)),
        rough=variation.hands_cm - variation.feet_cm > ROUGH_ABOVE_CM,
        kneeling=variation.kneeling,
    )


def variation_of(exercise: Exercise) -> PushUp | None:
    """Return which push-up an exercise starts from, or None for anything else.

    A push-up has both hands and both feet (or both knees) on level surfaces, and shoulders, hips and knees in one line.
    """
    figure = exercise.figure
    if figure is None or figure.view != "side":
        return None
    carried = touches(figure.poses[0], surfaces(figure))
    parts = {(c.side, c.part): c.surface for c in carried if c.surface and c.surface.lies == "level" and not c.above}
    if len(parts) != 4 or len(carried) != 4:
        return None
    feet = {part for _, part in parts if part != "hand"}
    if feet not in ({"toes"}, {"knee"}) or {("near", "hand"), ("far", "hand")} - set(parts):
        return None
    motion = solved(figure)
    points = motion.skeleton(motion.poses[0]).points
    thigh, trunk = points["near hip"] - points["near knee"], points["shoulder"] - points["hip"]
    if abs(math.degrees(np.angle(complex(trunk / thigh)))) > _STRAIGHT_DEG:
        return None
    foot = next(iter(feet))
    hands, stand = parts["near", "hand"], parts["near", foot]
    if hands is None or stand is None:
        return None
    return PushUp(hands.at, stand.at, foot == "knee")


def share_of(exercise: Exercise) -> SupportShare | None:
    """Return the share of body weight on the hands, or None where the model says nothing."""
    variation = variation_of(exercise)
    return support(variation) if variation else None


def equivalent_kg(share: SupportShare, body_weight_kg: Fraction) -> tuple[int, int]:
    """Return the lowest and the highest weight on the hands, in whole kg, for a member of this body weight."""
    return (
        round(body_weight_kg * share.low_percent / 100),
        round(body_weight_kg * share.high_percent / 100),
    )
