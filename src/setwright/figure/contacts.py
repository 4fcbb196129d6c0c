"""What a pose touches, in the solver's terms: parts of the body, their points, and the surfaces they meet."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final, Literal

from setwright.model.figure import BLOCKS, ONE_OF, SIDES, Contact, Figure, Pose, Side

CLEARANCE_CM: Final[Mapping[str, tuple[tuple[str, float], ...]]] = MappingProxyType(
    {
        "foot": (("heel", 0.0), ("ball", 0.0)),
        "toes": (("ball", 1.5),),
        "heel": (("heel", 0.0),),
        "knee": (("knee", 5.4),),
        "shin": (("knee", 5.2), ("ankle", 4.2)),
        "ankle": (("ankle", 4.5),),
        "hand": (("wrist", 4.5),),
        "forearm": (("elbow", 4.0), ("wrist", 3.2)),
        "elbow": (("elbow", 4.0),),
        "back": (("hip", 10.5), ("shoulder", 10.0)),
        "shoulders": (("shoulder", 10.0),),
        "hips": (("hip", 10.5),),
        "side": (("hip", 17.0), ("shoulder", 22.0)),
    }
)
"""The points of each part that meet the surface, with how far inside the body they lie."""

PLACED_BY: Final[Mapping[str, str]] = MappingProxyType(
    {
        "foot": "ankle", "toes": "ball", "heel": "heel", "knee": "knee", "shin": "knee", "ankle": "ankle",
        "hand": "wrist", "forearm": "elbow", "elbow": "elbow",
        "back": "shoulder", "shoulders": "shoulder", "hips": "hip", "side": "hip",
    }
)  # fmt: skip
"""The point of each part that ``at`` is about."""

_TARGET_POINT: Final = {"thigh": "thigh", "hand": "grip"}


@dataclass(frozen=True, slots=True)
class SurfaceAt:
    """A surface: level at a height, or upright at a place, in cm. One alongside is touched at a height alone."""

    name: str
    lies: Literal["level", "ahead", "behind", "alongside"]
    at: float
    span: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class Touch:
    """One contact. ``side`` is None for the trunk; ``point`` names the body's own point that is touched, if any."""

    key: str
    side: Side | None
    part: str
    surface: SurfaceAt | None
    point: str | None
    at: float | None
    above: float
    written: str

    def points(self) -> tuple[tuple[str, float], ...]:
        """Return the points that meet the surface, by their name in the skeleton, with their clearance in cm."""
        return tuple((self._name(point), clearance + self.above) for point, clearance in CLEARANCE_CM[self.part])

    def placed_by(self) -> str:
        """Return the name of the point that ``at`` is about."""
        return self._name(PLACED_BY[self.part])

    def _name(self, point: str) -> str:
        return f"{self.side} {point}" if self.side else point


def surfaces(figure: Figure) -> dict[str, SurfaceAt]:
    """Return every surface that stands there, by its name in the language."""
    found = {"floor": SurfaceAt("floor", "level", 0.0)}
    for name in BLOCKS:
        block = getattr(figure.props, name)
        if block is not None:
            half = block.width / 2
            found[name] = SurfaceAt(name, "level", block.height, (block.at - half, block.at + half))
    wall = figure.props.wall
    if wall is not None:
        found["wall"] = SurfaceAt("wall", wall.where, wall.at)
    if figure.props.roller is not None:
        at = figure.props.roller.at
        found["roller"] = SurfaceAt("roller", "level", 15.0, (at - 8, at + 8))
    return found


def _side_of(word: str) -> Side:
    return "near" if word in ("near", "right") else "far"


def touches(pose: Pose, around: Mapping[str, SurfaceAt]) -> tuple[Touch, ...]:
    """Return a pose's contacts, one for each side that is meant."""
    found: list[Touch] = []
    for key, contact in pose.touch.items():
        words = key.split()
        if key in ONE_OF:
            found += [_touch(key, side, ONE_OF[key], contact, around) for side in SIDES]
        elif len(words) == 2:
            found.append(_touch(key, _side_of(words[0]), words[1], contact, around))
        else:
            found.append(_touch(key, None, key, contact, around))
    return tuple(found)


def _touch(written: str, side: Side | None, part: str, contact: Contact, around: Mapping[str, SurfaceAt]) -> Touch:
    key = f"{side} {part}" if side else part
    surface, point = around.get(contact.to), None
    if surface is None:
        words = contact.to.split()
        name = _TARGET_POINT.get(words[-1], words[-1])
        point = f"{_side_of(words[0])} {name}" if len(words) == 2 else name
    return Touch(key, side, part, surface, point, contact.at, contact.above, written)
