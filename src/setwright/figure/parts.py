"""A frame as parts to draw: which shape, which paint, where, and in which order, far side first."""

import math
from dataclasses import dataclass, replace
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

_FACE_TURNS_DEG: Final = 35.0
_NEARER: Final = 0.5
"""How much larger a hand is drawn at the end of an arm that points straight at the viewer. Drawn by eye, no source."""

_CHEST_WIDER: Final = 1.65
"""How much wider a chest is from the front than from the side. Drawn by eye, no source."""


@dataclass(frozen=True, slots=True)
class Part:
    """One drawn part: an SVG place (y down, cm) and turn (degrees clockwise). Parts of one ``group`` share an outline.

    ``wide`` and ``long`` are factors along the part's own axes, across a limb and along it.
    """

    group: str
    shape: str
    paint: str
    x: float
    y: float
    turn: float
    wide: float = 1.0
    long: float = 1.0


class _Placer:
    def __init__(self, motion: Motion, frame: Frame) -> None:
        self.figure, self.frame = motion.figure, frame
        self.body: Skeleton = motion.skeleton(frame)
        self.side_view = motion.figure.view == "side"
        self.turns = any(pose.turn for pose in motion.figure.poses)
        self.bends_back = self.turns or any(pose.back for pose in motion.figure.poses)
        self.touching: dict[tuple[Side | None, str], Touch] = {(c.side, c.part): c for c in frame.contacts}
        self.parts: list[Part] = []

    def at(self, name: str) -> complex:
        return complex(self.body.points[name])

    def angle(self, name: str) -> float:
        return float(self.body.angles[name])

    def add(
        self, group: str, shape: str, paint: str, place: complex, turn: float, long: float = 1.0, wide: float = 1.0
    ) -> None:
        dx, dy = FAR_SHIFT if self.side_view and group.startswith("far") else (0.0, 0.0)
        self.parts.append(Part(group, shape, paint, place.real + dx, -place.imag - dy, turn, wide, long))

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

    def shade(self, side: Side, segment: str) -> str:
        """Return what a limb's paint ends with: darker on the far side, and where it points away from the viewer."""
        words = (side,) if self.side_view else (side, "right" if side == "near" else "left")
        away = any(f"{word} {segment}" in self.figure.away for word in words)
        return "-far" if away or (side == "far" and self.side_view) else ""

    def leg(self, side: Side) -> None:
        group, far = f"{side} leg", self.shade(side, "thigh")
        below = self.shade(side, "shank")
        hip, knee, ankle = (self.at(f"{side} {name}") for name in ("hip", "knee", "ankle"))
        thigh, shank, sole = (self.angle(f"{side} {name}") for name in ("thigh", "shank", "foot"))
        shank_seen = self.frame.short.get((side, "shank"), 1.0)
        self.add(group, "shank", f"skin{below}", knee, -shank, shank_seen)
        self.add(group, "sock", f"sock{below}", knee, -shank, shank_seen)
        if self.side_view:
            on_toes = (side, "toes") in self.touching
            self.add(group, "toes", f"shoe{below}", self.at(f"{side} ball"), 0.0 if on_toes else -sole)
            self.add(group, "foot", f"shoe{below}", ankle, -sole)
        else:
            self.add(group, "foot", f"shoe{below}", ankle, -sole)
        thigh_seen = self.frame.short.get((side, "thigh"), 1.0)
        self.add(group, "thigh", f"skin{far}", hip, -thigh, thigh_seen)
        self.add(group, "shorts", f"shorts{far}", hip, -thigh, thigh_seen)

    def arm(self, side: Side) -> None:
        group, far = f"{side} arm", self.shade(side, "upper arm")
        upper, fore = self.angle(f"{side} upper arm"), self.angle(f"{side} forearm")
        touch = self.touching.get((side, "hand"))
        hand = fore
        if touch and touch.surface:
            hand = 90.0 if touch.surface.lies == "level" else 180.0
        if (side, "forearm") in self.touching and self.side_view:
            hand = 90.0
        fore_seen = self.frame.short.get((side, "forearm"), 1.0)
        upper_seen = self.frame.short.get((side, "upper arm"), 1.0)
        fore_far = self.shade(side, "forearm")
        # A hand that reaches towards the viewer is nearer, and so it is seen larger.
        nearer = 1.0 if self.side_view or fore_far else 1 + _NEARER * (1 - (fore_seen + upper_seen) / 2)
        self.add(group, "forearm", f"skin{fore_far}", self.at(f"{side} elbow"), -fore, fore_seen)
        self.add(group, self.hand_shape(side), f"skin{fore_far}", self.at(f"{side} wrist"), -hand, nearer, nearer)
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
        if self.turns:
            # Beyond half a turn the face is seen from the front; what is not seen has no width.
            turned = float(abs(self.frame.turn_deg) > _FACE_TURNS_DEG)
            self.add("head", "face", "skin", face, lean, wide=turned)
            self.add("head", "fringe", "hair", face, lean, wide=turned)
            self.add("head", "brow", "headband", face, lean, wide=turned)
        else:
            turned = 0.0
        for shape, paint in (("head", "skin"), ("hair", "hair"), ("headband", "headband")):
            self.add("head", shape, paint, face, lean, wide=1.0 - turned)

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
        turn = math.radians(abs(self.frame.turn_deg))
        wide = math.cos(turn) + math.sin(turn) * _CHEST_WIDER
        self.add("trunk", "middle", "shirt", complex(middle), lean)
        self.add("trunk", "chest", "shirt", complex(middle), lean + self.frame.back_deg / 2, wide=wide)

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
            self.add("band", "band", "rubber", start, turn, wide=abs(reach))

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
            turned.append(replace(part, turn=turn))
        found.append(tuple(turned))
    return found
