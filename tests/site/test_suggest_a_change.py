"""A page leads to the very file that it was written in, where the club says where its programme is kept."""

import re
from pathlib import Path

import pytest
from mkdocs.config import load_config

from setwright import publish
from support.reading import good_programme

FORGE = "repo_url: https://forge.example/club/strength\nedit_uri: edit/main/program/\n"


def tree_of(folder: Path, settings: str) -> dict[str, str]:
    """Return the written pages of the good programme, with these lines in mkdocs.yml."""
    program = good_programme(folder)
    (folder / "mkdocs.yml").write_text(f"site_name: Club\ndocs_dir: docs_build\n{settings}plugins: [search]\n", "utf-8")
    (folder / "docs_build").mkdir()
    config = load_config(config_file=str(folder / "mkdocs.yml"))
    docs = folder / "docs_build"
    publish.write(publish.look(program), docs, sheets="left out", edited_at=publish.edited_at(config))
    return {path.relative_to(docs).as_posix(): path.read_text("utf-8") for path in docs.rglob("*.md")}


def ways(text: str) -> list[str]:
    return re.findall(r'sw-suggest[^>]*><a href="([^"]*)"', text)


def test_each_page_leads_to_its_own_file(tmp_path: Path) -> None:
    """Exercises, sessions, weeks, plans, routines, safety: what members and physiotherapist may mend."""
    pages = tree_of(tmp_path, FORGE)
    led = {address for text in pages.values() for address in ways(text)}
    program = tmp_path / "program"
    base = "https://forge.example/club/strength/edit/main/program/"
    files = {address.removeprefix(base) for address in led}
    assert all(address.startswith(base) for address in led)
    assert [name for name in files if not (program / name).is_file()] == []
    assert {name.partition("/")[0] for name in files} >= {"exercises", "sessions", "plans", "club.yml"}
    exercise = next(path for path in sorted(pages) if re.fullmatch(r"exercises/[^/]+/index\.md", path))
    assert ways(pages[exercise]) == [f"{base}exercises/{exercise.split('/')[1]}.yml"]


@pytest.mark.parametrize(
    "settings",
    [
        "",
        "edit_uri: edit/main/program/\n",
        "repo_url: https://github.com/club/strength\n",  # the engine has a folder of its own in mind then
        "repo_url: 'javascript://club.example/%0aalert(1)'\nedit_uri: edit/main/program/\n",
    ],
)
def test_without_an_address_nothing_is_suggested(tmp_path: Path, settings: str) -> None:
    """Half an address leads nowhere, and one that is no address runs nothing."""
    assert not any(ways(text) for text in tree_of(tmp_path, settings).values())


def test_an_address_is_an_attribute_and_no_markup(tmp_path: Path) -> None:
    """A quote in the settings ends no attribute."""
    pages = tree_of(tmp_path, "repo_url: https://forge.example/\nedit_uri: 'edit/\"><b onclick=x>/'\n")
    assert not any("<b onclick" in text for text in pages.values())
    assert any(ways(text) for text in pages.values())
