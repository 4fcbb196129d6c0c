"""From a figure's words to its positions: every pose solved, what does not fit, and the frames in between."""

import math
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field, replace
from functools import cached_property, lru_cache
from itertools import pairwise
from typing import Final

import numpy as np

from setwright.figure import kept
from setwright.figure.body import Floats, Shortened, Skeleton, centre_of_mass
from setwright.figure.contacts import Touch, surfaces, touches
from setwright.figure.misfit import Misfit, misfits
from setwright.figure.obstacles import inside_blocks
from setwright.figure.pose import Problem, Setting, shortened, stated
from setwright.figure.settling import pins_of, settle
from setwright.figure.solver import solve
from setwright.model.figure import SIDES, Figure, Segment, Side

STEPS: Final = 8
"""The most frames between two poses."""

_FEWEST: Final = 2
_TURN_DEG: Final = 14.0
"""How far a limb may turn from frame to frame. With more, joints visibly part between them."""

_ARM_DEG: Final = 28.0
"""The same for an arm, on which nothing hangs."""

_MANY: Final = 6.5
"""From this many poses on, frames are farther apart."""

_STEP_CM: Final = 3.0
"""A foot that stands this far from where it stood is lifted on the way: feet step, they do not slide."""

_LIFT: Final = 0.16
_HIGHEST_CM: Final = 11.0
"""How high it is lifted: a share of the way, and the most."""

_STILL_CM: Final = 1.0
"""A centre of mass that moves less than this up or down neither sinks nor rises."""

_FEET: Final = ("foot", "toes", "heel")
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
    turn_deg: float


@dataclass(frozen=True, eq=False)
class Motion:
    """A figure, solved. ``frames`` lead from the first pose to the last; ``stops`` are the places of the poses."""

    figure: Figure
    frames: tuple[Frame, ...]
    stops: tuple[int, ...]
    misfits: tuple[Misfit, ...]

    def skeleton(self, frame: Frame) -> Skeleton:
        """Return the joints of one frame."""
        return Skeleton(frame.state, self.figure.view, frame.short, frame.turn_deg)

    @property
    def poses(self) -> tuple[Frame, ...]:
        """The frames of the poses."""
        return tuple(self.frames[stop] for stop in self.stops)

    @cached_property
    def states(self) -> Floats:
        """What the solver found, one state a row: those of the poses, then those on the ways between them."""
        ways = [frame.state for place, frame in enumerate(self.frames) if place not in self.stops]
        return np.stack([*(frame.state for frame in self.poses), *ways])

    @property
    def shown(self) -> tuple[int, ...]:
        """The places of the frames that a still picture shows: the poses that are not merely passed through."""
        return tuple(stop for stop, pose in zip(self.stops, self.figure.poses, strict=True) if not pose.passed)

    @cached_property
    def telling(self) -> int:
        """The place of the shown frame that says most: in the air, where one is; else what differs most from the first.

        Where a movement comes back, that is its end.
        """
        for stop in self.shown:
            if all(contact.above for contact in self.frames[stop].contacts if contact.surface):
                return stop
        if self.figure.comes_back:
            return self.shown[-1]
        bodies = [self.skeleton(self.frames[stop]).points for stop in (0, *self.shown)]
        # Where a body stands does not matter for what it shows.
        first, *others = [{name: complex(place - body["hip"]) for name, place in body.items()} for body in bodies]
        moved = [math.fsum(abs(other[name] - first[name]) for name in first) for other in others]
        return self.shown[moved.index(max(moved))]

    @cached_property
    def heights_cm(self) -> tuple[float, ...]:
        """How high the centre of mass is in every frame, with what is held."""
        held = held_by(self.figure)
        return tuple(float(centre_of_mass(self.skeleton(f).points, held=held).imag) for f in self.frames)

    @cached_property
    def turns(self) -> tuple[int, ...]:
        """The places of the poses at which a movement that does not come back turns from sinking to rising or back."""
        heights = [self.heights_cm[stop] for stop in self.stops]
        found: list[int] = []
        way = 0.0
        for stop, (before, after) in zip(self.stops, pairwise(heights), strict=False):
            rise = after - before
            if abs(rise) > _STILL_CM:
                if way * rise < 0:
                    found.append(stop)
                way = rise
        return tuple(found)

    @property
    def along(self) -> tuple[float, ...]:
        """How far along the whole way every frame is, from 0 to 1: every way between two poses counts the same."""
        ways = list(pairwise(self.stops))
        shares = [(way + k / (b - a)) / len(ways) for way, (a, b) in enumerate(ways) for k in range(b - a)]
        return (*shares, 1.0)

    @cached_property
    def lowers_first(self) -> bool:
        """Whether the first thing that happens is the lowering phase of the tempo."""
        if self.figure.begins is not None:
            return self.figure.begins == "lowering"
        until = -1 if self.figure.comes_back or not self.turns else self.turns[0]
        return self.heights_cm[until] < self.heights_cm[0]


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
    key = _Key(figure.model_dump_json(), figure)
    motion = _solved(key)
    kept.keep(key.written, motion.states)
    return motion


@dataclass(frozen=True)
class _Key:
    """A figure that equals another with the same words."""

    written: str
    figure: Figure = field(compare=False)


class _Finding:
    """The states of a figure, one after the other: solved, or, where they are known, taken from there."""

    def __init__(self, known: Floats | None = None) -> None:
        self.known = known
        self.taken = 0

    def pose(self, problem: Problem) -> Floats:
        """Return the state of a pose."""
        return settle(problem) if self.known is None else self._next(1)[0]

    def way(self, problem: Problem, starts: Floats) -> Floats:
        """Return the states on the way between two poses, one a start."""
        return solve(problem.residuals, starts).states if self.known is None else self._next(len(starts))

    @property
    def fits(self) -> bool:
        """Whether what was known is just what was asked for."""
        return self.known is None or self.taken == len(self.known)

    def _next(self, count: int) -> Floats:
        if self.known is None or self.taken + count > len(self.known):
            raise _UnknownError
        self.taken += count
        return self.known[self.taken - count : self.taken]


class _UnknownError(Exception):
    """More states were asked for than are known."""


@lru_cache(maxsize=1024)
def _solved(key: _Key) -> Motion:
    known = kept.before(key.written)
    if known is not None:
        finding = _Finding(known)
        with suppress(_UnknownError):
            motion = _moved(key.figure, finding)
            if finding.fits:
                return motion
    return _moved(key.figure, _Finding())


def _moved(figure: Figure, finding: _Finding) -> Motion:
    around = surfaces(figure)
    held = held_by(figure)
    pins: dict[str, float] = {}
    found: list[Misfit] = []
    poses: list[Frame] = []
    for index, pose in enumerate(figure.poses):
        contacts = touches(pose, around)
        setting = Setting(figure.view, held, dict(pins), turn_deg=float(pose.turn))
        problem = Problem(contacts, stated(pose), setting, shortened(pose), pose.balance)
        state = finding.pose(problem)
        found += misfits(index, pose, problem, state)
        frame = Frame(state, contacts, shortened(pose), pose.neck, pose.back, pose.turn)
        poses.append(frame)
        pins |= pins_of(contacts, Skeleton(state, figure.view, frame.short, frame.turn_deg))
    frames, stops = [poses[0]], [0]
    for before, after in pairwise(poses):
        frames += [*_between(figure, before, after, held, finding), after]
        stops.append(len(frames) - 1)
    if not found:
        bodies = [Skeleton(f.state, figure.view, f.short, f.turn_deg) for f in frames]
        found += inside_blocks(figure, bodies, stops)
    return Motion(figure, tuple(frames), tuple(stops), tuple(found))


def _between(
    figure: Figure, before: Frame, after: Frame, held: tuple[tuple[str, float], ...], finding: _Finding
) -> Iterator[Frame]:
    """Yield the frames on the way: angles interpolated, then solved again so that shared contacts do not come loose.

    A contact that both poses have in different places moves there in a straight line, such as hands along a wall; a
    foot is lifted on its way.
    """
    start, end = (Skeleton(f.state, figure.view, f.short, f.turn_deg) for f in (before, after))
    shares = _shares(start, end, coarser=max(1.0, len(figure.poses) / _MANY))
    shared = _shared(before.contacts, after.contacts)
    first, last = pins_of(before.contacts, start), pins_of(after.contacts, end)
    pins: dict[str, Floats] = {}
    lifts: dict[str, Floats] = {}
    for touch in shared:
        if touch.key in first and touch.key in last:
            way = last[touch.key] - first[touch.key]
            pins[touch.key] = (first[touch.key] + way * shares)[:, None]
            if touch.part in _FEET and abs(way) > _STEP_CM:
                lifts[touch.key] = (min(_LIFT * abs(way), _HIGHEST_CM) * np.sin(np.pi * shares))[:, None]
    priors = before.state + (after.state - before.state) * shares[:, None]
    short = _mixed(before.short, after.short, shares)
    by_state = {key: values[:, None] for key, values in short.items()}
    turns = before.turn_deg + (after.turn_deg - before.turn_deg) * shares
    setting = Setting(figure.view, held, pins, lifts, turns[:, None])
    problem = Problem(shared, {}, setting, by_state, False, priors[:, None, :], _BETWEEN_WEIGHT)
    states = finding.way(problem, priors)
    for index, share in enumerate(shares):
        neck = before.neck_deg + (after.neck_deg - before.neck_deg) * share
        back = before.back_deg + (after.back_deg - before.back_deg) * share
        seen = {key: float(v[index]) for key, v in short.items()}
        yield Frame(states[index], shared, seen, neck, back, float(turns[index]))


def _shares(before: Skeleton, after: Skeleton, coarser: float) -> Floats:
    """Return how far along the way each frame between two poses is: more of them where limbs turn far.

    A movement of many poses gets fewer frames from each to the next, or its page would weigh too much.
    """
    turned = 0.0
    for name in before.angles:
        of_an_arm = name.endswith("arm")
        turned = max(
            turned, abs(float(after.angles[name] - before.angles[name])) / (_ARM_DEG if of_an_arm else _TURN_DEG)
        )
    steps = min(max(_FEWEST, math.ceil(turned / coarser)), STEPS)
    shares: Floats = np.arange(1, steps) / steps
    return shares


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
            if contact.part == flat and other is not None and other.surface == contact.surface:
                kept = other if contact.part == "foot" else contact
                if not kept.above and not contact.above:
                    found.append(replace(kept, at=None))
    return tuple(found)


def _mixed(before: Shortened, after: Shortened, shares: Floats) -> dict[tuple[Side, Segment], Floats]:
    keys = sorted({*before, *after})
    return {key: before.get(key, 1.0) + (after.get(key, 1.0) - before.get(key, 1.0)) * shares for key in keys}
