"""Taking movements from the library into a club's programme. What is there is never overwritten."""

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from setwright.disk.files import replace
from setwright.starting.library import Library, entries, sources_of, with_what_they_name

HEAD: Final = "# yaml-language-server: $schema=schema/references.json\n"


@dataclass(frozen=True)
class Taken:
    """What was done.

    ``written`` are exercises by id with the one that names each (None where it was asked for), ``left`` those that were
    there already. ``references`` are those added to references.yml.
    """

    written: dict[str, str | None]
    left: tuple[str, ...]
    references: tuple[str, ...]


def take(library: Library, program: Path, idents: Iterable[str]) -> Taken:
    """Copy exercises, those that they lead to, and their references into a programme, unsigned.

    Args:
        library: where they come from.
        program: the club's folder.
        idents: ids of exercises of the library.

    Raises:
        OSError: where a file cannot be written; those before it stay.
    """
    wanted = with_what_they_name(library.programme, idents)
    folder = program / "exercises"
    left = tuple(ident for ident in wanted if (folder / f"{ident}.yml").exists())
    written = {ident: by for ident, by in wanted.items() if ident not in left}
    added = _add_references(library, program, sources_of(library.programme, written))
    folder.mkdir(parents=True, exist_ok=True)
    for ident in written:
        with (folder / f"{ident}.yml").open("xb") as stream:
            stream.write(library.exercise(ident).encode())
    return Taken(written, left, added)


def _add_references(library: Library, program: Path, named: list[str]) -> tuple[str, ...]:
    file = program / "references.yml"
    text = file.read_text("utf-8") if file.exists() else HEAD
    here, there = entries(text), entries(library.text("references.yml"))
    added = tuple(ident for ident in named if ident not in here)
    if added:
        end = "" if text.endswith("\n") else "\n"
        replace(file, (text + end + "".join(there[ident] for ident in added)).encode(), lasting=True)
    return added
