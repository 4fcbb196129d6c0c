"""What a week asks of the body: sets, repetitions, load lifted, time under tension, session load.

Sources: half a set for regions that help, Pelland J et al. 2024 (a preprint); session load, Foster C, Med Sci Sports
Exerc 1998;30:1164-1168. The worked numbers are computed from those formulas.
"""

from fractions import Fraction

import pytest

from setwright.dose.exposure import Lifted, exposure, lifted, session_load, week_exposure
from setwright.dose.resolve import resolve
from setwright.model.span import Span
from support import make

TENSION = [
    # prescription, sides, seconds under tension of one set (computed: repetitions times the four numbers)
    ("{reps: 8, tempo: 3-1-1-0}", "both together", 40),
    ("{reps: 10, tempo: 2-0-2-0}", "both together", 40),
    ("{reps: 6, tempo: 4-0-1-1}", "both together", 36),
    ("{reps: 6, tempo: 5-0-3-0}", "both together", 48),
    ("{reps: 8, tempo: 2-0-2-0}", "both together", 32),
    ("{reps: 12, tempo: 3-1-1-0}", "one at a time", 120),
    ("{reps: 12, tempo: 3-1-1-0}", "alternating", 60),
    ("{reps: 8, tempo: 2-0-X-0}", "both together", 24),
    ("{reps: 8}", "both together", 32),
    ("{hold: 30 s}", "one at a time", 60),
    ("{work: 45 s}", "both together", 45),
    ("{distance: 20 m}", "both together", 20),
]


@pytest.mark.parametrize(("written", "sides", "seconds"), TENSION)
def test_time_under_tension(written: str, sides: str, seconds: int) -> None:
    """Time under tension of three sets is three times that of one, sides included."""
    dose = make.dose(written, f"sides: {sides}")

    assert dose.tension_s == Span.of(3 * seconds)


LIFTED = [
    # prescription, sides, what three sets lift
    ("{reps: 8, load: 12 kg}", "both together", Lifted(fixed_kg=Fraction(288))),
    ("{reps: 8, load: 6 kg per hand}", "both together", Lifted(fixed_kg=Fraction(288))),
    ("{reps: 8, load: 12 kg}", "one at a time", Lifted(fixed_kg=Fraction(576))),
    ("{reps: 10, load: 15 % bodyweight}", "both together", Lifted(share=Fraction(9, 2))),
    ("{reps: 10, load: RPE 7}", "both together", Lifted(unknown_reps=30)),
    ("{reps: 10, load: light band}", "both together", Lifted(unknown_reps=30)),
    ("{reps: 10}", "both together", Lifted()),
    ("{hold: 30 s, load: 12 kg}", "both together", Lifted()),
]


@pytest.mark.parametrize(("written", "sides", "whole"), LIFTED)
def test_load_lifted(written: str, sides: str, whole: Lifted) -> None:
    """Repetitions times load, both hands and both sides; a hold lifts nothing."""
    assert lifted(make.dose(written, f"sides: {sides}")) == whole


def test_load_lifted_at_a_body_weight() -> None:
    """30 repetitions at 15 % are 4.5 body weights: 315 kg for a member of 70 kg."""
    assert lifted(make.dose("{reps: 10, load: 15 % bodyweight}")).at(Fraction(70)) == 315


@pytest.mark.parametrize(("sides", "reps"), [("both together", 24), ("one at a time", 48), ("alternating", 24)])
def test_repetitions(sides: str, reps: int) -> None:
    """Both sides count where they work one at a time."""
    assert make.dose("{reps: 8}", f"sides: {sides}").total_reps == Span.of(reps)


def test_sets_by_region_and_pattern() -> None:
    """A set counts whole for the main regions, half for those that help, and once for its pattern."""
    made = make.programme(
        {
            "exercises/lift": "regions: {main: [quadriceps, glutes], also: [abdominals]}",
            "exercises/row": "{pattern: pull, regions: {main: [upper back], also: [glutes]}}",
            "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: ["
            "{exercise: lift, reps: 8}, {exercise: row, reps: 8, sets: 2}]}]",
        }
    )
    found = exposure(next(resolve(made)[0].sessions).items, made.exercises)

    assert found.sets == 5
    assert found.by_region == {"quadriceps": 3, "glutes": 4, "abdominals": Fraction(3, 2), "upper back": 2}
    assert found.by_pattern == {"squat": 3, "pull": 2}


def test_a_region_that_works_and_helps_counts_once() -> None:
    """A region that is named twice counts whole, not one and a half times."""
    made = make.programme({"exercises/lift": "regions: {main: [quadriceps], also: [quadriceps, glutes]}"})
    found = exposure(next(resolve(made)[0].sessions).items, made.exercises)

    assert found.by_region == {"quadriceps": 3, "glutes": Fraction(3, 2)}


def test_a_week_adds_up() -> None:
    """Two sessions of 3 x 8 with 12 kg at 2-0-2-0 are 48 repetitions, 576 kg and 192 s under tension (computed)."""
    only = "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, load: 12 kg, tempo: 2-0-2-0}]}]"
    twice = "phases: [{name: All, aim: To go on., weeks: 1, sessions: {monday: only, thursday: only}}]"
    made = make.programme({"sessions/only": only, "plans/plan": twice})
    found = week_exposure(resolve(made)[0].weeks[0], made)

    assert (found.sets, found.reps, found.tension_s) == (6, 48, 192)
    assert found.lifted == Lifted(fixed_kg=Fraction(576))


def test_a_day_of_the_worked_week() -> None:
    """60 minutes at effort 5 are 300."""
    assert session_load(5, Fraction(60)) == 300
