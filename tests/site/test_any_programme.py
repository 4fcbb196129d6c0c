"""Whatever a coach writes that the language allows, the pages hold together."""

import tempfile
from html.parser import HTMLParser
from pathlib import Path

from hypothesis import HealthCheck, Phase, given, settings
from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config

from setwright.dose.resolve import resolve
from setwright.feeds import calendar, data
from setwright.handouts import tree as handouts
from setwright.handouts.writing import Desk
from setwright.model.programme import Programme
from setwright.outline.site import Site
from setwright.pages import tree, verify
from support.amount import examples
from support.any_programme import programmes
from support.site import ROOT, broken_in_tree

SLOW = (HealthCheck.too_slow, HealthCheck.data_too_large)
WITHOUT_SHRINKING = (Phase.explicit, Phase.generate)  # one example renders a whole site


class _Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.attributes: set[str] = set()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.attributes |= {name for name, _ in attrs}


@given(programmes())
@settings(max_examples=examples(6), suppress_health_check=SLOW, phases=WITHOUT_SHRINKING)
def test_any_valid_programme_renders_without_a_broken_link(programme: Programme) -> None:
    """Every link of every page of the Markdown tree leads to a page and an anchor of that tree."""
    plans = resolve(programme)
    sheets = {sheet.path: b"" for sheet in handouts.sheets(Desk(Site(programme, plans)))}
    site = Site(programme, plans)
    calendars = dict(calendar.files(site, None, {})) | data.files(site)
    rendered = tree.render(programme, plans) | sheets | calendars

    assert list(broken_in_tree(rendered)) == []


@given(programmes())
@settings(max_examples=examples(1), suppress_health_check=SLOW, phases=WITHOUT_SHRINKING)
def test_any_valid_programme_builds_into_a_sound_site(programme: Programme) -> None:
    """Built by the engine, no link is broken, nothing comes from elsewhere, and no text has become a script."""
    with tempfile.TemporaryDirectory() as folder:
        docs, site = Path(folder) / "docs_build", Path(folder) / "site"
        plans = resolve(programme)
        published = Site(programme, plans, on_paper=False)
        calendars = dict(calendar.files(published, None, {})) | data.files(published)
        tree.write(tree.of(published) | calendars, docs)
        (Path(folder) / "mkdocs.yml").write_text((ROOT / "mkdocs.yml").read_text("utf-8"), "utf-8")
        config = load_config(config_file=str(Path(folder) / "mkdocs.yml"), site_dir=str(site))
        config.plugins["setwright"].config.generate = False
        mkdocs_build(config)
        broken = list(verify.broken(site))
        tags = _Tags()
        for page in site.rglob("index.html"):
            text = page.read_text("utf-8")
            assert text.count("<script") <= 6, page
            tags.feed(text)

    assert broken == []
    assert {name for name in tags.attributes if name.startswith("on")} == set()
