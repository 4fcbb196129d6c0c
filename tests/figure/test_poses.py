"""Poses in words: contacts hold, the rest is solved, and what cannot be is said at its place."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.figure.body import centre_of_mass
from setwright.figure.contacts import CLEARANCE_CM
from setwright.figure.misfit import base_of_support
from setwright.figure.motion import solved
from setwright.figure.segments import HALF_SHOULDERS
from setwright.model.programme import Programme
from support.figures import degrees, figure, one_pose


def test_a_squat_needs_only_its_knees_and_its_trunk() -> None:
    """Balance gives hip and ankle: 110 and 30 degrees, as earlier code with the same tables solved them."""
    squat = "holds: {kettlebell: both hands}\nposes: [{trunk: 30, knee: 110, shoulder: 32, elbow: 130}]"
    found = degrees(solved(figure(squat)))

    assert found["near hip"] == pytest.approx(110, abs=4)
    assert found["near ankle"] == pytest.approx(30, abs=4)


def test_someone_standing_stands_over_their_feet() -> None:
    """Nothing written means standing tall, in balance."""
    motion = one_pose("trunk: 0")
    body = motion.skeleton(motion.poses[0])
    base = base_of_support(motion.poses[0].contacts, body)

    assert base is not None
    assert base[0] < centre_of_mass(body.points).real < base[1]
    assert not motion.misfits


def test_both_sides_do_the_same_where_both_are_told_the_same() -> None:
    """A pose that names no side is symmetrical."""
    found = degrees(one_pose("trunk: 40, knee: 60, shoulder: 20"))

    assert all(
        found[f"near {joint}"] == pytest.approx(found[f"far {joint}"], abs=0.05)
        for joint in ("hip", "knee", "ankle", "shoulder", "elbow")
    )


def test_example_contacts_touch(example: Programme) -> None:
    """In every pose of the example programme, every contact with a surface holds to within 7 mm."""
    off = []
    for ident, exercise in example.exercises.items():
        motion = solved(exercise.figure) if exercise.figure else None
        for frame in motion.poses if motion else ():
            points = motion.skeleton(frame).points if motion else {}
            for contact in frame.contacts:
                if contact.surface and contact.surface.lies == "level":
                    off += [
                        (ident, contact.key)
                        for name, clearance in contact.points()
                        if abs(points[name].imag - contact.surface.at - clearance) > 0.7
                    ]

    assert off == []


def test_example_poses_raise_no_doubt(example: Programme) -> None:
    """Every exercise of the example has a figure, and each fits, is settled and stands."""
    assert [ident for ident, exercise in example.exercises.items() if exercise.figure is None] == []
    assert [(i, m) for i, e in example.exercises.items() if e.figure for m in solved(e.figure).misfits] == []


@given(st.integers(-12, 12), st.integers(-12, 12), st.integers(-20, 20))
def test_contacts_hold_whatever_else_is_asked(hip: int, knee: int, ankle: int) -> None:
    """A push-up's hands and toes stay on the floor however the bends are written, as long as a body can do it."""
    bends = f"elbow: 0, shoulder: 72, hip: {hip}, knee: {max(0, knee)}, ankle: {ankle}"
    motion = one_pose(f"touch: {{hands: floor, toes: floor}}, {bends}")
    if any(misfit.rule == "pose-does-not-fit" for misfit in motion.misfits):
        return
    points = motion.skeleton(motion.poses[0]).points

    assert points["near ball"].imag == pytest.approx(CLEARANCE_CM["toes"][0][1], abs=0.7)
    assert points["far wrist"].imag == pytest.approx(CLEARANCE_CM["hand"][0][1], abs=0.7)


TOO_FAR = """
props: {wall: {at: 190 cm}}
poses: [{touch: {feet: {to: floor, at: 0 cm}, hands: {to: wall, at: 130 cm}}, trunk: 0, hip: 0, knee: 0}]
"""
BESIDE = """
props: {box: {at: 34 cm}}
poses: [{touch: {near foot: {to: box, at: 90 cm}}, trunk: 0, balance: false}]
"""
IN_THE_BOX = """
props: {box: {height: 40 cm, at: 0 cm}}
poses: [{touch: {feet: {to: floor, at: 0 cm}}, trunk: 0, knee: 0}]
"""
THROUGH_THE_BOX = """
props: {box: {height: 40 cm, at: 34 cm, width: 46 cm}}
poses:
  - touch: {near foot: {to: box, at: 24 cm}, far foot: {to: floor, at: -20 cm}}
    trunk: 16
    knee: {near: 96, far: 8}
  - {touch: {near foot: {to: box, at: 24 cm}, far foot: {to: box, at: 24 cm}}, trunk: 2, knee: 2}
"""
TIPS_OVER = """
view: front
poses:
  - touch: {right knee: floor}
    trunk: 50
    hip: {left: -25, right: 50}
    seen: {left shank: 10 %, right shank: 10 %}
"""
SIDEWAYS_KNEE = """
view: front
poses: [{touch: {feet: floor}, knee: {left: 40}, hip: {left: 20}, balance: false}]
"""
LOOSE = """
props: {box: {}}
poses: [{touch: {near foot: {to: box, at: 24 cm}, far foot: {to: floor, at: -20 cm}}, trunk: 16}]
"""


@pytest.mark.parametrize(
    ("snippet", "rule", "path", "words"),
    [
        (TOO_FAR, "pose-does-not-fit", ("poses", 0, "touch", "hands"), "can't reach the wall"),
        ("poses: [{trunk: 60, hip: 0, knee: 0, ankle: 0}]", "pose-does-not-fit", ("poses", 0, "trunk"), "only"),
        ("poses: [{trunk: 0, knee: 90, ankle: 0}]", "pose-does-not-fit", ("poses", 0, "knee"), "only"),
        (BESIDE, "pose-does-not-fit", ("poses", 0, "touch", "near foot"), "beside the box"),
        ("poses: [{touch: {shins: floor}, trunk: 60, hip: 60}]", "pose-out-of-balance", ("poses", 0), "falls forward"),
        ("poses: [{shoulder: 215}]", "pose-beyond-range", ("poses", 0, "shoulder"), "beyond its usual"),
        (IN_THE_BOX, "limb-inside-prop", ("poses", 0), "is inside the box"),
        (THROUGH_THE_BOX, "limb-inside-prop", ("poses", 0), "goes through the box on its way"),
        (TIPS_OVER, "pose-out-of-balance", ("poses", 0), "falls to the"),
        (
            "view: front\nposes: [{shoulder: {right: 200}}]",
            "pose-beyond-range",
            ("poses", 0, "shoulder"),
            "right shoulder",
        ),
        (SIDEWAYS_KNEE, "pose-beyond-range", ("poses", 0, "knee"), "left knee"),
        (LOOSE, "pose-not-settled", ("poses", 0), "not settled by this pose"),
    ],
    ids=[
        "out of reach",
        "falls over",
        "upright shins",
        "beside the box",
        "kneels too far",
        "arm too far",
        "in the box",
        "through the box",
        "tips over sideways",
        "arm too far round",
        "knee sideways",
        "says little",
    ],
)
def test_what_a_body_cannot_do_is_said_at_its_place(
    snippet: str, rule: str, path: tuple[str | int, ...], words: str
) -> None:
    """An impossible pose is a finding with the place it is about; a squat with upright shins would fall."""
    found = [misfit for misfit in solved(figure(snippet)).misfits if misfit.rule == rule and misfit.path == path]

    assert found
    assert words in found[0].message


def test_a_reach_that_is_too_far_says_how_far() -> None:
    """The message counts the centimetres that are missing."""
    motion = one_pose("touch: {feet: {to: floor, at: 0 cm}, hands: {to: floor, at: 190 cm}}, balance: false, elbow: 0")
    words = " ".join(misfit.message for misfit in motion.misfits)

    assert "cm short" in words


def test_a_limb_may_stand_beside_a_bench() -> None:
    """The side of the body that is said to stand beside it is not inside; the other one is; astride, neither is."""
    bench = "props: {bench: {height: 42 cm, at: 0 cm, width: 100 cm%s}}\nposes: [{touch: {feet: floor}, trunk: 0}]"
    found = {beside: solved(figure(bench % beside)).misfits for beside in ("", ", beside: near", ", beside: both")}
    told = {beside: {misfit.message.split()[1] for misfit in misfits} for beside, misfits in found.items()}

    assert told == {"": {"near", "far"}, ", beside: near": {"far"}, ", beside: both": set()}


def test_a_hand_on_a_wall_alongside_keeps_the_balance_asked() -> None:
    """Fingertips on a wall at one's side hold nobody up from falling forward."""
    touch = "{feet: floor, far hand: {to: wall, at: 120 cm}}"
    motion = solved(figure(f"props: {{wall: {{where: alongside}}}}\nposes: [{{touch: {touch}, trunk: 40, knee: 20}}]"))
    body = motion.skeleton(motion.poses[0])
    base = base_of_support(motion.poses[0].contacts, body)

    assert base is not None
    assert base[0] < centre_of_mass(body.points).real < base[1]


def test_a_standing_sole_is_flat_from_the_front() -> None:
    """However far the leg leans sideways, the sole of a foot on the floor lies level."""
    feet = "left foot: {to: floor, at: -40 cm}, right foot: {to: floor, at: 40 cm}"
    motion = solved(figure(f"view: front\nposes: [{{touch: {{{feet}}}, trunk: 0, knee: 0}}]"))
    body = motion.skeleton(motion.poses[0])

    assert not motion.misfits
    assert [body.angles[f"{side} foot"] for side in ("near", "far")] == pytest.approx([0, 0], abs=1.5)
    assert abs(body.angles["near shank"]) > 15


def test_a_turned_chest_brings_one_shoulder_forward_and_the_other_back() -> None:
    """Turned towards the viewer, the far shoulder is ahead of the near one; unturned, one hides the other."""
    places = {}
    for turn in (0, 60):
        motion = one_pose(f"trunk: 0, turn: {turn}")
        points = motion.skeleton(motion.poses[0]).points
        places[turn] = points["far shoulder"].real - points["near shoulder"].real

    assert places[0] == pytest.approx(0)
    assert places[60] == pytest.approx(2 * HALF_SHOULDERS * 3**0.5 / 2)


def test_a_pose_in_motion_need_not_balance() -> None:
    """`balance: false` speaks for a position that is passed through."""
    assert not one_pose("touch: {shins: floor}, trunk: 60, hip: 60, balance: false").misfits
