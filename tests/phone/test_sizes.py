"""What a page weighs on a phone's connection, against stated budgets."""

import gzip
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from setwright.pages.settings import short_name
from setwright.phone import offline
from setwright.phone.lean import lean
from support.site import KINDS, ROOT

from .conftest import PHONE

ASSETS = ROOT / "src" / "setwright" / "phone" / "assets"
OURS_BYTES = 34_500
"""Our scripts and styles for the screen on one page, gzipped."""


OURS = ("assets/js/", "assets/setwright.css", "assets/figure.css", "assets/phone.css")


@pytest.mark.parametrize("kind", ["home", "session", "exercise", "week", "settings", "log"])
def test_our_scripts_and_styles_fit_their_budget(browser: Browser, address: str, site: Path, kind: str) -> None:
    """On no page do ours take more than 34.5 kB together, each file gzipped by itself as a server sends it."""
    context = browser.new_context(viewport=PHONE, service_workers="block")
    page = context.new_page()
    asked: set[str] = set()
    page.on("request", lambda request: asked.add(request.url.removeprefix(address)))
    page.goto(address + KINDS[kind])
    page.wait_for_load_state("networkidle")
    context.close()
    ours = [name for name in asked if name.startswith(OURS) and name.endswith((".js", ".css"))]

    assert len(ours) > 5
    assert sum(len(gzip.compress((site / name).read_bytes(), 9)) for name in ours) <= OURS_BYTES


def test_only_whole_lines_of_comment_are_left_out() -> None:
    """Code beside a comment stays, texts stay as they are, and none has a line that could be taken for a comment."""
    assert lean("a.js", b"// x\nlet a = 1; // y\n  /** z\n   * z\n   */\nlet b;\n") == b"let a = 1; // y\nlet b;\n"
    typed = b"  let c = /** @type {X} */ (d);\n\n  let e = '/** no */';\n"
    assert lean("b.js", typed) == b"let c = (d);\nlet e = '/** no */';\n"
    assert lean("a.css", b"/* x */\na { b: c; /* y */ }\n") == b"a { b: c; /* y */ }\n"
    assert lean("a.svg", b"<!-- x -->\n// y\n") == b"<!-- x -->\n// y\n"
    open_texts = [
        (file.name, number)
        for file in ASSETS.rglob("*.js")
        for number, line in enumerate(lean(file.name, file.read_bytes()).decode().splitlines(), 1)
        if line.count("`") % 2
    ]
    assert open_texts == []


def test_the_copy_fits_a_phone(site: Path) -> None:
    """The example with three plans stays below half of the budget."""
    files = [path for path in site.rglob("*") if path.is_file() and offline.is_kept(path.relative_to(site).as_posix())]

    assert sum(path.stat().st_size for path in files) <= offline.BUDGET_BYTES / 2


def test_a_year_with_four_sessions_a_week_fits_too(site: Path) -> None:
    """52 weeks of the heaviest week page and four of the heaviest session page, beside all else of the example."""
    pages = {path.relative_to(site).as_posix(): path.stat().st_size for path in site.rglob("*") if path.is_file()}
    session = max(size for name, size in pages.items() if name.count("/") == 4 and name.startswith("plans/"))
    week = max(size for name, size in pages.items() if name.count("/") == 3 and name.startswith("plans/"))
    others = sum(size for name, size in pages.items() if offline.is_kept(name) and not name.startswith("plans/"))

    assert others + 52 * (week + 4 * session) <= offline.BUDGET_BYTES


def test_the_list_changes_with_the_pages_and_only_with_them() -> None:
    """The same files give the same worker; another page, style or picture another one; a sheet none."""
    source = "a\nconst KEPT = /** @type {Kept | null} */ (null);\nb"
    files = {"index.html": b"one", "assets/a.css": b"two", "handouts/x.pdf": b"three", "404.html": b"four"}
    first = offline.worker(source, files)

    assert first == offline.worker(source, dict(reversed(files.items())))
    assert first == offline.worker(source, files | {"handouts/x.pdf": b"other", "404.html": b"other"})
    assert first != offline.worker(source, files | {"index.html": b"other"})


def test_a_worker_without_a_place_for_the_list_is_refused() -> None:
    """A list is never appended twice, nor silently left out."""
    with pytest.raises(ValueError, match="no empty list"):
        offline.worker("const KEPT = {};", {})


def test_a_heavy_site_is_reported(tmp_path: Path) -> None:
    """The club is told when the copy outgrows what a phone should keep."""
    (tmp_path / offline.WORKER).write_text("\nconst KEPT = /** @type {Kept | null} */ (null);\n")
    (tmp_path / "index.html").write_bytes(b" " * (offline.BUDGET_BYTES + 1))
    (warning,) = offline.finish(tmp_path)

    assert "26 MB" in warning


@pytest.mark.parametrize(
    ("name", "short"),
    [
        ("Tarnbeck Orienteers", "Tarnbeck"),
        ("Fell Runners", "Fell Runners"),
        ("Überwaldläuferbund", "Überwaldläuf"),
    ],
)
def test_the_name_below_an_icon_is_short(name: str, short: str) -> None:
    """Twelve signs, whole words where they fit (Chromium's advice for short_name; from memory)."""
    assert short_name(name) == short
