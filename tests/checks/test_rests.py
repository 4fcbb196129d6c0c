"""Rests of heavy sets: two minutes, and nobody rests to the second.

Source of the two minutes: Grgic J et al., Sports Med 2018;48:137-151. A tenth less is common practice, no source.
"""

import pytest

from support import make


@pytest.mark.parametrize(("rest", "speaks"), [("2 min", False), ("117 s", False), ("108 s", False), ("107 s", True)])
def test_a_few_seconds_are_no_matter(rest: str, speaks: bool) -> None:
    """Three seconds less raise no doubt; more than a tenth does."""
    heavy = f"{{kind: straight, sets: 3, rest: {rest}, exercises: [{{exercise: lift, reps: 3, load: RPE 8}}]}}"
    found = make.verdict(make.programme({"sessions/only": f"blocks: [{heavy}]"})).findings

    assert [f.rule for f in found] == (["rest-too-short"] if speaks else [])
