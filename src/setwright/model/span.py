"""An amount as a coach prescribes it: one number, or from one to another."""

from dataclasses import dataclass
from fractions import Fraction
from typing import Self


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
