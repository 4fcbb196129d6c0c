"""Every PDF is a sound document for eyes, ears and machines."""

from collections.abc import Callable
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from pypdf import PdfReader

from setwright import publish
from support.sheets import bookmarks, leads_somewhere, links, squeezed, text_of

SITE_URL = "https://strength.example.org/club/"
ONE_OF_EACH = {
    "session": "handouts/relay/relay-week-07-friday.pdf",
    "week": "handouts/relay/relay-week-07.pdf",
    "booklet": "handouts/relay/relay-booklet.pdf",
    "starter booklet": "handouts/starter/starter-booklet.pdf",
    "card": "handouts/exercises/goblet-squat.pdf",
    "review": "handouts/review/goblet-squat-review.pdf",
    "all reviews": "handouts/review/all-exercises-review.pdf",
}
kinds = pytest.mark.parametrize("path", ONE_OF_EACH.values(), ids=ONE_OF_EACH)


@pytest.fixture(scope="session")
def paths(project: Path) -> list[str]:
    """The path of every sheet of the example."""
    docs = project / "docs_build"
    return [path.relative_to(docs).as_posix() for path in sorted(docs.rglob("*.pdf"))]


def test_there_is_a_sheet_of_every_kind(looked: publish.Looked, paths: list[str]) -> None:
    """47 sessions, each with a coach's sheet, 24 weeks, 3 booklets, a card and a review each, and all reviews."""
    assert looked.programme is not None
    count = len(looked.programme.exercises)

    assert len(paths) == 2 * 47 + 24 + 3 + 2 * count + 1


def test_every_sheet_is_tagged_and_named(paths: list[str], sheet: Callable[[str], PdfReader]) -> None:
    """ISO 14289-1 (PDF/UA-1): marked content with a structure, a title that viewers show, a language, an identifier."""
    for path in paths:
        reader = sheet(path)
        root = reader.root_object
        metadata = root["/Metadata"].get_object().get_data().decode()

        assert root["/MarkInfo"]["/Marked"], path
        assert "/StructTreeRoot" in root, path
        assert root["/Lang"] == "en", path
        assert root["/ViewerPreferences"]["/DisplayDocTitle"], path
        assert reader.metadata is not None, path
        assert reader.metadata.title, path
        assert "<pdfuaid:part>1</pdfuaid:part>" in metadata, path


@kinds
def test_every_bookmark_leads_to_a_page(path: str, sheet: Callable[[str], PdfReader]) -> None:
    """The list beside the page leads to each part."""
    found = bookmarks(sheet(path))

    assert found
    assert [title for title, page in found if page is None] == []


@kinds
def test_every_link_leads_somewhere(path: str, published: Callable[[str], PdfReader], site: Path) -> None:
    """Links inside a PDF lead to a place in it; links to the site lead to pages that were built."""
    reader = published(path)
    outside, inside = links(reader)
    pages = {address for address in outside if address.startswith(SITE_URL)}
    lost = [page for page in pages if not (site / urlsplit(page).path.removeprefix("/club/") / "index.html").is_file()]

    assert lost == []
    assert [d for d in inside if not leads_somewhere(reader, d)] == []
    assert [a for a in outside if not a.startswith(("https://", "mailto:"))] == []


@kinds
def test_the_sheet_works_without_the_site(path: str, sheet: Callable[[str], PdfReader]) -> None:
    """Nothing is fetched, run or opened, and every font is inside."""
    reader = sheet(path)
    fonts = {}
    for page in reader.pages:
        for name, reference in page["/Resources"].get("/Font", {}).items():
            inner = reference.get_object()["/DescendantFonts"][0].get_object()
            fonts[name] = inner["/FontDescriptor"].get_object()

    assert fonts
    assert all("/FontFile2" in font or "/FontFile3" in font for font in fonts.values())
    assert not {"/OpenAction", "/AA", "/AcroForm"} & reader.root_object.keys()


@pytest.mark.parametrize("path", [ONE_OF_EACH["session"], ONE_OF_EACH["card"]], ids=["session", "card"])
def test_the_safety_notice_and_the_address_are_on_the_sheet(path: str, published: Callable[[str], PdfReader]) -> None:
    """Who hangs a sheet on a wall has the warnings, the number to call and the way back to the page with it."""
    text = text_of(published(path))

    assert "notmedicaladvice" in text
    assert "Call112" in text
    assert squeezed(SITE_URL) in text


def test_the_booklet_holds_everything_of_its_plan(looked: publish.Looked, sheet: Callable[[str], PdfReader]) -> None:
    """Contents, phases, every session, warm-ups, cool-downs, exercise cards, safety and the rules of the numbers."""
    plan = next(plan for plan in looked.plans if plan.ident == "relay")
    assert looked.programme is not None
    reader = sheet(ONE_OF_EACH["booklet"])
    text, titles = text_of(reader), [title for title, _ in bookmarks(reader)]
    sessions = [title for title in titles if "2027: " in title]
    used = {looked.programme.exercises[item.exercise].name for s in plan.sessions for item in s.items}

    assert len(sessions) == len(list(plan.sessions))
    assert [phase.name for phase in plan.plan.phases if phase.name not in titles] == []
    assert {"Before you start", "Weeks at a glance", "Warm-ups and cool-downs", "Exercises"} <= set(titles)
    assert "How the numbers are made" in titles
    assert used <= set(titles)
    assert "notmedicaladvice" in text


def test_the_review_sheet_shows_dose_limits_and_places_to_sign(sheet: Callable[[str], PdfReader]) -> None:
    """A physiotherapist sees what is prescribed and what is allowed, and can answer on the same sheet of paper."""
    reader = sheet(ONE_OF_EACH["review"])
    text = text_of(reader)

    assert len(reader.pages) == 2
    for words in ("Doses in use", "40 % of body weight", "12 a week", "Signature", "Change first", "Cautions"):
        assert squeezed(words) in text
