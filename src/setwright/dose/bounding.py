"""What a set comes to in another measure, so that a limit in one of them cannot be got round in the other.

Time to keep moving is repetitions at a tempo, and repetitions are time. Where nothing is written, the quickest usual
pace counts for repetitions in a time, and the usual one for the time that repetitions take.
"""

from fractions import Fraction
from math import floor
from typing import Final

from setwright.dose.contacts import contacts_of, is_jump
from setwright.dose.dose import CARRY_CM_PER_S, USUAL_TEMPO
from setwright.dose.timing import QUICKER_FREE_REPS
from setwright.model.exercise import Exercise
from setwright.model.load import Effort, Load, OneRepMaxShare, Reserve
from setwright.model.prescription import Measure
from setwright.model.tempo import Tempo

MOST_EFFORT: Final = Fraction(10)
"""Effort at which no repetition is left; each one in reserve is one less. Zourdos MC et al., J Strength Cond Res
2016;30:267-275, from effort 7 upwards; below that it is a habit of coaches."""


def reps_in(exercise: Exercise, measure: Measure, amount: int | Fraction, tempo: Tempo | None) -> int:
    """Return how many whole repetitions a set comes to, on one side; jumps are counted by their landings."""
    if measure == "reps":
        return int(amount)
    if is_jump(exercise) and measure != "hold":
        return contacts_of(measure, amount, tempo)
    pace_s = Fraction(tempo.rep_s) if tempo is not None else USUAL_TEMPO.rep_s * QUICKER_FREE_REPS
    return floor(seconds_in(measure, amount, tempo) / pace_s)


def seconds_in(measure: Measure, amount: int | Fraction, tempo: Tempo | None) -> Fraction:
    """Return how many seconds a set lasts, on one side: repetitions at their tempo, walks at 1 m/s."""
    match measure:
        case "reps":
            return Fraction(amount) * (tempo or USUAL_TEMPO).rep_s
        case "distance":
            return Fraction(amount) / CARRY_CM_PER_S
        case _:
            return Fraction(amount)


def centimetres_in(measure: Measure, amount: int | Fraction, tempo: Tempo | None) -> Fraction:
    """Return how far a set may lead, in centimetres: time and repetitions at 1 m/s, a hold nowhere."""
    match measure:
        case "distance":
            return Fraction(amount)
        case "hold":
            return Fraction(0)
        case _:
            return seconds_in(measure, amount, tempo) * CARRY_CM_PER_S


def longest_pause_s(tempo: Tempo | None) -> int:
    """Return the longest pause of a repetition, in seconds: that long a member holds still."""
    return max(tempo.pause_low_s, tempo.pause_high_s) if tempo is not None else 0


def effort_of(load: Load) -> Fraction | None:
    """Return the effort, 0 to 10, that a load asks for in its own words; None for a load that says none."""
    match load:
        case Effort(rpe=rpe):
            return rpe
        case Reserve(reps=reps):
            return MOST_EFFORT - reps
        case _:
            return None


def is_open(load: Load) -> bool:
    """Say whether no scale of the tool bounds a load: a share of 1RM, an effort, reps in reserve, a band.

    What it weighs depends on a member, or on the band.
    """
    return not load.weighed or isinstance(load, OneRepMaxShare)
