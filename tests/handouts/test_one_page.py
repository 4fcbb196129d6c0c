"""A session's sheet is one leaf in type that can be read; where that cannot be, it flows on and loses nothing."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from pypdf import PdfReader

from setwright import publish
from setwright.dose.resolve import resolve
from setwright.handouts.press import Press
from setwright.handouts.session import sheets
from setwright.handouts.writing import Desk
from setwright.model.text import plain
from setwright.outline import paper
from setwright.outline.site import Site
from support import make
from support.sheets import opened, squeezed, text_of, words_of

# ISO 216: A4 is 210 x 297 mm. ANSI Y14.1: US Letter is 8.5 x 11 in, 215.9 x 279.4 mm.
A4_MM, LETTER_MM = (210.0, 297.0), (215.9, 279.4)
LONG = "Slow single-leg descent from a high box with a pause and weight beside"  # 70 letters, the longest name


def test_every_session_of_the_example_is_one_leaf(looked: publish.Looked, sheet: Callable[[str], PdfReader]) -> None:
    """Whatever the coach planned for a day hangs on the wall as one leaf, with whom to call and ask on its front."""
    paths = [path for plan in looked.plans for path in map(paper.session_sheet, plan.sessions)]

    assert len(paths) == 47
    for path in paths:
        front, *back = sheet(path).pages
        said = squeezed(front.extract_text())
        assert len(back) <= 1
        assert squeezed("Stop at once if:") in said
        assert squeezed("In an emergency:") in said
        assert squeezed("do your local codes of practice") in said  # the last line of the safety notice
        assert bool(back) == (squeezed("This sheet goes on overleaf.") in said)


def test_who_takes_care_stands_where_the_exercise_stands(
    looked: publish.Looked, sheet: Callable[[str], PdfReader]
) -> None:
    """At each exercise, whom it is not for, when to stop and who takes care; what several share, once on the front."""
    assert looked.programme is not None
    for plan in looked.plans:
        for session in {session.session: session for session in plan.sessions}.values():
            reader = sheet(paper.session_sheet(session))
            sides = [squeezed(page.extract_text()) for page in reader.pages]
            for item in session.items:
                exercise = looked.programme.exercises[item.exercise]
                short = [exercise.name, *exercise.stop_if, *(exercise.limits.not_for if exercise.limits else [])]
                own = next((side for side in sides if all(squeezed(plain(line)) in side for line in short)), "")
                assert own, (session.session, item.exercise)
                assert [line for line in exercise.cautions if squeezed(plain(line)) not in own + sides[0]] == []


def sizes_pt(reader: PdfReader) -> set[float]:
    """Return the sizes of all type, as the pages' operators for text give them (ISO 32000-1, 9.3: ``Tf``)."""
    streams = (page.get_contents() for page in reader.pages)
    found = (re.findall(rb"([\d.]+) Tf", stream.get_data()) for stream in streams if stream is not None)
    return {float(size) for page in found for size in page}


def test_nothing_on_any_sheet_is_too_small_to_read(project: Path, looked: publish.Looked) -> None:
    """No type below 7.5 pt, on any sheet of the example: sessions, weeks, cards, booklets and review sheets.

    Common practice, no source: print for everybody is set in 9 pt or more, and in 7.5 pt at the least.
    """
    papers = sorted((project / "docs_build" / "handouts").rglob("*.pdf"))
    small = {(path.name, size) for path in papers for size in sizes_pt(opened(path.read_bytes())) if size < 7.5}

    assert len(papers) > 100
    assert sorted(small) == []


def test_a_sheet_prints_whole_on_both_papers(looked: publish.Looked, sheet: Callable[[str], PdfReader]) -> None:
    """All text stands where A4 and, printed in full size, US Letter both have paper, 8 mm from the edge."""
    lost_mm = (A4_MM[1] - LETTER_MM[1]) / 2
    written = {session.session: session for plan in looked.plans for session in plan.sessions}
    outside = []
    for session in written.values():
        reader = sheet(paper.session_sheet(session))
        outside += [
            words
            for words in words_of(reader)
            if not (8 < words.x_mm < A4_MM[0] - 8 and lost_mm + 8 < words.y_mm < A4_MM[1] - lost_mm - 8)
        ]
        size = reader.pages[0].mediabox

        assert (float(size.width) / 72 * 25.4, float(size.height) / 72 * 25.4) == pytest.approx(A4_MM, abs=0.1)

    assert outside == []


def nasty(exercises: int, sets: int, note: str) -> Desk:
    """A programme with one overfull session."""
    lift = f"""
name: {LONG}
cues: [{", ".join(["Keep the trunk as long as a pole"] * 3)}]
"""
    lines = "\n".join(
        f"      - {{exercise: lift, reps: {8 + n}, load: {10 + n} % bodyweight, note: '{note}'}}"
        for n in range(exercises)
    )
    session = f"""
name: {LONG}
aim: {note}
note: {note}
blocks:
  - kind: straight
    name: {LONG}
    sets: {sets}
    rest: 90 s
    note: {note}
    exercises:
{lines}
"""
    made = make.programme({"exercises/lift": lift, "sessions/only": session})
    return Desk(Site(made, resolve(made)), "https://strength.example.org/")


def first_sheet(desk: Desk) -> PdfReader:
    return opened(Press().print(next(iter(sheets(desk)))))


def missing_from(reader: PdfReader, desk: Desk) -> list[str]:
    """Return what the sheet ought to show of every exercise and does not."""
    text = text_of(reader)
    session = next(desk.site.plans[0].sessions)
    wanted = [f"{item.dose.first.amount.high} reps" for item in session.items]
    wanted += [f"{item.dose.heaviest.percent} % of body weight" for item in session.items]  # type: ignore[union-attr]
    wanted += ["Stop at once if:", "In an emergency:", "not medical advice"]
    return [words for words in wanted if squeezed(words) not in text] + (
        [] if text.count(squeezed(LONG)) >= len(list(session.items)) else ["a name"]
    )


def test_eight_exercises_with_the_longest_names_are_one_leaf() -> None:
    """Type and boxes get smaller, but no exercise, dose or warning is lost."""
    desk = nasty(8, 3, "Quietly.")
    reader = first_sheet(desk)

    assert len(reader.pages) <= 2
    assert missing_from(reader, desk) == []


def test_what_keeps_a_load_low_stands_on_the_densest_sheet() -> None:
    """How hard a set should feel, once, and that a limit keeps a weight lighter are no remarks that may go."""
    lines = "\n".join(
        f"      - {{exercise: lift, reps: 8, load: [{10 + n} % bodyweight, {12 + n} % bodyweight], feels_like: RPE 8}}"
        for n in range(8)
    )
    session = f"blocks:\n  - kind: straight\n    note: {'Quietly. ' * 60}\n    exercises:\n{lines}\n"
    made = make.programme({"exercises/lift": "limits: {load: 8 kg}", "sessions/only": session})
    text = text_of(first_sheet(Desk(Site(made, resolve(made)), "https://strength.example.org/")))

    assert text.count(squeezed("Should feel like effort 8 of 10; take less if it feels harder.")) == 8
    assert text.count(squeezed("The physiotherapist's limit keeps some weights lighter.")) == 16


@pytest.mark.parametrize(("exercises", "sets"), [(8, 6), (12, 5)])
def test_a_session_beyond_one_page_flows_on(exercises: int, sets: int) -> None:
    """What does not fit at the smallest size goes on to further pages, with every box to write in."""
    desk = nasty(exercises, sets, "Stay tall and breathe out on the way up, every time. " * 4)
    reader = first_sheet(desk)

    assert len(reader.pages) > 1
    assert missing_from(reader, desk) == []
    assert sum(words.text.count("effort") for words in words_of(reader)) >= exercises * sets
