"""A small damped least-squares solver for many small problems at once, after Levenberg 1944 and Marquardt 1963.

Own code because it differentiates all unknowns of all problems in one call, and limits each step in degrees so that a
body never jumps into another shape. numpy does the linear algebra.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.figure.body import Floats

Residuals = Callable[[Floats], Floats]
"""From states of shape (problems, states, unknowns) to residuals of shape (problems, states, residuals)."""

_NUDGE: Final = 1e-4
_MOST_ROUNDS: Final = 90
_FARTHEST: Final = 25.0
_DONE: Final = 1e-7
_STUCK: Final = 1e7
_FREE: Final = 1e-10
"""Below this damping even a direction that only weak wishes pull at has been followed to its end."""


@dataclass(frozen=True)
class Solved:
    """The nearest states, one a problem, and what each costs (the sum of its squared residuals)."""

    states: Floats
    costs: Floats


def jacobian(residuals: Residuals, states: Floats) -> tuple[Floats, Floats]:
    """Return residuals (problems, residuals) and their derivatives (problems, residuals, unknowns)."""
    unknowns = states.shape[1]
    nudges = np.vstack([np.zeros(unknowns), _NUDGE * np.eye(unknowns)])
    values = residuals(states[:, None, :] + nudges)
    slopes = (values[:, 1:] - values[:, :1]) / _NUDGE
    return values[:, 0], slopes.transpose(0, 2, 1)


def solve(residuals: Residuals, starts: Floats) -> Solved:
    """Return, for each start (problems, unknowns), the nearest state with the least sum of squared residuals."""
    states = np.array(starts, dtype=float)
    damping = np.full(len(states), 1e-2)
    open_ = np.ones(len(states), dtype=bool)
    values, slopes = jacobian(residuals, states)
    costs = (values**2).sum(axis=1)
    for _ in range(_MOST_ROUNDS):
        across = slopes.transpose(0, 2, 1)
        normal, pull = across @ slopes, (across @ values[..., None])[..., 0]
        diagonal = np.einsum("pii->pi", normal)
        steps = np.linalg.solve(normal + _diagonals(damping[:, None] * (diagonal + 1e-9)), -pull[..., None])[..., 0]
        longest = np.abs(steps).max(axis=1, keepdims=True)
        steps *= np.minimum(1.0, _FARTHEST / np.maximum(longest, 1e-12))
        tried = states + steps
        tried_costs = (residuals(tried[:, None, :])[:, 0] ** 2).sum(axis=1)
        better = open_ & (tried_costs < costs)
        gains = np.where(better, costs - tried_costs, np.inf)
        states[better] = tried[better]
        costs = np.where(better, tried_costs, costs)
        damping = np.where(better, np.maximum(damping / 12, 1e-13), damping * 6)
        open_ &= ((gains >= _DONE * (1 + costs)) | (damping > _FREE)) & (damping < _STUCK)
        if not open_.any():
            break
        if better.any():
            values, slopes = jacobian(residuals, states)
    return Solved(states, costs)


def _diagonals(rows: Floats) -> Floats:
    made: Floats = rows[:, :, None] * np.eye(rows.shape[1])
    return made
