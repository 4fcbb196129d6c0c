"""A plan as coaches keep it in a table: a row an exercise of a session; ``setwright import`` reads it again.

Choices, warm-up sets, and blocks that keep to a clock have no place in such a table: it holds the doses as they stand.
"""

import csv
import io
from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedBlock, ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.feeds.separated import cell
from setwright.model.load import Effort, Reserve
from setwright.model.programme import Programme
from setwright.model.span import Open, Span
from setwright.model.units import exact_number

HEADS: Final = (
    "Week", "Day", "Session", "Block", "Exercise", "Sets", "Amount", "Load", "Effort", "Rest", "Tempo", "Note",
)  # fmt: skip


def values(plan: ResolvedPlan, programme: Programme) -> bytes:
    """Return a plan's table as comma-separated values (RFC 4180)."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(HEADS)
    writer.writerows([cell(value) for value in row] for row in rows(plan, programme))
    return text.getvalue().encode()


def rows(plan: ResolvedPlan, programme: Programme) -> Iterator[tuple[str, ...]]:
    """Yield the rows in the order of the plan."""
    for session in plan.sessions:
        for number, block in enumerate(session.blocks):
            for place, item in enumerate(block.items, 1):
                yield _row(session, block, item, f"{_letters(number)}{place}", programme)


def _row(
    session: ResolvedSession, block: ResolvedBlock, item: ResolvedItem, label: str, programme: Programme
) -> tuple[str, ...]:
    dose = item.dose
    load, effort = _loads(dose)
    return (
        str(session.week),
        session.day or "",
        programme.sessions[session.session].name if session.day else f"Session {session.number}",
        "" if block.kind == "straight" else label,
        programme.exercises[item.exercise].name,
        str(dose.count),
        _amounts(dose),
        load,
        effort,
        ", ".join(f"{rest} s" for rest in dose.rests_s),
        str(dose.first.tempo) if dose.first.tempo is not None else "",
        "",
    )


def _letters(number: int) -> str:
    """Return the letter of a block, counted from 0: A to Z, then AA."""
    return (_letters(number // 26 - 1) if number >= 26 else "") + chr(ord("A") + number % 26)


def _loads(dose: Dose) -> tuple[str, str]:
    """Return the cells of load and effort."""
    said = [str(load) for load in dose.loads] or ["bodyweight"]
    felt = str(dose.feels) if dose.feels is not None else ""
    if isinstance(dose.heaviest, Effort | Reserve):
        return "", ", ".join(said)
    return ", ".join(said if len(dose.loads) < 2 else (str(one.load) for one in dose.working)), felt


def _amounts(dose: Dose) -> str:
    each = [_amount(one.amount, dose) for one in dose.working]
    return each[0] if len(set(each)) == 1 else ", ".join(each)


def _amount(amount: Span, dose: Dose) -> str:
    if isinstance(amount, Open):
        return f"as many as possible, leaving {amount.leave}"
    unit = {"reps": "", "distance": " m", "hold": " s hold", "work": " s work"}[dose.measure]
    low, high = (
        exact_number(Fraction(number) / 100 if dose.measure == "distance" else number)
        for number in (amount.low, amount.high)
    )
    return f"{low}{unit}" if low == high else f"{low} to {high}{unit}"
