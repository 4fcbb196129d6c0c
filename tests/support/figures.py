"""Figures from YAML snippets, and what tests ask of their positions."""

from itertools import pairwise

import numpy as np

from setwright.figure.body import AT
from setwright.figure.motion import Motion, solved
from setwright.model.figure import SIDES, Figure
from support.make import yaml


def figure(snippet: str) -> Figure:
    return Figure.model_validate(yaml(snippet))


def one_pose(snippet: str) -> Motion:
    """A figure of one pose, solved."""
    return solved(figure(f"poses: [{{{snippet}}}]"))


def degrees(motion: Motion, pose: int = 0) -> dict[str, float]:
    """The angles of a pose by name, in degrees."""
    return {name: float(motion.poses[pose].state[index]) for name, index in AT.items()}


def joint_gap_cm(motion: Motion) -> float:
    """How far, at worst, a drawn limb's end leaves its joint while parts move in straight lines between two frames."""
    worst = 0.0
    for before, after in pairwise(motion.frames):
        a, b = motion.skeleton(before), motion.skeleton(after)
        for side in SIDES:
            for upper, lower, name in (("hip", "knee", "thigh"), ("shoulder", "elbow", "upper arm")):
                near = [body.points[f"{side} {upper}"] for body in (a, b)]
                far = [body.points[f"{side} {lower}"] for body in (a, b)]
                angle = (a.angles[f"{side} {name}"] + b.angles[f"{side} {name}"]) / 2
                length = (abs(far[0] - near[0]) + abs(far[1] - near[1])) / 2
                drawn = (near[0] + near[1]) / 2 - 1j * length * np.exp(1j * np.radians(angle))
                worst = max(worst, float(abs(drawn - (far[0] + far[1]) / 2)))
    return worst
