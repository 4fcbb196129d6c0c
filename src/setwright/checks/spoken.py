"""What is said in free words of exercises under limits: sentence by sentence, about whom, beside which doses."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from setwright.checks.rule import Subject
from setwright.checks.texts import Path, instructions
from setwright.dose.contacts import is_jump
from setwright.dose.resolved import ResolvedItem
from setwright.model.acceptance import Acceptance
from setwright.model.session import Session, Slot, path_in_block
from setwright.review.words import Names

_SENTENCE: Final = re.compile(r"(?<=[.!?])\s+")
_WARNS: Final = frozenset({"cautions", "stop_if"})
"""Keys of an exercise that only warn."""


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence at a place, and the exercises that it is about, by id: those that it names, or else the place's own.

    ``folder`` and ``name`` are those of the file; in an exercise's own file and in routines, no dose stands beside it.
    """

    folder: str
    name: str
    path: Path
    text: str
    about: tuple[str, ...]
    accept: Sequence[Acceptance]

    @property
    def file(self) -> str:
        """The file that it stands in."""
        return f"{self.folder}/{self.name}.yml"


def spoken(subject: Subject) -> Iterator[Sentence]:
    """Yield every sentence that is about an exercise under limits, or about a jump."""
    exercises = subject.programme.exercises
    bound = {ident for ident, one in exercises.items() if one.limits is not None or is_jump(one)}
    names = Names(subject.programme, exercises)
    for file, path, text, accept in instructions(subject.programme):
        folder, _, name = file.removesuffix(".yml").partition("/")
        if folder == "exercises" and path[0] in _WARNS:
            continue
        own = _own(subject, folder, name, path)
        for sentence in _SENTENCE.split(" ".join(text.split())):
            about = tuple(dict.fromkeys(names.in_text(sentence))) or own
            if not bound.isdisjoint(about):
                yield Sentence(folder, name, path, sentence, about, accept)


def doses_beside(subject: Subject, sentence: Sentence, ident: str) -> tuple[ResolvedItem, ...]:
    """Return the doses of an exercise beside a sentence, in all weeks: in its place, else in its session or any plan's.

    None stand beside a sentence of a routine or of an exercise's own page.
    """
    if sentence.folder not in ("sessions", "plans"):
        return ()
    every = [(session, slot, item) for (session, slot), uses in subject.slots.items() for _, _, item in uses]
    of_it = [(session, slot, item) for session, slot, item in every if item.exercise == ident]
    in_session = [
        (slot, item) for session, slot, item in of_it if (sentence.folder, sentence.name) == ("sessions", session)
    ]
    there = [item for slot, item in in_session if _holds(sentence.path, slot)]
    return tuple(there or [item for _, item in in_session] or [item for _, _, item in of_it])


def _own(subject: Subject, folder: str, name: str, path: Path) -> tuple[str, ...]:
    """Return the exercises that a place is about by itself."""
    match folder:
        case "exercises" if path[0] in ("easier", "harder") and isinstance(path[1], int):
            return (getattr(subject.programme.exercises[name], path[0])[path[1]].exercise or name,)
        case "exercises":
            return (name,)
        case "sessions" if path[-1] == "note":
            return tuple(dict.fromkeys(one for one in _held(subject.programme.sessions[name], path)))
        case "routines" if path[0] == "exercises" and isinstance(path[1], int):
            exercise = subject.programme.routines[name].exercises[path[1]].exercise
            return (exercise,) if exercise is not None else ()
        case "plans" if path[0] == "changes" and isinstance(path[1], int):
            exercise = subject.programme.plans[name].changes[path[1]].exercise
            return (exercise,) if exercise is not None else ()
        case _:
            return ()


def _held(session: Session, path: Path) -> Iterator[str]:
    """Yield the exercises of a session, of one of its blocks, or the one at a path."""
    for b, block in enumerate(session.blocks):
        for where, one in block.prescriptions():
            if path[:-1] in ((), ("blocks", b), ("blocks", b, *path_in_block(where))):
                yield one.exercise


def _holds(path: Path, slot: Slot) -> bool:
    """Say whether a slot lies at the place of a note: in its block, or at its own exercise."""
    here = path_in_block(slot[1:])
    return path[:2] == ("blocks", slot[0]) and (path[2] != "exercises" or path[2:-1] == here)
