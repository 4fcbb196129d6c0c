"""A limit that a physiotherapist sets stands wherever someone relies on it."""

import json

import pytest

from setwright.dose.resolve import resolve
from setwright.handouts.exercise import sheets
from setwright.handouts.writing import Desk
from setwright.model.exercise import Limits
from setwright.outline import paper
from setwright.outline.addresses import REVIEW, exercise_path
from setwright.outline.site import Site
from setwright.pages import tree
from setwright.wording.language import ENGLISH
from setwright.wording.limits import limits
from support import make

EVERY = {
    # the key, as the coach writes it, and what a reader must find
    "load": ("24 kg", "24 kg"),
    "reps": ("17", "17 a set"),
    "hold": ("47 s", "47 s"),
    "weekly_sets": ("19", "19 a week"),
    "weekly_step": ("11 %", "11 % a week"),
    "earliest_phase": ("1", "phase 1 of a plan"),
    "not_for": ("[Anyone with a wobbly ankle.]", "Anyone with a wobbly ankle."),
}


def test_every_limit_of_the_language_is_here() -> None:
    """A new key of limits needs a line above, and is said everywhere below."""
    assert EVERY.keys() == Limits.model_fields.keys()


@pytest.mark.parametrize("key", EVERY)
def test_a_limit_stands_on_every_page_and_sheet(key: str) -> None:
    """On the exercise's page and the review page; on the card, and on the sheet that is signed."""
    written, said = EVERY[key]
    made = make.programme({"exercises/lift": f"limits: {{{key}: {written}}}"})
    plans = resolve(made)
    pages = tree.render(made, plans)
    printed = {sheet.path: json.dumps(sheet.data, ensure_ascii=False) for sheet in sheets(Desk(Site(made, plans)))}

    assert said in pages[exercise_path("lift")].decode()
    assert said in pages[REVIEW].decode()
    assert said in printed[paper.exercise_card("lift")]
    row = next(row for row in limits(ENGLISH, made.exercises["lift"].limits) if row.key == key)
    form = json.loads(printed[paper.review_sheet("lift")])["limits_form"]
    signed = next(one for one in form if one["key"] == key)
    assert (signed["label"], signed["value"]) == (row.label, row.value)
    assert said in signed["before"] + signed["value"] + signed["after"] + json.dumps(signed["lines"])


def test_a_limit_that_is_not_set_has_a_place_on_the_sheet_to_set_it() -> None:
    """The physiotherapist may write each of them by hand."""
    assert [row.key for row in limits(ENGLISH, None)] == list(Limits.model_fields)
    assert not any(row.value or row.lines for row in limits(ENGLISH, None))
