"""Easier and harder ways that lead round in a circle, and those that do not."""

from collections.abc import Mapping

from setwright.source.finding import Finding
from support import make

RULE = "easier-in-a-circle"


def circles(ways: Mapping[str, str]) -> list[Finding]:
    """Return the circles found among exercises, each given by its easier and harder ways."""
    files = {f"exercises/{ident}": written for ident, written in ways.items()}
    return [found for found in make.verdict(make.programme(files)).findings if found.rule == RULE]


def test_a_circle_of_three_is_told_once_and_in_full() -> None:
    """Each of the three names the next as easier: one circle, one finding, in the exercise that closes it."""
    (found,) = circles({"lift": "easier: [b]", "b": "easier: [c]", "c": "easier: [lift]"})

    assert found.message == (
        "easier ways go round in a circle: 'lift' is easier than 'c', 'c' than 'b', 'b' than 'lift'"
    )
    assert found.position.file == "program/exercises/c.yml"
    assert found.severity == "warning"


def test_harder_says_the_same_as_easier_the_other_way_round() -> None:
    """Two exercises that name each other as harder go round in a circle too."""
    (found,) = circles({"lift": "harder: [b]", "b": "harder: [lift]"})

    assert "'b'" in found.message
    assert "'lift'" in found.message


def test_a_way_down_and_up_again_is_no_circle() -> None:
    """An exercise names its easier way, which names it as harder; two ways down may meet; words lead nowhere."""
    assert (
        circles(
            {"lift": "easier: [b, c]", "b": "{easier: [d], harder: [lift]}", "c": "easier: [d, {how: Slow.}]"}
            | {"d": ""}
        )
        == []
    )


def test_two_circles_are_two_findings() -> None:
    """Circles that share no exercise are told one by one."""
    two = {"lift": "easier: [b]", "b": "easier: [lift]", "c": "easier: [d]", "d": "easier: [c]"}

    assert len(circles(two)) == 2


def test_a_circle_is_accepted_on_any_of_its_exercises() -> None:
    """Whether a plank on the side is easier than one on the front may depend on the member."""
    accept = f"accept: [{{rule: {RULE}, why: It depends on the member.}}]"

    assert len(circles({"lift": "easier: [b]", "b": "easier: [lift]"})) == 1
    assert circles({"lift": f"easier: [b]\n{accept}", "b": "easier: [lift]"}) == []
    assert circles({"lift": "easier: [b]", "b": f"easier: [lift]\n{accept}"}) == []
