"""How many repetitions go with which share of the one-repetition maximum.

Source: the repetition table of Baechle TR, Earle RW (eds), Essentials of Strength Training and Conditioning, NSCA /
Human Kinetics (2nd ed. 2000, 3rd ed. 2008). The table prints nothing for 13 and 14 repetitions, and nothing is made
up for them here. It is a rough guide: people differ, and leg presses allow more repetitions than
bench presses at the same share (Nuzzo JL et al., Sports Med 2024;54:303-321).
"""

from fractions import Fraction
from typing import Final

PERCENT_AT_REPS: Final[dict[int, int]] = {
    1: 100,
    2: 95,
    3: 93,
    4: 90,
    5: 87,
    6: 85,
    7: 83,
    8: 80,
    9: 77,
    10: 75,
    11: 70,
    12: 67,
    15: 65,
}
"""Repetitions to failure: percent of 1RM, as printed."""

FROM_MEMORY: Final = frozenset({12})
"""Repetitions whose share was not seen in print. The others were, in works that reprint the table."""


def most_reps(percent: Fraction) -> int | None:
    """Return the most repetitions that the table allows at a share of 1RM; None below the table's end (65 %)."""
    if percent < min(PERCENT_AT_REPS.values()):
        return None
    return max((reps for reps, share in PERCENT_AT_REPS.items() if share >= percent), default=0)
