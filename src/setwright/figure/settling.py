"""Finding a pose's state from its problem, what nothing decides about it, and where its contacts then stand."""

from typing import Final

import numpy as np

from setwright.figure.body import STATE, Floats, Skeleton
from setwright.figure.contacts import Touch
from setwright.figure.pose import Problem
from setwright.figure.segments import BALL_AHEAD
from setwright.figure.solver import jacobian, solve

_SEEDS: Final = ({"elbow": 90.0, "shoulder": 30.0}, {"elbow": 110.0, "shoulder": -10.0}, {"knee": 90.0})


_FITS: Final = {"contact": 0.5, "place": 0.5, "balance": 0.7, "stated": 3.0}
"""What a pose may miss, in cm and degrees, before another start is tried."""


def settle(problem: Problem) -> Floats:
    """Return a pose's state from a likely start, and three more where something does not fit; the cheapest wins."""
    best = solve(problem.residuals, problem.start()[None, :])
    values = np.abs(problem.residuals(best.states)[0])
    if any(value > row.weight * _FITS.get(row.kind, np.inf) for row, value in zip(problem.rows, values, strict=True)):
        others = solve(problem.residuals, np.stack([problem.start(seed) for seed in _SEEDS]))
        cheapest = int(others.costs.argmin())
        if others.costs[cheapest] < best.costs[0] - 1e-6:
            return np.array(others.states[cheapest])
    return np.array(best.states[0])


_TELLING: Final = ("trunk", "hip", "knee")
"""The angles that make a position another one. An arm that finds its own way to a wall misleads nobody."""


def unsettled(problem: Problem, state: Floats) -> list[str]:
    """Return the angles that nothing written decides and that did not stay near standing: the pose says too little.

    Looks for directions in which the body can still move without touching any contact, balance or stated angle.
    """
    slopes = jacobian(problem.residuals, state[None, :])[1][0]
    hard = [index for index, row in enumerate(problem.rows) if row.kind in ("contact", "place", "balance", "stated")]
    weights = np.array([problem.rows[index].weight for index in hard])
    matrix = slopes[hard] / weights[:, None]
    _, sizes, directions = np.linalg.svd(matrix, full_matrices=True)
    free = directions[int((sizes > 0.02).sum()) :]
    loose = np.sqrt((free**2).sum(axis=0))
    found = []
    for index, name in enumerate(STATE[2:], start=2):
        drifted = abs(state[index] - problem.usual.get(name, 0.0))
        if name not in problem.given and loose[index] > 0.35 and drifted > 25 and name.split()[-1] in _TELLING:
            found.append((-loose[index] * drifted, name))
    return [name for _, name in sorted(found)]


def pins_of(contacts: tuple[Touch, ...], body: Skeleton) -> dict[str, float]:
    """Return where a pose's contacts stand, so that a later pose keeps them; a flat foot pins its own toes too."""
    pins: dict[str, float] = {}
    for contact in contacts:
        if contact.surface is None:
            continue
        place = body.points[contact.placed_by()]
        level = contact.surface.lies == "level"
        pins[contact.key] = float(place.real if level else place.imag)
        if contact.part == "foot" and body.view == "side":
            pins[f"{contact.side} toes"] = float(body.points[f"{contact.side} ball"].real)
            pins[f"{contact.side} heel"] = float(body.points[f"{contact.side} heel"].real)
        if contact.part == "toes" and body.view == "side":
            pins.setdefault(f"{contact.side} foot", float(body.points[f"{contact.side} ball"].real) - BALL_AHEAD)
    return pins
