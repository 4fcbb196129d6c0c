"""The outlines that a figure is drawn from, in centimetres at a stature of 170 cm.

Every shape starts at its upper joint and runs down (SVG's y), facing right. Widths are drawn by eye, no source.
"""

from collections.abc import Sequence
from functools import cache
from itertools import pairwise
from typing import Final

from setwright.figure.segments import BALL_AHEAD, CM, HEEL_BEHIND, TOE_AHEAD
from setwright.model.figure import View

Point = tuple[float, float]
Profile = Sequence[tuple[float, float, float]]
"""Along a limb: how far down as a share of its length, half-width in front, half-width behind, in cm."""

SHORTS_TO: Final = 0.58
SLEEVE_TO: Final = 0.52
SOCK_FROM: Final = 0.76


def number(value: float) -> str:
    """Write a coordinate with at most one decimal and nothing idle."""
    text = f"{value:.1f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def smooth(points: Sequence[Point]) -> str:
    """Return a closed path through the points without corners (a Catmull-Rom curve written as cubic Beziers)."""
    count = len(points)
    d = [f"M{number(points[0][0])} {number(points[0][1])}"]
    here = (round(points[0][0], 1), round(points[0][1], 1))
    for i in range(count):
        a, b, c, e = points[i - 1], points[i], points[(i + 1) % count], points[(i + 2) % count]
        first = (b[0] + (c[0] - a[0]) / 6, b[1] + (c[1] - a[1]) / 6)
        second = (c[0] - (e[0] - b[0]) / 6, c[1] - (e[1] - b[1]) / 6)
        values = []
        for x, y in (first, second, c):
            values += [number(x - here[0]), number(y - here[1])]
        text = values[0]
        for value in values[1:]:
            text += value if value.startswith("-") else f" {value}"
        d.append(f"c{text}")
        here = (round(here[0] + float(values[4]), 1), round(here[1] + float(values[5]), 1))
    return "".join(d) + "z"


def limb(length: float, profile: Profile, top: float, bottom: float, start: float = 0.0, end: float = 1.0) -> str:
    """Return a tapered limb with rounded ends, or a stretch of it such as a sleeve.

    Args:
        length: of the whole limb, in cm.
        profile: its half-widths.
        top: how far the upper end bulges beyond the start, in cm.
        bottom: how far the lower end bulges beyond the end, in cm.
        start: where the stretch starts, as a share of the length.
        end: where it ends.
    """
    cut = [
        (start, *_widths(profile, start)),
        *(row for row in profile if start < row[0] < end),
        (end, *_widths(profile, end)),
    ]
    front = [(ahead, along * length) for along, ahead, _ in cut]
    back = [(-behind, along * length) for along, _, behind in reversed(cut)]
    return smooth([(0.0, start * length - top), *front, (0.0, end * length + bottom), *back])


def _widths(profile: Profile, along: float) -> Point:
    for (a, front_a, back_a), (b, front_b, back_b) in pairwise(profile):
        if a <= along <= b:
            t = (along - a) / (b - a)
            return front_a + (front_b - front_a) * t, back_a + (back_b - back_a) * t
    return profile[-1][1], profile[-1][2]


def _wider(profile: Profile, by: float) -> Profile:
    return [(along, front + by, back + by) for along, front, back in profile]


_THIGH: Final = [(0.0, 8.4, 8.8), (0.35, 8.5, 7.7), (0.75, 6.6, 6.1), (1.0, 5.3, 5.0)]
_THIGH_FRONT: Final = [(0.0, 8.2, 8.2), (0.35, 7.9, 7.9), (0.75, 6.2, 6.2), (1.0, 5.1, 5.1)]
_SHANK: Final = [(0.0, 5.2, 5.0), (0.12, 5.0, 5.6), (0.3, 4.6, 7.1), (0.62, 3.9, 4.9), (1.0, 3.2, 3.4)]
_SHANK_FRONT: Final = [(0.0, 4.9, 4.9), (0.28, 5.7, 5.7), (0.62, 4.2, 4.2), (1.0, 3.1, 3.1)]
_UPPER_ARM: Final = [(0.0, 5.3, 5.3), (0.4, 4.7, 4.6), (1.0, 3.7, 3.7)]
_FOREARM: Final = [(0.0, 3.7, 3.7), (0.25, 4.2, 4.0), (1.0, 2.6, 2.6)]


@cache
def shapes(view: View) -> dict[str, str]:
    """Return every shape of a view by name, as path data."""
    thigh, shank = (_THIGH, _SHANK) if view == "side" else (_THIGH_FRONT, _SHANK_FRONT)
    found = {
        "thigh": limb(CM["thigh"], thigh, 8.4, 5.0),
        "shorts": limb(CM["thigh"], _wider(thigh, 0.8), 9.0, 0.5, end=SHORTS_TO),
        "shank": limb(CM["shank"], shank, 5.0, 2.8),
        "sock": limb(CM["shank"], _wider(shank, 0.3), 0.4, 2.9, start=SOCK_FROM),
        "upper arm": limb(CM["upper arm"], _UPPER_ARM, 5.2, 3.6),
        "sleeve": limb(CM["upper arm"], _wider(_UPPER_ARM, 0.8), 5.9, 0.5, end=SLEEVE_TO),
        "forearm": limb(CM["forearm"], _FOREARM, 3.6, 2.0),
        "neck": limb(15, [(0, 5.4, 5.8), (1, 4.7, 4.8)], 2, 2),
        "hand": smooth(
            [
                (0, -2.4),
                (3, 0),
                (4, 3.4),
                (4, 7),
                (2.6, 12),
                (0, 13.4),
                (-2.4, 12),
                (-3.4, 7),
                (-3.2, 2.5),
                (-2.6, -0.5),
            ]
        ),
        "fist": smooth([(0, -2.4), (3, 0), (4.6, 4.2), (4.2, 8.6), (0, 10), (-4, 8.6), (-4.4, 4.2), (-2.8, 0)]),
        "band": "M0-1.1h1v2.2h-1z",
    }
    if view == "front":
        return found | _front_shapes()
    front = _front_shapes()
    turned = {"face": front["head"], "fringe": front["hair"], "brow": front["headband"]}
    return found | _side_shapes() | turned


def _side_shapes() -> dict[str, str]:
    foot_height = CM["foot height"]
    trunk = [
        (0, 10.5), (7.4, 6.5), (9.0, -6), (8.5, -18), (10.8, -33), (10.2, -42), (6.2, -50.5), (0, -53.5),
        (-6.4, -51.5), (-9.9, -44), (-10.2, -33), (-7.9, -20), (-10.0, -6), (-9.2, 5.5),
    ]  # fmt: skip
    waist = [
        (0, 10.5), (7.4, 6.5), (9.0, -4), (8.7, -14), (9.2, -24), (0, -29), (-9.0, -24), (-8.4, -14),
        (-10, -4), (-9.2, 5.5),
    ]  # fmt: skip
    chest = [
        (0, 4.5), (8.6, 0.5), (10.6, -9), (10.2, -18), (6.2, -26), (0, -29), (-6.4, -27), (-9.9, -19.5), (-10.2, -9),
        (-8.8, 0.5),
    ]  # fmt: skip
    return {
        "trunk": smooth(trunk),
        "waist": smooth(waist),
        "chest": smooth(chest),
        "middle": smooth([(0, 9.8), (7, 6.9), (9.7, 0), (7, -6.9), (0, -9.8), (-7, -6.9), (-9.7, 0), (-7, 6.9)]),
        "pelvis": smooth(
            [(0, 10.8), (7.7, 7), (9.3, -3), (8.9, -10.5), (0, -9.4), (-9.2, -10.5), (-11.5, -1), (-9.6, 7)]
        ),
        "head": smooth(
            [
                (-1, -11.2), (5.2, -9.8), (7.8, -5), (8.3, -1.4), (10.0, 1.3), (8.4, 2.7), (8.3, 4.6), (7.7, 7.4),
                (4.6, 10.4), (-0.6, 9.2), (-5.2, 5.6), (-8.3, 0), (-7.0, -7.6),
            ]
        ),
        "hair": smooth(
            [
                (-1.2, -12.4), (5.2, -11), (8.2, -7.2), (6.4, -5.8), (1.6, -4.4), (-0.4, -1.6), (-1.6, 1.6),
                (-4.4, 6), (-8, 4.2), (-9.4, 0), (-8.6, -7.4),
            ]
        ),
        "headband": smooth([(8.3, -7.4), (8.9, -4.4), (0.6, -2.2), (-9.2, 1.6), (-9.9, -1.4), (0, -5.2)]),
        "foot": smooth(
            [
                (-3.6, -4.6), (0, -5.4), (4, -4.2), (7.6, -0.2), (BALL_AHEAD + 1, foot_height - 4.2),
                (BALL_AHEAD + 2.2, foot_height - 1.6), (BALL_AHEAD + 0.5, foot_height), (3, foot_height - 0.6),
                (-HEEL_BEHIND * 0.7, foot_height), (-HEEL_BEHIND - 0.8, foot_height - 2.2),
                (-HEEL_BEHIND + 0.8, foot_height - 7),
            ]
        ),
        "toes": smooth(
            [
                (0, -4.3), (4.5, -3.7), (TOE_AHEAD - BALL_AHEAD, -2), (TOE_AHEAD - BALL_AHEAD + 0.5, -0.5),
                (TOE_AHEAD - BALL_AHEAD - 1.5, 0), (0, 0), (-2, -1.8),
            ]
        ),
    }  # fmt: skip


def _front_shapes() -> dict[str, str]:
    right = [(13, 4), (15, -4), (12.8, -18), (14.8, -34), (17.2, -44), (14.4, -52), (6, -55.5)]
    trunk = [(0.0, 8.0), *right, *((-x, y) for x, y in reversed(right))]
    return {
        "trunk": smooth(trunk),
        "pelvis": smooth([(0, 11), (12, 9), (16.4, 0), (15, -9), (0, -8), (-15, -9), (-16.4, 0), (-12, 9)]),
        "head": smooth(
            [(0, -11.4), (6.4, -8.4), (7.8, -1), (6.2, 6.4), (0, 11), (-6.2, 6.4), (-7.8, -1), (-6.4, -8.4)]
        ),
        "hair": smooth(
            [
                (0, -12.6), (7.4, -9.4), (8.6, -1.4), (6.6, -5.2), (2, -7.2), (-3, -6.8), (-6.6, -5), (-8.6, -1.4),
                (-7.4, -9.4),
            ]
        ),
        "headband": smooth([(-8.4, -5.6), (0, -7.4), (8.4, -5.6), (8.4, -2.6), (0, -4.2), (-8.4, -2.6)]),
        "foot": smooth([(-3.4, -4), (3.4, -4), (4.6, 4), (5, 8.6), (0, 9.6), (-5, 8.6), (-4.6, 4)]),
    }  # fmt: skip


HELD: Final[dict[str, tuple[tuple[str, str], ...]]] = {
    "kettlebell": (
        ("metal-line", "M-5.2 8C-7.5 1-6-3 0-3S7.5 1 5.2 8"),
        ("metal", "M0 4.8a9.8 9.8 0 1 1-.1 0z"),
        ("shine", "M-4.6 9.4a2.3 2.3 0 1 1-.1 0z"),
    ),
    "dumbbell": (
        ("metal", "M-10-1.5h20v3h-20z"),
        ("metal", "M-12-6h4a1 1 0 0 1 1 1v10a1 1 0 0 1-1 1h-4a1 1 0 0 1-1-1v-10a1 1 0 0 1 1-1z"),
        ("metal", "M8-6h4a1 1 0 0 1 1 1v10a1 1 0 0 1-1 1h-4a1 1 0 0 1-1-1v-10a1 1 0 0 1 1-1z"),
    ),
    "barbell": (
        ("metal", "M0-20a20 20 0 1 1-.1 0zM0-3.4a3.4 3.4 0 1 0 .1 0z"),
        ("shine", "M0-2.2a2.2 2.2 0 1 1-.1 0z"),
    ),
    "pole": (("wood", "M-1.5-44h3v112h-3z"),),
}
"""What hands hold, from the middle of the grip: paint and path of each piece."""
