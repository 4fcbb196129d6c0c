"""How hard sets are to feel, whichever way it is written: what the checks of effort share."""

from fractions import Fraction

from setwright.checks.limit_open import left
from setwright.dose.bounding import effort_of
from setwright.dose.dose import Dose


def efforts_of(dose: Dose) -> tuple[Fraction | None, ...]:
    """Return the highest effort, 0 to 10, that each working set asks for; None for a set that says none."""
    return tuple(
        max(
            (
                effort
                for load in (one.load, one.feels, left(one.amount))
                if load is not None and (effort := effort_of(load)) is not None
            ),
            default=None,
        )
        for one in dose.working
    )


def hardest_of(dose: Dose) -> Fraction:
    """Return the highest effort of all its working sets; 0 where none says any."""
    return max((effort for effort in efforts_of(dose) if effort is not None), default=Fraction(0))
