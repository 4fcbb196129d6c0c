"""Limbs that would have to pass through a box, a bench, a step or a chair, in a pose or on the way to the next."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from setwright.figure.body import Skeleton
from setwright.figure.contacts import SurfaceAt, surfaces
from setwright.figure.misfit import Misfit
from setwright.model.figure import BLOCKS, SIDES, Figure

DEEP_CM: Final = 2.0
"""How far inside a point may lie before anyone is told: shoes give, and edges are round."""

_SEAT_CM: Final = 8.0
"""How thick a bench and a chair are; below that they are open."""

_LINES: Final = (
    ("leg", ("hip", "knee", "ankle", "heel")),
    ("foot", ("heel", "ball")),
    ("arm", ("shoulder", "elbow", "wrist")),
)
_ALONG: Final = (0.25, 0.5, 0.75, 1.0)


def inside_blocks(figure: Figure, bodies: Sequence[Skeleton], stops: Sequence[int]) -> Iterator[Misfit]:
    """Yield one misfit for each limb that passes through a block, at the pose it is in or leaves.

    Args:
        figure: with its props.
        bodies: every frame's, in order.
        stops: which of them are poses.
    """
    blocks = {name: found for name, found in surfaces(figure).items() if name in BLOCKS}
    told: set[tuple[str, str]] = set()
    for place, body in enumerate(bodies):
        for name, block in blocks.items():
            for limb in _inside(body, block, getattr(figure.props, name).beside):
                if (limb, name) in told:
                    continue
                told.add((limb, name))
                pose = max(index for index, stop in enumerate(stops) if stop <= place)
                if place == stops[pose]:
                    message, hint = f"the {limb} is inside the {name}", "move it, or the prop; 'beside' if it passes it"
                else:
                    message = f"the {limb} goes through the {name} on its way to the next position"
                    hint = "add a position between them that is passed: 'passed: true'"
                yield Misfit("limb-inside-prop", ("poses", pose), message, hint)


def _inside(body: Skeleton, block: SurfaceAt, beside: str | None) -> Iterator[str]:
    if block.span is None:
        return
    low, high = block.span[0] + DEEP_CM, block.span[1] - DEEP_CM
    top = block.at - DEEP_CM
    bottom = block.at - _SEAT_CM if block.name in ("bench", "chair") else 0.0
    for side in SIDES:
        said = side if body.view == "side" else {"near": "right", "far": "left"}[side]
        if beside in (said, "both"):
            continue
        for limb, names in _LINES:
            points = list(_along([complex(body.points[f"{side} {name}"]) for name in names]))
            if any(low < p.real < high and bottom < p.imag < top for p in points):
                yield f"{said} {limb}"


def _along(line: Sequence[complex]) -> Iterator[complex]:
    yield line[0]
    for start, end in pairwise(line):
        yield from (start + (end - start) * share for share in _ALONG)
