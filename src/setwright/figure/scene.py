"""What stands around the figure, and the arrow that says which way it moves: plain SVG pieces, y down, in cm."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from setwright.figure.body import Skeleton, centre_of_mass
from setwright.figure.motion import Motion
from setwright.figure.parts import BACKGROUND_UP, FAR_SHIFT
from setwright.figure.shapes import number
from setwright.model.figure import BLOCKS, Figure

FLOOR_CM: Final = 4.0
LINE_DEEPER_CM: Final = 5.0
"""How much lower the ground reaches where a line is drawn on it."""

_WALL_TOP: Final = 178.0
_BEHIND_BODY: Final = 20.0
_SHORTEST_ARROW: Final = 4.0


@dataclass(frozen=True, slots=True)
class Piece:
    """A filled or stroked path: ``width`` is the stroke's, and nothing for a fill."""

    paint: str
    d: str
    width: float | None = None


def rectangle(x: float, y: float, width: float, height: float, corner: float) -> str:
    """Return a rounded rectangle as path data."""
    r = min(corner, width / 2, height / 2)
    w, h = width - 2 * r, height - 2 * r
    c = number(r)
    arc = f"a{c} {c} 0 0 1 "
    return (
        f"M{number(x + r)} {number(y)}h{number(w)}{arc}{c} {c}v{number(h)}{arc}-{c} {c}"
        f"h{number(-w)}{arc}-{c}-{c}v{number(-h)}{arc}{c}-{c}z"
    )


def backdrop(figure: Figure, left: float, right: float, mat: bool) -> list[Piece]:
    """Return what is drawn before the figure: floor, mat, box, wall, post."""
    pieces: list[Piece] = []
    wall = figure.props.wall
    if wall is not None and wall.where == "alongside":
        pieces.append(Piece("panel", rectangle(left + 2, -_WALL_TOP, right - left - 4, _WALL_TOP, 2)))
    line = figure.props.line
    if line is None:
        pieces.append(Piece("floor", rectangle(left, 0, right - left, FLOOR_CM, 2)))
    else:
        # A line is seen on the ground itself, which is drawn deeper here, with feet standing on it.
        near, far = FLOOR_CM + LINE_DEEPER_CM, -5.0
        pieces.append(Piece("floor", rectangle(left, far, right - left, near - far, 3)))
        corners = (complex(-2, far), complex(2, far), complex(4.5, near), complex(-4.5, near))
        pieces.append(Piece("arrow", "M" + "L".join(_place(line.at + corner) for corner in corners) + "z"))
    if mat:
        pieces.append(Piece("mat", rectangle(left + 7, -0.4, right - left - 14, 3, 1.5)))
    for name in BLOCKS:
        block = getattr(figure.props, name)
        if block is None:
            continue
        x, height, width = block.at - block.width / 2, block.height, block.width
        if name in ("bench", "chair"):
            legs = (x + 4, x + width - 9)
            pieces += [Piece("lid", rectangle(leg, -height + 3, 5, height - 3, 1)) for leg in legs]
            if name == "chair":
                pieces.append(Piece("lid", rectangle(x - 2, -height - 42, 5, height + 42, 2)))
            pieces.append(Piece("block", rectangle(x, -height, width, 8, 3)))
        else:
            pieces.append(Piece("block", rectangle(x, -height, width, height, 2.5)))
            pieces.append(Piece("lid", rectangle(x, -height, width, min(5.0, height / 2), 2.5)))
    if wall is not None and wall.where != "alongside":
        x, height = (wall.at if wall.where == "ahead" else wall.at - 6), _WALL_TOP + FLOOR_CM
        if wall.where == "ahead":
            # Its face is seen at a slant, as far as the far limbs are moved, so that the far hand lies on it too.
            pieces.append(Piece("panel", rectangle(x, -_WALL_TOP, FAR_SHIFT[0] + 3, height, 1)))
            x += FAR_SHIFT[0]
        pieces.append(Piece("wall", rectangle(x, -_WALL_TOP, 6, height, 2)))
    post = figure.props.post
    if post is not None:
        up = BACKGROUND_UP if post.where == "alongside" else 0.0
        if up:
            pieces.append(Piece("floor", f"M{number(post.at - 14)}-{number(up)}a14 3 0 1 0 28 0a14 3 0 1 0-28 0z"))
        pieces.append(Piece("lid", rectangle(post.at - 3, -post.height - up - 20, 6, post.height + 20, 2)))
        pieces.append(Piece("rubber", rectangle(post.at - 3.8, -post.height - up - 2.2, 7.6, 4.4, 1.5)))
    if figure.props.roller is not None:
        at = figure.props.roller.at
        pieces.append(Piece("rubber", f"M{number(at)}-15a7.5 7.5 0 1 1-.1 0z"))
        pieces.append(Piece("edge", f"M{number(at)}-10a2.5 2.5 0 1 1-.1 0z"))
    return pieces


_POINT_OF: Final = {"hand": "grip", "foot": "ankle", "toes": "toe"}


def followed(motion: Motion, start: int = 0, end: int = -1) -> str | None:
    """Return the point that the arrow follows from frame to frame: the one asked for, or the one that moves most."""
    asked = motion.figure.arrow
    if asked == "none" or len(motion.frames) < 2:
        return None
    if asked is not None:
        words = asked.split()
        if len(words) == 1:
            return words[0]
        side = "near" if words[0] in ("near", "right") else "far"
        return f"{side} {_POINT_OF.get(words[1], words[1])}"
    ends = [motion.skeleton(motion.frames[i]).points for i in (start, end)]
    names = ("hip", "shoulder", *(f"{s} {p}" for s in ("near", "far") for p in ("grip", "ankle", "knee", "heel")))
    moved = {name: abs(complex(ends[1][name] - ends[0][name])) for name in names}
    most = max(moved.values())
    # The trunk carries everything along: it is what moves wherever it moves nearly as far as anything.
    return next(name for name in names if moved[name] >= (0.75 if name in ("hip", "shoulder") else 1.0) * most)


def arrow_curve(motion: Motion, start: int, end: int) -> tuple[complex, complex, complex] | None:
    """Return start, bend and tip of the arrow along the way between two frames; None where little moves. y is down."""
    name = followed(motion, start, end)
    if name is None:
        return None
    bodies = [motion.skeleton(frame) for frame in motion.frames[start : end + 1]]
    path = [complex(body.points[name]).conjugate() for body in bodies]
    lies = abs(float(bodies[-1].angles["trunk"])) > 50 and name in ("hip", "shoulder")
    if lies and name == "shoulder":
        path = [complex(0.3 * body.points["hip"] + 0.7 * body.points["shoulder"]).conjugate() for body in bodies]
    far = motion.figure.view == "side" and name.startswith("far")
    path = [place + (3.8 - 1.6j if far else 0) for place in path]
    way = path[-1] - path[0]
    lean = math.radians(float(bodies[-1].angles["trunk"]))
    if lies and abs(way) > 1 and abs((way * _toward(math.pi / 2 - lean)).real) < 0.7 * abs(way):
        # The trunk of someone lying or leaning far moves across: the arrow ends at its outside, above the floor.
        moved = [place - 15 * way / abs(way) for place in path]
        path = [complex(place.real, min(place.imag, -5.0)) for place in moved]
    elif name in ("hip", "shoulder") and motion.figure.view == "side":
        path = _beside_body(path, bodies)
    first, last = path[0], path[-1]
    if abs(last - first) < _SHORTEST_ARROW:
        return None
    # A pose on the way may overshoot; the arrow would turn into a hook.
    path = [place for place in path if abs(place - last) <= abs(last - first) * 1.02]
    middle = min(path, key=lambda place: abs(abs(place - first) - abs(place - last)))
    return first, 2 * middle - (first + last) / 2, last


def arrow(motion: Motion, start: int, end: int) -> list[Piece]:
    """Return the arrow of the way between two frames, drawn over a pale halo; none where little moves."""
    curve = arrow_curve(motion, start, end)
    if curve is None:
        return []
    first, bend, last = curve
    turn = math.atan2((last - bend).imag, (last - bend).real)
    line = f"M{_place(first)}Q{_place(bend)} {_place(last)}"
    tip = [last + 6 * _toward(turn), *(last + 4.6 * _toward(turn + side * 2.0) for side in (1, -1))]
    head = "M" + "L".join(_place(place) for place in tip) + "z"
    return [Piece("edge", line, 6.0), Piece("edge", head), Piece("arrow", line, 2.8), Piece("arrow", head)]


def _beside_body(path: list[complex], bodies: Sequence[Skeleton]) -> list[complex]:
    """Move the path of a joint that the trunk hides to behind the body."""
    way = path[-1] - path[0]
    if abs(way) < 1e-6:
        return path
    across = way / abs(way) * 1j
    middle = sum(centre_of_mass(body.points) for body in bodies) / len(bodies)
    from_middle = (path[0] + path[-1]) / 2 - complex(middle).conjugate()
    lean = math.radians(float(bodies[-1].angles["trunk"]))
    front = complex(math.cos(lean), math.sin(lean))
    ahead = (across * front.conjugate()).real
    outside = (across * from_middle.conjugate()).real
    sign = -1.0 if (ahead > 0 if abs(ahead) > 0.3 else outside <= 0) else 1.0
    return [place + sign * across * _BEHIND_BODY for place in path]


def _toward(turn: float) -> complex:
    return complex(math.cos(turn), math.sin(turn))


def _place(at: complex) -> str:
    return f"{number(at.real)} {number(at.imag)}"
