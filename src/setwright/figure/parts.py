"""A frame as parts to draw: which shape, which paint, where, and in which order, far side first."""

import math
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.figure.body import Skeleton
from setwright.figure.contacts import Touch
from setwright.figure.motion import Frame, Motion, holding_sides
from setwright.figure.segments import CM, STATURE_CM
from setwright.model.figure import Side

BACKGROUND_UP: Final = 20.0
"""How much higher a post is drawn that stands alongside, beyond the figure; in cm."""

FAR_SHIFT: Final = (3.8, 1.6)
"""How far the far limbs are moved forward and up, so that two are seen where both do the same; in cm."""


@dataclass(frozen=True, slots=True)
class Part:
    """One drawn part: an SVG place (y down, cm) and turn (degrees clockwise). Parts of one ``group`` share an outline.

    ``stretch`` is a factor along the part's own x axis, for bands.
    """

    group: str
    shape: str
    paint: str
    x: float
    y: float
    turn: float
    stretch: float = 1.0


class _Placer:
    def __init__(self, motion: Motion, frame: Frame) -> None:
        self.figure, self.frame = motion.figure, frame
        self.body: Skeleton = motion.skeleton(frame)
        self.side_view = motion.figure.view == "side"
        self.bends_back = any(pose.back for pose in motion.figure.poses)
        self.touching: dict[tuple[Side | None, str], Touch] = {(c.side, c.part): c for c in frame.contacts}
        self.parts: list[Part] = []

    def at(self, name: str) -> complex:
        return complex(self.body.points[name])

    def angle(self, name: str) -> float:
        return float(self.body.angles[name])

    def add(self, group: str, shape: str, paint: str, place: complex, turn: float, stretch: float = 1.0) -> None:
        dx, dy = FAR_SHIFT if self.side_view and group.startswith("far") else (0.0, 0.0)
        self.parts.append(Part(group, shape, paint, place.real + dx, -place.imag - dy, turn, stretch))

    def all(self) -> list[Part]:
        if self.side_view:
            self.band(behind=True)
            self.held("far")
            self.arm("far")
            self.leg("far")
            self.head()
            self.pelvis()
            self.leg("near")
            self.trunk()
            self.pole()
            self.held("both")
            self.held("near")
            self.arm("near")
        else:
            self.leg("far")
            self.leg("near")
            self.pelvis()
            self.head_neck()
            self.trunk()
            self.head_face()
            self.held("far")
            self.arm("far")
            self.held("near")
            self.arm("near")
            self.held("both")
            self.band(behind=False)
        return self.parts

    def leg(self, side: Side) -> None:
        group, far = f"{side} leg", "-far" if side == "far" and self.side_view else ""
        hip, knee, ankle = (self.at(f"{side} {name}") for name in ("hip", "knee", "ankle"))
        thigh, shank, sole = (self.angle(f"{side} {name}") for name in ("thigh", "shank", "foot"))
        shank_seen = self.frame.short.get((side, "shank"), 1.0)
        self.add(group, "shank", f"skin{far}", knee, -shank, shank_seen)
        self.add(group, "sock", f"sock{far}", knee, -shank, shank_seen)
        if self.side_view:
            on_toes = (side, "toes") in self.touching
            self.add(group, "toes", f"shoe{far}", self.at(f"{side} ball"), 0.0 if on_toes else -sole)
            self.add(group, "foot", f"shoe{far}", ankle, -sole)
        else:
            self.add(group, "foot", f"shoe{far}", ankle, -shank)
        thigh_seen = self.frame.short.get((side, "thigh"), 1.0)
        self.add(group, "thigh", f"skin{far}", hip, -thigh, thigh_seen)
        self.add(group, "shorts", f"shorts{far}", hip, -thigh, thigh_seen)

    def arm(self, side: Side) -> None:
        group, far = f"{side} arm", "-far" if side == "far" and self.side_view else ""
        upper, fore = self.angle(f"{side} upper arm"), self.angle(f"{side} forearm")
        touch = self.touching.get((side, "hand"))
        hand = fore
        if touch and touch.surface:
            hand = {"level": 90.0, "alongside": fore}.get(touch.surface.lies, 180.0)
        if (side, "forearm") in self.touching and self.side_view:
            hand = 90.0
        fore_seen = self.frame.short.get((side, "forearm"), 1.0)
        upper_seen = self.frame.short.get((side, "upper arm"), 1.0)
        self.add(group, "forearm", f"skin{far}", self.at(f"{side} elbow"), -fore, fore_seen)
        self.add(group, self.hand_shape(side), f"skin{far}", self.at(f"{side} wrist"), -hand)
        self.add(group, "upper arm", f"skin{far}", self.at(f"{side} shoulder"), -upper, upper_seen)
        self.add(group, "sleeve", f"shirt{far}", self.at(f"{side} shoulder"), -upper, upper_seen)

    def hand_shape(self, side: Side) -> str:
        """Return a fist for a hand that holds anything in this figure, and an open hand otherwise."""
        holds, band = self.figure.holds, self.figure.band
        grips = [who for who in (holds.kettlebell, holds.dumbbell, holds.barbell, holds.pole) if who]
        if any(side in holding_sides(who) for who in grips if who != "along the back"):
            return "fist"
        ends = (band.from_, band.to) if band else ()
        banded = any(end == "hands" or (end.endswith(" hand") and side in holding_sides(end)) for end in ends)
        return "fist" if banded else "hand"

    def head(self) -> None:
        self.head_neck()
        self.head_face()

    def _face(self) -> tuple[complex, float]:
        lean = self.angle("trunk") + self.frame.neck_deg
        up = 1j * np.exp(-1j * np.radians(lean))
        ahead = 2.6 if self.side_view else 0.0
        return complex(self.at("shoulder") + 0.109 * STATURE_CM * up + ahead * up * -1j), lean

    def head_neck(self) -> None:
        face, _ = self._face()
        base = self.at("shoulder") + 1j * np.exp(-1j * np.radians(self.angle("trunk")))
        reach = face - base
        self.add("neck", "neck", "skin", complex(base), -math.degrees(math.atan2(reach.real, -reach.imag)))

    def head_face(self) -> None:
        face, lean = self._face()
        self.add("head", "head", "skin", face, lean)
        self.add("head", "hair", "hair", face, lean)
        self.add("head", "headband", "headband", face, lean)

    def pelvis(self) -> None:
        bend = self.frame.back_deg if self.bends_back else 0.0
        self.add("pelvis", "pelvis", "shorts", self.at("hip"), self.angle("trunk") + bend / 2)

    def trunk(self) -> None:
        lean = self.angle("trunk")
        if not self.bends_back:
            self.add("trunk", "trunk", "shirt", self.at("hip"), lean)
            return
        # A rounded back is drawn as two halves that meet behind the straight line between hip and shoulder.
        half = math.radians(self.frame.back_deg) / 2
        up = 1j * np.exp(-1j * math.radians(lean))
        middle = self.at("hip") + CM["trunk"] / 2 * up * (1 + 1j * math.tan(half))
        self.add("trunk", "waist", "shirt", self.at("hip"), lean - self.frame.back_deg / 2)
        self.add("trunk", "chest", "shirt", complex(middle), lean + self.frame.back_deg / 2)

    def held(self, which: str) -> None:
        for name in ("kettlebell", "dumbbell", "barbell"):
            who = getattr(self.figure.holds, name)
            if who is None:
                continue
            sides: tuple[Side, ...] = ("near",) if who == "both hands" else holding_sides(who)
            for side in sides:
                if which == ("both" if who == "both hands" else side):
                    fore = self.angle(f"{side} forearm")
                    grip = self.at(f"{side} wrist") - 5j * np.exp(1j * np.radians(fore))
                    self.add(f"{side} {name}", name, "held", complex(grip), 0.0)

    def pole(self) -> None:
        if self.figure.holds.pole == "along the back":
            lean = self.angle("trunk")
            behind = self.at("shoulder") - 11.5 * np.exp(-1j * np.radians(lean))
            self.add("pole", "pole", "held", complex(behind), lean)

    def band(self, behind: bool) -> None:
        band = self.figure.band
        if band is None or behind != self.side_view:
            return
        for start, end in zip(self.band_ends(band.from_), self.band_ends(band.to), strict=False):
            reach = end - start
            turn = -math.degrees(math.atan2(reach.imag, reach.real))
            self.add("band", "band", "rubber", start, turn, abs(reach))

    def band_ends(self, end: str) -> list[complex]:
        post = self.figure.props.post
        if end == "post" and post is not None:
            depth = BACKGROUND_UP if post.where == "alongside" else 0.0
            return [complex(post.at, post.height + depth)] * 2
        if end in ("hands", "feet"):
            point = "grip" if end == "hands" else "ankle"
            return [self.at(f"{side} {point}") for side in (("near", "far") if self.side_view else ("near",))]
        side = holding_sides(end)[0]
        point = {"hand": "grip", "foot": "ankle", "thigh": "above knee"}[end.split()[-1]]
        return [self.at(f"{side} {point}")]


def parts(motion: Motion, frame: Frame) -> tuple[Part, ...]:
    """Return one frame's parts in drawing order; every frame of a figure has the same ones."""
    return tuple(_Placer(motion, frame).all())


def unwound(frames: list[tuple[Part, ...]]) -> list[tuple[Part, ...]]:
    """Return the frames with turns that never jump by a full circle, so that a part does not spin between two."""
    before: list[float] = [part.turn for part in frames[0]]
    found = []
    for frame in frames:
        turned = []
        for index, part in enumerate(frame):
            turn = part.turn + 360 * round((before[index] - part.turn) / 360)
            before[index] = turn
            turned.append(Part(part.group, part.shape, part.paint, part.x, part.y, turn, part.stretch))
        found.append(tuple(turned))
    return found
