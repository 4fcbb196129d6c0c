"""Reading PDF sheets back: their text, where it stands, their bookmarks and where their links lead."""

import re
import unicodedata
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from io import BytesIO
from typing import Any

from pypdf import PdfReader
from pypdf.generic import Destination

POINTS_PER_MM = 72 / 25.4


@dataclass(frozen=True)
class Words:
    """A run of text on a page, its start in millimetres from the left and lower edge."""

    page: int
    x_mm: float
    y_mm: float
    text: str


def squeezed(text: str) -> str:
    """Return text without white space and ligatures: a PDF breaks its lines and joins its letters where it likes."""
    return re.sub(r"\s+", "", unicodedata.normalize("NFKC", text))


@cache
def text_of(reader: PdfReader) -> str:
    """Return the whole text of a PDF in reading order, squeezed. Kept, since reading a PDF is slow."""
    return squeezed("".join(page.extract_text() for page in reader.pages))


def words_of(reader: PdfReader) -> list[Words]:
    """Return every run of text with its place."""
    found: list[Words] = []
    for number, page in enumerate(reader.pages):

        def note(text: str, around: Any, matrix: Any, *_: Any, number: int = number) -> None:
            if text.strip():
                x = matrix[4] * around[0] + matrix[5] * around[2] + around[4]
                y = matrix[4] * around[1] + matrix[5] * around[3] + around[5]
                found.append(Words(number, x / POINTS_PER_MM, y / POINTS_PER_MM, text))

        page.extract_text(visitor_text=note)
    return found


def bookmarks(reader: PdfReader) -> list[tuple[str, int | None]]:
    """Return every bookmark with the page that it leads to, counted from 0."""

    def inside(entries: Any) -> Iterator[tuple[str, int | None]]:
        for entry in entries:
            if isinstance(entry, Destination):
                yield str(entry.title), reader.get_destination_page_number(entry)
            else:
                yield from inside(entry)

    return list(inside(reader.outline))


def links(reader: PdfReader) -> tuple[list[str], list[Any]]:
    """Return the addresses that a PDF links to, and the destinations inside it."""
    outside: list[str] = []
    inside: list[Any] = []
    for page in reader.pages:
        for reference in page.get("/Annots", []):
            annotation = reference.get_object()
            action = annotation.get("/A")
            if action is not None and action.get_object().get("/S") == "/URI":
                outside.append(str(action.get_object()["/URI"]))
            elif action is not None:
                inside.append(action.get_object().get("/D"))
            else:
                inside.append(annotation.get("/Dest"))
    return outside, inside


def leads_somewhere(reader: PdfReader, destination: Any) -> bool:
    """Say whether a destination inside a PDF names one of its pages."""
    if isinstance(destination, str):
        named = reader.named_destinations.get(destination)
        return named is not None and reader.get_destination_page_number(named) is not None
    target = destination.get_object()[0]
    return any(page.indirect_reference == target for page in reader.pages)


def opened(pdf: bytes) -> PdfReader:
    """Return a reader that refuses what is not as the format's standard has it."""
    return PdfReader(BytesIO(pdf), strict=True)
