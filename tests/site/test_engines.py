"""Plain MkDocs, its server, and the successor engine make the same site from the same tree."""

import mimetypes
import os
import re
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Route

from setwright.pages.verify import Built, read_page
from support.site import KINDS, digests

QUIET = os.environ | {"NO_MKDOCS_2_WARNING": "1"}


def engine(*words: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """Run a Python module's command in a folder."""
    return subprocess.run([sys.executable, "-m", *words], cwd=folder, env=QUIET, capture_output=True, text=True)


@pytest.fixture
def fresh(small: Path, tmp_path: Path) -> Path:
    """A copy of a small built project that a test may break."""
    return Path(shutil.copytree(small, tmp_path / "copy"))


def test_plain_mkdocs_does_the_whole_job(fresh: Path, small: Path) -> None:
    """`mkdocs build` on a clone without a tree writes it, builds the same pages and leaves no temporary folder."""
    shutil.rmtree(fresh / "site")
    for path in (fresh / "docs_build").iterdir():
        if path.is_dir() and path.name != ".theme":
            shutil.rmtree(path)
    done = engine("mkdocs", "build", "--strict", folder=fresh)

    assert done.returncode == 0, done.stderr
    assert {n for n in digests(fresh / "site") if n.endswith(".html")} == {
        n for n in digests(small / "site") if n.endswith(".html")
    }
    assert not list(fresh.glob(".setwright-*"))


def test_plain_mkdocs_stops_at_a_mistake(fresh: Path) -> None:
    """`mkdocs build` with a mistake in the YAML says where, without a traceback, and leaves the old site."""
    before = digests(fresh / "site")
    (fresh / "program" / "club.yml").write_text("name: [", "utf-8")
    done = engine("mkdocs", "build", folder=fresh)

    assert done.returncode == 1
    assert re.search(r"program/club\.yml:1:\d+: error:", done.stderr)
    assert "Traceback" not in done.stderr
    assert digests(fresh / "site") == before


def test_the_server_rebuilds_once_when_a_file_of_the_programme_changes(fresh: Path) -> None:
    """`mkdocs serve` shows an edit of the YAML, and its own output does not set it off again."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    log = (fresh / "log").open("w+")
    server = subprocess.Popen(
        [sys.executable, "-m", "mkdocs", "serve", "--livereload", "-a", f"127.0.0.1:{port}"],
        cwd=fresh,
        env=QUIET,
        stdout=log,
        stderr=subprocess.STDOUT,
    )
    try:
        page = f"http://127.0.0.1:{port}/exercises/row/"
        assert _eventually(lambda: "Row with a band" in _read(page))
        exercise = fresh / "program" / "exercises" / "row.yml"
        exercise.write_text(re.sub(r"^name: .*$", "name: Pull with a band", exercise.read_text("utf-8"), flags=re.M))
        assert _eventually(lambda: "Pull with a band" in _read(page))
        time.sleep(2)  # long enough for a second rebuild to start, if there were one
    finally:
        server.terminate()
        server.wait()
    log.seek(0)

    assert log.read().count("Documentation built") == 2
    log.close()


def _read(page: str) -> str:
    try:
        with urllib.request.urlopen(page, timeout=5) as answer:
            return str(answer.read().decode())
    except OSError:
        return ""


def _eventually(holds: Callable[[], bool], seconds: float = 600) -> bool:
    deadline = time.monotonic() + seconds
    while time.monotonic() < deadline:
        if holds():
            return True
        time.sleep(0.3)
    return False


def test_the_successor_builds_the_same_pages_and_links(successor: Path, site: Path) -> None:
    """Zensical, which runs no plugin, makes the same pages with the same links inside their articles."""
    ours, theirs = _articles(site), _articles(successor)

    assert theirs.keys() == ours.keys()
    assert {name: page.links for name, page in theirs.items()} == {name: page.links for name, page in ours.items()}
    assert all(page.anchors <= theirs[name].anchors for name, page in ours.items())


LOOK = """() => [...document.querySelectorAll('article [class^="sw-"], article [class^="sw-"] *')]
    .filter(e => !e.closest('svg'))
    .map(e => {
        const style = getComputedStyle(e);
        const said = ['display', 'color', 'backgroundColor', 'margin', 'padding', 'border', 'borderRadius', 'font'];
        return [e.className, ...said.map(name => style[name])].join('; ');
    })"""


@pytest.mark.parametrize("kind", ["session", "exercise", "plan", "settings"])
def test_our_look_is_the_same_in_both_engines(browser: Browser, successor: Path, site: Path, kind: str) -> None:
    """The themes differ; what is ours looks alike in both, under the policy that their pages carry."""
    looks = [_look(browser, built, KINDS[kind]) for built in (site, successor)]

    assert len(looks[0]) > 50
    assert looks[1] == looks[0]


def _look(browser: Browser, site: Path, path: str) -> list[str]:
    def serve(route: Route) -> None:
        name = route.request.url.removeprefix("http://club.test/").split("?")[0]
        file = site / f"{name}index.html" if not name or name.endswith("/") else site / name
        if file.is_file():
            route.fulfill(content_type=mimetypes.guess_type(file.name)[0] or "text/plain", body=file.read_bytes())
        else:
            route.fulfill(status=404)

    context = browser.new_context(viewport={"width": 390, "height": 844}, service_workers="block")
    page = context.new_page()
    page.route("http://club.test/**", serve)
    page.goto(f"http://club.test/{path}")
    page.wait_for_load_state("networkidle")
    found = list(page.evaluate(LOOK))
    context.close()
    return found


def _articles(site: Path) -> dict[str, Built]:
    """Return what stands inside the article of every page; the frames around it are the two themes' own."""
    found = {}
    for path in site.rglob("index.html"):
        article = path.read_text("utf-8").split("<article", 1)[1].split("</article>", 1)[0]
        found[path.relative_to(site).as_posix()] = read_page(f"<article{article}")
    return found
