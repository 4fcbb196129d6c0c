"""Accepting a warning with a reason: it moves to the accepted ones, and an idle acceptance is found."""

import shutil
from pathlib import Path

import pytest

from setwright.checks.registry import run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.source.finding import WARNING
from setwright.source.read import read
from support import make
from support.reading import GOOD

WHY = "Strong members only."


def accept(rule: str) -> str:
    return f"accept: [{{rule: {rule}, why: {WHY}}}]"


STEEP = "reps: 8, load: 10 kg, progress: {load: {add: 2 kg, up_to: 12 kg}}"


def steep(inside: str = "") -> str:
    return f"blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: lift, {STEEP}{inside}}}]}}]"


BESIDE = [
    # where the coach may accept, and the warning there
    ("load-step-too-large", {"sessions/only": steep(f", {accept('load-step-too-large')}")}, []),
    ("load-step-too-large", {"sessions/only": f"{steep()}\n{accept('load-step-too-large')}"}, []),
    ("load-step-too-large", {"sessions/only": steep(), "exercises/lift": accept("load-step-too-large")}, []),
    ("missing-easier-variation", {"exercises/lift": accept("missing-easier-variation")}, ["easier"]),
    ("over-time-budget", {"sessions/only": f"time_budget: 5 min\n{accept('over-time-budget')}"}, []),
    (
        "event-outside-plan",
        {"plans/plan": f"event: {{name: Race, date: 2027-09-01}}\n{accept('event-outside-plan')}"},
        [],
    ),
]


@pytest.mark.parametrize(("rule", "files", "leave_out"), BESIDE)
def test_accepted_warning_moves(rule: str, files: dict[str, str], leave_out: list[str]) -> None:
    """A warning accepted beside the thing that it is about is no finding any more, and keeps the coach's reason."""
    verdict = make.verdict(make.programme(files, {"exercises/lift": leave_out}))

    assert verdict.findings == ()
    assert [(accepted.finding.rule, accepted.why) for accepted in verdict.accepted] == [(rule, WHY)]


def test_acceptance_of_another_rule_does_not_help() -> None:
    """Only the warning that is named is accepted; the other acceptance is idle."""
    files = {"sessions/only": f"{steep()}\n{accept('over-time-budget')}"}
    found = make.verdict(make.programme(files)).findings

    assert sorted(f.rule for f in found) == ["acceptance-without-warning", "load-step-too-large"]


@pytest.mark.parametrize("file", ["exercises/lift", "sessions/only", "plans/plan"])
def test_idle_acceptance_is_a_warning(file: str) -> None:
    """What nothing raises need not be accepted: the coach is told to delete it."""
    found = make.verdict(make.programme({file: accept("unused-thing")})).findings

    assert [(f.rule, f.severity, f.position.file) for f in found] == [
        ("acceptance-without-warning", WARNING, f"program/{file}.yml")
    ]


@pytest.mark.parametrize("file", ["exercises/lift", "sessions/only", "plans/plan"])
def test_unknown_rule_is_an_error(file: str) -> None:
    """An acceptance of a rule that does not exist is a slip, and the rules that exist are named."""
    found = make.verdict(make.programme({file: accept("load-step-to-large")})).findings

    assert [(f.rule, f.severity) for f in found] == [("unknown-rule", "error")]
    assert "load-step-too-large" in found[0].hint


def test_finding_stands_at_the_line_of_the_dose(tmp_path: Path) -> None:
    """Read from files, a doubt points at the line and column that the coach would change."""
    lines = {
        "club.yml": make.CLUB,
        "references.yml": make.REFERENCES,
        "exercises/lift.yml": make.EXERCISE,
        "routines/warm.yml": make.ROUTINE,
        "plans/plan.yml": make.PLAN,
        "sessions/only.yml": """name: A session
aim: Strength.
warm_up: [warm]
blocks:
  - kind: straight
    sets: 3
    exercises:
      - exercise: lift
        reps: 8
        load: 10 kg
        progress:
          load: {add: 2 kg, up_to: 12 kg}
""",
    }
    for name, text in lines.items():
        path = tmp_path / name
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, "utf-8")
    reading = read(tmp_path, "program")

    assert reading.programme is not None, reading.findings
    found = run(Subject(reading.programme, resolve(reading.programme), reading.places)).findings

    assert [str(f.position) for f in found] == ["program/sessions/only.yml:12:17"]


HEAVY = "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8, load: 40 kg}]}]"


def test_a_warning_of_the_kit_is_accepted_once_for_the_club() -> None:
    """Two sessions without a weight near, one reason in club.yml: both are published with it, and none is a warning."""
    files = {
        "sessions/only": HEAVY,
        "sessions/other": HEAVY,
        "plans/plan": "phases: [{name: A, aim: B., weeks: 2, sessions: {monday: only, friday: other}}]",
    }
    before = make.verdict(make.programme(files))
    after = make.verdict(make.programme(files | {"club": accept("no-owned-weight-near")}))

    assert [one.rule for one in before.findings].count("no-owned-weight-near") == 2
    assert "no-owned-weight-near" not in [one.rule for one in after.findings]
    assert [one.why for one in after.accepted if one.finding.rule == "no-owned-weight-near"] == [WHY, WHY]


@pytest.mark.parametrize(
    ("rule", "found"),
    [
        ("load-step-too-large", "acceptance-too-wide"),
        ("no-lighter-week", "acceptance-too-wide"),
        ("dose-beyond-limit", "unknown-rule"),
        ("no-owned-weight", "unknown-rule"),
        ("no-owned-weight-near", "acceptance-without-warning"),
    ],
)
def test_a_club_accepts_nothing_else(rule: str, found: str) -> None:
    """Steps and weeks are accepted where they stand, a limit nowhere, and an idle acceptance is told."""
    verdict = make.verdict(make.programme({"club": accept(rule)}))
    told = [
        one
        for one in verdict.findings
        if one.rule in ("unknown-rule", "acceptance-too-wide", "acceptance-without-warning")
    ]

    assert [one.rule for one in told] == [found]
    assert told[0].hint


def test_an_acceptance_repeated_by_an_alias_is_spoken_of_once(tmp_path: Path) -> None:
    """An alias stands where its anchor does: the same words at the same place say nothing more."""
    shutil.copytree(GOOD, tmp_path / "program")
    plan = tmp_path / "program/plans/regatta.yml"
    written = plan.read_text("utf-8").replace("- {rule: knee-hip", "- &again {rule: knee-hip")
    plan.write_text(written + "  - *again\n  - *again\n", "utf-8")
    reading = read(tmp_path / "program", "program")

    assert reading.programme is not None, reading.findings
    found = run(Subject(reading.programme, resolve(reading.programme), reading.places)).findings

    assert "*again" in plan.read_text("utf-8")
    assert len({(f.position, f.rule, f.message) for f in found}) == len(found)
