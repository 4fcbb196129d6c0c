"""From a motion to SVG text, by a template: a still picture for paper and thumbnails, a pair that moves for pages."""

import json
import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from typing import Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from setwright.figure.motion import Motion
from setwright.figure.paint import Medium, paint
from setwright.figure.parts import BACKGROUND_UP, Part, parts, unwound
from setwright.figure.scene import FLOOR_CM, LINE_DEEPER_CM, Piece, arrow, arrow_curve, backdrop
from setwright.figure.shapes import HELD, number, shapes
from setwright.model.figure import BLOCKS

_MARGIN: Final = 16.0
_WIDE: Final = 1.45
"""From this ratio of width to height on, start and end stand below each other instead of side by side."""

_GAP: Final = 6.0
_ARROW: Final = -8.0
"""An arrow may reach this far into the margin, in cm."""

_HELD_REACH: Final = {"kettlebell": 10.0, "barbell": 6.0}

Box = tuple[float, float, float, float]
"""Left, top, width and height, in cm."""

_environment = Environment(
    loader=PackageLoader("setwright.figure"),
    autoescape=True,
    undefined=StrictUndefined,
    trim_blocks=True,
    lstrip_blocks=True,
)
_environment.globals.update(HELD=HELD)


@dataclass(frozen=True)
class Drawing:
    """A figure ready to be written: its frames as parts, its scene, and the box that holds all of it."""

    motion: Motion
    mat: bool

    @cached_property
    def frames(self) -> list[tuple[Part, ...]]:
        """The frames as parts, turns unwound."""
        return unwound([parts(self.motion, frame) for frame in self.motion.frames])

    @cached_property
    def box(self) -> Box:
        """Left, top, width and height of one picture, in cm: as wide as what is shown, as high as all of the way."""
        everywhere = self._around(range(len(self.frames)))
        if len(self.motion.shown) == 1:
            return everywhere
        left, _, width, _ = self._around(self.motion.shown)
        return left, everywhere[1], width, everywhere[3]

    def close_box(self, frame: int) -> Box:
        """Return the box of one frame alone, for a small picture: what stands there is cut off rather than shrunk."""
        place = frame % len(self.frames)
        if place not in self._close_boxes:
            self._close_boxes[place] = self._around([place])
        return self._close_boxes[place]

    @cached_property
    def _close_boxes(self) -> dict[int, Box]:
        """The boxes that were asked for: every list of exercises asks for the same ones."""
        return {}

    def _around(self, frames: Iterable[int]) -> Box:
        xs, ys = [], []
        for index in frames:
            points = self.motion.skeleton(self.motion.frames[index]).points
            xs += [float(p.real) for p in points.values()]
            ys += [-float(p.imag) for p in points.values()]
            for part in self.frames[index]:
                if part.shape in HELD:
                    reach = _HELD_REACH.get(part.shape, 0.0)
                    xs += [part.x - reach, part.x + reach]
        props = self.motion.figure.props
        for name in BLOCKS:
            block = getattr(props, name)
            if block is not None:
                xs += [block.at - block.width / 2 + 8, block.at + block.width / 2 - 8]
        if props.wall is not None and props.wall.where != "alongside":
            xs.append(props.wall.at)
        if props.post is not None:
            xs.append(props.post.at)
            ys.append(-props.post.height - 10 - (BACKGROUND_UP if props.post.where == "alongside" else 0))
        for curve in filter(None, (arrow_curve(self.motion, *way) for way in self.ways)):
            halfway = (curve[0] + 2 * curve[1] + curve[2]) / 4
            xs += [place.real + edge for place in (curve[0], halfway, curve[2]) for edge in (_ARROW, -_ARROW)]
            ys += [place.imag + _MARGIN - 8 for place in (curve[0], halfway, curve[2])]
        left, right = min(xs) - _MARGIN, max(xs) + _MARGIN
        top = min(min(ys) - _MARGIN + 2, -60.0)
        bottom = FLOOR_CM + 1 + (LINE_DEEPER_CM if props.line is not None else 0)
        return left, top, right - left, bottom - top

    @property
    def moves(self) -> bool:
        """Whether there is more than one position."""
        return len(self.frames) > 1

    @cached_property
    def ways(self) -> list[tuple[int, int]]:
        """From which frame to which each arrow leads: between the positions that are shown."""
        return list(pairwise(self.motion.shown))

    @property
    def stacked(self) -> bool:
        """Whether start and end stand below each other."""
        return len(self.motion.shown) > 1 and self.box[2] > _WIDE * self.box[3]

    @property
    def whole_picture(self) -> Box:
        """Left, top, width and height of the whole picture, in cm."""
        left, top, width, height = self.box
        across, down = self.apart
        steps = len(self.motion.shown) - 1
        return left, top, width + steps * across, height + steps * down

    @property
    def apart(self) -> tuple[float, float]:
        """How far each position is moved from the one before."""
        return (0.0, self.box[3] + _GAP) if self.stacked else (self.box[2] + _GAP, 0.0)

    @property
    def others(self) -> list[tuple[float, float, tuple[Part, ...], list[Piece]]]:
        """The positions after the first: how far each is moved, its parts, and the arrow that leads to it."""
        across, down = self.apart
        return [
            (across * number_, down * number_, self.frames[way[1]], arrow(self.motion, *way))
            for number_, way in enumerate(self.ways, 1)
        ]

    @cached_property
    def backdrop(self) -> list[Piece]:
        """What stands behind the figure."""
        left, _, width, _ = self.box
        return backdrop(self.motion.figure, left + 3, left + width - 3, self.mat)

    def arrow_to(self, frame: int) -> list[Piece]:
        """The arrow that leads to a frame that is shown; none to the first."""
        return next((arrow(self.motion, *way) for way in self.ways if way[1] == frame), [])

    @cached_property
    def shapes(self) -> dict[str, str]:
        """The shapes that this figure uses, by name, in drawing order."""
        known = shapes(self.motion.figure.view)
        return {part.shape: known[part.shape] for part in self.frames[0] if part.shape in known}


def _groups(frame: tuple[Part, ...]) -> list[tuple[str, list[tuple[int, Part]]]]:
    """Return the parts with their number, those that share an outline together, in drawing order."""
    found: list[tuple[str, list[tuple[int, Part]]]] = []
    for index, part in enumerate(frame):
        if found and found[-1][0] == part.group:
            found[-1][1].append((index, part))
        else:
            found.append((part.group, [(index, part)]))
    return found


def _transform(part: Part) -> str:
    text = f"translate({number(part.x)} {number(part.y)})"
    if round(part.turn):
        text += f"rotate({round(part.turn)})"
    if abs(part.wide - 1) > 0.005 or abs(part.long - 1) > 0.005:
        text += f"scale({part.wide:.2f} {part.long:.2f})".replace("1.00", "1")
    return text


def whole_box(box: Box) -> tuple[int, int, int, int]:
    """Return a box in whole cm that holds the one given."""
    left, top = math.floor(box[0]), math.floor(box[1])
    return left, top, math.ceil(box[0] + box[2]) - left, math.ceil(box[1] + box[3]) - top


def _view_box(box: Box) -> str:
    return " ".join(map(str, whole_box(box)))


_environment.filters.update(transform=_transform, number=number)


def write(drawing: Drawing, template: str, medium: Medium, **context: object) -> str:
    """Return SVG text from one of the templates."""
    values = {
        "drawing": drawing,
        "groups": _groups,
        "paint": lambda role: Markup(paint(role, medium)),  # noqa: S704 - colours from this package
        "view_box": _view_box,
        **context,
    }
    return _environment.get_template(template).render(**values).strip() + "\n"


def frames_json(drawing: Drawing) -> str:
    """Return what moves as JSON: a list a part of x, y, degrees and both stretches a frame; null for what stays."""
    rows: list[list[float] | None] = []
    for index, first in enumerate(drawing.frames[0]):
        row: list[float] = []
        still = True
        for frame in drawing.frames:
            part = frame[index]
            row += [round(part.x, 1), round(part.y, 1), round(part.turn), round(part.wide, 2), round(part.long, 2)]
            still = still and abs(part.x - first.x) + abs(part.y - first.y) + abs(part.turn - first.turn) < 0.3
            still = still and abs(part.wide - first.wide) + abs(part.long - first.long) < 0.01
        rows.append(None if still else row)
    text = json.dumps(rows, separators=(",", ":"))
    return text.replace(".0,", ",").replace(".0]", "]")
