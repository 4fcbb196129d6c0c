"""Sheets that nobody waits for: printed when they are asked for in a preview, or left out for a quick look."""

import shutil
from pathlib import Path
from typing import Any

import pytest

from setwright import publish
from setwright.handouts import asked, tree
from setwright.handouts.press import Press
from setwright.handouts.writing import Desk
from support.sheets import opened, text_of
from support.site import build, digests
from support.small import setwright

CARD = "handouts/exercises/row.pdf"


@pytest.fixture
def club(small: Path, tmp_path: Path) -> Path:
    """A copy of a small built project."""
    return Path(shutil.copytree(small, tmp_path / "club"))


@pytest.fixture
def printed(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The sheets that the press has printed."""
    paths: list[str] = []
    set_in_type = Press.print
    monkeypatch.setattr(Press, "print", lambda press, sheet: paths.append(sheet.path) or set_in_type(press, sheet))
    return paths


def rename(club: Path) -> None:
    row = club / "program" / "exercises" / "row.yml"
    row.write_text(row.read_text("utf-8").replace("name: Row", "name: Zebra row", 1), "utf-8")


def sheets_of(club: Path) -> dict[str, str]:
    found = digests(club / "docs_build")
    return {name: digest for name, digest in found.items() if name.startswith(tree.FOLDERS)}


def ask(club: Path, path: str) -> tuple[str, bytes]:
    """Ask a preview of a project for an address, and return what kind of thing came, and the thing."""
    looked = publish.look(club / "program")
    kind: list[str] = []

    def begin(_: str, headers: list[tuple[str, str]]) -> None:
        kind.append(dict(headers)["Content-Type"])

    def page(_: dict[str, Any], start_response: Any) -> list[bytes]:
        start_response("200 OK", [("Content-Type", "text/html")])
        return [b"a page"]

    server = asked.sheets(page, club / "docs_build", lambda: Desk(publish.site_of(looked)))
    body = b"".join(server({"PATH_INFO": path}, begin))
    return kind[0], body


def test_a_preview_prints_no_sheet_and_keeps_those_that_are_there(club: Path, printed: list[str]) -> None:
    """An edit changes pages alone; when the site is built, only the sheets that show the edit are printed."""
    before = sheets_of(club)
    rename(club)
    publish.write(publish.look(club / "program"), club / "docs_build", sheets="as they are")
    page = (club / "docs_build" / "exercises" / "row" / "index.md").read_text("utf-8")

    assert printed == []
    assert sheets_of(club) == before
    assert "Zebra row" in page
    assert CARD in page
    publish.write(publish.look(club / "program"), club / "docs_build")
    assert CARD in printed
    assert len(printed) < len(before)


def test_a_sheet_that_is_asked_for_shows_the_programme_as_it_is(club: Path, printed: list[str]) -> None:
    """A name that was changed a moment ago stands on the card; no other sheet is printed for it."""
    rename(club)
    kind, pdf = ask(club, f"/some/where/{CARD}")

    assert kind == "application/pdf"
    assert "Zebrarow" in text_of(opened(pdf))
    assert printed == [CARD]


def test_a_sheet_that_still_fits_is_not_printed_again(club: Path, printed: list[str]) -> None:
    """Nothing changed: the one that lies there is given."""
    kind, pdf = ask(club, f"/{CARD}")

    assert (kind, pdf) == ("application/pdf", (club / "docs_build" / CARD).read_bytes())
    assert printed == []


@pytest.mark.parametrize("path", ["/", "/exercises/row/", "/handouts/", "/handouts/nothing.pdf", "/handouts/../x.pdf"])
def test_what_is_no_sheet_is_the_servers(club: Path, path: str) -> None:
    """Pages, and sheets that there are not."""
    assert ask(club, path) == ("text/html", b"a page")


def test_a_quick_look_has_no_sheet_and_no_link_to_one(club: Path, printed: list[str]) -> None:
    """`build --no-sheets` publishes pages alone; the tree keeps its sheets, and the next build publishes them again."""
    before, site = sheets_of(club), digests(club / "site")
    result = setwright(club, "build", "--no-sheets")
    pages = [path.read_text("utf-8") for path in (club / "site").rglob("*.html")]

    assert result.exit_code == 0, result.stderr
    assert len(pages) > 20
    assert not any("handouts/" in page for page in pages)
    assert not list((club / "site").rglob("*.pdf"))
    assert sheets_of(club) == before
    build(club)
    assert digests(club / "site") == site
    assert printed == []
