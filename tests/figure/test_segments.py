"""The tables of body segments: they must add up, whatever is built on them."""

from types import MappingProxyType

import pytest

from setwright.figure.segments import FEMALE, LENGTH, MALE, Mass, total


@pytest.mark.parametrize("table", [MALE, FEMALE], ids=["male", "female"])
def test_masses_add_up_to_a_body(table: MappingProxyType[str, Mass]) -> None:
    """Head, trunk and two of each limb weigh as much as the body. de Leva P, J Biomech 1996;29:1223-1230."""
    assert total(table) == pytest.approx(1.0, abs=2e-4)


def test_lengths_add_up_to_stature() -> None:
    """Ankle height, shank, thigh, trunk and head reach from floor to crown. Drillis R, Contini R 1966 (from memory)."""
    upright = ("foot height", "shank", "thigh", "trunk", "head")

    assert sum(LENGTH[name] for name in upright) == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("joint", "height"), [("knee", 0.285), ("hip", 0.530), ("shoulder", 0.818)], ids=["knee", "hip", "shoulder"]
)
def test_joint_heights_are_the_published_ones(joint: str, height: float) -> None:
    """Heights of the joints of someone standing, as shares of stature. Drillis R, Contini R 1966 (from memory)."""
    below = {"knee": 2, "hip": 3, "shoulder": 4}[joint]
    parts = ("foot height", "shank", "thigh", "trunk")[:below]

    assert sum(LENGTH[part] for part in parts) == pytest.approx(height)


def test_centres_lie_inside_their_segments() -> None:
    """A segment's centre of mass lies between its ends."""
    assert all(0 < mass.centre < 1 for table in (MALE, FEMALE) for mass in table.values())
