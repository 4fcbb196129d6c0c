"""Ways round a physiotherapist's word, one at a time: each is told by the rule that knows it, and by no other."""

import pytest

from support.planted import Garden, Plant
from support.ways_round import WAYS_ROUND


@pytest.fixture(scope="module")
def garden(tmp_path_factory: pytest.TempPathFactory) -> Garden:
    """One copy of the example for all edits; each is taken out again."""
    return Garden(tmp_path_factory.mktemp("ways-round"))


@pytest.mark.parametrize("edit", WAYS_ROUND, ids=lambda edit: edit.what)
def test_a_way_round_is_told_by_its_own_rule_alone(garden: Garden, edit: Plant) -> None:
    """The rule that is about it speaks, in the file to mend, and else only a limit that is passed as well."""
    found = garden.with_plant(edit)

    assert {f.rule for f in found} == {edit.rule, *edit.also}
    assert edit.place in {f.position.file for f in found}
    assert all(f.hint for f in found)
