"""The search holds what members look for, and little else: its index is fetched with every page, on every phone."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from setwright.pages.renderer import AFTER

MOST_BYTES = 150_000
"""The example's index. Common practice, no source: about what the largest picture of a page may weigh."""


@pytest.fixture(scope="module")
def index(site: Path) -> list[dict[str, Any]]:
    """The entries of the example's index."""
    found: list[dict[str, Any]] = json.loads((site / "search" / "search_index.json").read_bytes())["docs"]
    return found


def addresses(index: list[dict[str, Any]]) -> set[str]:
    return {entry["location"].partition("#")[0] for entry in index}


def test_the_index_is_light(site: Path) -> None:
    """A first visit on a weak signal waits for it."""
    assert (site / "search" / "search_index.json").stat().st_size < MOST_BYTES


def test_what_members_look_for_is_found(site: Path, index: list[dict[str, Any]]) -> None:
    """Every exercise, warm-up, cool-down and plan by its name, safety, and the pages that help."""
    wanted = {
        page.parent.relative_to(site).as_posix() + "/"
        for kind in ("exercises/*", "warm-ups/*", "cool-downs/*", "plans/*")
        for page in site.glob(f"{kind}/index.html")
    }
    titles = {entry["title"] for entry in index}

    assert len(wanted) > 60
    assert wanted | {"safety/", "numbers/", "settings/", "offline/", "find/"} <= addresses(index)
    assert {"Goblet squat", "Wall sit"} <= titles


def test_whom_an_exercise_is_not_for_and_what_to_mind_is_found(index: list[dict[str, Any]]) -> None:
    """Who looks for a sore knee or for pregnancy comes to the exercises that speak of it."""
    for word in ("knee", "pregnancy"):
        found = [entry for entry in index if word in entry["text"] and entry["location"].startswith("exercises/")]
        assert len({entry["location"].partition("#")[0] for entry in found}) > 3, word


def test_days_of_a_plan_are_found_by_their_plan(index: list[dict[str, Any]]) -> None:
    """Thirty-five sessions that say nearly the same would hide everything else."""
    assert [address for address in addresses(index) if re.fullmatch(r"plans/[^/]+/.+", address)] == []


def test_the_coachs_pages_come_after_those_for_members(index: list[dict[str, Any]]) -> None:
    """The physiotherapist's and the coach's weigh less, and single checks are found by their list."""
    heavy = {entry["location"] for entry in index if entry.get("boost", 1) >= 1}

    assert {address for address in addresses(index) if address.startswith("checks/")} == {"checks/"}
    assert not {entry for entry in heavy if entry.startswith(("review/", "weekly-load/", "checks/"))}
    assert {entry["boost"] for entry in index if entry["location"].startswith("review/")} == {float(AFTER)}


def test_what_stands_on_every_page_is_found_on_one(index: list[dict[str, Any]]) -> None:
    """The way to a page, the notice of safety and the way to paper are no answer to a question."""
    for words in ("This is general training information", "Card (PDF)", "<li>Home</li>"):
        assert len([entry for entry in index if words in entry["text"]]) <= 1, words
