"""Every link of every page is followed, as a host serves the page: at its root, and in a folder."""

from pathlib import Path

import pytest
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config

from setwright import publish
from setwright.pages import verify
from support.small import small_project

FILES = ("index.html", "plans/index.html", "plans/relay/index.html", "assets/a.css", "404.html")

SOUND = [
    ("plans/index.html", '<a href="../">a</a><a href="relay/">b</a><a href="#x" id="x">c</a><a href=".">d</a>'),
    ("plans/relay/index.html", '<a href="../../">a</a><a href="..">b</a><a href="../../assets/a.css">c</a>'),
    ("index.html", '<a href="https://elsewhere.example/">a</a><a href="mailto:coach@club.example">b</a>'),
    ("404.html", '<a href="/sub/plans/">a</a><a href="/sub/.">b</a><a href="/sub/">c</a><a href="#x" id="x">d</a>'),
]
UNSOUND = [
    ("404.html", '<a href="//plans/">a</a>', "another host's address"),
    ("404.html", '<a href="plans/">a</a>', "depends on the address that was asked for"),
    ("404.html", '<a href="/plans/">a</a>', "leads out of the site"),
    ("404.html", '<a href="/sub/plan/">a</a>', "does not exist"),
    ("404.html", '<link rel="stylesheet" href="assets/a.css">', "depends on the address that was asked for"),
    ("index.html", '<a href="../plans/">a</a>', "leads out of the site"),
    ("plans/index.html", '<a href="../../">a</a>', "leads out of the site"),
    ("plans/index.html", '<a href="//club.example/">a</a>', "another host's address"),
    ("plans/index.html", '<a href="/">a</a>', "leads out of the site"),
    ("plans/index.html", '<a href="relay/#y">a</a>', "no 'y' on that page"),
    ("index.html", '<img src="//elsewhere.example/a.png">', "from another host"),
]


def site_with(folder: Path, page: str, text: str) -> Path:
    """Make a site of a few empty pages, one of which has links."""
    for name in FILES:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text if name == page else "", "utf-8")
    return folder


@pytest.mark.parametrize(("page", "text"), SOUND)
def test_a_sound_link_is_none_to_report(tmp_path: Path, page: str, text: str) -> None:
    """Up, down, beside and within a page; other hosts with their scheme; from the root into the site's own folder."""
    site = site_with(tmp_path, page, text)

    assert list(verify.broken(site, "https://club.example/sub/")) == []


@pytest.mark.parametrize(("page", "text", "why"), UNSOUND)
def test_an_unsound_link_is_reported(tmp_path: Path, page: str, text: str, why: str) -> None:
    """Whatever would lead elsewhere on some host, on some address, or nowhere at all."""
    found = list(verify.broken(site_with(tmp_path, page, text), "https://club.example/sub/"))

    assert len(found) == 1
    assert found[0].startswith(f"{page} ")
    assert why in found[0]


@pytest.mark.parametrize(
    ("site_url", "base"),
    [(None, "/"), ("https://strength.club.example/", "/"), ("https://club.example/strength", "/strength/")],
)
def test_the_page_for_lost_addresses_leads_back(tmp_path: Path, site_url: str | None, base: str) -> None:
    """Without an address of the site, at a host's root, and in a folder: all its links hold, those to the plans too."""
    project = small_project(tmp_path / "club")
    docs, site = project / "docs_build", tmp_path / "site"
    publish.write(publish.look(project / "program"), docs, site_url, sheets="left out")
    config = load_config(config_file=str(project / "mkdocs.yml"), site_dir=str(site), site_url=site_url)
    config.plugins["setwright"].config.generate = False
    mkdocs_build(config)
    page = verify.read_site(site)[verify.LOST]

    assert list(verify.broken(site, site_url)) == []
    assert f"{base}plans/" in page.links
    assert {link for link in page.links | page.loads if not link.startswith((base, "#"))} == set()
    assert not any(link.startswith("//") for link in page.links)
