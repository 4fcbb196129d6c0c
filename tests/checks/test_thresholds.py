"""A club's own thresholds: they move the line, and one that makes no sense is told at its place."""

import pytest

from setwright.checks.registry import RULES
from setwright.checks.rule import Rule
from setwright.checks.threshold import Unit
from setwright.checks.threshold import threshold as threshold_of
from setwright.checks.trial import verdict_of

WHY = "why: Our members are over sixty."
EIGHT_WEEKS = "phases: [{name: First, aim: To begin., weeks: 8, sessions: {monday: legs}}]"
FOUR_WEEKS = EIGHT_WEEKS.replace("weeks: 8", "weeks: 4")
MOVED = [
    # setting, plan, whether the check speaks
    ("{rule: no-lighter-week, most: 8 weeks}", EIGHT_WEEKS, False),
    ("{rule: no-lighter-week, most: 7 weeks}", EIGHT_WEEKS, True),
    ("{rule: no-lighter-week, most: 3 weeks}", FOUR_WEEKS, True),
    ("{rule: no-lighter-week, most: 4 weeks}", FOUR_WEEKS, False),
]


@pytest.mark.parametrize(("setting", "plan", "speaks"), MOVED)
def test_a_threshold_moves_the_line(setting: str, plan: str, speaks: bool) -> None:
    """What the club allows raises no doubt, one week more does."""
    found = verdict_of({"club": f"checks: [{setting[:-1]}, {WHY}}}]", "plans/spring": plan}).findings

    assert [f.rule for f in found] == (["no-lighter-week"] if speaks else [])


def test_a_setting_moves_its_own_line_alone() -> None:
    """Another check's number is none of this one's, whichever stands first."""
    setting = f"checks: [{{rule: volume-step-too-large, most: 50 %, {WHY}}}]"
    step = next(rule for rule in RULES if rule.ident == "load-step-too-large")

    assert step.ident in {f.rule for f in verdict_of({**step.bad, "club": setting}).findings}


@pytest.mark.parametrize(
    ("least", "most", "speaks"), [(50, 60, False), (51, 60, True), (40, 50, False), (40, 49, True)]
)
def test_both_ends_of_a_range_belong_to_it(least: int, most: int, speaks: bool) -> None:
    """A taper from four sets an exercise to two cuts exactly half."""
    taper = next(rule for rule in RULES if rule.ident == "taper-outside-range")
    club = f"checks: [{{rule: taper-outside-range, least: {least} %, most: {most} %, {WHY}}}]"

    assert [f.rule for f in verdict_of({**taper.good, "club": club}).findings] == [taper.ident] * speaks


RANGES = [
    # the check and its number, what it is where a club sets nothing, and from where to where a club may set it
    ("key-session-too-close", "least", "48 h", "0 s", "168 h"),
    ("knee-hip-imbalance", "most", "3", "1", "10"),
    ("load-step-too-large", "most", "10 %", "1 %", "50 %"),
    ("no-lighter-week", "most", "6 weeks", "1 week", "12 weeks"),
    ("push-pull-imbalance", "most", "2", "1", "10"),
    ("regions-too-close", "least", "48 h", "0 s", "168 h"),
    ("rest-too-short", "least", "2 min", "30 s", "10 min"),
    ("taper-outside-range", "least", "41 %", "10 %", "90 %"),
    ("taper-outside-range", "most", "60 %", "10 %", "90 %"),
    ("volume-step-too-large", "most", "20 %", "5 %", "100 %"),
]


@pytest.mark.parametrize(("ident", "key", "usual", "lowest", "highest"), RANGES)
def test_numbers_that_a_club_may_set(ident: str, key: str, usual: str, lowest: str, highest: str) -> None:
    """The usual number is from the source that the check names; the range is common practice, no source."""
    (one,) = (t for rule in RULES if rule.ident == ident for t in rule.thresholds if t.key == key)

    assert [one.said(number) for number in (one.default, one.lowest, one.highest)] == [usual, lowest, highest]


WRONG = [
    # setting, the rule of the finding, where, some of its words
    ("{rule: no-lighter-weeks, most: 5 weeks}", "unknown-rule", "no check with a threshold is called"),
    ("{rule: missing-source, most: 5}", "unknown-rule", "no check with a threshold is called"),
    ("{rule: no-lighter-week, least: 5 weeks}", "unknown-threshold", "has no 'least'"),
    ("{rule: no-lighter-week, most: 5}", "threshold-unclear", "'5' does not fit here"),
    ("{rule: no-lighter-week, most: 40 weeks}", "threshold-unclear", "it runs from 1 week to 12 weeks"),
    ("{rule: load-step-too-large, most: 90 %}", "threshold-unclear", "it runs from 1 % to 50 %"),
    ("{rule: regions-too-close, least: two days}", "threshold-unclear", "'two days' does not fit here"),
]


@pytest.mark.parametrize(("setting", "rule", "words"), WRONG)
def test_a_setting_that_sets_nothing_is_an_error(setting: str, rule: str, words: str) -> None:
    """It stands at its line, with what would fit."""
    found = verdict_of({"club": f"checks: [{setting[:-1]}, {WHY}}}]"}).findings

    assert [(f.rule, f.severity) for f in found] == [(rule, "error")]
    assert words in found[0].message
    assert found[0].hint
    assert found[0].position.file == "program/club.yml"


def test_every_setting_that_sets_nothing_is_told() -> None:
    """A slip does not hide the next one, and a value that makes no sense leaves the default as it is."""
    settings = (
        "{rule: no-such-check, most: 5, why: Because.}",
        "{rule: no-lighter-week, least: 2 weeks, most: 40 weeks, why: Because.}",
        "{rule: load-step-too-large, least: 2 %, why: Because.}",
    )
    found = verdict_of({"club": f"checks: [{', '.join(settings)}]", "plans/spring": EIGHT_WEEKS}).findings

    assert sorted(f.rule for f in found) == [
        "no-lighter-week",
        "threshold-unclear",
        "unknown-rule",
        "unknown-threshold",
        "unknown-threshold",
    ]


SAID = [
    # unit, the number, as a coach writes it
    ("%", 12, "12 %"),
    ("weeks", 1, "1 week"),
    ("weeks", 2, "2 weeks"),
    ("count", 3, "3"),
    ("time", 0, "0 s"),
    ("time", 90, "1 min 30 s"),
    ("time", 3600, "1 h"),
    ("time", 172800, "48 h"),
]


@pytest.mark.parametrize(("unit", "number", "written"), SAID)
def test_a_threshold_is_written_as_a_coach_writes_it(unit: Unit, number: int, written: str) -> None:
    """Percent, weeks, counts, times inside a session and hours between two; read again, they are the same."""
    one = threshold_of("a-check", "most", unit, number, (number, number), "a number")

    assert one.said(one.default) == written
    assert one.parse(written) == number


@pytest.mark.parametrize("written", ["48", "48 hours", "1000 h", "-1 h", "h", " h"])
def test_hours_are_whole_and_not_endless(written: str) -> None:
    """What is no time between two sessions is refused."""
    with pytest.raises(ValueError, match=r"\w"):
        threshold_of("a-check", "least", "time", 0, (0, 9_999_999), "a time").parse(written)


def test_a_setting_given_twice_is_an_error() -> None:
    """Which of two would hold is not left to chance."""
    one = f"{{rule: no-lighter-week, most: 5 weeks, {WHY}}}"
    found = verdict_of({"club": f"checks: [{one}, {one}]"}).findings

    assert [f.rule for f in found] == ["duplicate-key"]


@pytest.mark.parametrize("rule", [r for r in RULES if r.thresholds], ids=lambda rule: rule.ident)
def test_every_threshold_can_be_loosened_and_tightened(rule: Rule) -> None:
    """Both ends of each range are values that a club may write."""
    for threshold in rule.thresholds:
        for end in (threshold.lowest, threshold.highest):
            assert threshold.parse(threshold.said(end)) == end
