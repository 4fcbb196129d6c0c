"""The physiotherapist at the review page: filter, look, tick, hand over the lines, and the page turns to reviewed."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from setwright.review.signing import line_of
from support import serving
from support.desk import DAY, GIT, Desk
from support.site import ROOT, build

WHO, ROLE, NOTE = 'Dr "Ex" Ämple', "Physiotherapist of\u00a0the club", "Fine: for now; mind the {heel}."


class Club(Desk):
    """A small club whose site is built and served."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder)
        shutil.copy(ROOT / "mkdocs.yml", folder)
        (folder / "docs_build" / ".theme").mkdir(parents=True)
        shutil.copy(ROOT / "docs_build" / "README.md", folder / "docs_build")
        (folder / ".gitignore").write_text("docs_build\nsite\n", "utf-8")

    def publish(self) -> None:
        """Build the site."""
        built = build(self.folder, sheets="left out")
        assert built.site is not None, (built.looked.findings, built.broken)


@pytest.fixture(scope="module")
def club(tmp_path_factory: pytest.TempPathFactory) -> Club:
    """A club in git: two exercises are signed, and one of them was edited since."""
    if GIT is None:
        pytest.skip("git is not installed")
    club = Club(tmp_path_factory.mktemp("club"))
    club.sign("squat", "row")
    club.git("init", "-q")
    club.commit()
    club.edit("club.yml", "safety:", "changed_limits: notice\nsafety:")
    club.edit("exercises/squat.yml", "Chest up", "Chest proud")
    club.edit("exercises/squat.yml", "load: 30 % bodyweight", "load: 25 % bodyweight")
    club.edit("sessions/legs.yml", "up_to: 10}", "up_to: 9}")
    club.publish()
    return club


@pytest.fixture(scope="module")
def served(club: Club) -> Iterator[str]:
    """Where the club's site is served."""
    with serving.served(club.folder / "site") as address:
        yield address


@pytest.fixture
def page(browser: Browser, served: str) -> Iterator[Page]:
    """The review page on a desk, without the copy of the site: while that is renewed, a page may be long in coming."""
    context = browser.new_context(viewport={"width": 1280, "height": 900}, service_workers="block")
    page = context.new_page()
    page.goto(f"{served}review/")
    page.locator(".sw-review-tools").wait_for()
    yield page
    context.close()


def names(page: Page) -> list[str]:
    """Return the exercises that are shown, in their order."""
    return page.locator(".sw-review-item:visible h3").all_inner_texts()


def test_from_changed_to_reviewed(page: Page, club: Club, served: str) -> None:
    """Filter to what changed, open it, see old beside new, tick it, give the lines to the coach: it is reviewed."""
    page.locator(".sw-review-show").select_option("changed")
    assert names(page) == ["Squat with a kettlebell"]
    assert page.locator(".sw-review-count").inner_text() == "1 of 3 exercises"

    page.locator("#squat summary").click()
    rows = [row.inner_text().split("\t") for row in page.locator("#squat tbody tr").all()]
    assert ["Load", "30 % bodyweight", "25 % bodyweight"] in rows
    assert ["Cue 1", "Chest up", "Chest proud"] in rows
    assert any(old.startswith("1 to 2 sets of 8 to 10 reps") and "8 to 9 reps" in new for _, old, new in rows)
    assert page.locator("#squat del").first.is_visible()

    page.locator("#squat .sw-review-tick input").check()
    assert page.locator(".sw-review-said").inner_text() == "1 exercise ticked. Still missing: your name, your role."
    page.locator(".sw-review-who").fill(WHO)
    page.locator(".sw-review-role").fill(ROLE)
    page.locator(".sw-review-day").fill(DAY.isoformat())
    page.locator("#squat .sw-review-remark input").fill(NOTE)
    lines = page.locator(".sw-review-out").input_value()
    assert lines == line_of("squat", WHO, ROLE, DAY, NOTE, club.review("squat").digests) + "\n"

    with (club.program / "sign-offs.yml").open("a", encoding="utf-8") as stream:
        stream.write(lines)
    club.publish()
    page.goto(f"{served}exercises/squat/")
    badge = page.locator(".sw-review-badge").inner_text()
    assert badge.startswith("Reviewed")
    assert WHO in badge
    page.goto(f"{served}review/#squat")
    assert page.locator("#squat").get_attribute("data-status") == "reviewed"
    assert "Reviewed" in page.locator("#squat .sw-review-status").inner_text()
    assert NOTE in page.locator("#squat").inner_text()


def test_finding_and_sorting(page: Page) -> None:
    """Part of a name is enough, and the list sorts by name, by date and by what is due."""
    assert names(page)[0] != "Row with a band"
    page.locator(".sw-review-sort").select_option("name")
    assert names(page) == sorted(names(page))
    page.locator(".sw-review-sort").select_option("date")
    assert names(page)[-1] == "Plank"
    page.locator(".sw-review-find").fill("ROW")
    assert names(page) == ["Row with a band"]
    page.locator(".sw-review-find").fill("nothing like it")
    assert names(page) == []
    assert page.locator(".sw-review-count").inner_text() == "0 of 3 exercises"


def test_several_exercises_at_once(page: Page, club: Club) -> None:
    """One reviewer ticks two exercises, one with a note: two lines, each right."""
    page.locator(".sw-review-who").fill("A reviewer")
    page.locator(".sw-review-role").fill("Physiotherapist")
    page.locator(".sw-review-day").fill(DAY.isoformat())
    for ident in ("plank", "row"):
        page.locator(f"#{ident} .sw-review-tick input").check()
    page.locator("#row .sw-review-remark input").fill("  Slowly   at first. ")
    wanted = {
        line_of("plank", "A reviewer", "Physiotherapist", DAY, None, club.review("plank").digests),
        line_of("row", "A reviewer", "Physiotherapist", DAY, "Slowly at first.", club.review("row").digests),
    }

    assert set(page.locator(".sw-review-out").input_value().splitlines()) == wanted
    assert page.locator(".sw-review-copy").is_enabled()


def test_everything_but_the_form_is_there_without_javascript(browser: Browser, served: str) -> None:
    """Status, limits, doses, reasons and sources are text on the page, and so is what to do instead of the form."""
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{served}review/")
    text = page.locator("article").inner_text()
    context.close()

    for part in (
        "Not reviewed",
        "Limits",
        "Doses in use",
        "Accepted by the coach",
        "Common practice.",
        "tell the coach",
    ):
        assert part in text
    assert "Copy the lines" not in text


def test_on_paper_there_are_lines_to_sign_on(page: Page) -> None:
    """Printed, each exercise has a place for the signature, and no form."""
    page.emulate_media(media="print")

    assert page.locator("#plank .sw-on-paper").is_visible()
    assert not page.locator(".sw-review-tools").is_visible()
    assert not page.locator("#plank .sw-review-sign").is_visible()


@pytest.mark.parametrize(("ident", "words"), [("row", "Reviewed"), ("plank", "Not reviewed")])
def test_each_exercise_page_says_where_it_stands(page: Page, served: str, ident: str, words: str) -> None:
    """In words, not by colour alone, with the way to the review page."""
    page.goto(f"{served}exercises/{ident}/")
    badge = page.locator(".sw-review-badge")

    assert badge.inner_text().startswith(words)
    assert badge.locator("a").first.get_attribute("href") == f"../../review/#{ident}"
