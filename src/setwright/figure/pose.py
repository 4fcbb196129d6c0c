"""Solving a pose: contacts hold exactly, balance and stated bends nearly, and the rest stays close to standing tall."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from math import fsum
from typing import Any, Final, Literal, Protocol, get_args

import numpy as np

from setwright.figure.body import AT, JOINTS, STATE, Floats, Places, Shortened, Skeleton, centre_of_mass
from setwright.figure.contacts import Touch
from setwright.figure.segments import CM, STATURE_CM
from setwright.model.figure import SIDES, Bend, Pose, Segment, Side, View

RANGE: Final[Mapping[View, Mapping[str, tuple[int, int]]]] = {
    "side": {"knee": (0, 150), "elbow": (0, 150), "ankle": (-55, 40), "hip": (-30, 130), "shoulder": (-60, 185)},
    "front": {"knee": (-10, 12), "elbow": (-150, 150), "ankle": (-35, 20), "hip": (-30, 50), "shoulder": (-45, 185)},
}
"""How far each joint bends in its usual range, in degrees, by the side it is seen from.

After American Academy of Orthopaedic Surgeons, Joint Motion, 1965 (from memory), with some degrees to spare. From the
front, hips and shoulders open sideways and soles tilt; an elbow's hinge turns with the shoulder, so that it may point
either way; a knee does not bend sideways (common practice, no source).
"""

LEG_JOINTS: Final = frozenset({"hip", "knee", "ankle"})
"""The joints of a leg; the others are those of an arm."""

_CONTACT, _BALANCE, _STATED, _RANGE, _FLOOR, _DEFAULT, _DRIFT = 8.0, 3.0, 0.6, 1.5, 3.0, 0.008, 0.02
_CLEAR_OF_FLOOR: Final = (("ankle", 4.0), ("knee", 5.0), ("toe", 0.0), ("wrist", 3.0), ("elbow", 3.5))
_OUT: Final = 3.0
"""From the ankle forward to where the weight of someone standing flat falls, in cm."""
_SAME_SPOT_CM: Final = 12.0

Kind = Literal["contact", "place", "balance", "stated", "other"]


@dataclass(frozen=True)
class Setting:
    """Everything but a pose's contacts and bends that decides where the body is.

    ``pins`` say where a contact stands and ``lifts_cm`` how far it is off its surface, such as a foot that steps; a
    number, or one a state, by the contact's key.
    """

    view: View
    held: tuple[tuple[str, float], ...] = ()
    pins: Mapping[str, Any] = field(default_factory=dict)
    lifts_cm: Mapping[str, Any] = field(default_factory=dict)
    turn_deg: Any = 0.0


@dataclass(frozen=True)
class Row:
    """What one residual is about: its kind, the thing it names, and its weight per cm or degree."""

    kind: Kind
    about: str
    weight: float


def stated(pose: Pose) -> dict[str, float]:
    """Return the angles that a pose states, by name in the state, in degrees."""
    found: dict[str, float] = {}
    for joint in JOINTS:
        bend: Bend | None = getattr(pose, joint)
        for side in SIDES:
            angle = bend.of(side) if bend else None
            if angle is not None:
                found[f"{side} {joint}"] = float(angle)
    if pose.trunk is not None:
        found["trunk"] = float(pose.trunk)
    return found


def shortened(pose: Pose) -> Shortened:
    """Return the limbs of a pose that point at the viewer, with how much of their length is seen."""
    found = {(side, name): pose.seen.of(side, name) for side in SIDES for name in get_args(Segment)}
    return {key: share for key, share in found.items() if share < 1}


def out_of_plane(short: Shortened, side: Side, joint: str) -> bool:
    """Say whether a joint belongs to a limb that points at the viewer or away, so that its bend is not what is seen."""
    segments: tuple[Segment, ...] = ("thigh", "shank") if joint in LEG_JOINTS else ("upper arm", "forearm")
    return any((side, segment) in short for segment in segments)


class _Add(Protocol):
    """Collects one residual of every state at hand."""

    def __call__(self, kind: Kind, about: str, weight: float, value: Floats) -> None: ...


class Problem:
    """One pose as residuals. Weights are those that a feasibility study settled on: contacts before everything."""

    def __init__(
        self,
        contacts: tuple[Touch, ...],
        given: Mapping[str, float],
        setting: Setting,
        short: Shortened,
        balanced: bool,
        prior: Floats | None = None,
        prior_weight: float = _DEFAULT,
    ) -> None:
        self.contacts, self.setting, self.short = contacts, setting, short
        self.parts = {contact.part for contact in contacts if _bears(contact)}
        self.given = dict(given)
        self.assumed_trunk = None if "trunk" in given else self._lying()
        if self.assumed_trunk is not None and prior is None:
            self.given["trunk"] = self.assumed_trunk
        self.usual = self._usual()
        self.prior, self.prior_weight = prior, prior_weight
        feet = [c for c in contacts if c.part in ("foot", "toes", "heel") and _bears(c)]
        only_feet = bool(feet) and all(c.part in ("foot", "toes", "heel") or not _bears(c) for c in contacts)
        leans = any(c.surface is not None and c.surface.lies in ("ahead", "behind") for c in contacts)
        self.feet = feet if balanced and only_feet and not leans else []
        self.rows: list[Row] = []
        self._prepare()

    def _lying(self) -> float | None:
        for contact in self.contacts:
            if contact.surface is not None and contact.surface.lies == "level":
                if contact.part == "back":
                    return -90.0
                if contact.part == "side":
                    return 86.0
        return None

    def _usual(self) -> dict[str, float]:
        """Return the bends that contacts bring along unless the pose says otherwise."""
        found: dict[str, float] = {}
        lean = self.given.get("trunk", 70.0 if "hand" in self.parts else 0.0)
        for contact in self.contacts:
            side, level = contact.side, contact.surface is not None and contact.surface.lies == "level"
            if contact.part in ("shin", "knee"):
                found[f"{side} knee"] = 90.0
            if contact.part == "shin":
                found |= {f"{side} ankle": -50.0, f"{side} hip": max(0.0, lean)}
            if contact.part == "forearm":
                found |= {f"{side} elbow": 90.0, f"{side} shoulder": 85.0}
            if contact.part == "hand" and level:
                found[f"{side} shoulder"] = 75.0
            if contact.part == "hips":
                found |= {f"{s} {joint}": 90.0 for s in SIDES for joint in ("hip", "knee")}
        return found

    def residuals(self, states: Floats) -> Floats:
        """Return the residuals of states (..., unknowns) along a new last axis; ``rows`` says what each is about."""
        body = Skeleton(states, self.setting.view, self.short, self.setting.turn_deg)
        columns: list[Floats] = []
        rows: list[Row] = []

        def add(kind: Kind, about: str, weight: float, value: Floats) -> None:
            columns.append(weight * value)
            rows.append(Row(kind, about, weight))

        for contact in self.contacts:
            self._contact(contact, body.points, add)
        if self.feet:
            self._balance(body.points, add)
        blocks = [np.stack(columns, axis=-1)] if columns else []
        blocks.append((states[..., 2:] - self.wanted) * self.weights)
        ranged = states[..., 3:]
        blocks.append(_RANGE * (np.minimum(0, ranged - self.low) + np.maximum(0, ranged - self.high)))
        heights = np.stack([body.points[name].imag for name in self.kept_up], axis=-1)
        blocks.append(_FLOOR * np.minimum(0, heights - self.kept_clear))
        if not self.rows:
            self.rows = [*rows, *self.bend_rows]
            rest = sum(block.shape[-1] for block in blocks) - len(self.rows)
            self.rows += [Row("other", "", 1.0)] * rest
        return np.concatenate(blocks, axis=-1)

    def _prepare(self) -> None:
        """Lay out what does not change from state to state: wanted bends with their weights, ranges, clearances."""
        names = STATE[2:]
        given = np.array([name in self.given for name in names])
        usual = np.array([self.usual.get(name, 0.0) for name in names])
        base = usual if self.prior is None else self.prior[..., 2:]
        self.wanted = np.where(given, np.array([self.given.get(name, 0.0) for name in names]), base)
        self.weights = np.where(given, _STATED, self.prior_weight)
        self.bend_rows = [
            Row("stated" if name in self.given else "other", name, float(weight))
            for name, weight in zip(names, self.weights, strict=True)
        ]
        ranges = []
        for side in SIDES:
            for joint, (low, high) in ((joint, RANGE[self.setting.view][joint]) for joint in JOINTS):
                # What a coach states is drawn as stated; whether that is usual is a question of its own.
                stated_deg = self.given.get(f"{side} {joint}", float(low))
                free = out_of_plane(self.short, side, joint)
                ranges.append((-1e3, 1e3) if free else (min(float(low), stated_deg), max(float(high), stated_deg)))
        self.low, self.high = (np.array(ends) for ends in zip(*ranges, strict=True))
        on_toes = {c.side for c in self.contacts if c.part == "toes"}
        kept = [
            (f"{side} {name}", clearance)
            for side in SIDES
            for name, clearance in _CLEAR_OF_FLOOR
            if not (name == "toe" and side in on_toes)
        ]
        self.kept_up, self.kept_clear = [name for name, _ in kept], np.array([clearance for _, clearance in kept])

    def _contact(self, contact: Touch, points: Mapping[str, Places], add: _Add) -> None:
        place = points[contact.placed_by()]
        if contact.surface is None:
            name = contact.placed_by().replace("wrist", "grip")
            gap = points[name] - points[str(contact.point)]
            add("contact", contact.key, _CONTACT / 2, gap.real)
            add("contact", contact.key, _CONTACT / 2, gap.imag)
            return
        surface = contact.surface
        lift = self.setting.lifts_cm.get(contact.key, 0.0)
        for name, clearance in contact.points():
            point = points[name]
            if surface.lies == "level":
                add("contact", contact.key, _CONTACT, point.imag - surface.at - clearance - lift)
            elif surface.lies == "ahead":
                add("contact", contact.key, _CONTACT, surface.at - point.real - clearance)
            elif surface.lies == "behind":
                add("contact", contact.key, _CONTACT, point.real - surface.at - clearance)
        level = surface.lies == "level"
        if level and contact.part == "foot" and self.setting.view == "front":
            under = points[f"{contact.side} heel"]
            add("contact", contact.key, _CONTACT, under.real - place.real)
        along = place.real if level else place.imag
        at = self.place_of(contact)
        if at is not None:
            add("place", contact.key, _CONTACT, along - at)
        elif level and contact.part not in ("hand", "shin", "forearm", "elbow"):
            middle = fsum(surface.span) / 2 if surface.span else 0.0
            add("other", contact.key, _DRIFT, along - middle)

    def place_of(self, contact: Touch) -> Any:
        """Return where a contact belongs, in cm: as written, as pinned (a number, or one a state), or by convention."""
        if contact.at is not None:
            return contact.at
        if contact.surface is not None and contact.surface.lies != "level" and contact.side is None:
            return None  # a back slides along the wall that it leans on
        before = self.setting.pins.get(contact.key)
        return 0.0 if before is None and contact.part in ("back", "shoulders", "side") else before

    def _balance(self, points: Mapping[str, Places], add: _Add) -> None:
        """Keep the centre of mass over one planted spot, or between the feet where they stand apart."""
        centre = centre_of_mass(points, held=self.setting.held).real
        spots = [points[f"{c.side} {'ball' if c.part == 'toes' else 'ankle'}"].real for c in self.feet]
        if self.setting.view == "side":
            spots = [spot + (0.0 if c.part == "toes" else _OUT + 2.0) for c, spot in zip(self.feet, spots, strict=True)]
        known = [at for at in map(self.place_of, self.feet) if at is not None]
        if len(known) == 2 and abs(known[0] - known[1]) > _SAME_SPOT_CM:
            low, high = np.minimum(*spots), np.maximum(*spots)
            add("other", "balance", _BALANCE, np.minimum(0, centre - low) + np.maximum(0, centre - high))
        else:
            add("balance", "balance", _BALANCE, centre - sum(spots) / len(spots))

    def start(self, seed: Mapping[str, float] | None = None) -> Floats:
        """Return a first state: stated and usual bends, then moved so that the contacts are about where they belong."""
        q = np.zeros(len(STATE))
        q[1] = 0.53 * STATURE_CM
        lean = self.given.get("trunk")
        if lean is None:
            if "shoulders" in self.parts:
                lean = -100.0
            elif self.parts & {"hand", "forearm"} and self.parts & {"toes", "knee", "shin"}:
                lean = 75.0
        q[AT["trunk"]] = lean or 0.0
        for side in SIDES:
            q[AT[f"{side} knee"]] = q[AT[f"{side} elbow"]] = 15.0
        for name, angle in ({**self.usual, **self.given}).items():
            q[AT[name]] = angle
        for joint, angle in (seed or {}).items():
            for side in SIDES:
                if f"{side} {joint}" not in self.given:
                    q[AT[f"{side} {joint}"]] = angle
        if self.setting.view == "side" and "hand" not in self.parts:
            self._stand(q)
        return self._moved(q)

    def _stand(self, q: Floats) -> None:
        """Let a planted foot's shank lean a little, and the hip make up the rest."""
        for contact in self.contacts:
            if contact.part not in ("foot", "toes") or contact.side is None or contact.above:
                continue
            names = {joint: AT[f"{contact.side} {joint}"] for joint in JOINTS}
            bent = q[names["knee"]] > 30
            if f"{contact.side} ankle" not in self.given:
                q[names["ankle"]] = 15.0 if bent else 0.0
            if f"{contact.side} hip" not in self.given:
                q[names["hip"]] = q[AT["trunk"]] + q[names["knee"]] - q[names["ankle"]]

    def _moved(self, q: Floats) -> Floats:
        points = Skeleton(q, self.setting.view, self.short, self.setting.turn_deg).points
        up, along = [], []
        for contact in self.contacts:
            if contact.surface is None or contact.surface.lies != "level":
                continue
            point = points[contact.placed_by()]
            foot = CM["foot height"] if contact.part == "foot" else 0.0
            up.append(contact.surface.at + contact.points()[0][1] + foot - float(point.imag))
            at = self.place_of(contact)
            if at is not None:
                along.append(at - float(point.real))
        q[1] += fsum(up) / len(up) if up else 0.0
        q[0] += fsum(along) / len(along) if along else 0.0
        return q


def _bears(contact: Touch) -> bool:
    return contact.surface is not None and not contact.above and contact.surface.lies != "alongside"
