"""Lighter weeks and tapers: what remains of a dose."""

from dataclasses import dataclass
from fractions import Fraction
from math import ceil
from typing import Final, Literal

from setwright.dose.progression import with_magnitude
from setwright.model.calendar import ComingBack
from setwright.model.load import BodyWeightShare, Load, OneRepMaxShare, Weight, magnitude
from setwright.model.plan import Phase

WHOLE: Final = Fraction(100)
"""The share of what stays as it is."""

HALF_MINUTE_S: Final = 30

WeekKind = Literal["normal", "lighter", "taper"]


@dataclass(frozen=True, slots=True)
class Remains:
    """The share of each number that a week keeps, as percentages, and what the week is called."""

    kind: WeekKind = "normal"
    sets: Fraction = WHOLE
    reps: Fraction = WHOLE
    load: Fraction = WHOLE


def remains_in(phase: Phase, phase_week: int) -> Remains:
    """Return what remains in a week of a phase, counted from 1. A taper's own lighter weeks go before the taper."""
    lighter = phase.lighter
    if lighter and phase_week in lighter.weeks:
        return Remains("lighter", lighter.sets or WHOLE, lighter.reps or WHOLE, lighter.load or WHOLE)
    if phase.taper:
        return Remains("taper", sets=phase.taper.sets[phase_week - 1])
    return Remains()


def remains_after(coming_back: ComingBack, planned: Remains) -> Remains:
    """Return what remains in the week after a break: of each number the smaller share, where the week has one too."""
    whole = Fraction(100)
    return Remains(
        "lighter",
        min(coming_back.sets or whole, planned.sets),
        min(coming_back.reps or whole, planned.reps),
        min(coming_back.load or whole, planned.load),
    )


def share_of_count(count: int, percent: Fraction) -> int:
    """Return a share of sets, reps or seconds as a whole number of one or more; a half goes to the smaller."""
    exact = count * percent / 100
    return max(1, ceil(exact - Fraction(1, 2)))


def share_of_time(count_s: int, percent: Fraction) -> int:
    """Return a share of the time of as many rounds as possible: whole half minutes, rounded down, and one at least."""
    return max(1, int(count_s * percent / 100 / HALF_MINUTE_S)) * HALF_MINUTE_S if percent != WHOLE else count_s


def share_of_load(load: Load | None, percent: Fraction) -> Load | None:
    """Return a share of a load. Efforts, reps in reserve and bands stay: they follow the member anyway.

    Help stays, too: a share of it would be less help, and the week heavier.
    """
    if isinstance(load, BodyWeightShare | OneRepMaxShare | Weight):
        return with_magnitude(load, magnitude(load) * percent / 100)
    return load
