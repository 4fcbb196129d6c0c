"""Sets of as many repetitions as possible: what they are counted as, since nobody knows the number before.

With a share of 1RM that the repetition table knows, the most is what the table allows less what must be left, and the
least three below that. Anything else counts as 5 to 15 repetitions. Where ``up_to`` ends the set, it is the most at
which limits, times and totals look. Common practice, no source.
"""

from dataclasses import replace
from fractions import Fraction
from typing import Final

from setwright.dose.dose import Dose, Set
from setwright.dose.repetitions import most_reps
from setwright.model.amounts import Amounts
from setwright.model.load import Load, OneRepMaxShare
from setwright.model.span import Open, Span

USUAL: Final = Span(5, 15)
"""Where no table says how many a member gets done."""
FEWER: Final = 3
"""How far the least lies below what the repetition table allows."""


def counted(one: Open, load: Load | None) -> Open:
    """Return an open set with the repetitions that it is counted as, for the load that it is done with."""
    can = most_reps(load.percent) if isinstance(load, OneRepMaxShare) else None
    if can is None:
        low, high = int(USUAL.low), one.up_to or int(USUAL.high)
    else:
        high = max(1, can - one.leave)
        high = min(high, one.up_to or high)
        low = high - FEWER
    return replace(one, low=max(1, min(low, high)), high=high)


def all_counted(dose: Dose) -> Dose:
    """Return a dose whose open sets are counted for their loads; such a set says itself how it feels."""
    return replace(dose, sets=tuple(_counted(one) for one in dose.sets))


def _counted(one: Set) -> Set:
    return replace(one, amount=counted(one.amount, one.load), feels=None) if isinstance(one.amount, Open) else one


def ended(amounts: Amounts, leave: int | None, up_to: int | None) -> Amounts:
    """Return amounts whose open ones know what must be left, and where they end."""
    return tuple(replace(one, leave=leave or 0, up_to=up_to) if isinstance(one, Open) else one for one in amounts)


def most_in(amount: Span) -> int | Fraction | None:
    """Return the most that a set may come to; None where nothing ends it."""
    return amount.up_to if isinstance(amount, Open) else amount.high
