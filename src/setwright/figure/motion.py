"""From a figure's words to its positions: every pose solved, what does not fit, and the frames in between."""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import Final

import numpy as np

from setwright.figure.body import Floats, Shortened, Skeleton, centre_of_mass
from setwright.figure.contacts import Touch, surfaces, touches
from setwright.figure.misfit import Misfit, misfits
from setwright.figure.pose import Problem, Setting, shortened, stated
from setwright.figure.settling import pins_of, settle
from setwright.figure.solver import solve
from setwright.model.figure import SIDES, Figure, Segment, Side

STEPS: Final = 8
"""Frames between two poses. With fewer, joints visibly part between them."""

_BETWEEN_WEIGHT: Final = 0.3
_HELD_SHARE: Final = {"kettlebell": 0.12, "dumbbell": 0.09, "barbell": 0.3}
"""What a held thing weighs, as a share of body mass: enough to move the balance as it would."""


@dataclass(frozen=True)
class Frame:
    """One position of the body, with what is drawn besides the joints."""

    state: Floats
    contacts: tuple[Touch, ...]
    short: Shortened
    neck_deg: float
    back_deg: float


@dataclass(frozen=True, eq=False)
class Motion:
    """A figure, solved. ``frames`` lead from the first pose to the last; ``poses`` are the frames of the poses."""

    figure: Figure
    frames: tuple[Frame, ...]
    poses: tuple[Frame, ...]
    misfits: tuple[Misfit, ...]

    def skeleton(self, frame: Frame) -> Skeleton:
        """Return the joints of one frame."""
        return Skeleton(frame.state, self.figure.view, frame.short)

    @cached_property
    def lowers_first(self) -> bool:
        """Whether the way from start to end is the lowering phase of the tempo."""
        if self.figure.begins is not None:
            return self.figure.begins == "lowering"
        held = held_by(self.figure)
        heights = [centre_of_mass(self.skeleton(f).points, held=held).imag for f in (self.frames[0], self.frames[-1])]
        return bool(heights[1] < heights[0])


def held_by(figure: Figure) -> tuple[tuple[str, float], ...]:
    """Return the hands that carry something, each with its mass as a share of body mass."""
    found: list[tuple[str, float]] = []
    for name, share in _HELD_SHARE.items():
        who = getattr(figure.holds, name)
        if who is not None:
            each = share / 2 if who == "both hands" else share
            found += [(f"{side} grip", each) for side in holding_sides(who)]
    return tuple(found)


def holding_sides(who: str) -> tuple[Side, ...]:
    """Return the hands that ``near hand``, ``left hand``, ``both hands`` or ``each hand`` mean."""
    word = who.split()[0]
    if word in ("both", "each"):
        return SIDES
    return ("near",) if word in ("near", "right") else ("far",)


def solved(figure: Figure) -> Motion:
    """Return a figure's positions. The same figure is solved once, however many pages ask for it."""
    return _solved(_Key(figure.model_dump_json(), figure))


@dataclass(frozen=True)
class _Key:
    """A figure that equals another with the same words."""

    written: str
    figure: Figure = field(compare=False)


@lru_cache(maxsize=1024)
def _solved(key: _Key) -> Motion:
    figure = key.figure
    around = surfaces(figure)
    held = held_by(figure)
    pins: dict[str, float] = {}
    found: list[Misfit] = []
    frames: list[Frame] = []
    for index, pose in enumerate(figure.poses):
        contacts = touches(pose, around)
        setting = Setting(figure.view, held, dict(pins))
        problem = Problem(contacts, stated(pose), setting, shortened(pose), pose.balance)
        state = settle(problem)
        found += misfits(index, pose, problem, state)
        frame = Frame(state, contacts, shortened(pose), pose.neck, pose.back)
        frames.append(frame)
        pins = {**pins_of(contacts, Skeleton(state, figure.view, frame.short)), **pins}
    between = list(_in_between(figure, frames, held))
    return Motion(figure, tuple(between), tuple(frames), tuple(found))


def _in_between(figure: Figure, poses: list[Frame], held: tuple[tuple[str, float], ...]) -> Iterator[Frame]:
    """Yield every frame: angles interpolated, then solved again so that shared contacts do not come loose or slide.

    A contact that both poses have in different places moves there in a straight line, such as hands along a wall.
    """
    yield poses[0]
    shares = np.arange(1, STEPS) / STEPS
    for before, after in pairwise(poses):
        shared = _shared(before.contacts, after.contacts)
        first, last = (pins_of(f.contacts, Skeleton(f.state, figure.view, f.short)) for f in (before, after))
        pins = {
            touch.key: (first[touch.key] + (last[touch.key] - first[touch.key]) * shares)[:, None]
            for touch in shared
            if touch.key in first and touch.key in last
        }
        priors = before.state + (after.state - before.state) * shares[:, None]
        short = _mixed(before.short, after.short, shares)
        by_state = {key: values[:, None] for key, values in short.items()}
        setting = Setting(figure.view, held, pins)
        problem = Problem(shared, {}, setting, by_state, False, priors[:, None, :], _BETWEEN_WEIGHT)
        states = solve(problem.residuals, priors).states
        for index, share in enumerate(shares):
            neck = before.neck_deg + (after.neck_deg - before.neck_deg) * share
            back = before.back_deg + (after.back_deg - before.back_deg) * share
            yield Frame(states[index], shared, {key: float(v[index]) for key, v in short.items()}, neck, back)
        yield after


def _shared(before: tuple[Touch, ...], after: tuple[Touch, ...]) -> tuple[Touch, ...]:
    """Return the contacts that hold all the way. A foot that rises on its toes keeps the ball on its surface."""
    later = {contact.key: contact for contact in after}
    found = []
    for contact in before:
        same = later.get(contact.key)
        if same is not None:
            if (same.surface, same.point, same.above) == (contact.surface, contact.point, contact.above):
                found.append(replace(contact, at=None))
            continue
        for flat, raised in (("foot", "toes"), ("foot", "heel"), ("toes", "foot"), ("heel", "foot")):
            other = later.get(f"{contact.side} {raised}")
            if contact.part == flat and other is not None and (other.surface, other.at) == (contact.surface, None):
                kept = other if contact.part == "foot" else contact
                if not kept.above and not contact.above:
                    found.append(replace(kept, at=None))
    return tuple(found)


def _mixed(before: Shortened, after: Shortened, shares: Floats) -> dict[tuple[Side, Segment], Floats]:
    keys = sorted({*before, *after})
    return {key: before.get(key, 1.0) + (after.get(key, 1.0) - before.get(key, 1.0)) * shares for key in keys}
