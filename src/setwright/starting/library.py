"""The movements that travel with the tool: whole exercises with figures, cautions and sources."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

import setwright
from setwright.errors import ProjectError
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.source.links import named_exercises
from setwright.source.read import read

_PACKAGE: Final = Path(setwright.__file__).parent
PACKED: Final = _PACKAGE / "starting" / "example"
"""Where a wheel carries the example. In a checkout, from which this is run in place, it stands at the top instead."""
CHECKOUT: Final = _PACKAGE.parent.parent
_UNSIGNED: Final = re.compile(r"^  - rule: sign-off-due\n(?:    .*\n)+", re.MULTILINE)
_ENTRY: Final = re.compile(r"^([\w-]+):", re.MULTILINE)


@dataclass(frozen=True)
class Library:
    """The example programme, as the tool carries it. ``program`` is its folder, ``top`` that of its settings."""

    programme: Programme
    program: Path
    top: Path

    def text(self, name: str) -> str:
        """Return a file of the programme as it is written."""
        return (self.program / name).read_text("utf-8")

    def exercise(self, ident: str) -> str:
        """Return an exercise as a club takes it, without what the example accepts for want of a sign-off."""
        return _UNSIGNED.sub("", self.text(f"exercises/{ident}.yml")).replace("accept:\nfigure:", "figure:")


def library() -> Library:
    """Read the movements that came with the tool.

    Raises:
        ProjectError: where they are not there, or a checkout's own programme is broken.
    """
    top = PACKED if PACKED.is_dir() else CHECKOUT
    reading = read(top / "program", str(top / "program"))
    if reading.programme is None:
        raise ProjectError(f"the movements of this tool cannot be read from {top / 'program'}: {reading.findings[0]}")
    return Library(reading.programme, top / "program", top)


def found(programme: Programme, words: Iterable[str], **asked: str | None) -> Iterator[tuple[str, Exercise]]:
    """Yield the exercises that all of it fits, by id.

    Args:
        programme: where to look.
        words: each is somewhere in the id, the name or why it matters, in either case.
        asked: ``region``, ``pattern`` or ``kit``, where one is asked for.
    """
    for ident, exercise in sorted(programme.exercises.items()):
        texts = f"{ident} {exercise.name} {exercise.why}".casefold()
        regions = (*exercise.regions.main, *exercise.regions.also)
        fits = (
            asked.get("region") in (None, *regions)
            and asked.get("pattern") in (None, exercise.pattern)
            and asked.get("kit") in (None, *exercise.kit)
        )
        if fits and all(word.casefold() in texts for word in words):
            yield ident, exercise


def with_what_they_name(programme: Programme, idents: Iterable[str]) -> Mapping[str, str | None]:
    """Return exercises and all that those lead to (easier and harder ways, links in their texts), in that order.

    Returns:
        By id, the exercise that names it first; None for those that were asked for.
    """
    wanted: dict[str, str | None] = dict.fromkeys(idents)
    waiting = list(wanted)
    for ident in waiting:
        exercise = programme.exercises[ident]
        ways = (way.exercise for way in (*exercise.easier, *exercise.harder) if way.exercise)
        for other in (*ways, *sorted(named_exercises(exercise))):
            if other not in wanted:
                wanted[other] = ident
                waiting.append(other)
    return wanted


def entries(text: str) -> dict[str, str]:
    """Return the entries of a file of references by id, each with its lines as they are written."""
    starts = list(_ENTRY.finditer(text))
    ends = [*(match.start() for match in starts[1:]), len(text)]
    return {match[1]: text[match.start() : end] for match, end in zip(starts, ends, strict=True)}


def sources_of(programme: Programme, idents: Iterable[str]) -> list[str]:
    """Return the references that exercises name, each once, in the order of the file."""
    named = {source for ident in idents for source in programme.exercises[ident].sources}
    return [ident for ident in programme.references if ident in named]
