"""Building the site: everything or nothing, the same bytes each time, and only what changed."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from setwright import publish
from setwright.pages import verify
from setwright.wording.notice import NOTICE
from support.site import KINDS, build, copy_project, digests, lend_sheets
from support.small import small_project


@pytest.fixture
def fresh(small: Path, tmp_path: Path) -> Path:
    """A copy of a small built project that a test may break."""
    return Path(shutil.copytree(small, tmp_path / "copy"))


@pytest.mark.parametrize("address", KINDS.values(), ids=KINDS)
def test_every_kind_of_page_is_there(site: Path, address: str) -> None:
    """The example has a page of every kind."""
    page = site / address / "index.html" if address.endswith("/") or not address else site / address

    assert page.is_file()


def test_there_is_a_page_for_every_session_of_every_week(site: Path, project: Path) -> None:
    """Each resolved session has its own page, in the folder of its week."""
    looked = publish.look(project / "program")
    wanted = {f"plans/{s.plan}/week-{s.week:02}/{s.place}/index.html" for plan in looked.plans for s in plan.sessions}
    found = {p.relative_to(site).as_posix() for p in site.glob("plans/*/week-*/*/index.html")}

    assert found == wanted


def test_no_link_is_broken(site: Path) -> None:
    """Every internal link and anchor of every page leads somewhere, and nothing loads from another host."""
    assert list(verify.broken(site)) == []


def test_a_broken_link_is_found(fresh: Path) -> None:
    """A link to a page, an anchor or a foreign script that does not belong is reported, each by its own line."""
    page = fresh / "site" / "safety" / "index.html"
    wrong = (
        '<a href="../nowhere/">a</a><a href="../numbers/#nothing">b</a><script src="https://elsewhere.example/x.js">'
    )
    page.write_text(page.read_text("utf-8").replace("</article>", wrong + "</article>"), "utf-8")

    assert len(list(verify.broken(fresh / "site"))) == 3


def test_the_safety_notice_is_on_every_page(site: Path) -> None:
    """No generated page goes without the built-in notice."""
    lacking = [p for p in site.rglob("index.html") if NOTICE not in p.read_text("utf-8")]

    assert lacking == []


def test_the_same_programme_gives_the_same_bytes(project: Path, tmp_path: Path) -> None:
    """Two builds of one programme, in two folders, agree in every byte of tree and site.

    The second takes each sheet whose data are the same to the byte; that these print alike says the next test.
    """
    other = lend_sheets(project, copy_project(tmp_path / "elsewhere"))
    build(other)

    assert digests(other / "docs_build") == digests(project / "docs_build")
    assert digests(other / "site") == digests(project / "site")


def test_a_first_build_gives_the_same_bytes_as_another(small: Path, tmp_path: Path) -> None:
    """A small programme with nothing there yet: pages, figures and all sheets anew."""
    other = small_project(tmp_path / "elsewhere")
    build(other)

    # Figures that this process has solved before are kept in its memory, and not on the disk again.
    trees = [digests(club / "docs_build") for club in (other, small)]
    for tree in trees:
        tree.pop(".figures/solved.json", None)
    assert trees[0] == trees[1]
    assert digests(other / "site") == digests(small / "site")


def test_a_second_build_rewrites_nothing(fresh: Path) -> None:
    """Where nothing changed, no file of the tree is touched, so that a watcher has nothing to see."""
    written = build(fresh).written

    assert written is not None
    assert (written.changed, written.deleted) == (0, 0)


def test_an_edit_rewrites_only_what_depends_on_it(fresh: Path) -> None:
    """A new cue changes that exercise's page, the sessions that show it and the reviewer's page, and no other."""
    before = digests(fresh / "docs_build")
    exercise = fresh / "program" / "exercises" / "row.yml"
    exercise.write_text(exercise.read_text("utf-8").replace("cues: [", "cues: [Zebra crossing, ", 1), "utf-8")
    build(fresh)
    after = digests(fresh / "docs_build")
    pages = [name for name in after if "handouts/" not in name]  # what their text holds, a digest does not tell
    changed = {name for name in pages if after[name] != before.get(name)}
    holding = {name for name in pages if "Zebra" in (fresh / "docs_build" / name).read_text("utf-8", "replace")}

    assert "exercises/row/index.md" in changed
    assert any(name.startswith("plans/") for name in changed)
    assert changed == holding | {"review/index.md"}  # it carries the digest that a sign-off would bear


def test_a_deleted_plan_leaves_no_page_behind(fresh: Path) -> None:
    """A page whose file is gone disappears from tree and site."""
    plans = fresh / "program" / "plans"
    assert (fresh / "site" / "plans" / "regatta" / "index.html").exists()
    (plans / "regatta.yml").rename(plans / "only.yml")
    build(fresh)

    assert not (fresh / "site" / "plans" / "regatta").exists()
    assert not (fresh / "docs_build" / "plans" / "regatta").exists()
    assert (fresh / "site" / "plans" / "only" / "index.html").exists()


def test_a_mistake_leaves_the_published_site_as_it_was(fresh: Path) -> None:
    """A programme with an error publishes nothing and touches nothing."""
    before = digests(fresh / "site") | digests(fresh / "docs_build")
    session = fresh / "program" / "sessions" / "trunk.yml"
    session.write_text(session.read_text("utf-8").replace("exercise: ", "exercise: mis", 1), "utf-8")
    built = build(fresh)

    assert built.site is None
    assert [f.rule for f in built.looked.findings if f.severity == "error"] == ["unknown-exercise"]
    assert digests(fresh / "site") | digests(fresh / "docs_build") == before


def test_a_broken_link_leaves_the_published_site_as_it_was(fresh: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the finished site does not hold together, it is not swapped in, and nothing half-made stays."""
    before = digests(fresh / "site")
    monkeypatch.setattr(verify, "broken", lambda *_: iter(["a link to nowhere"]))
    built = build(fresh)

    assert built.site is None
    assert built.broken == ("a link to nowhere",)
    assert digests(fresh / "site") == before
    assert not list(fresh.glob(".setwright-*"))


def _contents(text: str) -> Iterator[str]:
    """Yield the lists of a page's own sections, with the lists inside them."""
    for found in re.finditer('<nav class="md-nav md-nav--secondary"', text):
        depth, end = 0, found.start()
        for tag in re.finditer("<nav|</nav>", text[found.start() :]):
            depth += 1 if tag[0] == "<nav" else -1
            end = found.start() + tag.end()
            if not depth:
                break
        yield text[found.start() : end]


def test_pages_do_not_grow_with_the_programme(site: Path) -> None:
    """What a page carries beside its own content (menus, header, footer) is small, and the same on all pages."""
    frames = {}
    for path in site.rglob("index.html"):
        text = path.read_text("utf-8")
        article = text[text.index("<article") : text.rindex("</article>")]
        frames[path] = len(text) - len(article) - sum(map(len, _contents(text)))

    assert max(frames.values()) < 22_000
    assert max(frames.values()) - min(frames.values()) < 3_000
