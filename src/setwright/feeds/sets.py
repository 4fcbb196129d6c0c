"""The programme as a table: a row for every set of every session, in the columns of ``outline/set_table.py``."""

from collections.abc import Iterator
from datetime import date
from fractions import Fraction

from setwright.model.tempo import Tempo
from setwright.review.written_state import WrittenDay, WrittenDose, WrittenSet, WrittenState, WrittenTempo

Value = str | int | Fraction | bool | date | None
Row = tuple[Value, ...]


def rows(state: WrittenState) -> Iterator[Row]:
    """Yield the rows in the order in which the sets are done, plan by plan.

    The sets of a superset or circuit stand exercise by exercise, each its round; what may be done in the place of an
    exercise follows it.
    """
    for plan, of_plan in state.plans.items():
        for week, days in of_plan.weeks.items():
            for place, day in days.items():
                for row in _session(state, day):
                    yield (plan, week, place, day.date, day.session, *row)


def _session(state: WrittenState, day: WrittenDay) -> Iterator[Row]:
    for position, dose in enumerate(day.doses, 1):
        name = state.exercises[dose.exercise].name
        about = (position, dose.exercise, name, " ".join(dose.choices) or None, dose.optional, dose.rounds, dose.sides)
        for number, one in enumerate(dose.sets, 1):
            yield (*about, number, *_set(one), *_clock(dose))


def _set(one: WrittenSet) -> Row:
    amount, load = one.amount, one.load
    return (
        one.kind,
        amount.low,
        amount.high,
        amount.unit,
        amount.leave,
        amount.up_to,
        *((load.written, load.number, load.unit, load.per_hand) if load is not None else (None,) * 4),
        one.feels.written if one.feels is not None else None,
        _tempo(one.tempo),
        one.rest_s,
    )


def _tempo(tempo: WrittenTempo | None) -> str | None:
    return str(Tempo(**tempo.model_dump())) if tempo is not None else None


def _clock(dose: WrittenDose) -> Row:
    return (dose.clock.every_s, dose.clock.lasts_s) if dose.clock is not None else (None, None)
