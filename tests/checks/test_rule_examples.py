"""Each check on its own examples, which document it too: it speaks on the bad one, and is silent on the good one."""

import pytest

from setwright.checks.example import BASE
from setwright.checks.registry import RULES
from setwright.checks.rule import Rule
from setwright.checks.trial import finding_on_bad
from support.rules import said

EACH = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.ident)


def test_the_base_of_all_examples_is_sound() -> None:
    """Nothing is wrong with the programme that examples are laid over."""
    assert said({}) == []


@EACH
def test_check_speaks_on_its_bad_example(rule: Rule) -> None:
    """It speaks, and no other check does, so that the example shows this one thing."""
    assert set(said(rule.bad)) == {rule.ident}


@EACH
def test_check_is_silent_on_its_good_example(rule: Rule) -> None:
    """The good example satisfies every check."""
    assert said(rule.good) == []


@EACH
def test_finding_points_into_the_example(rule: Rule) -> None:
    """The finding stands in one of the example's files or in the thing that the example is about."""
    finding = finding_on_bad(rule.ident)
    files = {f"program/{name}.yml" for name in {**BASE, **rule.bad}}

    assert finding.position.file in files
    assert finding.hint


@EACH
def test_check_documents_itself(rule: Rule) -> None:
    """Its page has a heading, says why it matters and names its source or that there is none."""
    assert rule.title
    assert any(paragraph.startswith("Why it matters:") for paragraph in rule.paragraphs)
    assert rule.source


@EACH
def test_defaults_lie_within_their_range(rule: Rule) -> None:
    """A club may always write down the default."""
    for threshold in rule.thresholds:
        assert threshold.parse(threshold.said(threshold.default)) == threshold.default
