"""A coach's sheet on paper: one leaf in front of the group, in the programme's own words."""

from collections.abc import Callable

import pytest
from pypdf import PdfReader

from setwright import publish
from setwright.handouts.coach import coach_data
from setwright.handouts.writing import Desk
from setwright.model.text import plain
from setwright.outline import paper
from support.sheets import squeezed, text_of


def test_every_hour_is_one_leaf_with_when_to_stop(looked: publish.Looked, sheet: Callable[[str], PdfReader]) -> None:
    """A4 (ISO 216), one page: who asks a clinician first, when to stop, whom to call, and each exercise's own signs."""
    assert looked.programme is not None
    sessions = [session for plan in looked.plans for session in plan.sessions]
    for session in sessions:
        reader = sheet(paper.coach_sheet(session))
        said = text_of(reader)
        assert len(reader.pages) == 1, paper.coach_sheet(session)
        size = reader.pages[0].mediabox
        assert (float(size.width) / 72 * 25.4, float(size.height) / 72 * 25.4) == pytest.approx((210, 297), abs=0.1)
        for words in ("they ask a clinician first", "Local codes of practice hold", "Stop at once if:", "Lay out:"):
            assert squeezed(words) in said
        assert squeezed("In an emergency:") in said
        for item in session.items:
            exercise = looked.programme.exercises[item.exercise]
            limits = exercise.limits.not_for if exercise.limits else []
            for line in [exercise.name, *exercise.stop_if, *limits, *(fault.fix for fault in exercise.faults[:1])]:
                assert squeezed(plain(line)) in said, (session.session, item.exercise, line)


def test_its_parts_stand_in_the_order_of_the_hour(desk: Desk, published: Callable[[str], PdfReader]) -> None:
    """What to lay out, the warm-up, every block and the cool-down follow each other, each with its time."""
    for plan in desk.site.plans:
        for session in plan.weeks[0].sessions:
            data = coach_data(desk, plan, session)
            titles = [data["warm_up_title"], *(block["title"] for block in data["blocks"]), data["cool_down_title"]]
            said = text_of(published(paper.coach_sheet(session)))
            places = [said.find(squeezed(title)) for title in titles]
            assert min(places) > said.find(squeezed("Lay out:")) > 0
            assert places == sorted(places)


def test_its_words_stand_on_the_exercises_cards(desk: Desk, published: Callable[[str], PdfReader]) -> None:
    """Nothing is written twice: what a coach says, shows, watches for and offers is on the exercise's own card."""
    for plan in desk.site.plans:
        for session in plan.weeks[0].sessions:
            for block, made in zip(coach_data(desk, plan, session)["blocks"], session.blocks, strict=True):
                for item, resolved in zip(block["items"], made.items, strict=True):
                    card = text_of(published(paper.exercise_card(resolved.exercise)))
                    faults = [side for fault in item["faults"] for side in (fault["sign"], fault["fix"])]
                    for runs in [item["why"], *item["set_up"], *faults, *item["stop_here"], *item["not_for"]]:
                        words = squeezed("".join(run["text"] for run in runs))
                        assert words in card, (resolved.exercise, words)
