"""What a physiotherapist signed stays signed: new words of the language leave the digests of other figures alone."""

import pytest

from setwright.review.parts import digest_of
from support.make import exercise

STEP_UP = """
figure:
  props: {box: {height: 40 cm, at: 34 cm}, wall: {at: 90 cm}}
  holds: {dumbbell: each hand}
  poses:
    - {touch: {near foot: {to: box, at: 24 cm}, far foot: {to: floor, at: -20 cm}}, trunk: 16, knee: {near: 96, far: 8}}
    - {touch: {near foot: {to: box, at: 24 cm}}, trunk: 2, seen: {near forearm: 80 %}, balance: false}
  arrow: hip
"""
PINNED = "lfnljlodoepm"


def test_digests_of_figures_stay_the_same_from_version_to_version() -> None:
    """This one was written before a pose could be passed, a movement end elsewhere, or a chest turn."""
    assert digest_of(exercise(STEP_UP), "figure") == PINNED


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("balance: false}", "balance: false, passed: true}"),
        ("balance: false}", "balance: false, turn: 40}"),
        ("  arrow: hip", "  returns: false\n  arrow: hip"),
        ("  arrow: hip", "  away: [near shank]\n  arrow: hip"),
        ("at: 34 cm}", "at: 34 cm, beside: near}"),
    ],
    ids=["passed", "turn", "returns", "away", "beside"],
)
def test_what_a_new_word_changes_is_reviewed(before: str, after: str) -> None:
    """Each of them changes what a member sees, and so the digest."""
    assert before in STEP_UP
    assert digest_of(exercise(STEP_UP.replace(before, after)), "figure") != PINNED
