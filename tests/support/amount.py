"""How many examples a property is tried with: few by hand, many in a run at night, which has another seed each day.

``SETWRIGHT_EXAMPLES=10`` tries ten times as many, drawn anew in each run; ``--hypothesis-seed`` draws the same again.
"""

import os
from typing import Final

TIMES: Final = float(os.environ.get("SETWRIGHT_EXAMPLES", "1"))
"""So many times the usual number."""

USUAL: Final = 25
"""What a property is tried with where it does not say otherwise."""


def examples(count: int = USUAL) -> int:
    """Return with how many examples to try a property that is usually tried with so many."""
    return max(1, round(count * TIMES))
