"""Rests of heavy sets: two minutes, and nobody rests to the second.

Source of the two minutes: Grgic J et al., Sports Med 2018;48:137-151. A tenth less, and the half minute
of sets that are hard and not heavy, are common practice, no source.
"""

import pytest

from support import make


@pytest.mark.parametrize(("rest", "speaks"), [("2 min", False), ("117 s", False), ("108 s", False), ("107 s", True)])
def test_a_few_seconds_are_no_matter(rest: str, speaks: bool) -> None:
    """Three seconds less raise no doubt; more than a tenth does."""
    heavy = f"{{kind: straight, sets: 3, rest: {rest}, exercises: [{{exercise: lift, reps: 3, load: RPE 8}}]}}"
    found = make.verdict(make.programme({"sessions/only": f"blocks: [{heavy}]"})).findings

    assert [f.rule for f in found] == (["rest-too-short"] if speaks else [])


@pytest.mark.parametrize("load", ["RPE 7", "3 reps in reserve", "70 % 1RM"])
@pytest.mark.parametrize(("rest", "speaks"), [("5 s", True), ("26 s", True), ("27 s", False), ("1 min", False)])
def test_a_hard_set_wants_half_a_minute(load: str, rest: str, speaks: bool) -> None:
    """With three repetitions left, five seconds are no rest; below that, a few seconds are the coach's to choose."""
    hard = f"{{kind: straight, sets: 3, rest: {rest}, exercises: [{{exercise: lift, reps: 3, load: {load}}}]}}"
    found = make.verdict(make.programme({"sessions/only": f"blocks: [{hard}]"})).findings
    light = make.verdict(make.programme({"sessions/only": f"blocks: [{hard.replace(load, 'RPE 6')}]"})).findings

    assert [f.rule for f in found] == (["rest-too-short"] if speaks else [])
    assert light == ()
