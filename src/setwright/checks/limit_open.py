"""What open-ended sets cross of an exercise's limits: nothing but 'up_to' keeps them below a number."""

from collections.abc import Iterator

from setwright.checks.limit_crossing import Crossing
from setwright.dose.contacts import is_jump
from setwright.dose.dose import Dose
from setwright.dose.open_ended import most_in
from setwright.model.exercise import Exercise
from setwright.model.load import Reserve
from setwright.model.span import Open, Span


def endless(exercise: Exercise, dose: Dose) -> Iterator[Crossing]:
    """Yield a limit of a set's amount that a set without an end crosses."""
    limits = exercise.limits
    if limits is None or all(most_in(one.amount) is not None for one in dose.working):
        return
    said = "as many reps as possible, with no 'up_to' to end them,"
    if limits.reps is not None:
        yield Crossing("reps", str(limits.reps), said, "reps")
    elif limits.hold is not None:
        yield Crossing("hold", f"{limits.hold} s", said, "reps")
    if limits.contacts is not None and is_jump(exercise):
        yield Crossing("contacts", str(limits.contacts), said, "reps")


def left(amount: Span) -> Reserve | None:
    """Return what must be left of an open-ended set, to hold against limits of effort."""
    return Reserve(amount.leave) if isinstance(amount, Open) else None
