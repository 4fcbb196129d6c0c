"""A name stands in headings, titles and attributes as the club wrote it: no sign of it is read, and none is lost."""

import html
from html.parser import HTMLParser

import markdown
import pytest
from hypothesis import given

from setwright.model.text import plain
from setwright.pages.filters import heading, safe_attribute
from support.any_programme import names, prose


class _Words(HTMLParser):
    """What a browser shows of some markup, and the value of its one attribute."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.shown, self.value, self.tags = "", "", list[str]()
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        self.value = dict(attrs).get("content") or ""

    def handle_data(self, data: str) -> None:
        self.shown += data


def read(text: str) -> _Words:
    """Return a heading as Python-Markdown reads it, with the extensions that mkdocs.yml names."""
    return _Words(markdown.markdown(f"# {text}", extensions=["attr_list", "toc"]))


@pytest.mark.parametrize(
    "name", ["_Slow_ squat", "__Heavy__ day", "Push & pull", "1. Row", "Row #2", "Legs {: .x}", "A_b_c", "Rest ~ walk"]
)
def test_a_heading_shows_the_name(name: str) -> None:
    """CommonMark 0.31, 6.2: underscores and asterisks around a word stress it. In a name they are signs."""
    shown = read(heading(name))

    assert shown.tags == ["h1"]
    assert shown.shown == name


@given(names)
def test_a_heading_shows_any_name(name: str) -> None:
    """Whatever signs it holds, but for spaces at its ends."""
    name = " ".join(name.split())

    assert (read(heading(name)).tags, read(heading(name)).shown) == (["h1"], name)


@given(names | prose)
def test_a_title_and_an_attribute_hold_every_sign(text: str) -> None:
    """The HTML standard, 13.1.2.3: escaped, a text reads the same between tags and in a quoted attribute."""
    told = _Words(f'<title>{safe_attribute(text)}</title><meta content="{safe_attribute(text)}">')

    assert (told.tags, told.value) == (["title", "meta"], plain(text))
    assert html.unescape(safe_attribute(text)) == plain(text)
    assert not set('<>"') & set(safe_attribute(text))


def test_an_ampersand_of_a_title_is_kept() -> None:
    """A session called so is called so in the browser's tab."""
    assert safe_attribute('Push & pull "A"') == "Push &amp; pull &quot;A&quot;"
