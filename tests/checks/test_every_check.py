"""Each check is silent on a sound programme and speaks on one that lacks a single thing."""

from dataclasses import dataclass, field

import pytest

from setwright.checks.registry import RULES
from setwright.checks.rule import Rule
from setwright.model.programme import Programme
from support import make


@dataclass(frozen=True)
class Case:
    """A programme that lacks something, the check that says so, where, and some of its words."""

    rule: str
    file: str
    words: str
    files: dict[str, str] = field(default_factory=dict)
    leave_out: dict[str, list[str]] = field(default_factory=dict)

    @property
    def programme(self) -> Programme:
        return make.programme(self.files, self.leave_out)


def one(written: str) -> str:
    """Return a session of three sets of one exercise."""
    return f"blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: lift, {written}}}]}}]"


def lasting(weeks: int) -> str:
    return f"phases: [{{name: All, aim: To go on., weeks: {weeks}, sessions: {{monday: only}}}}]"


TAPER = """
phases:
  - {name: Full, aim: To build., weeks: 2, sessions: {monday: only}}
  - {name: Taper, aim: To be fresh., weeks: 1, sessions: {monday: only}, taper: {sets: [80 %]}}
"""
CASES = [
    Case(
        "load-step-too-large",
        "sessions/only.yml",
        "10 kg to 12 kg in week 2 of plan is 20 % more",
        {"sessions/only": one("reps: 8, load: 10 kg, progress: {load: {add: 2 kg, up_to: 12 kg}}")},
    ),
    Case(
        "reps-beyond-load",
        "sessions/only.yml",
        "12 reps at 75 % 1RM in week 1 of plan",
        {"sessions/only": one("reps: 12, load: 75 % 1RM"), "plans/plan": "experience: trained"},
    ),
    Case("taper-outside-range", "plans/plan.yml", "from 3 sets a week to 2: 33.3 % fewer", {"plans/plan": TAPER}),
    Case("no-lighter-week", "plans/plan.yml", "weeks 1 to 7 run without a lighter one", {"plans/plan": lasting(8)}),
    Case(
        "event-outside-plan",
        "plans/plan.yml",
        "Race is on 2027-05-01, the plan's last week is 2027-03-22 to 2027-03-28",
        {"plans/plan": "event: {name: Race, date: 2027-05-01}"},
    ),
    Case("over-time-budget", "sessions/only.yml", "about 10 min with", {"sessions/only": "time_budget: 9 min"}),
    Case(
        "no-owned-weight-near",
        "sessions/only.yml",
        "no kettlebell near 1 kg",
        {"sessions/only": one("reps: 8, load: 1 kg")},
    ),
    Case(
        "dose-beyond-limit",
        "sessions/only.yml",
        "8 reps in week 1 of plan is beyond the limit of 6",
        {"exercises/lift": "limits: {reps: 6}"},
    ),
    Case(
        "missing-easier-variation",
        "exercises/lift.yml",
        "lift has no easier variation",
        leave_out={"exercises/lift": ["easier"]},
    ),
    Case(
        "missing-home-option",
        "exercises/lift.yml",
        "lift needs kettlebell",
        leave_out={"exercises/lift": ["at_home"]},
    ),
    *(
        Case("missing-teaching-point", "exercises/lift.yml", words, leave_out={"exercises/lift": [key]})
        for key, words in (
            ("breathing", "when to breathe"),
            ("feel", "where the work should be felt"),
            ("cues", "a cue"),
            ("faults", "a common fault"),
            ("cautions", "a caution"),
        )
    ),
    Case("unused-thing", "sessions/idle.yml", "no plan holds session 'idle'", {"sessions/idle": ""}),
    Case("unused-thing", "routines/idle.yml", "no session offers 'idle'", {"routines/idle": ""}),
    Case("unused-thing", "exercises/idle.yml", "'idle' stands in no session", {"exercises/idle": ""}),
]

GOOD = {
    "nothing added": {},
    "10 reps at 75 % of 1RM, as the table allows": {
        "sessions/only": one("reps: 10, load: 75 % 1RM"),
        "plans/plan": "experience: trained",
    },
    "a load that rises by 10 %": {
        "sessions/only": one("reps: 8, load: 10 kg, progress: {load: {add: 1 kg, up_to: 11 kg}}"),
        "exercises/lift": "kit: [dumbbell]",
    },
    "six weeks in a row": {"plans/plan": lasting(6)},
    "a taper to 47 % of 15 sets": {
        "plans/plan": TAPER.replace("80 %", "47 %"),
        "sessions/only": one("reps: 8, sets: 15"),
    },
    "an event in the last week": {"plans/plan": "event: {name: Race, date: 2027-03-28}"},
    "an event in the week after": {"plans/plan": "event: {name: Race, date: 2027-04-04}"},
    "a budget that is kept": {"sessions/only": "time_budget: 10 min"},
    "an exercise that needs no kit": {"exercises/lift": "kit: [mat]"},
    "an exercise that is only a variation": {"exercises/lift": "easier: [low]", "exercises/low": "easier: [lower]"}
    | {"exercises/lower": ""},
    "a session that is only done instead": {
        "sessions/spare": "",
        "plans/plan": "changes: [{week: 2, day: monday, do_instead: spare, why: Camp.}]",
    },
}


def test_every_case_names_a_check() -> None:
    """No case outlives its check. That no check goes unchecked, its own examples see to."""
    assert {case.rule for case in CASES} <= {rule.ident for rule in RULES}


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.rule}: {case.words}")
def test_check_speaks_where_something_is_wrong(case: Case) -> None:
    """One thing is wrong, so there is one finding: the right rule, in the right file, in plain words."""
    found = make.verdict(case.programme).findings

    assert [(f.rule, f.position.file) for f in found] == [(case.rule, f"program/{case.file}")]
    assert case.words in found[0].message
    assert found[0].hint


@pytest.mark.parametrize("files", GOOD.values(), ids=GOOD)
def test_checks_are_silent_on_a_sound_programme(files: dict[str, str]) -> None:
    """Nothing is wrong, so nothing is said."""
    assert make.verdict(make.programme(files)).findings == ()


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.ident)
def test_check_explains_itself(rule: Rule) -> None:
    """Each check says what it looks at and why it matters, and names its source."""
    assert "Why it matters:" in rule.about
    assert rule.source.endswith(".")


def test_only_limits_are_errors() -> None:
    """A physiotherapist's limit stops publishing, and so does a weight on a jump; all else a coach may answer."""
    assert {rule.ident for rule in RULES if rule.severity == "error"} == {
        "dose-beyond-limit",
        "load-escapes-limit",
        "per-hand-missing",
        "weight-on-a-jump",
    }
