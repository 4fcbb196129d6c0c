"""The coach's manual, program/README.md: every example in it can be used as it stands."""

import re
from pathlib import Path
from typing import get_args

import pytest

from setwright.model.choices import Alternative, Entry
from setwright.model.plan import Change, Phase
from setwright.model.session import Block
from setwright.model.vocabulary import Pattern, Region
from setwright.source.read import FOLDERS, read
from support.language import Case, cases
from support.reading import EXAMPLE, LABEL

MANUAL = (EXAMPLE / "README.md").read_text("utf-8")
EXAMPLES = list(cases(MANUAL))
LEFT_TO_THE_EDITOR: set[str] = set()
"""Keys that are rarely wanted: editors offer them, and the manual stays short."""


@pytest.fixture
def program(tmp_path: Path) -> Path:
    """A programme made of the manual's examples alone, with what they point at from the example programme."""
    folder = tmp_path / LABEL
    for case in EXAMPLES:
        for name, text in case.files.items():
            (folder / name).parent.mkdir(parents=True, exist_ok=True)
            (folder / name).write_text(text, "utf-8")
    for kind in FOLDERS:
        if kind != "plans":
            for path in (EXAMPLE / kind).iterdir():
                if not (folder / kind / path.name).exists():
                    (folder / kind / path.name).write_bytes(path.read_bytes())
    with (folder / "references.yml").open("a", encoding="utf-8") as listed:
        listed.write((EXAMPLE / "references.yml").read_text("utf-8"))
    return folder


def test_the_examples_are_a_programme(program: Path) -> None:
    """Put into files under the names that they carry, the examples are read without an error."""
    assert [str(finding) for finding in read(program, LABEL).findings] == []


@pytest.mark.parametrize("case", EXAMPLES, ids=lambda case: case.title)
def test_an_example_is_read_as_what_it_is(case: Case, program: Path) -> None:
    """Each example is among the things that were read, and not only lies in the folder."""
    programme = read(program, LABEL).programme

    assert programme is not None
    for name in case.files:
        kind, _, rest = name.partition("/")
        if name == "references.yml":
            assert any(source in case.files[name] for source in programme.references)
        else:
            assert (
                rest.removesuffix(".yml") in getattr(programme, kind)
                if rest
                else programme.club.name in case.files[name]
            )


def test_there_is_an_example_of_everything() -> None:
    """Each kind of file has one, and each YAML block of the manual is one."""
    kinds = {name.split("/")[0] for case in EXAMPLES for name in case.files}

    assert {*FOLDERS, "club.yml", "references.yml"} == kinds
    assert MANUAL.count("```yaml") == sum(len(case.files) for case in EXAMPLES)


def test_the_manual_knows_every_key_that_a_session_and_a_plan_have() -> None:
    """A coach who has read the manual has met every key of a prescription, a block, a phase and a change."""
    models = (Block, Entry, Alternative, Phase, Change)
    keys = {field.alias or key for model in models for key, field in model.model_fields.items()}
    unknown = {key for key in keys if not re.search(rf"\b{key}\b", MANUAL)}

    assert unknown == LEFT_TO_THE_EDITOR


def test_the_manual_lists_every_pattern_and_region() -> None:
    """A coach finds the fixed words of the trade in one place, in their order."""
    said = " ".join(MANUAL.split())

    assert f"Patterns: {', '.join(get_args(Pattern))}." in said
    assert f"Regions: {', '.join(get_args(Region))}." in said
