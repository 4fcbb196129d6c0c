"""An amount as a coach prescribes it: one number, or from one to another."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Self


@dataclass(frozen=True, slots=True)
class Span:
    """From the low end to the high one, both included, in whatever unit it stands for."""

    low: int | Fraction
    high: int | Fraction

    @classmethod
    def of(cls, number: int | Fraction) -> Self:
        """Return one number as a span."""
        return cls(number, number)

    @property
    def is_one(self) -> bool:
        """Whether it is one number."""
        return self.low == self.high

    def __add__(self, other: "Span") -> "Span":
        return Span(self.low + other.low, self.high + other.high)

    def __mul__(self, count: int) -> "Span":
        return Span(self.low * count, self.high * count)


@dataclass(frozen=True, slots=True)
class Open(Span):
    """As many as possible: a set that ends when so many repetitions are left, and not at a number.

    ``leave`` are the repetitions that must be left, ``up_to`` is where it ends in any case, if anywhere. ``low`` and
    ``high`` are what it is counted as (``dose/open_ended.py``); as read from a file, they say nothing yet.
    """

    leave: int = 0
    up_to: int | None = None


AS_WRITTEN: Final = Open(1, 1)
"""'as many as possible', as it stands in a file."""
