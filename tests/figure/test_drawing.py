"""The pictures: well-formed, small, described, the same every time, and harmless on any page."""

import gzip
import json
import os
import re
import subprocess
import sys
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from setwright.figure import animated, still, thumbnail, thumbnail_box
from setwright.figure.shapes import shapes
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.palette import DAY, NIGHT, PAPER
from support.make import exercise
from support.reading import EXAMPLE

SVG = "{http://www.w3.org/2000/svg}"
BUDGET_BYTES = 6 * 1024


@pytest.fixture
def drawn(example: Programme) -> dict[str, Exercise]:
    return {ident: one for ident, one in example.exercises.items() if one.figure}


def test_figures_are_well_formed_and_described(drawn: dict[str, Exercise]) -> None:
    """Each has a title with the exercise's name and a description, as a reader's software looks for them."""
    for ident, one in drawn.items():
        pictures = [ElementTree.fromstring(text) for text in (still(one), thumbnail(one)) if text]  # noqa: S314 - our own
        moving = animated(one, ident)
        assert moving is not None
        inline = ElementTree.fromstring(moving.svg.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1))  # noqa: S314 - our own

        assert all(picture.findtext(f"{SVG}title") == one.name for picture in [*pictures, inline])
        assert inline.get("aria-labelledby") == f"fig-{ident}-title fig-{ident}-desc"
        assert inline.findtext(f"{SVG}desc")


def test_figures_are_small(drawn: dict[str, Exercise]) -> None:
    """A moving figure with everything it needs stays within 6 KB, packed as servers send it."""
    for ident, one in drawn.items():
        moving, small = animated(one, ident), thumbnail(one)
        assert moving is not None
        assert small is not None

        assert len(gzip.compress((moving.svg + moving.frames + moving.beats).encode())) <= BUDGET_BYTES
        assert len(gzip.compress(small.encode())) <= BUDGET_BYTES / 2


def test_figures_carry_no_styles_and_no_scripts(drawn: dict[str, Exercise]) -> None:
    """A strict content security policy lets them through: attributes alone, nothing inline that acts."""
    for ident, one in drawn.items():
        moving = animated(one, ident)
        assert moving is not None
        for text in (still(one), thumbnail(one), moving.svg):
            assert not re.search(r"<style|<script|\sstyle=|\son\w+=|https?://(?!www\.w3\.org/2000/svg)", text or "")


def test_ids_are_the_exercise_s_own(drawn: dict[str, Exercise]) -> None:
    """Two figures on a page never share an id."""
    for ident, one in drawn.items():
        moving = animated(one, ident)
        assert moving is not None
        ids = re.findall(r'\sid="([^"]+)"', moving.svg)

        assert len(ids) == len(set(ids))
        assert all(name.startswith(f"fig-{ident}-") for name in ids)


def test_paper_gets_plain_colours(drawn: dict[str, Exercise]) -> None:
    """What is printed without a browser holds no custom properties and no reused parts."""
    for one in drawn.values():
        assert not re.search(r"var\(|<use", still(one) or "")


def test_every_moving_part_has_its_places(drawn: dict[str, Exercise]) -> None:
    """Five numbers a frame for each part that moves, and the browser finds every part by its number."""
    for ident, one in drawn.items():
        moving = animated(one, ident)
        assert moving is not None
        if not moving.moves:
            continue
        rows, moments = json.loads(moving.frames), json.loads(moving.beats)
        frames = max(frame for _, frame in moments) + 1

        assert {len(row) for row in rows if row} == {frames * 5}
        assert set(map(int, re.findall(r'data-part="(\d+)"', moving.svg))) == set(range(len(rows)))


def test_turns_never_jump(drawn: dict[str, Exercise]) -> None:
    """Between two frames no part spins: less than a third of a circle."""
    for ident, one in drawn.items():
        moving = animated(one, ident)
        rows = json.loads(moving.frames) if moving and moving.moves else []
        for row in filter(None, rows):
            turns = row[2::5]

            assert all(abs(a - b) < 120 for a, b in pairwise(turns)), ident


DRAW = """
import hashlib
from pathlib import Path
from setwright.figure import animated, thumbnail
from setwright.source.read import read
drawn = [(i, e) for i, e in read(Path(%r)).programme.exercises.items() if e.figure][:12]
print(hashlib.sha256("".join(f"{animated(e, i)}{thumbnail(e)}" for i, e in drawn).encode()).hexdigest())
"""


def test_the_same_words_give_the_same_bytes() -> None:
    """Two runs of the program, with other orders of sets and other hashes, draw the same text."""
    digests = {
        subprocess.run(
            [sys.executable, "-c", DRAW % str(EXAMPLE)],
            env={**os.environ, "PYTHONHASHSEED": seed},
            check=True,
            capture_output=True,
            text=True,
        ).stdout
        for seed in ("1", "2")
    }

    assert len(digests) == 1
    assert len(digests.pop().strip()) == 64


def test_what_a_coach_writes_is_escaped() -> None:
    """A name with an ampersand stays text."""
    text = still(exercise("name: Push & pull\nfigure: {poses: [{trunk: 0}]}"))

    assert text is not None
    assert "<title>Push &amp; pull</title>" in text


def test_no_figure_no_picture() -> None:
    """An exercise without a figure gives nothing, not an empty frame."""
    bare = exercise()

    assert (still(bare), thumbnail(bare), thumbnail_box(bare), animated(bare, "lift")) == (None, None, None, None)


def _luminance(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_every_paint_is_in_the_palette(drawn: dict[str, Exercise]) -> None:
    """On a page a figure asks for the palette's colours, and falls back to those of the day; on paper it has greys."""
    asked: dict[str, str] = {}
    greys: set[str] = set()
    for ident, one in drawn.items():
        moving = animated(one, ident)
        assert moving is not None
        for text in (thumbnail(one), moving.svg):
            asked |= re.findall(r"var\(--([\w-]+),(#\w+)\)", text or "")
        greys |= set(re.findall(r"#[0-9a-f]{6}", still(one) or ""))

    assert asked == {name: DAY[name] for name in asked}
    assert asked.keys() == {name for name in DAY if name.startswith("sw-fig-")}
    assert greys <= {PAPER[name] for name in asked}
    assert all(grey[1:3] == grey[3:5] == grey[5:7] for grey in greys)


@pytest.mark.parametrize("colours", [DAY, NIGHT, PAPER], ids=["day", "night", "paper"])
def test_far_limbs_are_darker(colours: dict[str, str]) -> None:
    """Far limbs are told from near ones by their darkness, in colour and in grey."""
    far = [name for name in colours if name.startswith("sw-fig-") and name.endswith("-far")]

    assert len(far) == 5
    assert all(_luminance(colours[name]) < _luminance(colours[name.removesuffix("-far")]) for name in far)


@pytest.mark.parametrize("role", ["skin", "shirt", "shorts", "shoe", "hair", "metal", "arrow"])
def test_the_figure_stands_out_from_its_ground(role: str) -> None:
    """Parts that a reader must see have a contrast of 3 to 1 against the page. WCAG 2.2, 1.4.11."""
    assert (_luminance("#ffffff") + 0.05) / (_luminance(DAY[f"sw-fig-{role}"]) + 0.05) >= 3


@pytest.mark.parametrize("colours", [DAY, NIGHT, PAPER], ids=["day", "night", "paper"])
@pytest.mark.parametrize("behind", ["shorts", "shorts-far"])
def test_weights_stand_out_from_the_shorts(colours: dict[str, str], behind: str) -> None:
    """A weight that hangs beside the thigh has a contrast of 3 to 1 against the shorts. WCAG 2.2, 1.4.11."""
    metal, cloth = (_luminance(colours[f"sw-fig-{role}"]) + 0.05 for role in ("metal", behind))

    assert max(metal, cloth) / min(metal, cloth) >= 3


@pytest.mark.parametrize("role", ["skin", "shirt", "shorts", "shoe", "metal", "arrow"])
def test_the_figure_stands_out_at_night(role: str) -> None:
    """The same 3 to 1 against the night's surface. WCAG 2.2, 1.4.11."""
    assert (_luminance(NIGHT[f"sw-fig-{role}"]) + 0.05) / (_luminance(NIGHT["sw-surface"]) + 0.05) >= 3


def test_both_views_draw_the_same_parts() -> None:
    """The view from the front has what the view from the side has, but for toes, a bending back and a turning face."""
    only = {"toes", "waist", "middle", "chest", "face", "fringe", "brow"}

    assert set(shapes("side")) - set(shapes("front")) == only
