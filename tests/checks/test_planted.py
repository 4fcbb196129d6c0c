"""Hidden problems, planted one at a time in a copy of the example: each is found, at its file, and nothing else is."""

from collections.abc import Iterator

import pytest

from support.planted import PLANTS, Garden, Plant


@pytest.fixture(scope="module")
def garden(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Garden]:
    """One copy of the example for all plants. Whatever was planted is taken out again, so it ends as it was."""
    garden = Garden(tmp_path_factory.mktemp("garden"))
    yield garden
    assert garden.clean() == ()


def test_nothing_is_found_where_nothing_is_planted(garden: Garden) -> None:
    """There is no false alarm on the clean copy."""
    assert garden.clean() == ()


@pytest.mark.parametrize("plant", PLANTS, ids=lambda plant: plant.what)
def test_a_planted_problem_is_found_and_nothing_else(garden: Garden, plant: Plant) -> None:
    """The right rule speaks, in the right file, and no other rule does."""
    found = garden.with_plant(plant)

    assert {f.rule for f in found} == {plant.rule, *plant.also}
    assert plant.place in {f.position.file for f in found}


def test_there_are_problems_of_many_kinds() -> None:
    """More than thirty plants, by more than thirty rules."""
    assert len(PLANTS) > 30
    assert len({plant.rule for plant in PLANTS}) > 30
