"""A repetition as it is done: the phases of a tempo in the order of the movement.

A tempo is written lowering first, whatever the movement. A squat goes down first; a row, a heel raise or a press goes
up first, and its pause at the top comes before the lowering.
"""

from dataclasses import dataclass
from typing import Literal

from setwright.model.tempo import FAST_LIFT_S, Tempo

PhaseKind = Literal["lower", "pause", "lift", "hold", "settle"]
"""Lowering, the pause at the bottom, lifting, the hold at the top; after a jump, nobody holds there, but settles."""

Manner = Literal["lowers first", "lifts first", "jumps"]
"""How a repetition goes: down and up, up and down, or down, off the ground and back onto it."""


@dataclass(frozen=True, slots=True)
class Phase:
    """One phase. ``fast`` is as fast as control allows; ``seconds`` is then what it counts in a session's time."""

    kind: PhaseKind
    seconds: int
    fast: bool = False


def phases(tempo: Tempo, manner: Manner = "lowers first") -> tuple[Phase, ...]:
    """Return the phases that take time, in the order in which they are done."""
    fast = tempo.lifting_s is None
    down = (Phase("lower", tempo.lowering_s), Phase("pause", tempo.pause_low_s))
    lifting_s = FAST_LIFT_S if tempo.lifting_s is None else tempo.lifting_s
    up = (Phase("lift", lifting_s, fast), Phase("settle" if manner == "jumps" else "hold", tempo.pause_high_s))
    return tuple(phase for phase in ((*down, *up) if manner != "lifts first" else (*up, *down)) if phase.seconds)
