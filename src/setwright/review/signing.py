"""Writing sign-offs: each is one line of YAML, so that two branches can add theirs and a merge keeps both whole."""

import hashlib
import json
import re
from collections.abc import Iterable, Mapping
from datetime import date
from typing import Final

from setwright.review.parts import PARTS, in_letters
from setwright.review.status import Review

HEAD: Final = (
    "# yaml-language-server: $schema=schema/sign-offs.json\n"
    "# Who reviewed which exercise, one line each. 'setwright sign' writes them; a line from the review page can be\n"
    "# pasted anywhere. A merge keeps the lines of both sides; never edit one: sign again.\n"
)
_ENTRY: Final = re.compile(r"- *\{ *exercise: *(?P<ident>[a-z0-9-]+) *[,}]")


_CODE_LETTERS: Final = 4


def seen_code(due: Iterable[Review]) -> str:
    """Return what stands for a list of exercises as they are now: how many, and some letters of their digests.

    Who signs a whole list writes it, so that nothing is signed that was changed after the list was read. The letters
    tell slips and late edits, and protect from nobody who means to deceive.
    """
    listed = sorted((review.exercise, *review.digests.values()) for review in due)
    digest = hashlib.sha256(json.dumps(listed).encode()).hexdigest()
    return f"{len(listed)}-{in_letters(digest[:_CODE_LETTERS])}"


def line_of(exercise: str, who: str, role: str, on: date, note: str | None, digests: Mapping[str, str]) -> str:
    """Return one sign-off as a line of YAML, without its line break.

    Texts are written in double quotes as JSON does, which YAML 1.2 reads the same way.
    """
    texts = {"who": who, "role": role}
    parts = [f"exercise: {exercise}", *(f"{key}: {_quoted(text)}" for key, text in texts.items())]
    parts.append(f"date: {on.isoformat()}")
    if note:
        parts.append(f"note: {_quoted(note)}")
    parts += [f"{part}: {digests[part]}" for part in PARTS]
    parts.append(f"words: {digests['words']}")
    parts.append(f"doses: {digests['dosage']}")
    return f"- {{{', '.join(parts)}}}"


def with_line(text: str, line: str) -> str:
    """Return the file with one more sign-off, in the order of the exercises, everything else as it was.

    In that order two reviewers who sign different exercises seldom write at the same place.
    """
    rows = (text or HEAD).rstrip("\n").split("\n")
    new = _ident(line)
    before = [n for n, row in enumerate(rows) if (ident := _ident(row)) and ident <= new]
    entries = [n for n, row in enumerate(rows) if _ident(row)]
    # Before the first entry, or, where entries were pasted in another form, at the end.
    at = before[-1] + 1 if before else entries[0] if entries else len(rows)
    return "\n".join([*rows[:at], line, *rows[at:]]) + "\n"


def _ident(row: str) -> str:
    match = _ENTRY.match(row)
    return match["ident"] if match else ""


def _quoted(text: str) -> str:
    return json.dumps(" ".join(text.split()), ensure_ascii=False)
