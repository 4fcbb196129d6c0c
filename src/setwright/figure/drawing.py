"""From a motion to SVG text, by a template: a still picture for paper and thumbnails, a pair that moves for pages."""

import json
import math
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Final

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from setwright.figure.motion import Motion
from setwright.figure.paint import Medium, paint
from setwright.figure.parts import BACKGROUND_UP, Part, parts, unwound
from setwright.figure.scene import FLOOR_CM, Piece, arrow, arrow_curve, backdrop
from setwright.figure.shapes import HELD, number, shapes
from setwright.model.figure import BLOCKS
from setwright.model.tempo import Tempo

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
        """Left, top, width and height of one picture, in cm; start and end have the same."""
        return self._around(range(len(self.frames)))

    @cached_property
    def start_box(self) -> Box:
        """The box of the start alone, for a small picture: what stands there is cut off rather than shrunk."""
        return self._around([0])

    @cached_property
    def end_box(self) -> Box:
        """The box of the end alone."""
        return self._around([len(self.frames) - 1])

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
        curve = arrow_curve(self.motion)
        if curve is not None:
            halfway = (curve[0] + 2 * curve[1] + curve[2]) / 4
            xs += [place.real + edge for place in (curve[0], halfway, curve[2]) for edge in (_ARROW, -_ARROW)]
            ys += [place.imag + _MARGIN - 8 for place in (curve[0], halfway, curve[2])]
        left, right = min(xs) - _MARGIN, max(xs) + _MARGIN
        top = min(min(ys) - _MARGIN + 2, -60.0)
        return left, top, right - left, FLOOR_CM + 1 - top

    @property
    def moves(self) -> bool:
        """Whether there is more than one position."""
        return len(self.frames) > 1

    @property
    def stacked(self) -> bool:
        """Whether start and end stand below each other."""
        return self.moves and self.box[2] > _WIDE * self.box[3]

    @property
    def pair_box(self) -> Box:
        """Left, top, width and height of the whole picture, in cm."""
        left, top, width, height = self.box
        if not self.moves:
            return self.box
        return (left, top, width, 2 * height + _GAP) if self.stacked else (left, top, 2 * width + _GAP, height)

    @property
    def second(self) -> tuple[float, float]:
        """How far the end is moved from the start."""
        if not self.moves:
            return 0.0, 0.0
        return (0.0, self.box[3] + _GAP) if self.stacked else (self.box[2] + _GAP, 0.0)

    @cached_property
    def backdrop(self) -> list[Piece]:
        """What stands behind the figure."""
        left, _, width, _ = self.box
        return backdrop(self.motion.figure, left + 3, left + width - 3, self.mat)

    @cached_property
    def arrow(self) -> list[Piece]:
        """The arrow of the movement."""
        return arrow(self.motion)

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
    if abs(part.stretch - 1) > 0.005:
        scale = f"{part.stretch:.2f}"
        text += f"scale({scale} 1)" if part.shape == "band" else f"scale(1 {scale})"
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
            wide, long = (part.stretch, 1.0) if part.shape == "band" else (1.0, part.stretch)
            row += [round(part.x, 1), round(part.y, 1), round(part.turn, 1), round(wide, 2), round(long, 2)]
            still = still and abs(part.x - first.x) + abs(part.y - first.y) + abs(part.turn - first.turn) < 0.3
            still = still and abs(part.stretch - first.stretch) < 0.01
        rows.append(None if still else row)
    text = json.dumps(rows, separators=(",", ":"))
    return text.replace(".0,", ",").replace(".0]", "]")


def beats(tempo: Tempo | None, lowers_first: bool, frames: int) -> tuple[list[tuple[float, int]], float]:
    """Return when each frame is reached in one repetition, as (seconds, frame), and how long a repetition takes.

    The way out and the way back take the tempo's lowering and lifting; each eases in and out. A movement that the
    tempo gives no time takes half a second, and so does one as fast as control allows.
    """
    pace = tempo or Tempo(2, 1, 2, 1)
    fast_s = 0.5
    down_s, up_s = float(pace.lowering_s or fast_s), float(pace.lifting_s or fast_s)
    out_s, back_s = (down_s, up_s) if lowers_first else (up_s, down_s)
    rest_out, rest_back = (
        (pace.pause_low_s, pace.pause_high_s) if lowers_first else (pace.pause_high_s, pace.pause_low_s)
    )
    last = frames - 1
    eased = [math.acos(1 - 2 * index / last) / math.pi for index in range(frames)]
    moments = [(round(out_s * share, 3), index) for index, share in enumerate(eased)]
    turn_s = out_s + rest_out
    moments += [(round(turn_s + back_s * share, 3), last - index) for index, share in enumerate(eased)]
    whole_s = turn_s + back_s + rest_back
    if rest_back:
        moments.append((round(whole_s, 3), 0))
    unique: list[tuple[float, int]] = []
    for moment in moments:
        if not unique or moment != unique[-1]:
            unique.append(moment)
    return unique, whole_s
