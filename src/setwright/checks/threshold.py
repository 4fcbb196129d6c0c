"""A check's numbers that a club may set for itself, each with a unit, a default and a range that makes sense."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Final, Literal

from setwright.model.setting import Setting
from setwright.model.units import parse_count, parse_duration_s, parse_percent, parse_weeks, plain_number
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

Key = Literal["least", "most"]
Unit = Literal["%", "weeks", "time", "count"]

_HOUR_S: Final = 3600


@dataclass(frozen=True, slots=True)
class Threshold:
    """One number of a check: percent, weeks, seconds or a count, as ``unit`` says."""

    rule: str
    key: Key
    unit: Unit
    default: Fraction
    lowest: Fraction
    highest: Fraction
    about: str

    def said(self, value: Fraction) -> str:
        """Return a value of this threshold as a coach would write it."""
        match self.unit:
            case "%":
                return f"{plain_number(value)} %"
            case "weeks":
                return f"{plain_number(value)} {'week' if value == 1 else 'weeks'}"
            case "time" if value and value % _HOUR_S == 0:
                return f"{int(value) // _HOUR_S} h"
            case "time":
                return duration(ENGLISH, int(value))
            case _:
                return plain_number(value)

    def parse(self, written: str) -> Fraction:
        """Return the value that a club wrote.

        Raises:
            ValueError: for a value in another unit, or outside the range.
        """
        value = Fraction(_PARSERS[self.unit](written))
        if not self.lowest <= value <= self.highest:
            raise ValueError(f"it runs from {self.said(self.lowest)} to {self.said(self.highest)}")
        return value

    def set_by(self, settings: list[Setting]) -> Fraction:
        """Return the club's value, or the default where the club set none that makes sense."""
        for setting in settings:
            written = getattr(setting, self.key)
            if setting.rule == self.rule and written is not None:
                try:
                    return self.parse(written)
                except ValueError:
                    return self.default
        return self.default


def threshold(rule: str, key: Key, unit: Unit, default: int, within: tuple[int, int], about: str) -> Threshold:
    """Return a threshold from whole numbers; times in seconds."""
    return Threshold(rule, key, unit, Fraction(default), Fraction(within[0]), Fraction(within[1]), about)


_PARSERS: Final[Mapping[Unit, Callable[[str], int | Fraction]]] = {
    "%": parse_percent,
    "weeks": parse_weeks,
    "time": lambda written: _parse_hours_s(written),
    "count": parse_count,
}


def _parse_hours_s(written: str) -> int:
    """Return seconds; days between sessions are longer than any time inside one, so hours stand by themselves."""
    number, _, unit = written.strip().partition(" ")
    if unit == "h" and number.isdecimal() and len(number) <= 3:
        return int(number) * _HOUR_S
    return parse_duration_s(written)
