"""The JSON Schema files that editors use: fresh, valid, and of one mind with the reader."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from setwright.source.read import FOLDERS
from setwright.source.schemas import DIALECT, schemas
from support.reading import BAD, EXAMPLE, GOOD
from support.yaml12 import load

SCHEMAS = EXAMPLE / "schema"
NAMES = sorted(schemas())
FILES = sorted(
    path.relative_to(EXAMPLE).as_posix()
    for path in EXAMPLE.rglob("*.yml")
    if path.parent.name in (*FOLDERS, EXAMPLE.name)
)
MODELINE = re.compile(r"# yaml-language-server: \$schema=(?P<path>\S+)")
LIMBS = ("Seens",)
"""Mappings whose keys are parts of the body and say what they are."""
SCHEMA_OF = {
    "club.yml": "club.json",
    "references.yml": "references.json",
    "sign-offs.yml": "sign-offs.json",
    "plans": "plan.json",
    "sessions": "session.json",
    "exercises": "exercise.json",
    "routines": "routine.json",
}


def validator(schema: str) -> Draft202012Validator:
    """Return the validator of one committed schema."""
    return Draft202012Validator(json.loads((SCHEMAS / schema).read_text("utf-8")))


def complaints(schema: str, data: Any) -> list[str]:
    """Return what an editor would underline."""
    return [error.message for error in validator(schema).iter_errors(data)]


def test_the_committed_schemas_are_fresh() -> None:
    """What ``setwright schemas`` would write is what stands in program/schema/, and nothing else does."""
    committed = {path.name: path.read_text("utf-8") for path in SCHEMAS.iterdir()}

    assert schemas() == committed


@pytest.mark.parametrize("name", NAMES)
def test_a_schema_is_valid(name: str) -> None:
    """Each is JSON Schema 2020-12, by that standard's own metaschema, and says so."""
    schema = json.loads(schemas()[name])

    Draft202012Validator.check_schema(schema)

    assert schema["$schema"] == DIALECT


@pytest.mark.parametrize("name", NAMES)
def test_a_schema_explains_every_key(name: str) -> None:
    """Editors show a sentence for each key of every mapping with fixed keys, at the key or at what it refers to."""
    schema = json.loads(schemas()[name])
    defined = schema.get("$defs", {})
    things = [schema, *(thing for title, thing in defined.items() if title not in LIMBS)]
    things += [branch for thing in things for branch in thing.get("anyOf", [])]
    keys = [(key, part) for thing in things for key, part in thing.get("properties", {}).items()]
    silent = [key for key, part in keys if "description" not in {**defined.get(part.get("$ref", "")[8:], {}), **part}]

    assert silent == []


@pytest.mark.parametrize("file", FILES)
def test_every_file_of_the_example_names_a_schema_that_it_meets(file: str) -> None:
    """The first line names the right schema, the path leads to it, and an editor finds nothing to underline."""
    text = (EXAMPLE / file).read_text("utf-8")
    named = MODELINE.match(text)

    assert named is not None
    path = (EXAMPLE / file).parent / named["path"]
    assert path.resolve() == SCHEMAS / SCHEMA_OF[file.split("/")[0]]
    assert complaints(path.name, load(text)) == []


@pytest.mark.parametrize("file", sorted(path.relative_to(GOOD).as_posix() for path in GOOD.rglob("*.yml")))
def test_the_good_programme_meets_the_schemas(file: str) -> None:
    """The small good programme of the tests, too, gives an editor nothing to underline."""
    assert complaints(SCHEMA_OF[file.split("/")[0]], load((GOOD / file).read_text("utf-8"))) == []


@pytest.mark.parametrize("file", sorted(path.relative_to(GOOD).as_posix() for path in GOOD.rglob("*.yml")))
def test_a_misspelt_key_is_underlined(file: str) -> None:
    """Every mapping with fixed keys refuses a key that it does not know, however deep it stands."""
    schema = SCHEMA_OF[file.split("/")[0]]
    whole = load((GOOD / file).read_text("utf-8"))
    with_slip = [mapping for mapping in mappings(whole) if not {"thursday", "mat", "ratamess-2009"} & set(mapping)]

    for mapping in with_slip:
        mapping["nmae"] = "a slip"
        assert complaints(schema, whole) != []
        del mapping["nmae"]
    assert with_slip != []
    assert complaints(schema, whole) == []


def mappings(value: Any) -> list[dict[str, Any]]:
    """Return every mapping inside a value."""
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else []
    return [*([value] if isinstance(value, dict) else []), *(found for item in inner for found in mappings(item))]


SEEN_WHILE_TYPING = [
    "bare-number-for-load", "bare-number-for-time", "clock-for-time", "comma-for-point", "date-another-way",
    "fraction-for-percent", "id-with-capital", "list-for-number", "list-for-text", "mapping-for-text", "misspelt-key",
    "missing-key", "no-for-false", "null", "on-for-true", "percent-of-what", "range-for-number", "tempo-small-x",
    "tempo-with-two-numbers", "text-for-list", "text-for-mapping", "underscore-in-number", "unit-for-count",
    "unit-in-words", "unknown-block-kind", "unknown-day", "words-for-easier", "yes-for-true",
]  # fmt: skip


@pytest.mark.parametrize("case", SEEN_WHILE_TYPING)
def test_an_editor_sees_the_slip_while_it_is_typed(case: str) -> None:
    """What the tool refuses by its form, the schema refuses too."""
    file = next(path for path in (BAD / case).rglob("*.yml"))
    schema = SCHEMA_OF[file.relative_to(BAD / case).parts[0]]
    checked = Draft202012Validator(
        json.loads((SCHEMAS / schema).read_text("utf-8")), format_checker=Draft202012Validator.FORMAT_CHECKER
    )

    assert [error.message for error in checked.iter_errors(load(file.read_text("utf-8")))] != []


def test_the_folder_of_schemas_has_one_a_kind() -> None:
    """Each folder and file that a coach writes has its schema."""
    assert set(SCHEMA_OF) == {*FOLDERS, "club.yml", "references.yml", "sign-offs.yml"}
    assert set(NAMES) == set(SCHEMA_OF.values())
    assert Path(SCHEMAS).is_dir()
