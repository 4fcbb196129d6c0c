"""A plan that goes out as a table and comes in again has the same doses."""

import shutil
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedItem, ResolvedPlan
from setwright.feeds import plan_table
from setwright.model.programme import Programme
from setwright.source.read import read
from setwright.starting.importing import Imported, imported
from setwright.starting.table import separated
from support.reading import GOOD
from support.site import ROOT

PROGRAMMES = {"the example": ROOT / "program", "the small one": GOOD}
Row = tuple[int, str, str]


def programme_in(folder: Path) -> Programme:
    reading = read(folder)
    assert reading.programme is not None, reading.errors
    return reading.programme


def doses(plan: ResolvedPlan) -> dict[Row, list[tuple[object, ...]]]:
    """Return the working sets by week, day and exercise, in the order of the session."""
    found: dict[Row, list[tuple[object, ...]]] = {}
    for session in plan.sessions:
        for item in session.items:
            found.setdefault((session.week, session.day or session.place, item.exercise), []).append(_sets(item))
    return found


def _sets(item: ResolvedItem) -> tuple[object, ...]:
    amounts = tuple((Fraction(one.amount.low), Fraction(one.amount.high)) for one in item.dose.working)
    loads = tuple(str(one.load) for one in item.dose.working)
    return item.dose.measure, amounts, loads, tuple(str(one.tempo) for one in item.dose.working)


def brought(programme: Programme, plan: ResolvedPlan, tmp_path: Path, source: Path) -> tuple[Imported, ResolvedPlan]:
    """Return what the import said of an exported plan, and the plan that it wrote into a copy of the programme."""
    table = separated(plan_table.values(plan, programme), "table.csv")
    found = imported(
        table, "again", plan.groups[0].starts[0] if plan.groups else date(2027, 3, 1), programme.exercises, {}
    )
    copy = Path(shutil.copytree(source, tmp_path / plan.ident / "program"))
    for path, text in found.files.items():
        (copy / path).write_text(text, "utf-8")
    (again,) = (one for one in resolve(programme_in(copy)) if one.ident == "again")
    return found, again


@pytest.mark.parametrize("name", PROGRAMMES)
def test_a_plan_that_went_out_comes_in_with_the_same_doses(name: str, tmp_path: Path) -> None:
    """Week by week and exercise by exercise: amounts, loads and tempo of every working set."""
    programme = programme_in(PROGRAMMES[name])
    for plan in resolve(programme):
        found, again = brought(programme, plan, tmp_path, PROGRAMMES[name])
        out = doses(plan)
        come = doses(again)
        assert len(come) == len(out)
        if all(session.day for session in plan.sessions):
            assert {key: come[key] for key in out} == out
        else:  # put on weekdays, in their order
            assert list(come.values()) == list(out.values())
        assert found.unread == ()


def test_rests_and_rounds_come_back(tmp_path: Path) -> None:
    """The rest after each round, one for all or one for each, and how exercises stand together."""
    programme = programme_in(GOOD)
    for plan in resolve(programme):
        _, again = brought(programme, plan, tmp_path, GOOD)
        for before, after in zip(plan.sessions, again.sessions, strict=True):
            shape = [(block.kind == "straight", block.rounds, block.rests_s) for block in before.blocks]
            assert [(b.kind == "straight", b.rounds, b.rests_s) for b in after.blocks if b.kind != "straight"] == [
                one for one in shape if not one[0]
            ]
