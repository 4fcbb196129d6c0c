"""What sessions, warm-ups and changes say of an exercise under limits in words of their own, and with kit of their own.

A number beyond a limit is an error; words cannot be measured. So they are signed with the exercise, and what nobody
has signed is shown as not reviewed.
"""

import hashlib
import json
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from setwright.dose.ways import linked
from setwright.model.choices import Alternative
from setwright.model.programme import Programme
from setwright.model.sign_off import NO_DIGEST
from setwright.model.text import plain
from setwright.model.units import plain_number
from setwright.review.parts import LETTERS, Line, in_letters

Where = tuple[str | int, ...]
"""The place of words: ``("session", id, block, exercise, "note")``, ``("routine", id, step, "do")`` and so on."""


@dataclass(frozen=True, slots=True)
class Saying:
    """Words, or kit, at a place, and the exercises under limits that they are about."""

    where: Where
    text: str
    about: tuple[str, ...]


def sayings(programme: Programme) -> tuple[Saying, ...]:
    """Return everything that is said of exercises under limits outside of their own files, in order of place.

    A note of an exercise is about it, and so are kit and height of its own; a note of a block is about all exercises of
    it. Other words are about the exercises that they link to or name.
    """
    limited = {ident for ident, one in programme.exercises.items() if one.limits is not None}
    named = Names(programme, limited)

    def said(where: Where, text: str | None, own: Iterable[str] = ()) -> Iterator[Saying]:
        if text is not None:
            about = dict.fromkeys((*(ident for ident in own if ident in limited), *named.in_text(text)))
            if about:
                yield Saying(where, text, tuple(about))

    found: list[Saying] = []
    for ident, session in sorted(programme.sessions.items()):
        found += said(("session", ident, "note"), session.note)
        for b, block in enumerate(session.blocks):
            every = dict.fromkeys(one.exercise for _, one in block.prescriptions())
            found += said(("session", ident, b, "note"), block.note, every)
            for place, one in block.prescriptions():
                here: Where = ("session", ident, b, *place)
                found += said((*here, "note"), one.note, [one.exercise])
                if one.kit is not None:
                    found += said((*here, "kit"), ", ".join(one.kit), [one.exercise])
                if one.height is not None:
                    found += said((*here, "height"), f"{plain_number(one.height)} cm", [one.exercise])
                if isinstance(one, Alternative):
                    whom = "; ".join(programme.club.choices[choice] for choice in one.for_)
                    found += said((*here, "for"), whom, [one.exercise])
    for ident, routine in sorted(programme.routines.items()):
        for index, part in enumerate(routine.exercises):
            own = [part.exercise] if part.exercise is not None else []
            found += said(("routine", ident, index, "do"), part.do)
            found += said(("routine", ident, index, "note"), part.note, own)
    for ident, plan in sorted(programme.plans.items()):
        for index, change in enumerate(plan.changes):
            found += said(("plan", ident, index, "why"), change.why)
    return tuple(found)


def words_about(programme: Programme) -> dict[str, tuple[Line, ...]]:
    """Return, by exercise, what is said of it elsewhere, one line a text: its key is the name of what says it."""
    found: dict[str, list[Line]] = {}
    for saying in sayings(programme):
        for ident in saying.about:
            found.setdefault(ident, []).append(Line(_name(programme, saying.where), saying.text, str(saying.where[-1])))
    return {ident: tuple(lines) for ident, lines in found.items()}


def _name(programme: Programme, where: Where) -> str:
    """Return the name of the session, routine or plan at a place."""
    kind, ident = where[0], str(where[1])
    if kind == "session":
        return programme.sessions[ident].name
    return programme.routines[ident].name if kind == "routine" else programme.plans[ident].name


def digest_of_words(lines: Iterable[Line]) -> str:
    """Return the digest of what is said of an exercise, wherever it stands, or 'none' where nothing is."""
    texts = sorted({(line.field, line.text) for line in lines})
    if not texts:
        return NO_DIGEST
    text = json.dumps(texts, ensure_ascii=False)
    return in_letters(hashlib.sha256(text.encode()).hexdigest()[:LETTERS])


class Names:
    """Finds exercises that a text links to or names: each word of the name in order, in its singular or plural."""

    def __init__(self, programme: Programme, among: Iterable[str]) -> None:
        self.among = set(among)
        self.patterns = {ident: _pattern(programme.exercises[ident].name) for ident in sorted(self.among)}

    def in_text(self, text: str) -> list[str]:
        """Return the exercises, by id, each once or more."""
        said = plain(text).casefold()
        found = [ident for ident in linked(text) if ident in self.among]
        return [*found, *(ident for ident, pattern in self.patterns.items() if pattern.search(said))]


def _pattern(name: str) -> re.Pattern[str]:
    """Return what finds a name: 'Push-up' finds push-ups and push ups, but not a pushy update."""
    words = re.findall(r"\w+", name.casefold()) or [re.escape(name.casefold())]
    return re.compile(r"\b" + r"(?:e?s)?\W+".join(words) + r"(?:e?s)?\b")
