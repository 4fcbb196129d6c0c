"""Whom an exercise is not for, when to stop and who takes care: at the exercise, unfolded, on screen and on paper."""

import html
from collections.abc import Iterable
from html.parser import HTMLParser
from typing import Any

import pytest

from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedPlan, ResolvedSession
from setwright.handouts.booklet import booklet_data
from setwright.handouts.session import session_data, week_data
from setwright.handouts.writing import Desk
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.model.text import spans
from setwright.outline.addresses import session_path
from setwright.outline.site import Site
from setwright.pages import session as session_pages
from setwright.pages.renderer import Renderer

WALKED = [(1, "tuesday"), (7, "friday"), (9, "tuesday")]
"""A session of each of the first three phases of the example's long plan."""
PARTS = ("not-for", "stop", "care")


class Unfolded(HTMLParser):
    """What stands open at each way of each exercise, by the name of its part."""

    def __init__(self) -> None:
        super().__init__()
        self.ways: list[dict[str, str]] = []
        self._open: list[tuple[str, bool, str]] = []  # of each element: its tag, whether it is a card's fold, its part

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Enter an element; a card's fold begins a way of an exercise."""
        given = dict(attrs)
        fold = given.get("data-hook") == "fold"
        if fold:
            self.ways.append({})
        if tag not in ("br", "img", "use", "input", "rect", "line", "link", "meta"):
            self._open.append((tag, fold, given.get("data-part") or ""))

    def handle_endtag(self, tag: str) -> None:
        """Leave an element, and what was left open inside it."""
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        """Keep text that belongs to a part and is in no fold."""
        named = [part for _, _, part in self._open if part in PARTS]
        if self.ways and named and not any(fold for _, fold, _ in self._open):
            self.ways[-1][named[-1]] = self.ways[-1].get(named[-1], "") + data


@pytest.fixture(scope="module")
def site(example: Programme) -> Site:
    """The example, resolved."""
    return Site(example, resolve(example))


def session_of(site: Site, week: int, day: str) -> tuple[ResolvedPlan, ResolvedSession]:
    """Return the session of a day of the long plan."""
    plan = next(one for one in site.plans if one.ident == "relay")
    return plan, next(one for one in plan.weeks[week - 1].sessions if one.day == day)


def words(text: str) -> str:
    """Return a text of the coach without its marks, in single spaces."""
    return " ".join("".join(span.text for span in spans(text)).split())


def care_of(exercise: Exercise) -> dict[str, list[str]]:
    """Return all that must be said of an exercise, by the name of its part."""
    not_for = exercise.limits.not_for if exercise.limits else []
    said = {"not-for": not_for, "stop": exercise.stop_if, "care": exercise.cautions}
    return {part: [words(line) for line in lines] for part, lines in said.items()}


def plain(runs: Iterable[Iterable[dict[str, Any]]]) -> str:
    """Return what a sheet says, run by run, as one text."""
    return " ".join("".join(run["text"] for run in one) for one in runs)


@pytest.mark.parametrize(("week", "day"), WALKED)
def test_on_the_page_it_stands_open_at_each_way_and_where_the_guide_looks(site: Site, week: int, day: str) -> None:
    """Below the line of each exercise, and of what may be done instead; the guide copies these parts by their names."""
    _, session = session_of(site, week, day)
    page = next(one for one in session_pages.pages(site) if one.path == session_path(session))
    unfolded = Unfolded()
    unfolded.feed(Renderer(site).render(page))
    ways = list(session.all_items)

    assert len(unfolded.ways) == len(ways) > 9
    for way, shown in zip(ways, unfolded.ways, strict=True):
        for part, lines in care_of(site.programme.exercises[way.exercise]).items():
            there = " ".join(html.unescape(shown.get(part, "")).split())
            assert [line for line in lines if line not in there] == []


@pytest.mark.parametrize(("week", "day"), WALKED)
@pytest.mark.parametrize("paper", ["sheet", "pack", "booklet"])
def test_on_paper_it_stands_at_the_exercise_or_by_its_letter(site: Site, week: int, day: str, paper: str) -> None:
    """What several exercises of a session say word for word is said once before them, by the letter at each."""
    desk, (plan, session) = Desk(site), session_of(site, week, day)
    data = session_data(desk, plan, session)
    if paper == "pack":
        (data,) = (
            one
            for one in week_data(desk, plan, plan.weeks[week - 1], [data])["sessions"]
            if one["title"] == data["title"]
        )
    if paper == "booklet":
        phases = booklet_data(desk, plan)["phases"]
        inside = [one for phase in phases for each in phase["weeks"] for one in each["sessions"]]
        data = next(one for one in inside if one["week"] == week and one["title"] == data["title"])
    letters = {letter: plain([line]) for letter, line in data["take_care"]}
    items = [way for block in data["blocks"] for item in block["items"] for way in (item, *item["instead"])]
    ways = list(session.all_items)

    assert len(items) == len(ways)
    for way, item in zip(ways, items, strict=True):
        said = {
            "not-for": plain(item["not_for"]),
            "stop": plain(item["stop_here"]),
            "care": " ".join([plain(item["cautions"]), *(letters[one] for one in item["care_letters"])]),
        }
        for part, lines in care_of(site.programme.exercises[way.exercise]).items():
            assert [line for line in lines if line not in " ".join(said[part].split())] == []
