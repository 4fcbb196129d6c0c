"""How many examples a property is tried with: few by hand, many in a run at night, which has another seed each day.

``SETWRIGHT_EXAMPLES=10`` tries ten times as many, drawn anew in each run; ``--hypothesis-seed`` draws the same again.
"""

import os
from collections.abc import Iterable
from typing import Final, TypeVar

import pytest

T = TypeVar("T")

TIMES: Final = float(os.environ.get("SETWRIGHT_EXAMPLES", "1"))
"""So many times the usual number."""

USUAL: Final = 25
"""What a property is tried with where it does not say otherwise."""


def examples(count: int = USUAL) -> int:
    """Return with how many examples to try a property that is usually tried with so many."""
    return max(1, round(count * TIMES))


at_night = pytest.mark.skipif(TIMES <= 1, reason="tried at night: SETWRIGHT_EXAMPLES=10")
"""Marks a test that looks at the same from one more side."""


def some(every: Iterable[T], step: int) -> list[T]:
    """Return one of so many cases by hand, all of them at night."""
    return list(every)[:: step if TIMES <= 1 else 1]
