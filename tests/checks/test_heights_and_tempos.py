"""Heights that nobody states, repetitions that take very long, and phases too short to count."""

import pytest

from setwright.checks.trial import verdict_of
from setwright.dose.resolve import resolve
from setwright.outline.site import Site
from support import make

CLUB = "kit: {box: [20 cm, 40 cm], bench: 2, chair: 4, kettlebell: [4 kg], mat: 8}"
HEIGHTS = [
    # what the session writes, what is found
    ("height: 20 cm", None),
    ("kit: [box]", None),  # sizes up to the limit stand on the page
    ("kit: [box], note: The 20 cm box.", None),
    ("kit: [bench]", "the height of the bench is not stated"),
    ("kit: [bench], height: 30 cm", None),
    ("kit: [box, chair]", "the height of the chair is not stated"),
    ("kit: [mat]", "the height is not stated"),
    ("height: 20 cm, note: Take the highest box.", "a note says 'highest box', which is no height"),
    ("kit: [box], note: On a knee-high wall.", "a note says 'knee-high', which is no height"),
    ("kit: [box], note: As high as your hip.", "a note says 'As high as your hip', which is no height"),
]


@pytest.mark.parametrize(("written", "found"), HEIGHTS)
def test_a_height_under_a_limit_is_stated(written: str, found: str | None) -> None:
    """In centimetres, or by kit that comes in sizes; a bench has one height, and nobody wrote it down."""
    files = {
        "club": CLUB,
        "exercises/lift": "limits: {height: 30 cm}\nkit: [box]",
        "sessions/only": f"blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: lift, reps: 8, {written}}}]}}]",
    }
    made = make.verdict(make.programme(files)).findings

    assert [f.message for f in made if f.rule == "height-not-stated"] == (
        [f"lift: {found}, in the session only; the limit is 30 cm"] if found else []
    )


def test_without_a_limit_a_bench_is_as_high_as_it_is() -> None:
    """Nothing is asked where nothing is limited."""
    files = {"club": CLUB, "exercises/lift": "kit: [bench]"}

    assert not [f for f in make.verdict(make.programme(files)).findings if f.rule == "height-not-stated"]


def test_the_page_states_the_limit_of_a_height_that_nobody_states() -> None:
    """A member with a bench reads how high it may be."""
    files = {"club": CLUB, "exercises/lift": "limits: {height: 30 cm}\nkit: [bench]"}
    made = make.programme(files)
    page = make.printed(Site(made, resolve(made)))["plans/plan/week-01/monday/index.md"]

    assert "No higher than 30 cm" in page


TEMPOS = [
    # the tempo of the dose, its weeks, what is found (15 s at most)
    ("4-2-4-5", "", None),
    ("4-2-4-6", "", "4-2-4-6 takes 16 s, in week 1"),
    ("15-0-X-0", "", "15-0-X-0 takes 16 s, in week 1"),
    ("2-0-2-0", ", progress: {tempo: {weeks: [2-0-2-0, 9-0-9-0]}}", "9-0-9-0 takes 18 s, in week 2"),
]


@pytest.mark.parametrize(("tempo", "weeks", "found"), TEMPOS)
def test_a_repetition_has_its_longest(tempo: str, weeks: str, found: str | None) -> None:
    """Repetitions of 0.5 to 8 s serve alike (Schoenfeld BJ et al., Sports Med 2015;45:577-585, from memory).

    A pause beside them is common practice, and so is the bound of 15 s.
    """
    session = f"blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: lift, reps: 4, tempo: {tempo}{weeks}}}]}}]"
    made = make.verdict(make.programme({"sessions/only": session})).findings

    assert [f.message for f in made if f.rule == "repetition-too-slow"] == (
        [f"lift: a repetition at {found} of plan"] if found else []
    )


def test_a_pause_in_a_change_is_found_at_the_change() -> None:
    """One week is enough, and the coach is sent to its line."""
    changes = "changes: [{week: 2, session: only, exercise: lift, tempo: 2-30-2-0, why: A test.}]"
    found = [
        f for f in make.verdict(make.programme({"plans/plan": changes})).findings if f.rule == "repetition-too-slow"
    ]

    assert [f.position.file for f in found] == ["program/plans/plan.yml"]


PHASES = [
    # weeks of the phases, the limits of an exercise of the last one, the phases that are too short
    ([2, 2], "earliest_phase: 2", []),
    ([1, 2], "earliest_phase: 2", ["phase 1"]),
    ([1, 1, 2], "earliest_phase: 3", ["phase 1", "phase 2"]),
    ([1, 2], "earliest_phase: 1", []),
    ([1, 2], "earliest_phase: 2, earliest_week: 2", []),  # then weeks are counted
    ([1, 2], "reps: 12", []),
]


@pytest.mark.parametrize(("weeks", "limits", "short"), PHASES)
def test_a_phase_that_counts_lasts_two_weeks(weeks: list[int], limits: str, short: list[str]) -> None:
    """Common practice, no source."""
    days = ["legs"] * (len(weeks) - 1) + ["late"]
    phases = [
        f"{{name: P{number}, aim: To go on., weeks: {count}, sessions: {{monday: {day}}}}}"
        for number, (count, day) in enumerate(zip(weeks, days, strict=True), 1)
    ]
    example = {
        "exercises/late": f"name: Late\nlimits: {{{limits}}}",
        "sessions/late": "name: Late\nblocks: [{kind: straight, sets: 3, exercises: [{exercise: late, reps: 8}]}]",
        "plans/spring": f"phases: [{', '.join(phases)}]",
    }
    found = [f.message for f in verdict_of(example).findings if f.rule == "phase-too-short"]

    assert [message.partition(", and ")[2].partition(" (")[0] for message in found] == short
