"""Hazardous edits of the example, one at a time: each is caught by the rule that is about it, and by no other."""

import pytest

from setwright.checks.registry import RULES
from support.hazards import HAZARDS
from support.planted import Garden, Plant
from support.ways_round import WAYS_ROUND


@pytest.fixture(scope="module")
def garden(tmp_path_factory: pytest.TempPathFactory) -> Garden:
    """One copy of the example for all edits; each is taken out again."""
    return Garden(tmp_path_factory.mktemp("hazards"))


@pytest.mark.parametrize("edit", HAZARDS, ids=lambda edit: edit.what)
def test_a_hazardous_edit_is_caught_by_its_own_rule_alone(garden: Garden, edit: Plant) -> None:
    """The rule that is about it speaks, in the file to mend, and else only a limit that it passes as well."""
    found = garden.with_plant(edit)

    assert {f.rule for f in found} == {edit.rule, *edit.also}
    assert edit.place in {f.position.file for f in found}
    assert all(f.hint for f in found)


def test_every_rule_of_growth_and_of_jumps_has_an_edit() -> None:
    """No rule of these two kinds stands untried on a whole programme."""
    kinds = {rule.ident for rule in RULES if "jump" in rule.ident or rule.ident.endswith("-step-too-large")}

    assert kinds - {edit.rule for edit in (*HAZARDS, *WAYS_ROUND)} <= {
        "volume-step-too-large"
    }  # among the other planted problems
