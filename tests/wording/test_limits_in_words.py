"""A limit that a physiotherapist sets stands wherever someone relies on it."""

import json
import re

import pytest

from setwright.dose.resolve import resolve
from setwright.handouts import tree as handouts
from setwright.handouts.exercise import review_data
from setwright.handouts.writing import Desk
from setwright.model.limits import Limits
from setwright.outline import paper
from setwright.outline.addresses import REVIEW, exercise_path, routine_path
from setwright.outline.site import Site
from setwright.pages import tree
from setwright.wording.language import ENGLISH
from setwright.wording.limits import limits
from support import make

EVERY = {
    # the key, as the coach writes it, and what a reader must find
    "load": ("24 kg", "24 kg"),
    "top_effort": ("RPE 6.5", "6.5 of 10"),
    "least_reserve": ("4 reps in reserve", "4 reps or more"),
    "reps": ("17", "17 a set"),
    "hold": ("47 s", "47 s"),
    "rep_time": ("53 s", "53 s"),
    "distance": ("43 m", "43 m a set"),
    "height": ("37 cm", "37 cm"),
    "contacts": ("91", "91 a session"),
    "weekly_sets": ("19", "19 a week"),
    "weekly_step": ("11 %", "11 % a week"),
    "earliest_phase": ("1", "phase 1 of a plan"),
    "earliest_week": ("1", "week 1 of a plan"),
    "not_for": ("[Anyone with a wobbly ankle.]", "Anyone with a wobbly ankle."),
}


def test_every_limit_of_the_language_is_here() -> None:
    """A new key of limits needs a line above, and is said everywhere below."""
    assert EVERY.keys() == Limits.model_fields.keys()


def printed_with(key: str) -> tuple[dict[str, str], dict[str, str]]:
    """Return every page and the text of every sheet of a small programme whose exercise has one limit."""
    made = make.programme(
        {
            "exercises/lift": f"limits: {{{key.removeprefix('no ')}: {LINES[key][0]}}}",
            "routines/warm": "exercises: [{exercise: lift, reps: 5}]",
        }
    )
    plans = resolve(made)
    pages = {path: raw.decode() for path, raw in tree.render(made, plans).items() if path.endswith(".md")}
    return pages, {sheet.path: sheet.text for sheet in handouts.sheets(Desk(Site(made, plans)))}


LINES = {**EVERY, "no load": ("none", "none, the body alone")}
"""Every key, and the limit that allows no weight."""


@pytest.mark.parametrize("key", LINES)
def test_a_limit_stands_on_every_page_and_sheet(key: str) -> None:
    """On the page of the exercise, of the session, of a warm-up and of the review; on card, sheet, pack and booklet."""
    said = LINES[key][1]
    pages, sheets = printed_with(key)
    session = "plans/plan/week-01/monday/index.md"
    card, review = paper.exercise_card("lift"), paper.review_sheet("lift")
    wanted = [exercise_path("lift"), session, routine_path("warm-up", "warm"), REVIEW]
    on_paper = [
        card,
        review,
        "handouts/plan/plan-week-01-monday.pdf",
        paper.week_pack("plan", 1),
        paper.booklet("plan"),
    ]

    assert [path for path in wanted if said not in pages[path]] == []
    assert [path for path in on_paper if said not in sheets[path]] == []


@pytest.mark.parametrize("key", LINES)
def test_a_limit_stands_where_the_guide_looks(key: str) -> None:
    """The guide shows parts of the session's page by their names: a limit is inside one of them."""
    pages, _ = printed_with(key)
    page = pages["plans/plan/week-01/monday/index.md"]
    shown = [
        part
        for name, tag in (("not-for", "p"), ("limits", "p"), ("stop", "p"))
        for part in re.findall(rf'data-part="{name}"[^>]*>(.*?)</{tag}>', page, re.S)
    ]

    assert any(LINES[key][1] in part for part in shown)


@pytest.mark.parametrize("key", EVERY)
def test_a_limit_has_its_place_on_the_sheet_that_is_signed(key: str) -> None:
    """Label, value and the words round it are those of the row."""
    made = make.programme({"exercises/lift": f"limits: {{{key}: {EVERY[key][0]}}}"})
    site = Site(made, resolve(made))
    row = next(row for row in limits(ENGLISH, made.exercises["lift"].limits) if row.key == key)
    form = review_data(Desk(site), "lift", site.reviews["lift"])["limits_form"]
    signed = next(one for one in form if one["key"] == key)

    assert (signed["label"], signed["value"]) == (row.label, row.value)
    assert EVERY[key][1] in signed["before"] + signed["value"] + signed["after"] + json.dumps(signed["lines"])


def test_a_limit_that_is_not_set_has_a_place_on_the_sheet_to_set_it() -> None:
    """The physiotherapist may write each of them by hand."""
    assert [row.key for row in limits(ENGLISH, None)] == list(Limits.model_fields)
    assert not any(row.value or row.lines for row in limits(ENGLISH, None))
