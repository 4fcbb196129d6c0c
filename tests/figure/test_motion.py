"""What happens between two poses: nothing slides, nothing falls apart, and the tempo is kept."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.figure.beats import beats
from setwright.figure.motion import STEPS, Motion, solved
from setwright.model.programme import Programme
from setwright.model.tempo import Tempo, parse_tempo
from support.figures import figure, joint_gap_cm

SQUAT = "poses: [{trunk: 2}, {trunk: 30, knee: 110}]"
RISE = "poses: [{trunk: 30, knee: 110}, {trunk: 2}]"
HEEL_RAISE = """
poses:
  - {touch: {feet: {to: floor, at: 0 cm}}, trunk: 0, knee: 0}
  - {touch: {toes: floor}, trunk: 0, knee: 0, ankle: -36}
"""


def test_a_rising_heel_leaves_the_ball_where_it_was() -> None:
    """From flat foot to toes, the ball of the foot neither slides nor sinks."""
    motion = solved(figure(HEEL_RAISE))
    balls = [motion.skeleton(frame).points["near ball"] for frame in motion.frames]

    assert 3 <= len(motion.frames) <= STEPS + 1
    assert all(ball.real == pytest.approx(balls[0].real, abs=0.5) for ball in balls)


def test_a_shared_contact_does_not_slide(example: Programme) -> None:
    """A push-up's hands stay where they are, in every frame."""
    found = example.exercises["push-up"].figure
    assert found is not None
    motion = solved(found)
    hands = [motion.skeleton(frame).points["near wrist"] for frame in motion.frames]

    assert all(abs(hand - hands[0]) < 0.5 for hand in hands)


def test_hands_stay_on_the_wall(example: Programme) -> None:
    """Hands that stand higher at the end slide up the wall, and do not leave it on the way."""
    found = example.exercises["heel-raise"].figure
    assert found is not None
    motion = solved(found)
    hands = [motion.skeleton(frame).points["near wrist"] for frame in motion.frames]

    assert max(hand.real for hand in hands) - min(hand.real for hand in hands) < 0.7
    assert [hand.imag for hand in hands] == sorted(hand.imag for hand in hands)


def test_limbs_hold_together_between_frames(example: Programme) -> None:
    """Parts that move in straight lines between frames leave their joints by at most 1.2 cm, in every figure."""
    gaps = {ident: joint_gap_cm(solved(e.figure)) for ident, e in example.exercises.items() if e.figure}

    assert {ident: gap for ident, gap in gaps.items() if gap > 1.2} == {}


def _moving(lowers_first: bool) -> Motion:
    return solved(figure(SQUAT if lowers_first else RISE))


@pytest.mark.parametrize(
    ("ident", "lowers_first"),
    [
        ("goblet-squat", True),
        ("push-up", True),
        ("split-squat", True),
        ("sit-to-box", True),
        ("glute-bridge", False),
        ("heel-raise", False),
        ("bent-over-row", False),
        ("half-kneeling-press", False),
        ("kettlebell-deadlift", False),
        ("single-leg-deadlift", True),
        ("box-step-down", True),
        ("box-step-up", False),
        ("squat-jump", True),
        ("drop-and-stick", True),
        ("band-side-walk", False),
        ("walking-heel-raise", False),
    ],
)
def test_the_way_out_is_lowering_or_lifting(example: Programme, ident: str, lowers_first: bool) -> None:
    """The tempo's first number is the lowering phase even where the movement starts by lifting. Wilk M et al. 2021."""
    found = example.exercises[ident].figure
    assert found is not None

    assert solved(found).lowers_first is lowers_first


@pytest.mark.parametrize(
    ("tempo", "lowers_first", "out_s", "rep_s"),
    [
        ("3-1-1-0", True, 3.0, 5.0),
        ("3-1-1-0", False, 1.0, 5.0),
        ("2-0-X-0", True, 2.0, 2.5),
        ("2-0-1-2", False, 1.0, 5.0),
        ("0-0-X-0", False, 0.5, 1.0),
    ],
)
def test_a_repetition_keeps_its_tempo(tempo: str, lowers_first: bool, out_s: float, rep_s: float) -> None:
    """The end is reached after the lowering (or lifting) time; the whole takes the sum of the four numbers."""
    motion = _moving(lowers_first)
    moments, whole_s = beats(parse_tempo(tempo), motion)

    assert (out_s, motion.stops[-1]) in moments
    assert whole_s == pytest.approx(rep_s)
    assert moments[-1][0] == pytest.approx(rep_s)


def test_a_pause_stays_at_the_end() -> None:
    """Two frames at the end, as far apart as the pause is long."""
    motion = _moving(lowers_first=True)
    moments, _ = beats(Tempo(3, 2, 1, 0), motion)

    assert [second for second, frame in moments if frame == motion.stops[-1]] == [3.0, 5.0]


@given(st.builds(Tempo, st.integers(0, 6), st.integers(0, 4), st.integers(1, 6), st.integers(0, 4)), st.booleans())
def test_beats_never_run_backwards(tempo: Tempo, lowers_first: bool) -> None:
    """Every moment comes after the one before, from the first frame back to the first."""
    moments, whole_s = beats(tempo, _moving(lowers_first))
    seconds = [second for second, _ in moments]

    assert seconds == sorted(seconds)
    assert (moments[0][1], moments[-1][1]) == (0, 0)
    assert seconds[-1] == pytest.approx(whole_s)
