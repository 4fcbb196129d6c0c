"""What an exercise's page shows first: the movement and its cues; who reviewed it, limits and sources come below."""

from pathlib import Path

import pytest

from .conftest import Look

SIGNED, UNSIGNED = "exercises/goblet-squat/", "exercises/wall-sit/"
ORDER = (
    'class="sw-figure',
    "sw-cues-large",
    'id="set-up"',
    'id="how-to-do-it"',
    'class="sw-facts"',
    'id="common-faults"',
    'id="cautions"',
    'id="stop-if"',
    'id="where-it-appears"',
    "sw-review-badge",
    'id="limits"',
    'id="sources"',
)


def test_the_movement_comes_first_and_its_papers_last(site: Path) -> None:
    """A member trains from the top of the page; the physiotherapist's word on it stands with limits and sources."""
    text = (site / SIGNED / "index.html").read_text("utf-8")
    places = [text.index(mark) for mark in ORDER]

    assert places == sorted(places)


def test_what_nobody_signed_off_says_so_before_the_movement(site: Path) -> None:
    """A page that no physiotherapist has seen is no page to train from before that is read."""
    text = (site / UNSIGNED / "index.html").read_text("utf-8")

    assert text.index("sw-review-badge") < text.index('class="sw-figure')


@pytest.mark.parametrize("path", [SIGNED, UNSIGNED])
def test_what_to_do_stands_beside_the_figure_where_there_is_room(look: Look, path: str) -> None:
    """On a desktop cues and set-up are beside the movement; on a phone they follow it."""
    for size, beside in (((1280, 800), True), ((390, 844), False)):
        page = look(path, size)
        figure = page.locator(".sw-figure").first.bounding_box()
        cues, set_up = (page.locator(one).bounding_box() for one in (".sw-cues-large", "#set-up + ul"))
        assert figure is not None
        assert cues is not None
        assert set_up is not None
        right, foot = figure["x"] + figure["width"], figure["y"] + figure["height"]
        assert (cues["x"] >= right and cues["y"] < foot) is beside
        assert (set_up["x"] >= right and set_up["y"] < foot) is beside
