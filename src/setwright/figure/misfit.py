"""What a solved pose cannot do: contacts out of reach, bends that do not fit, limbs through the floor, falling over."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from setwright.figure.body import AT, JOINTS, Floats, Skeleton, centre_of_mass
from setwright.figure.contacts import Touch
from setwright.figure.pose import RANGE, Problem, out_of_plane
from setwright.figure.settling import unsettled
from setwright.model.figure import SIDES, Pose, View

REACH_CM: Final = 0.7
BEND_DEG: Final = 4.0
SETTLED_FLOOR_CM: Final = 1.5
BASE_CM: Final = 2.0
"""How far a contact, a bend, a limb and the centre of mass may stray before anyone is told."""

HALF_SOLE_CM: Final = 4.5
"""Half the width of a shoe, seen from the front. Assumed, no source."""

_BODY_REACH_CM: Final = 3.0
_EDGE_CM: Final = 6.0
"""The same for a hand on another part of the body, and for a foot that juts over an edge."""

Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Misfit:
    """One thing that a pose asks for and a body cannot do. ``path`` leads to it inside ``figure``."""

    rule: str
    path: Path
    message: str
    hint: str


def misfits(index: int, pose: Pose, problem: Problem, state: Floats) -> Iterator[Misfit]:
    """Yield everything that is wrong with one solved pose, gravest first."""
    here: Path = ("poses", index)
    body = Skeleton(state, problem.setting.view, problem.short, problem.setting.turn_deg)
    found = [*_out_of_reach(here, problem, body, state), *_bends(here, pose, problem, state)]
    yield from found
    if not found:
        yield from _through_the_floor(here, problem, body)
        yield from _falling(here, pose, problem, body)
        yield from _beyond_range(here, pose, problem, state)
        loose = unsettled(problem, state)
        if loose:
            view = problem.setting.view
            names = " and ".join(_said(name, view) for name in loose[:2])
            message = f"the {names} {'is' if len(loose) == 1 else 'are'} not settled by this pose"
            yield Misfit(
                "pose-not-settled", here, message, f"state one more bend, such as '{_as_written(loose[0], view)}'"
            )


def _as_written(name: str, view: View) -> str:
    words = _said(name, view).split()
    return f"{name}: 0" if len(words) == 1 else f"{words[1]}: {{{words[0]}: 0}}"


def _said(name: str, view: View) -> str:
    """Return a joint's name in the words of its view: from the front, near is the picture's right."""
    return name.replace("near ", "right ").replace("far ", "left ") if view == "front" else name


def _out_of_reach(here: Path, problem: Problem, body: Skeleton, state: Floats) -> Iterator[Misfit]:
    values = problem.residuals(state[None, :])[0]
    worst: dict[tuple[str, str], float] = {}
    for row, value in zip(problem.rows, values, strict=True):
        if row.kind in ("contact", "place"):
            gap = abs(float(value)) / row.weight
            worst[row.about, row.kind] = max(worst.get((row.about, row.kind), 0.0), gap)
    told: set[str] = set()
    for contact in problem.contacts:
        if contact.written in told:
            continue
        both = [other.key for other in problem.contacts if other.written == contact.written]
        reach = max(worst.get((key, kind), 0.0) for key in both for kind in ("contact", "place"))
        limit = REACH_CM if contact.surface is not None else _BODY_REACH_CM
        to = contact.surface.name if contact.surface else _said(str(contact.point), problem.setting.view)
        path = (*here, "touch", contact.written)
        if reach > limit:
            told.add(contact.written)
            far = f"can't reach the {to}: {reach:.0f} cm short" if reach >= 1 else f"misses the {to} by {reach:.1f} cm"
            hint = "move the place, or leave out a bend that keeps it away"
            yield Misfit("pose-does-not-fit", path, f"the {contact.written} {far}", hint)
        elif contact.surface is not None and contact.surface.span is not None and not contact.above:
            place = float(body.points[contact.placed_by()].real)
            low, high = contact.surface.span
            if not low - _EDGE_CM <= place <= high + _EDGE_CM:
                told.add(contact.written)
                hint = f"the {to} reaches from {low:.0f} to {high:.0f} cm; write 'at' within that"
                yield Misfit("pose-does-not-fit", path, f"the {contact.written} lands beside the {to}", hint)


def _bends(here: Path, pose: Pose, problem: Problem, state: Floats) -> Iterator[Misfit]:
    off: dict[tuple[str, int, int], list[str]] = {}
    for name, asked in problem.given.items():
        fits = float(state[AT[name]])
        if abs(fits - asked) > BEND_DEG and (name != "trunk" or pose.trunk is not None):
            off.setdefault((name.split()[-1], round(asked), round(fits)), []).append(name)
    for (joint, asked_deg, fits_deg), names in off.items():
        whose = f"{joint}s were" if len(names) == 2 else f"{_said(names[0], problem.setting.view)} was"
        message = f"the {whose} asked to be {asked_deg} degrees, but only {fits_deg} fits"
        hint = "with the other contacts and bends; change one of them, or leave this one out"
        yield Misfit("pose-does-not-fit", (*here, joint), message, hint)


def _through_the_floor(here: Path, problem: Problem, body: Skeleton) -> Iterator[Misfit]:
    for side in SIDES:
        on_floor = {c.part for c in problem.contacts if c.side == side}
        for point, clearance in (("knee", 4.0), ("ankle", 3.0), ("wrist", 2.0), ("elbow", 2.5), ("toe", -1.0)):
            if point == "toe" and "toes" in on_floor:
                continue
            depth = clearance - float(body.points[f"{side} {point}"].imag)
            if depth > SETTLED_FLOOR_CM:
                message = f"the {_said(f'{side} {point}', problem.setting.view)} is {depth:.0f} cm below the floor"
                yield Misfit("pose-does-not-fit", here, message, "bend or lift that limb, or let it touch the floor")


def _falling(here: Path, pose: Pose, problem: Problem, body: Skeleton) -> Iterator[Misfit]:
    """Where only level surfaces carry the body, its centre of mass must stand over them."""
    base = base_of_support(problem.contacts, body)
    if not pose.balance or base is None:
        return
    centre = float(centre_of_mass(body.points, held=problem.setting.held).real)
    beyond = max(base[0] - centre, centre - base[1])
    if beyond > BASE_CM:
        after = centre > base[1]
        if problem.setting.view == "front":
            way = "to the right" if after else "to the left"
        else:
            way = "forward" if after else "backward"
        message = f"this position falls {way}: the centre of mass is {beyond:.0f} cm outside what carries it"
        hint = "lean the other way, or write 'balance: false' for a position in motion"
        yield Misfit("pose-out-of-balance", here, message, hint)


def base_of_support(contacts: tuple[Touch, ...], body: Skeleton) -> tuple[float, float] | None:
    """Return from where to where level surfaces carry the body, in cm; None where something else carries it too."""
    ends: list[float] = []
    names: tuple[str, ...]
    for contact in contacts:
        if contact.surface is None or contact.above or contact.surface.lies == "alongside":
            continue
        if contact.surface.lies != "level":
            return None
        if contact.part in ("foot", "toes") and body.view == "front":
            names = ()
            under = float(body.points[f"{contact.side} heel"].real)
            ends += [under - HALF_SOLE_CM, under + HALF_SOLE_CM]
        elif contact.part in ("foot", "toes"):
            names = ("ball", "toe") if contact.part == "toes" else ("heel", "toe")
        elif contact.part in ("back", "side", "hips", "shoulders"):
            names = ()
            ends += [float(body.points["hip"].real) - 15, float(body.points["hip"].real) + 15]
            ends += [float(body.points["shoulder"].real)] if contact.part != "hips" else []
        elif contact.part == "shin":
            names = ("knee", "ankle")
        elif contact.part == "forearm":
            names = ("elbow", "wrist")
        else:
            names = ({"hand": "grip"}.get(contact.part, contact.part),)
        ends += [float(body.points[f"{contact.side} {name}"].real) for name in names]
    return (min(ends), max(ends)) if ends else None


def _beyond_range(here: Path, pose: Pose, problem: Problem, state: Floats) -> Iterator[Misfit]:
    view = problem.setting.view
    for side in SIDES:
        for joint in JOINTS:
            low, high = RANGE[view][joint]
            angle = float(state[AT[f"{side} {joint}"]])
            if not out_of_plane(problem.short, side, joint) and not low - BEND_DEG <= angle <= high + BEND_DEG:
                name = _said(f"{side} {joint}", view)
                message = f"the {name} bends to {angle:.0f} degrees, beyond its usual {low} to {high}"
                path = (*here, joint) if getattr(pose, joint) is not None else here
                yield Misfit("pose-beyond-range", path, message, "check the bend; a picture teaches what it shows")
