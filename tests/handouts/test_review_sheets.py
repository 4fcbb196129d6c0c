"""What a signature covers is printed before it: the words of sessions and warm-ups, and what the coach stands by."""

from dataclasses import replace

import pytest
from pypdf import PdfReader

from setwright import publish
from setwright.handouts import exercise
from setwright.handouts.press import Press
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk
from setwright.model.text import plain
from setwright.outline import paper
from setwright.outline.site import Site
from support.sheets import opened, squeezed, text_of


@pytest.fixture(scope="module")
def reviewing(looked: publish.Looked) -> Desk:
    """The example with the warnings that its coach stands by."""
    assert looked.programme is not None
    return Desk(Site(looked.programme, looked.plans, looked.accepted))


@pytest.fixture(scope="module")
def sheets(reviewing: Desk) -> dict[str, Sheet]:
    return {sheet.path: sheet for sheet in exercise.sheets(reviewing)}


def printed(sheet: Sheet) -> PdfReader:
    return opened(Press().print(sheet))


@pytest.mark.parametrize("ident", ["box-step-down", "drop-and-stick", "wall-sit"])
def test_the_words_of_sessions_stand_on_the_sheet(reviewing: Desk, sheets: dict[str, Sheet], ident: str) -> None:
    """Every note, kit and height of a session that the digest takes in, with the session's name."""
    words = reviewing.site.words_about[ident]
    text = text_of(printed(sheets[paper.review_sheet(ident)]))

    assert len(words) >= 2
    assert [line for line in words if squeezed(plain(line.text)) not in text or squeezed(line.key) not in text] == []


def test_each_sheet_holds_exactly_what_its_digests_were_taken_over(reviewing: Desk, sheets: dict[str, Sheet]) -> None:
    """For every exercise: as many words as there are, and marked where the newest sign-off did not see them."""
    for ident, review in reviewing.site.reviews.items():
        data = sheets[paper.review_sheet(ident)].data
        said = reviewing.site.words_about.get(ident, ())

        assert len(data["words"]) == len(said)
        marked = [reviewing.mark in line["says"] for line in data["words"]]
        assert marked == [not review.words_seen] * len(said)


def test_a_warning_that_the_coach_stands_by_is_printed_with_its_reason(
    looked: publish.Looked, sheets: dict[str, Sheet]
) -> None:
    """Those about an exercise stand on its sheet."""
    mine = [one for one in looked.accepted if one.exercise == "drop-and-stick"]
    text = text_of(printed(sheets[paper.review_sheet("drop-and-stick")]))

    assert mine
    assert [one for one in mine if squeezed(plain(one.why)) not in text or squeezed(one.finding.rule) not in text] == []


def test_a_warning_about_a_session_or_a_plan_ends_the_file_of_all_sheets(looked: publish.Looked) -> None:
    """No warning that was accepted is on no sheet."""
    assert looked.programme is not None
    first, *others = [one for one in looked.accepted if one.finding.rule != "too-little-kit"]  # of sessions by itself
    position = replace(first.finding.position, file="program/plans/relay.yml")
    moved = replace(first, finding=replace(first.finding, position=position))
    desk = Desk(Site(looked.programme, looked.plans, (moved, *others)))
    (every,) = (sheet.data for sheet in exercise.sheets(desk) if sheet.path == paper.REVIEWS)

    assert [line["message"] for line in every["elsewhere"]] == [first.finding.message]
    assert sum(len(sheet["accepted"]) for sheet in every["sheets"]) == len(others)
