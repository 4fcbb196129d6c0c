"""The fixed words of the trade that the language knows."""

from typing import Final, Literal

Pattern = Literal[
    "squat", "hinge", "lunge", "push", "pull", "carry", "trunk", "calf", "balance", "jump", "throw", "mobility"
]
"""The movement pattern of an exercise."""

Region = Literal[
    "quadriceps",
    "hamstrings",
    "glutes",
    "hip flexors",
    "hip stabilisers",
    "inner thigh",
    "calf",
    "shin",
    "foot",
    "abdominals",
    "side trunk",
    "lower back",
    "upper back",
    "lats",
    "chest",
    "shoulders",
    "rotator cuff",
    "arms",
    "biceps",
    "triceps",
    "forearms",
    "grip",
    "neck",
]
"""A region of the body that an exercise works."""

Sides = Literal["both together", "one at a time", "alternating"]
"""How the sides of the body share the work. One at a time: reps count on each side. Alternating: reps count in all."""

Weekday = Literal["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]

WEEKDAYS: Final[tuple[Weekday, ...]] = (
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
)
"""In the order of ISO 8601, so that the index is ``date.weekday()``."""
