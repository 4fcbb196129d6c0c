"""What the browser's own print makes of a page: one sheet a session, black on white, the member's weights."""

import json
from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

from setwright import publish
from setwright.outline.addresses import folder_of, session_path
from support.sheets import opened, squeezed, text_of

PAPERS = ("A4", "Letter")
MENU_WORDS = ("Search", "Table of contents", "Back to top", "Print this page", "(PDF)")


@pytest.fixture(scope="module")
def page(browser: Browser) -> Iterator[Page]:
    """A desk's browser at night: what is dark on the screen must be white on paper."""
    context = browser.new_context(viewport={"width": 1000, "height": 800}, color_scheme="dark")
    yield context.new_page()
    context.close()


@pytest.fixture(scope="module")
def on_paper(page: Page, address: str) -> Callable[..., PdfReader]:
    """Prints a page of the site to PDF."""

    def printed(path: str, paper: str = "A4") -> PdfReader:
        if page.url != address + path:
            page.goto(address + path)
            if page.locator("sw-print").count():
                page.locator(".sw-address").wait_for(state="attached")
        return opened(page.pdf(format=paper))

    return printed


def one_of_each_session(looked: publish.Looked) -> dict[str, str]:
    """Return one address for each session that the coach wrote, by its id: the first week, which says most."""
    found: dict[str, str] = {}
    for plan in looked.plans:
        for session in plan.sessions:
            found.setdefault(session.session, folder_of(session_path(session)))
    return found


def test_every_session_prints_on_one_sheet(looked: publish.Looked, on_paper: Callable[..., PdfReader]) -> None:
    """Each session of the example takes front and back of one sheet of A4, and of US Letter, cautions included."""
    sessions = one_of_each_session(looked)
    pages = {(name, paper): len(on_paper(path, paper).pages) for name, path in sessions.items() for paper in PAPERS}

    assert len(sessions) == 8
    assert set(pages.values()) <= {1, 2}


@pytest.mark.parametrize(
    ("path", "most"),
    [
        ("exercises/goblet-squat/", 2),
        ("exercises/push-up/", 2),
        ("warm-ups/whole-body/", 2),
        ("cool-downs/legs-down/", 1),
        ("plans/relay/week-07/", 2),
        ("plans/relay/", 2),
        ("safety/", 2),
    ],
)
def test_other_pages_print_short(path: str, most: int, on_paper: Callable[..., PdfReader]) -> None:
    """A routine is a page or two, an exercise and a week of two sessions at most two; menus stay on the screen."""
    reader = on_paper(path)
    text = text_of(reader)

    assert len(reader.pages) <= most
    assert [words for words in MENU_WORDS if squeezed(words) in text] == []


def test_a_printed_session_says_everything(on_paper: Callable[..., PdfReader], looked: publish.Looked) -> None:
    """Dose, load bands, cues, places to write in, the safety notice and the address are on the paper."""
    session = next(s for plan in looked.plans if plan.ident == "relay" for s in plan.sessions if s.week == 7)
    assert looked.programme is not None
    text = text_of(on_paper(folder_of(session_path(session))))
    exercises = [looked.programme.exercises[item.exercise] for item in session.items]
    wanted = [exercise.name for exercise in exercises] + [cue for e in exercises for cue in e.cues[:3]]
    wanted += ["10 % of body weight", "51–70 kg 6 kg", "effort", "not medical advice", "Call 112", "week-07/tuesday/"]

    assert [words for words in wanted if squeezed(words) not in text] == []
    assert text.count("effort") >= sum(item.dose.count for item in session.items)


def test_paper_is_white_in_a_dark_room(page: Page, on_paper: Callable[..., PdfReader]) -> None:
    """In print, text is black and the ground white, whatever the screen shows."""
    on_paper("plans/relay/week-07/tuesday/")
    page.emulate_media(media="print")
    ground = page.evaluate("getComputedStyle(document.body).backgroundColor")
    text = page.evaluate("getComputedStyle(document.querySelector('.sw-amount')).color")
    page.emulate_media(media="null")

    assert (ground, text) == ("rgb(255, 255, 255)", "rgb(0, 0, 0)")


def test_a_member_prints_a_sheet_of_her_own(page: Page, address: str, on_paper: Callable[..., PdfReader]) -> None:
    """With the body weight set on this device, her weight stands on the paper, and nobody else's."""
    path = "plans/relay/week-07/tuesday/"
    page.goto(f"{address}settings/")
    kept = {"weight": {"number": "68", "unit": "kg"}, "place": "club", "kit": {}, "lifts": {}}
    page.evaluate("kept => localStorage.setItem('setwright:/:settings', kept)", json.dumps(kept))
    page.goto(address + path)
    page.locator("sw-load[data-folded]").first.wait_for(state="attached")
    text = text_of(on_paper(path))
    page.evaluate("localStorage.clear()")

    assert "You:8kg" in text
    assert squeezed("46–63 kg") not in text
    assert "Allbodyweights" not in text
