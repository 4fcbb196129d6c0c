"""What a coach types stays what it is.

YAML 1.2.2 (2021), section 10.3.2, knows only ``true``, ``false``, ``null``, ``~`` and numbers as more than texts.
``no``, ``on``, ``12:30``, ``1_000`` and dates are texts there, where YAML 1.1 (2005) made them something else.
This reader is stricter still: all of them are texts, and the models read numbers where numbers are wanted.
"""

from pathlib import Path

import pytest
import yaml

from setwright.model.span import Span
from setwright.source.read import read
from setwright.source.tree import read_tree
from support.reading import LABEL, good_programme

CHANGED_BY_YAML_1_1 = [
    "no", "No", "NO", "yes", "on", "off", "n", "y",  # truth values, YAML 1.1 type "bool"
    "12:30", "1:30:00", "190:20:30",  # numbers of base 60, YAML 1.1 types "int" and "float"
    "1_000", "010", "0b11", "1_0.5",  # underscores, octal without "o", binary
    "2027-02-28", "2027-02-30", "2027-02-28 10:00:00",  # YAML 1.1 type "timestamp"
    "=", "1e3", "+1", ".5", "0x1F", "0o17", ".inf", ".nan", "true", "False",  # further resolved forms
]  # fmt: skip


@pytest.mark.parametrize("written", CHANGED_BY_YAML_1_1)
def test_a_plain_value_stays_the_text_that_was_typed(written: str) -> None:
    """Nothing is turned into a truth value, a number or a date behind the coach's back."""
    tree = read_tree("f.yml", f"key: {written}\nlist: [{written}]\n{written}: key\n".encode())

    assert tree.root is not None
    assert tree.root.data() == {"key": written, "list": [written], written: "key"}


@pytest.mark.parametrize("written", ["no", "on", "12:30", "1_000", "010", "2027-02-28"])
def test_another_reader_would_have_changed_it(written: str) -> None:
    """The values above are worth testing: PyYAML's own YAML 1.1 loader changes them."""
    assert written != yaml.safe_load(f"key: {written}")["key"]


@pytest.mark.parametrize("written", ["", "~", "null", "Null", "NULL"])
def test_an_empty_value_is_a_mistake(written: str, tmp_path: Path) -> None:
    """Every way that YAML 1.2.2 (section 10.3.2) writes nothing is reported as a value that is missing."""
    phases = "phases: [{name: A, aim: B., weeks: 1, sessions: {friday: legs}}]"
    plan = f"name: {written}\nfor: Members.\nstarts: 2027-03-01\n{phases}\n"

    findings = read(good_programme(tmp_path, {"plans/regatta.yml": plan}), LABEL).findings

    assert [f"{LABEL}/plans/regatta.yml:1:1 no-value"] == [f"{f.position} {f.rule}" for f in findings]


@pytest.mark.parametrize("written", ["''", '""', "' '"])
def test_a_quoted_nothing_is_a_text(written: str) -> None:
    """Quotes make a text, even of nothing; the models say then that it is too short."""
    tree = read_tree("f.yml", f"key: {written}\n".encode())

    assert tree.root is not None
    assert tree.root.data()["key"].strip() == ""
    assert tree.findings == ()


@pytest.mark.parametrize(
    ("written", "text"),
    [
        ("'12 kg'", "12 kg"),
        ('"12 kg"', "12 kg"),
        ("'don''t'", "don't"),
        ('"a \\"b\\""', 'a "b"'),
        ("Sit: no", None),
        ("Sit:down", "Sit:down"),
        ("a #b", "a"),
        ("a#b", "a#b"),
        (">-\n  one\n  two", "one two"),
        ("|-\n  one\n  two", "one\ntwo"),
        ("one\n  two", "one two"),
    ],
)
def test_quotes_and_folding_follow_the_standard(written: str, text: str | None) -> None:
    """Texts in all styles of YAML 1.2.2, chapters 7 and 8; None where it is no text at all."""
    tree = read_tree("f.yml", f"key: {written}\n".encode())

    assert text == (tree.root.data()["key"] if tree.root else None)


def test_numbers_with_leading_zeros_count_as_they_are_read(tmp_path: Path) -> None:
    """``010`` is ten, as everyone reads it, and not the eight that YAML 1.1 made of it."""
    session = "name: Legs\naim: Push.\nblocks: [{kind: straight, sets: 2, exercises: [{exercise: squat, reps: 010}]}]\n"

    programme = read(good_programme(tmp_path, {"sessions/legs.yml": session}), LABEL).programme

    assert programme is not None
    assert programme.sessions["legs"].blocks[0].exercises[0].reps == (Span.of(10),)


def test_a_repeated_value_is_the_same_wherever_it_stands(tmp_path: Path) -> None:
    """Anchors and aliases may spare writing; they give the same dose in both places."""
    session = """\
name: Legs
aim: Push.
blocks:
  - {kind: straight, sets: 2, exercises: [&dose {exercise: squat, reps: 8}]}
  - {kind: straight, sets: 1, exercises: [*dose]}
"""

    programme = read(good_programme(tmp_path, {"sessions/legs.yml": session}), LABEL).programme

    assert programme is not None
    first, second = programme.sessions["legs"].blocks
    assert first.exercises == second.exercises
