"""Joints from angles: right-angle positions worked by hand, and what no position may change."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.figure.body import AT, STATE, Floats, Skeleton, centre_of_mass
from setwright.figure.segments import CM, FEMALE, GRIP, HALF_SHOULDERS, MALE

SHANK, THIGH, TRUNK = CM["shank"], CM["thigh"], CM["trunk"]
UPPER, FORE = CM["upper arm"], CM["forearm"]


def state(**degrees: float) -> Floats:
    """A state with some angles; ``knee`` means both, ``near_knee`` one."""
    q = np.zeros(len(STATE))
    for name, value in degrees.items():
        for key in (name.replace("_", " "),) if name.replace("_", " ") in AT else (f"near {name}", f"far {name}"):
            q[AT[key]] = value
    return q


@pytest.mark.parametrize(
    ("angles", "joint", "place"),
    [
        ({}, "near ankle", -1j * (THIGH + SHANK)),
        ({}, "shoulder", 1j * TRUNK),
        ({}, "near wrist", 1j * (TRUNK - UPPER - FORE)),
        ({"hip": 90}, "near knee", THIGH),
        ({"hip": 90, "knee": 90}, "near ankle", THIGH - 1j * SHANK),
        ({"knee": 90}, "near ankle", -1j * THIGH - SHANK),
        ({"trunk": 90}, "shoulder", TRUNK),
        ({"trunk": 90, "hip": 90}, "near knee", -1j * THIGH),
        ({"trunk": -90}, "shoulder", -TRUNK),
        ({"shoulder": 90}, "near wrist", 1j * TRUNK + UPPER + FORE),
        ({"elbow": 90}, "near wrist", 1j * (TRUNK - UPPER) + FORE),
        ({"shoulder": 180}, "near grip", 1j * (TRUNK + UPPER + FORE + GRIP)),
        ({"x": 12, "y": 30}, "hip", 12 + 30j),
    ],
)
def test_right_angles_worked_by_hand(angles: dict[str, float], joint: str, place: complex) -> None:
    """Each joint stands where paper and pencil put it."""
    assert complex(Skeleton(state(**angles), "side").points[joint]) == pytest.approx(place)


def test_toes_up_lifts_the_toes() -> None:
    """A bent ankle tilts the sole, toes upwards."""
    body = Skeleton(state(ankle=20), "side")

    assert body.points["near toe"].imag > body.points["near heel"].imag


def test_from_the_front_the_sides_mirror_each_other() -> None:
    """The same bend on both sides gives a picture that a mirror would not change."""
    body = Skeleton(state(hip=25, knee=10, shoulder=60, elbow=40), "front")
    for name in ("hip", "knee", "ankle", "shoulder", "elbow", "wrist"):
        near, far = complex(body.points[f"near {name}"]), complex(body.points[f"far {name}"])

        assert near == pytest.approx(-far.conjugate())


def test_shoulders_stand_apart_from_the_front() -> None:
    """From the front the arms hang from two shoulders, from the side from one."""
    assert Skeleton(state(), "front").points["near shoulder"].real == pytest.approx(HALF_SHOULDERS)
    assert Skeleton(state(), "side").points["near shoulder"].real == pytest.approx(0)


states = st.lists(st.floats(-170, 170), min_size=len(STATE), max_size=len(STATE)).map(np.array)
LIMBS = [("hip", "knee", THIGH), ("knee", "ankle", SHANK), ("shoulder", "elbow", UPPER), ("elbow", "wrist", FORE)]


@given(states, st.sampled_from(["side", "front"]))
def test_limbs_keep_their_length(q: Floats, view: str) -> None:
    """However a body bends, its limbs stay as long as they are."""
    body = Skeleton(q, "side" if view == "side" else "front")
    for side in ("near", "far"):
        for upper, lower, length in LIMBS:
            assert abs(body.points[f"{side} {upper}"] - body.points[f"{side} {lower}"]) == pytest.approx(length)


@given(states)
def test_the_same_angles_on_both_sides_give_the_same_places(q: Floats) -> None:
    """Seen from the side, two legs that do the same cover each other."""
    q = q.copy()
    q[8:] = q[3:8]
    body = Skeleton(q, "side")

    assert all(
        body.points[f"near {name}"] == pytest.approx(body.points[f"far {name}"]) for name in ("knee", "toe", "wrist")
    )


@given(states, st.sampled_from([MALE, FEMALE]))
def test_the_centre_of_mass_lies_within_the_body(q: Floats, masses: object) -> None:
    """Between the leftmost and the rightmost joint, and between the lowest and the highest."""
    body = Skeleton(q, "side")
    centre = centre_of_mass(body.points, MALE if masses is MALE else FEMALE)
    places = np.array([complex(place) for place in body.points.values()])

    assert places.real.min() <= centre.real <= places.real.max()
    assert places.imag.min() <= centre.imag <= places.imag.max()


@given(st.lists(states, min_size=2, max_size=4))
def test_many_states_at_once_are_each_state_alone(several: list[Floats]) -> None:
    """Solving takes many states at once; none may feel the others."""
    together = Skeleton(np.stack(several), "side").points
    alone = [Skeleton(q, "side").points for q in several]

    assert all(together[name][i] == pytest.approx(one[name]) for i, one in enumerate(alone) for name in one)


def test_standing_centre_of_mass_is_near_the_navel() -> None:
    """Standing, it is 55 to 57 % of stature above the floor: 0.5556 with other masses, computed from Winter's table."""
    body = Skeleton(state(y=0.53 * 170), "side")

    assert 0.55 < centre_of_mass(body.points).imag / 170 < 0.59


def test_a_held_weight_draws_the_centre_of_mass_to_the_hand() -> None:
    """A tenth of body weight in an outstretched hand moves it by a tenth of the way, of the whole."""
    body = Skeleton(state(shoulder=90), "side")
    bare, held = centre_of_mass(body.points), centre_of_mass(body.points, held=(("near grip", 0.1),))
    way = body.points["near grip"] - bare

    assert complex((held - bare) / way) == pytest.approx(0.1 / 1.1, rel=1e-3)
