"""In a language whose every sentence stands in brackets, whatever stands outside of them is not in the catalogue.

What is the coach's own stays as it is in any language, and so does all that names a thing: addresses, anchors, data for
the browser, digests.
"""

import json
import re
from collections.abc import Iterator
from html.parser import HTMLParser
from typing import Any

import pytest
from pydantic import BaseModel

from setwright.checks.registry import run
from setwright.checks.rule import Subject
from setwright.dose.one_rep_max import FORMULAS
from setwright.dose.resolve import resolve
from setwright.dose.rules import RULES
from setwright.figure.published import PUBLISHED
from setwright.figure.support import RULES as SUPPORT_RULES
from setwright.handouts import tree as handouts
from setwright.handouts.writing import Desk
from setwright.model.programme import Programme
from setwright.model.text import spans
from setwright.model.vocabulary import WEEKDAYS
from setwright.outline.set_table import COLUMNS
from setwright.outline.site import Site
from setwright.pages import tree
from setwright.source.read import Places, read
from setwright.wording.language import ENGLISH, Language
from support.pseudo import OPEN, outside, pseudo
from support.reading import GOOD
from support.site import ROOT

PROGRAMMES = {"the example": ROOT / "program", "the small one": GOOD}
_READ = {"aria-label", "alt", "title", "placeholder", "content"}
"""Attributes that a reader sees or hears, and those that a style shows."""
_SHOWN = {"data-before", "data-unit"}
_SAID = {"text", "amount", "name", "plan", "session"}
"""Keys of the block of data whose texts the guide shows."""

_CHECKS = ("checks/",)
"""Pages for the coach, in English."""


def every_text(value: Any) -> Iterator[str]:
    """Yield every text that the coach wrote, and every name of a thing."""
    if isinstance(value, BaseModel):
        yield from every_text(value.__dict__)
    elif isinstance(value, dict):
        for key, inner in value.items():
            yield str(key)
            yield from every_text(inner)
    elif isinstance(value, list | tuple):
        for inner in value:
            yield from every_text(inner)
    elif value is not None:
        yield str(value)


def own_words(programme: Programme) -> set[str]:
    """Return what stands on pages and is not in the catalogue: the coach's words, sources, and the rules in English."""
    texts = {*every_text(vars(programme))}
    texts |= {row.position for row in PUBLISHED} | {row.source for row in PUBLISHED} | set(SUPPORT_RULES.values())
    texts |= {text for f in FORMULAS for text in (f.name, f.written, f.source)}
    texts |= {text for rule in RULES.values() for text in (rule.title, rule.says, rule.source, rule.from_memory)}
    texts |= {*(column.name for column in COLUMNS), "setwright resolve", "setwright import"}
    texts |= {*WEEKDAYS, "doi"} | {f"doi:{one.doi}" for one in programme.references.values()}
    pieces = {span.text for text in texts for span in spans(text)} | texts
    return {_bare(piece) for piece in pieces} | {_bare(part) for piece in pieces for part in piece.split(". ")}


def findings(programme: Programme) -> set[str]:
    """Return what the checks say of a programme, which is for the coach and the physiotherapist, in English."""
    verdict = run(Subject(programme, resolve(programme), Places("program")))
    return {_bare(one.message) for one in (*verdict.findings, *(accepted.finding for accepted in verdict.accepted))}


def _bare(text: str) -> str:
    """Return a text without what a page may put round it, in small letters."""
    return re.sub(r"\s+", " ", text.replace(" ", " ")).strip(' .,:;·–()-#"').lower()


def _is_own(text: str, own: set[str]) -> bool:
    """Say whether a text is made of the coach's own, whole sentences and names before single words."""
    left = _bare(text)
    if left in own:
        return True
    for whole in sorted((one for one in own if " " in one and one in left), key=len, reverse=True):
        left = left.replace(whole, " ")
    return all(_bare(one) in own for one in re.split(r", |: | · |  +", left) if any(map(str.isalpha, one)))


class Skeleton(HTMLParser):
    """The texts of a page, and everything else of it."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self.running = ""
        self.in_data = False
        self.rest: list[object] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.in_data = ("type", "application/json") in attrs
        self.texts += [value for name, value in attrs if name in _READ | _SHOWN and value]
        self.rest.append((tag, [pair for pair in attrs if pair[0] not in _READ | _SHOWN]))

    def handle_endtag(self, tag: str) -> None:
        self.in_data = False
        self.rest.append(tag)

    def handle_data(self, data: str) -> None:
        if self.in_data:
            self._block(data)
            return
        # A sentence may hold a link, so its brackets open and close in different stretches of the page.
        self.running += "\n" + re.sub(r"\{#[^}]*\}", "", data)
        self.rest += re.findall(r"\{#([^}]*)\}", data)

    def _block(self, data: str) -> None:
        """Take the block of data for the guide apart: what it shows, and what it goes by."""
        for key, text in leaves(json.loads(data)):
            if key[-1] in _SAID or key[-2:-1] == ("efforts",):
                self.texts.append(text)
            else:
                self.rest.append((key, text))


def taken_apart(page: str) -> Skeleton:
    """Return a rendered Markdown page's texts, and its tags, addresses, anchors and data."""
    front, _, body = page.removeprefix("---\n").partition("\n---\n")
    reader = Skeleton()
    reader.feed(body)
    reader.close()
    for line in front.split("\n"):
        key, _, value = line.partition(": ")
        if key in ("title", "description"):
            reader.texts.append(json.loads(value))
        else:
            reader.rest.append(line)
    return reader


Rendered = tuple[Programme, dict[str, bytes], dict[str, bytes]]
"""A programme with its tree in English and in brackets."""


@pytest.fixture(scope="module", params=PROGRAMMES)
def rendered(request: pytest.FixtureRequest) -> Rendered:
    """A programme, and its tree in English and in brackets."""
    reading = read(PROGRAMMES[request.param])
    programme = reading.programme
    if programme is None:
        pytest.fail(f"{reading.errors}")
    plans = resolve(programme)
    accepted = run(Subject(programme, plans, reading.places)).accepted
    return programme, *(tree.render(programme, plans, accepted, {}, language) for language in (ENGLISH, pseudo()))


def pages_of(rendered: Rendered) -> Iterator[tuple[str, Skeleton, Skeleton]]:
    """Yield each page for members and reviewers, in both languages."""
    _, english, bracketed = rendered
    for name, raw in english.items():
        if name.endswith(".md") and not name.startswith(_CHECKS):
            yield name, taken_apart(raw.decode()), taken_apart(bracketed[name].decode())


def test_every_text_of_a_page_is_a_sentence_of_the_catalogue_or_the_coachs_own(rendered: Rendered) -> None:
    """Headings, paragraphs, tables, labels that are read out, and titles."""
    own = own_words(rendered[0]) | findings(rendered[0])
    parts: dict[str, str] = {}
    for name, _, page in pages_of(rendered):
        stretches = [stretch for text in (*page.texts, page.running) for stretch in outside(text)]
        parts |= {part: name for stretch in stretches for part in stretch.split("\n") if any(map(str.isalpha, part))}

    assert sorted((name, part) for part, name in parts.items() if not _is_own(part, own)) == []


def test_nothing_but_texts_depends_on_the_language(rendered: Rendered) -> None:
    """Tags, classes, addresses, anchors, digests, and the data that browser code reads are the same."""
    for name, english, bracketed in pages_of(rendered):
        assert english.rest == bracketed.rest, name


def test_the_same_files_are_published(rendered: Rendered) -> None:
    """Only pages, lists of days, the app's name, the lost page and the catalogue itself have words in them."""
    _, english, bracketed = rendered
    different = {name for name in english if english[name] != bracketed[name] and not name.endswith(".md")}

    assert english.keys() == bracketed.keys()
    assert {name for name in different if not name.startswith("assets/days/")} == {
        "assets/js/catalogue.js",
        "manifest.webmanifest",
        ".theme/whole-404.html",
        ".theme/mend.html",
        ".theme/partials/destinations.html",
    }


def test_lists_of_days_keep_their_dates_and_addresses(rendered: Rendered) -> None:
    """What the home page finds today by is no word."""
    _, english, bracketed = rendered
    for name in english:
        if name.startswith("assets/days/"):
            for one, other in zip(*(sorted(leaves(json.loads(t[name]))) for t in (english, bracketed)), strict=True):
                said = {"said", "time", "kit", "tag", "why"} & set(one[0][-2:])
                assert one == other or (one[0] == other[0] and said and OPEN in other[1])


def leaves(data: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], str]]:
    """Yield the texts of plain data with the keys that lead to them."""
    if isinstance(data, dict):
        for key, value in data.items():
            yield from leaves(value, (*path, str(key)))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            yield from leaves(value, (*path, f"{index:04}"))
    else:
        yield path, "" if data is None else str(data)


NAMES = {
    "address",
    "safety_address",
    "code",
    "digests",
    "exercise",
    "figure",
    "kind",
    "language",
    "target",
    "key",
    "before",
    "after",
    "take_care",
    "care_letters",
}
"""What a sheet's data hold that is not read as a text: addresses, drawings, names, letters, and halves of sentences."""


def sheets(programme: Programme, language: Language) -> dict[str, dict[str, Any]]:
    """Return the data of every sheet by its path, without a site's address."""
    site = Site(programme, resolve(programme), language=language)
    return {sheet.path: dict(sheet.data) for sheet in handouts.sheets(Desk(site))}


def test_every_text_of_a_sheet_is_a_sentence_of_the_catalogue_or_the_coachs_own(rendered: Rendered) -> None:
    """And each sheet has the same address, and is made of the same parts."""
    programme = rendered[0]
    own = own_words(programme)
    english, bracketed = sheets(programme, ENGLISH), sheets(programme, pseudo())
    parts = set()
    for path, data in bracketed.items():
        assert [key for key, _ in leaves(english[path])] == [key for key, _ in leaves(data)], path
        for key, text in leaves(data):
            if NAMES.isdisjoint(key[-3:]) or key[-1] in ("text", "title"):
                parts |= {(part, key[-1]) for part in outside(text)}
    words = {part for part, _ in parts}
    foreign = {part for part in words if not _is_own(part, own)}

    assert english.keys() == bracketed.keys()
    assert sorted((key, part) for part, key in parts if part in foreign) == []


def test_reviews_stand_as_they_stood(rendered: Rendered) -> None:
    """No sign-off hangs on a word of the catalogue."""
    programme, plans = rendered[0], resolve(rendered[0])
    english, bracketed = (Site(programme, plans, language=language).reviews for language in (ENGLISH, pseudo()))

    assert english == bracketed
