"""Whatever stands in a file, reading it never raises: it gives a thing, or findings that point into the file."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.source.finding import Finding
from setwright.source.read import FOLDERS, Cache, Reading, read
from setwright.source.tree import read_tree
from support.amount import examples
from support.reading import GOOD, LABEL, good_programme, put

SIGN_OFFS = """\
- exercise: squat
  who: A physiotherapist
  role: physiotherapist of the club
  date: 2027-02-01
  text: ghijklmnopab
  cues: ghijklmnopab
  cautions: ghijklmnopab
  limits: none
  dosage: 2 rounds of 8 to 10 reps
"""
FILES = {
    name: (GOOD / name).read_text("utf-8")
    for name in ("club.yml", "references.yml", "plans/regatta.yml", "sessions/legs.yml", "exercises/squat.yml")
} | {"routines/warm.yml": (GOOD / "routines/warm.yml").read_text("utf-8"), "sign-offs.yml": SIGN_OFFS}
YAML_SIGNS = st.text(alphabet="ab1 \n\t:-?,[]{}#&*!|>'\"%@`\\~<=/.\u00e9\u00a0\u2028\ufeff", max_size=80)
KEYS = st.sampled_from(
    [
        "name",
        "aim",
        "blocks",
        "kind",
        "exercises",
        "reps",
        "load",
        "progress",
        "add",
        "weeks",
        "phases",
        "kit",
        "<<",
        "0",
    ]
)
SCALARS = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(),
    st.floats(),
    st.dates(),
    st.binary(max_size=4),
    st.text(max_size=12),
    st.sampled_from(["8", "30 s", "12 kg", "15 %", "squat", "legs", "3-0-1-0", "light band", "straight", "RPE 7", ""]),
)
STRUCTURES = st.recursive(
    SCALARS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(KEYS | st.text(max_size=6), inner, max_size=5),
    max_leaves=12,
)


class Desk:
    """A programme of which one file is rewritten again and again."""

    def __init__(self, folder: Path) -> None:
        self.program = good_programme(folder, FILES)
        self.cache: Cache = {}

    def read_with(self, name: str, content: bytes) -> Reading:
        """Read the programme with one file replaced, and put the good file back."""
        put(self.program, name, content)
        try:
            return read(self.program, LABEL, self.cache)
        finally:
            put(self.program, name, FILES[name])


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Desk:
    """One folder for all examples, since making one takes longer than reading it."""
    return Desk(tmp_path_factory.mktemp("desk"))


def assert_read(reading: Reading, name: str) -> None:
    """Say that a file gave a thing or a finding, and that findings lie inside their files."""
    assert (reading.programme is not None) == (reading.errors == ())
    for finding in reading.findings:
        assert_inside(finding, reading)


def assert_inside(finding: Finding, reading: Reading) -> None:
    """Say that a finding's line and column exist, or that its file could not be read as text."""
    position = finding.position
    tree = reading.places.trees.get(position.file.removeprefix(f"{LABEL}/"))
    lines = tree.text.split("\n") if tree else [""]

    assert position.line >= 1
    assert position.column >= 1
    if lines != [""]:
        assert position.line <= len(lines)
        assert position.column <= len(lines[position.line - 1]) + 1


@given(name=st.sampled_from(sorted(FILES)), content=st.binary(max_size=200))
def test_any_bytes_can_be_read(desk: Desk, name: str, content: bytes) -> None:
    """Any bytes as any file of a programme."""
    assert_read(desk.read_with(name, content), name)


@given(name=st.sampled_from(sorted(FILES)), content=st.text(max_size=200) | YAML_SIGNS)
def test_any_text_can_be_read(desk: Desk, name: str, content: str) -> None:
    """Any text as any file of a programme, signs of YAML more often than others."""
    assert_read(desk.read_with(name, content.encode("utf-8", "surrogatepass")), name)


@given(name=st.sampled_from(sorted(FILES)), value=STRUCTURES)
def test_any_structure_can_be_read(desk: Desk, name: str, value: Any) -> None:
    """Any lists, mappings and values as any file of a programme."""
    assert_read(desk.read_with(name, yaml.safe_dump(value, allow_unicode=True).encode("utf-8", "replace")), name)


@given(name=st.sampled_from(sorted(FILES)), data=st.data())
@settings(max_examples=examples(40))
def test_any_value_anywhere_can_be_read(desk: Desk, name: str, data: st.DataObject) -> None:
    """A good file with any one value replaced by anything."""
    whole = yaml.load(FILES[name], Loader=yaml.BaseLoader)  # noqa: S506 - strings alone
    *way, last = data.draw(st.sampled_from(list(paths(whole))))
    inner = whole
    for step in way:
        inner = inner[step]
    inner[last] = data.draw(STRUCTURES)

    reading = desk.read_with(
        name, yaml.safe_dump(whole, allow_unicode=True, sort_keys=False).encode("utf-8", "replace")
    )

    assert_read(reading, name)


@given(name=st.sampled_from(sorted(FILES)), data=st.data())
@settings(max_examples=examples(40))
def test_any_slip_of_the_keyboard_can_be_read(desk: Desk, name: str, data: st.DataObject) -> None:
    """A good file with something typed, or deleted, anywhere in it."""
    text = FILES[name]
    at = data.draw(st.integers(0, len(text)))
    deleted = data.draw(st.integers(0, 6))
    typed = data.draw(YAML_SIGNS.map(lambda signs: signs[:4]))

    reading = desk.read_with(name, (text[:at] + typed + text[at + deleted :]).encode())

    assert_read(reading, name)


@given(content=st.binary(max_size=300) | YAML_SIGNS.map(str.encode))
def test_any_file_gives_a_tree_or_a_finding(content: bytes) -> None:
    """The YAML reader alone: a tree, or the one finding that made the file unreadable."""
    tree = read_tree("file.yml", content)

    assert (tree.root is not None) or len(tree.findings) == 1


def test_every_kind_of_file_is_tried() -> None:
    """Each folder of a programme is among the files above."""
    assert set(FOLDERS) | {"club.yml", "references.yml", "sign-offs.yml"} == {name.split("/")[0] for name in FILES}


def paths(value: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Yield the path of every value inside a structure."""
    pairs = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in pairs:
        yield (*way, step)
        yield from paths(inner, (*way, step))
