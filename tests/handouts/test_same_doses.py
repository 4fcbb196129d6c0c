"""The sheet on the wall and the page on the phone say the same."""

import re
from collections.abc import Callable, Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest
from pypdf import PdfReader

from setwright import publish
from setwright.dose.resolve import resolve
from setwright.outline import paper
from setwright.outline.addresses import session_path
from setwright.source.read import read
from support.reading import EXAMPLE
from support.sheets import squeezed, text_of

PARTS = {
    "sw-item-name": "name",
    "sw-sets": "sets",
    "sw-amount": "amount",
    "sw-load-what": "load",
    "sw-tempo": "tempo",
    "sw-rest": "rest",
    "sw-block-how": "block",
    "sw-small": "small",
}
"""Classes of a session's page that hold a part of a dose."""


class Doses(HTMLParser):
    """Collects the parts of all doses of a session's page, in order."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[list[str]] = []
        self.open: list[str] = []
        self.depth = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        classes = (dict(attrs).get("class") or "").split()
        kind = next((PARTS[name] for name in classes if name in PARTS), None)
        inside = any(self.open)
        if tag in ("dt", "dd") and not inside:
            kind = tag
        if kind and not inside:
            self.found.append([kind, ""])
        if tag not in ("br", "use", "img", "meta", "link", "input"):
            self.open.append(kind if kind and not inside else "")

    def handle_endtag(self, tag: str) -> None:
        if self.open:
            self.open.pop()

    def handle_data(self, data: str) -> None:
        if any(self.open):
            self.found[-1][1] += data


def doses(page: str) -> list[tuple[str, str]]:
    """Return the parts of every dose of a built session's page, in order."""
    reader = Doses()
    start, end = page.index('<section class="sw-block'), page.rindex("</section>")
    reader.feed(page[start:end])
    return [(kind, " ".join(text.split())) for kind, text in reader.found]


def said_on_paper(parts: list[tuple[str, str]]) -> Iterator[str]:
    """Turn what the page says into what the sheet must say, in the same order where order means anything."""
    span = ""
    for kind, text in parts:
        match kind:
            case "name" | "load":
                yield text
            case "amount":
                yield text.replace(" s hold", " s hold")
            case "sets" if text.endswith("of"):
                yield text
            case "dt":
                span = text.removesuffix(" kg").removeprefix("1RM ")
            case "dd" if re.match(r"\d", span):
                yield f"{span}: {text}"


def all_sessions() -> list[str]:
    programme = read(EXAMPLE).programme
    assert programme is not None
    return [session_path(session) for plan in resolve(programme) for session in plan.sessions]


@pytest.mark.parametrize("path", all_sessions())
def test_every_dose_on_the_sheet_is_the_dose_on_the_page(
    path: str, site: Path, looked: publish.Looked, sheet: Callable[[str], PdfReader]
) -> None:
    """Names, sets, amounts, sides, loads and the weights to take stand on both, in the same order."""
    session = next(s for plan in looked.plans for s in plan.sessions if session_path(s) == path)
    text = text_of(sheet(paper.session_sheet(session)))
    parts = doses((site / path).with_suffix(".html").read_text("utf-8"))
    at, lost = 0, []
    for words in said_on_paper(parts):
        found = text.find(squeezed(words), at)
        if found < 0:
            lost.append(words)
        else:
            at = found
    amounts = [text for kind, text in parts if kind == "amount"]

    assert len(amounts) == len(list(session.all_items))
    assert lost == []


@pytest.mark.parametrize("path", all_sessions())
def test_tempos_rests_and_warnings_are_on_the_sheet_too(
    path: str, site: Path, looked: publish.Looked, sheet: Callable[[str], PdfReader]
) -> None:
    """How slowly, how long to rest and how heavy at most: nothing of it is left to the phone."""
    session = next(s for plan in looked.plans for s in plan.sessions if session_path(s) == path)
    text = text_of(sheet(paper.session_sheet(session))).lower()
    wanted = []
    for kind, words in doses((site / path).with_suffix(".html").read_text("utf-8")):
        if kind == "tempo":
            said, code = words.removeprefix("Tempo").strip().rsplit(" ", 1)
            wanted += [said, f"({code})"]
        elif kind == "rest":
            wanted += re.findall(r"Rest (\d[\d a-z]*?(?:min|s))\b(?! \d)", words)
        elif kind == "small" and words.startswith("Never more"):
            wanted.append(words)

    assert [words for words in wanted if squeezed(words).lower() not in text] == []
