"""The range of doses in use, in one line."""

import pytest

from setwright.dose.in_use import Dosage, dosages
from setwright.dose.resolve import resolve
from setwright.wording.dosage import in_plan, in_words
from setwright.wording.language import ENGLISH
from support import make

RANGES = [
    # the prescription, four weeks of it in words
    ("{reps: 8}", "3 sets of 8 reps; at most 3 sets a week"),
    ("{reps: 8, progress: {reps: {add: 1, up_to: 10}}}", "3 sets of 8 to 10 reps; at most 3 sets a week"),
    ("{hold: 30 s}", "3 sets of 30 s hold; at most 3 sets a week"),
    ("{hold: 30 s, progress: {hold: {add: 5 s, up_to: 40 s}}}", "3 sets of 30 to 40 s hold; at most 3 sets a week"),
    (
        "{hold: 50 s, progress: {hold: {add: 10 s, up_to: 70 s}}}",
        "3 sets of 50 s to 1 min 10 s hold; at most 3 sets a week",
    ),
    ("{distance: 20 m, progress: {distance: {add: 5 m, up_to: 30 m}}}", "3 sets of 20 to 30 m; at most 3 sets a week"),
    (
        "{reps: 8, load: 15 % bodyweight, progress: {load: {add: 1 % bodyweight, up_to: 17 % bodyweight}}}",
        "3 sets of 8 reps; 15 to 17 % of body weight; at most 3 sets a week",
    ),
    (
        "{reps: 8, load: 5 kg per hand, progress: {load: {add: 1 kg per hand, up_to: 6 kg per hand}}}",
        "3 sets of 8 reps; 5 to 6 kg in each hand; at most 3 sets a week",
    ),
    (
        "{reps: 8, load: RPE 6, progress: {load: {add: RPE 0.5, up_to: RPE 7}}}",
        "3 sets of 8 reps; effort 6 to 7 of 10; at most 3 sets a week",
    ),
    (
        "{reps: 8, load: 3 reps in reserve, progress: {load: {take: 1 rep in reserve, down_to: 1 rep in reserve}}}",
        "3 sets of 8 reps; 1 to 3 reps in reserve; at most 3 sets a week",
    ),
    (
        "{reps: 8, load: light band, progress: {load: {weeks: [light band, heavy band]}}}",
        "3 sets of 8 reps; heavy band or light band; at most 3 sets a week",
    ),
    (
        "{reps: 8, tempo: 3-0-1-0, progress: {tempo: {weeks: [3-0-1-0, 4-0-1-0]}}}",
        "3 sets of 8 reps; tempo 3-0-1-0 or 4-0-1-0; at most 3 sets a week",
    ),
    (
        "{reps: 8, sets: 2, progress: {sets: {add: 1, up_to: 3}}}",
        "2 to 3 sets of 8 reps; at most 3 sets a week",
    ),
]


@pytest.mark.parametrize(("written", "words"), RANGES)
def test_range_in_words(written: str, words: str) -> None:
    """From the lowest to the highest dose over all weeks."""
    phases = "[{name: All, aim: To go on., weeks: 4, sessions: {monday: only}}]"
    made = make.one_exercise(written, phases=phases)

    assert in_words(ENGLISH, dosages(made, resolve(made))["lift"]) == words


def test_routines_and_idle_exercises() -> None:
    """A warm-up's doses count by themselves, and what nothing asks for is said to be not in use."""
    made = make.programme(
        {
            "exercises/swing": "",
            "exercises/idle": "",
            "routines/warm": "exercises: [{exercise: swing, reps: 8}, {exercise: swing, reps: 12}]",
        }
    )
    found = dosages(made, resolve(made))

    assert in_words(ENGLISH, found["swing"]) == "in warm-ups and cool-downs 8 to 12 reps"
    assert in_words(ENGLISH, found["idle"]) == "not in use"
    assert found["idle"] == Dosage()
    assert (Dosage().weekly_sets, Dosage().unloaded) == (0, False)


def test_each_plan_has_its_weeks() -> None:
    """A physiotherapist sees in which weeks of which plan a range stands."""
    made = make.programme({"plans/plan": "changes: [{week: 2, day: monday, skip: true, why: Camp.}]"})
    found = dosages(made, resolve(made))["lift"].by_plan["plan"]

    assert found.weeks == [1, 3, 4]


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ("{reps: as many as possible, leave: 2 reps}", "sets of as many as possible, with 2 reps left"),
        (
            "{reps: as many as possible, leave: 1 rep, up_to: 15}",
            "sets of as many as possible, with 1 rep left, up to 15",
        ),
    ],
)
def test_a_reviewer_reads_which_sets_have_no_number(written: str, words: str) -> None:
    """What such a set is counted as says nothing of when it ends: what must be left, and its end, do."""
    made = make.one_exercise(written)

    assert in_plan(ENGLISH, dosages(made, resolve(made))["lift"]).split("; ")[-1] == words
