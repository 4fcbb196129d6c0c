"""Every key and value of a file knows the line and column where it starts."""

from collections.abc import Iterator
from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from setwright.source.finding import Position
from setwright.source.tree import Tree, read_tree

SESSION = """\
# a comment
name: Legs
blocks:
  - kind: straight
    exercises:
      - {exercise: squat, reps: 8, kit: [kettlebell, "mat"]}
      -   exercise: row
          reps:   10
note: >-
  Two lines
  of text.
"🦵 legs": &tired [a,
  b]
again: *tired
"""

PLACES = [
    (("name",), "name", "Legs"),
    (("blocks",), "blocks", "- kind"),
    (("blocks", 0), "kind: straight", "kind: straight"),
    (("blocks", 0, "kind"), "kind", "straight"),
    (("blocks", 0, "exercises", 0), "{exercise", "{exercise"),
    (("blocks", 0, "exercises", 0, "exercise"), "exercise: squat", "squat"),
    (("blocks", 0, "exercises", 0, "reps"), "reps: 8", "8,"),
    (("blocks", 0, "exercises", 0, "kit"), "kit", "[kettlebell"),
    (("blocks", 0, "exercises", 0, "kit", 1), '"mat"', '"mat"'),
    (("blocks", 0, "exercises", 1), "exercise: row", "exercise: row"),
    (("blocks", 0, "exercises", 1, "reps"), "reps:   10", "10"),
    (("note",), "note", ">-"),
    (("🦵 legs",), '"🦵 legs"', "&tired"),
    (("🦵 legs", 1), "b]", "b]"),
    (("again",), "again", "&tired"),
    (("again", 1), "b]", "b]"),
]
"""A path; how the file goes on where its key starts (an item's key is the item); and where its value starts."""


def place_of(text: str, start: str) -> tuple[int, int]:
    """Return line and column, from 1, of the first place where a text goes on in a given way."""
    before = text[: text.index(start)]
    return before.count("\n") + 1, len(before.rsplit("\n", 1)[-1]) + 1


@pytest.mark.parametrize(("path", "key", "value"), PLACES)
def test_keys_and_values_keep_their_places(path: tuple[str | int, ...], key: str, value: str) -> None:
    """Block and flow style, keys, values, list items, quoted and folded texts; what is repeated stands where it is."""
    tree = read_tree("legs.yml", SESSION.encode())

    assert Position("legs.yml", *place_of(SESSION, value)) == tree.place(path)
    assert Position("legs.yml", *place_of(SESSION, key)) == tree.place(path, key=True)


@pytest.mark.parametrize(
    ("path", "start"),
    [(("nowhere",), "name"), (("blocks", 7, "kind"), "- kind"), (("blocks", 0, "rounds"), "kind: straight")],
)
def test_a_path_that_leads_nowhere_gives_the_last_place_on_the_way(path: tuple[str | int, ...], start: str) -> None:
    """What is missing is reported where it would belong."""
    tree = read_tree("legs.yml", SESSION.encode())

    assert Position("legs.yml", *place_of(SESSION, start)) == tree.place(path)


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
def test_line_ends_do_not_move_places(line_end: str) -> None:
    """Files from any system count the same lines."""
    tree = read_tree("legs.yml", SESSION.replace("\n", line_end).encode())

    assert Position("legs.yml", *place_of(SESSION, "again")) == tree.place(("again",), key=True)


def test_a_byte_order_mark_at_the_start_does_not_move_places() -> None:
    """Some editors save one; it is no part of the text."""
    tree = read_tree("legs.yml", b"\xef\xbb\xbfname: Legs\n")

    assert Position("legs.yml", 1, 7) == tree.place(("name",))


WORDS = st.text(alphabet="abcdé🦵", min_size=1, max_size=5)
VALUES = st.recursive(
    WORDS, lambda inner: st.lists(inner, min_size=1, max_size=4) | st.dictionaries(WORDS, inner, min_size=1, max_size=4)
)


@given(value=st.dictionaries(WORDS, VALUES, min_size=1, max_size=4), flow=st.sampled_from([True, False, None]))
def test_at_every_place_stands_what_it_is_the_place_of(value: Any, flow: bool | None) -> None:
    """For any file, in any style: where a word is said to stand, the file goes on with that word."""
    text = yaml.safe_dump(value, allow_unicode=True, default_flow_style=flow, width=40)
    tree = read_tree("f.yml", text.encode())

    for path, word in words(value):
        assert text_at(tree, tree.place(path)).startswith(word)
        if isinstance(path[-1], str):
            assert text_at(tree, tree.place(path, key=True)).startswith(path[-1])


def text_at(tree: Tree, place: Position) -> str:
    """Return how a file goes on at a place, a quotation mark or the mark of a long key passed over."""
    return tree.text.split("\n")[place.line - 1][place.column - 1 :].lstrip("\"'? ")


def words(value: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[tuple[Any, ...], str]]:
    """Yield path and text of every single word in a structure."""
    if isinstance(value, str):
        yield way, value
        return
    for step, inner in value.items() if isinstance(value, dict) else enumerate(value):
        yield from words(inner, (*way, step))
