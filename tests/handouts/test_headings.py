"""What stands above a session's doses: which week it is, and what to fetch."""

import pytest

from setwright.dose.resolve import resolve
from setwright.handouts.session import session_data
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from support import make


def data_of(week: int, phase: str, changes: str = "[]") -> dict[str, object]:
    """Return what the sheet of a week shows; the second week is a taper, whose phase has that name."""
    phases = f"""[{{name: First, aim: To begin., weeks: 1, sessions: {{monday: only}}}},
        {{name: {phase}, aim: To be fresh., weeks: 1, sessions: {{monday: only}}, taper: {{sets: [50 %]}}}}]"""
    session = "blocks: [{kind: straight, sets: 2, exercises: [{exercise: lift, reps: 8, load: 8 kg}]}]"
    made = make.programme({"plans/plan": f"phases: {phases}\nchanges: {changes}", "sessions/only": session})
    plan = resolve(made)[0]
    return session_data(Desk(Site(made, (plan,)), None), plan, plan.weeks[week - 1].sessions[0])


@pytest.mark.parametrize(
    ("week", "phase", "place", "kind"),
    [
        (1, "Taper", "A plan, week 1 of 2, First", ""),
        (2, "Taper", "A plan, week 2 of 2, Taper", ""),
        (2, "Race week", "A plan, week 2 of 2, Race week", "Taper"),
    ],
)
def test_a_taper_is_called_so_once(week: int, phase: str, place: str, kind: str) -> None:
    """Where the phase has the name already, what kind of week it is need not stand beside it."""
    data = data_of(week, phase)

    assert (data["place"], data["kind"]) == (place, kind)


@pytest.mark.parametrize(
    ("load", "kit"),
    [
        ("8 kg", "kettlebell"),
        ("medium band", "kettlebell, band"),
        ("[light band, medium band]", "kettlebell, band"),
    ],
)
def test_a_band_that_a_week_takes_is_among_its_kit(load: str, kit: str) -> None:
    """A change to bands for one week says so where members read what to fetch, and in no other week."""
    changes = f"[{{week: 2, session: only, exercise: lift, load: {load}, why: The bells are away.}}]"

    assert [dict(data_of(week, "Race week", changes)["facts"])["Kit"] for week in (1, 2)] == ["kettlebell", kit]  # type: ignore[call-overload]
