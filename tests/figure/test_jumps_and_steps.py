"""A jump leaves the floor and lands, whoever steps lifts the foot, and a foot that stands does not slide."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.figure.beats import beats
from setwright.figure.motion import Frame, Motion, solved
from setwright.figure.picture import animated, described
from setwright.model.programme import Programme
from setwright.model.tempo import Tempo
from support.figures import figure

JUMP = """
returns: false
poses:
  - {touch: {feet: {to: floor, at: 0 cm}}, trunk: 2, knee: 4, passed: true}
  - {touch: {feet: floor}, trunk: 34, knee: 78}
  - {touch: {toes: floor}, trunk: 4, hip: 2, knee: 4, ankle: -30, balance: false, passed: true}
  - {touch: {toes: {to: floor, above: 20 cm}}, trunk: 2, hip: 0, knee: 4, ankle: -30, balance: false}
  - {touch: {toes: floor}, trunk: 8, hip: 20, knee: 24, balance: false, passed: true}
  - {touch: {feet: floor}, trunk: 34, knee: 80}
  - {touch: {feet: floor}, trunk: 2, knee: 4, passed: true}
"""


def moving(example: Programme, ident: str) -> Motion:
    found = example.exercises[ident].figure
    assert found is not None
    return solved(found)


def soles_cm(motion: Motion) -> list[float]:
    """How high the lowest point of both feet is, frame by frame."""
    names = [f"{side} {point}" for side in ("near", "far") for point in ("heel", "ball", "toe")]
    bodies = [motion.skeleton(frame).points for frame in motion.frames]
    return [min(float(body[name].imag) for name in names) for body in bodies]


@pytest.mark.parametrize("ident", ["squat-jump", "line-hops", "drop-and-stick"])
def test_a_jump_leaves_the_floor_and_lands(example: Programme, ident: str) -> None:
    """Both feet are in the air on the way, and the last position stands on the floor."""
    motion = moving(example, ident)
    heights = soles_cm(motion)

    assert max(heights) > 5
    assert heights[-1] == pytest.approx(0, abs=0.7)


def test_a_squat_jump_dips_flies_and_lands_softly(example: Programme) -> None:
    """Its centre of mass sinks, rises above standing height, sinks again as the legs give, and ends standing."""
    motion = moving(example, "squat-jump")
    stand, dip, fly, land, end = (motion.heights_cm[at] for at in (0, *motion.turns, len(motion.frames) - 1))

    assert dip < stand - 10
    assert fly > stand + 15
    assert land < stand - 10
    assert end == pytest.approx(stand, abs=1)


def test_a_jump_rises_straight_and_lands_where_it_began(example: Programme) -> None:
    """On the floor before and after, the balls of the feet are in the same place; nobody drifts in the air."""
    motion = moving(example, "squat-jump")
    balls = [float(motion.skeleton(frame).points["near ball"].real) for frame in motion.frames]

    assert max(balls) - min(balls) < 1


def test_who_drops_steps_off_with_one_foot_and_lands_on_two(example: Programme) -> None:
    """One foot is still on the box while the other is beyond its edge; then both meet the floor at once."""
    motion = moving(example, "drop-and-stick")
    off, land = (motion.skeleton(motion.frames[at]).points for at in motion.shown)
    box = motion.figure.props.box
    assert box is not None
    edge = box.at + box.width / 2

    assert off["near heel"].imag == pytest.approx(box.height, abs=0.7)
    assert off["far heel"].real > edge
    assert [land[f"{side} heel"].imag for side in ("near", "far")] == pytest.approx([0, 0], abs=0.7)


def test_a_drop_does_not_float_back_up(example: Programme) -> None:
    """Once landed, nobody is on the box again: the movement begins anew."""
    motion = moving(example, "drop-and-stick")
    moments, _ = beats(Tempo(1, 2, 1, 3), motion)
    frames = [frame for _, frame in moments]

    assert frames == sorted(frames)
    assert frames[-1] == len(motion.frames) - 1


def test_a_jump_lands_in_the_pause_after_it() -> None:
    """1-0-X-2: a second for the dip, half a one up into the air, then landing, standing up and stillness in two."""
    motion = solved(figure(JUMP))
    moments, whole_s = beats(Tempo(1, 0, None, 2), motion)
    dip, fly, land = motion.turns
    at = {frame: second for second, frame in reversed(moments)}

    assert (at[dip], at[fly]) == (1.0, 1.5)
    assert 1.5 < at[land] < at[len(motion.frames) - 1] <= 2.5
    assert (moments[-1], whole_s) == ((3.5, len(motion.frames) - 1), 3.5)


@given(st.builds(Tempo, st.integers(0, 6), st.integers(0, 4), st.integers(1, 6), st.integers(0, 4)))
def test_a_jump_keeps_any_tempo_and_never_runs_backwards(tempo: Tempo) -> None:
    """Every frame comes once and in order, within the time that the tempo gives."""
    motion = solved(figure(JUMP))
    moments, whole_s = beats(tempo, motion)

    assert moments == sorted(moments)
    assert {frame for _, frame in moments} == set(range(len(motion.frames)))
    assert moments[-1][0] == pytest.approx(whole_s)


def test_a_still_picture_shows_what_is_not_passed() -> None:
    """Dip, flight and landing stand beside each other; the way up and down is between them."""
    motion = solved(figure(JUMP))

    assert [motion.stops.index(stop) for stop in motion.shown] == [1, 3, 5]


def test_the_small_picture_of_a_jump_is_in_the_air() -> None:
    """Lists show the position that differs most from standing."""
    motion = solved(figure(JUMP))

    assert motion.stops.index(motion.telling) == 3


def test_the_small_picture_of_a_walk_is_the_step(example: Programme) -> None:
    """Where nobody is in the air, it is the position that differs most, wherever it stands: here the feet apart."""
    motion = moving(example, "band-side-walk")

    assert motion.stops.index(motion.telling) == 1


def test_a_foot_that_stands_does_not_slide(example: Programme) -> None:
    """In every figure, a foot on its surface in two frames in a row has its ball where it was, to half a centimetre."""
    slides = []
    for ident, exercise in example.exercises.items():
        motion = solved(exercise.figure) if exercise.figure else None
        for before, after in pairwise(motion.frames if motion else ()):
            standing = standing_cm(motion, before), standing_cm(motion, after)
            both = standing[0].keys() & standing[1].keys()
            slides += [(ident, side) for side in both if abs(standing[0][side] - standing[1][side]) > 0.5]

    assert slides == []


def standing_cm(motion: Motion | None, frame: Frame) -> dict[str, float]:
    """Where along its surface the ball of each foot is that stands, by side."""
    points = motion.skeleton(frame).points if motion else {}
    found = {}
    for contact in frame.contacts:
        if contact.part in ("foot", "toes") and contact.surface and not contact.above and contact.side:
            ball = points[f"{contact.side} ball"]
            if ball.imag - contact.surface.at < 2:
                found[contact.side] = float(ball.real)
    return found


def test_a_step_is_lifted() -> None:
    """Feet at another place in the next pose go there through the air, whether flat or on the toes."""
    for there in ("near foot: {to: floor, at: 60 cm}", "near toes: {to: floor, at: 70 cm}"):
        here = "near foot: {to: floor, at: 0 cm}, far foot: {to: floor, at: 0 cm}"
        motion = solved(
            figure(f"poses: [{{touch: {{{here}}}}}, {{touch: {{far foot: floor, {there}}}, balance: false}}]")
        )
        balls = [motion.skeleton(frame).points["near ball"].imag for frame in motion.frames]

        assert max(balls) > 4
        assert (balls[0], balls[-1]) == pytest.approx((0, 1.5 if "toes" in there else 0), abs=0.7)


def test_a_picture_that_does_not_come_back_says_so(example: Programme) -> None:
    """Whoever dropped has to climb up again, which no figure that faces one way can draw: the steps do."""
    astray = [
        ident
        for ident, exercise in example.exercises.items()
        if (drawn := animated(exercise, ident)) is not None and not drawn.comes_back
    ]

    assert astray == ["drop-and-stick"]
    assert "The way back to the start is in the steps alone." in described(example.exercises["drop-and-stick"])
    assert "Turn round and step up" in " ".join(example.exercises["drop-and-stick"].steps)
