"""Programmes in folders: the small good one with files put into it, the bad cases, and what reading them gives."""

import os
import shutil
from collections.abc import Callable, Mapping
from functools import cache
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

from setwright import printers, publish
from setwright.source.finding import Finding
from setwright.source.read import MAX_FILES, Places

PROGRAMMES: Final = Path(__file__).parent.parent / "programmes"
GOOD: Final = PROGRAMMES / "good"
BAD: Final = PROGRAMMES / "bad"
EXAMPLE: Final = PROGRAMMES.parent.parent / "program"
LABEL: Final = "program"
EXPECTED: Final = "expected.txt"


def good_programme(folder: Path, files: Mapping[str, str | bytes] | None = None) -> Path:
    """Copy the good programme below a folder, put files in place of its own, and return where it is."""
    program = folder / LABEL
    shutil.copytree(GOOD, program)
    for name, content in (files or {}).items():
        put(program, name, content)
    return program


def put(program: Path, name: str, content: str | bytes) -> None:
    """Write one file of a programme."""
    path = program / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(content.encode() if isinstance(content, str) else content)


def looked_at(program: Path) -> tuple[tuple[Finding, ...], Places]:
    """Return everything that is wrong or doubtful about a programme, and where its values stand."""
    looked = publish.look(program, LABEL)
    return looked.findings, looked.places


def plain_lines(findings: tuple[Finding, ...]) -> str:
    """Return findings as the command prints them with ``--format plain``."""
    return "".join(f"{printers.plain(finding)}\n" for finding in findings)


def bad_cases() -> list[str]:
    """Return the names of all bad cases, in order."""
    return sorted(path.name for path in BAD.iterdir() if path.is_dir())


def bad_programme(case: str, folder: Path) -> Path:
    """Make the programme of a bad case: the good one, the case's files put over it, and what only code can make."""
    program = good_programme(folder)
    shutil.copytree(BAD / case, program, dirs_exist_ok=True, ignore=shutil.ignore_patterns(EXPECTED))
    if case in MADE:
        MADE[case](program)
    return program


@cache
def bad_looked_at(case: str) -> tuple[tuple[Finding, ...], Places]:
    """Return what is wrong with the programme of a bad case, and where its values stand; it is looked at once."""
    return looked_at(bad_programme(case, Path(_MADE_IN.name) / case))


_MADE_IN: Final = TemporaryDirectory(prefix="bad-cases-")
"""Where those programmes lie until this process ends."""


def _replaced(file: str, old: str, new: str) -> bytes:
    text = (GOOD / file).read_text("utf-8")
    if old not in text:
        raise ValueError(f"{file} does not hold {old!r}")
    return text.replace(old, new).encode()


_LEGS: Final = "sessions/legs.yml"


def _utf_16(program: Path) -> None:
    """A session saved as UTF-16."""
    put(program, _LEGS, (GOOD / _LEGS).read_text("utf-8").encode("utf-16"))


def _latin_1(program: Path) -> None:
    """A session saved as Latin-1, with an accent in it."""
    put(program, _LEGS, _replaced(_LEGS, "Legs that push.", "Legs that püsh.").decode().encode("latin-1"))


def _byte_order_mark(program: Path) -> None:
    """A byte-order mark in the middle of a text, from joining two files."""
    put(program, _LEGS, _replaced(_LEGS, "that push", "that \ufeffpush"))


def _control_character(program: Path) -> None:
    """A control character pasted into a text."""
    put(program, _LEGS, _replaced(_LEGS, "that push", "that \x07push"))


def _turned_round(program: Path) -> None:
    """A sign that turns the direction of writing, so that a text reads as something else."""
    put(program, _LEGS, _replaced(_LEGS, "that push", "that \u202epush"))


def _no_break_space(program: Path) -> None:
    """A no-break space after the colon, pasted from a web page."""
    put(program, _LEGS, _replaced(_LEGS, "        reps: 10", "        reps:\u00a010"))


def _tab(program: Path) -> None:
    """A tab instead of spaces."""
    put(program, _LEGS, _replaced(_LEGS, "        reps: 10", "\treps: 10"))


def _huge(program: Path) -> None:
    """A file of 300 KB."""
    put(program, _LEGS, "name: " + "legs " * 60_000)


def _many_files(program: Path) -> None:
    """More than 3000 files."""
    (program / "zzz").mkdir()
    for number in range(MAX_FILES):
        (program / "zzz" / f"{number}.yml").touch()


def _many_values(program: Path) -> None:
    """A list of 50,000 values."""
    put(program, _LEGS, f"warm_up: [{'a, ' * 50_000}]")


def _many_days(program: Path) -> None:
    """Sixty-one plans of a year with two sessions a week."""
    for year in range(2000, 2061):
        put(program, f"plans/year-{year}.yml", _replaced("plans/regatta.yml", "weeks: 4", "weeks: 52"))


def _long_id(program: Path) -> None:
    """A table pasted where an id should stand."""
    put(program, _LEGS, _replaced(_LEGS, "exercise: squat", f"exercise: {'a1' * 5000}"))


def _conflict(program: Path) -> None:
    """A merge that left both sides of a conflict in the file."""
    both = f"{'<' * 7} mine\n        reps: 10\n{'=' * 7}\n        reps: 12\n{'>' * 7} theirs"
    put(program, _LEGS, _replaced(_LEGS, "        reps: 10", both))


def _alias_bomb(program: Path) -> None:
    """Ten lists, each of them ten times the one before."""
    rows = ["a: &a [x, x, x, x, x, x, x, x, x, x]"]
    rows += [f"{new}: &{new} [{', '.join([f'*{old}'] * 10)}]" for old, new in pairwise("abcdefghij")]
    put(program, _LEGS, "\n".join(rows))


def _deep(program: Path) -> None:
    """Lists inside lists, a hundred levels down."""
    put(program, _LEGS, f"warm_up: {'[' * 100}warm{']' * 100}\n")


def _very_deep(program: Path) -> None:
    """A hundred thousand opening brackets."""
    put(program, _LEGS, f"warm_up: {'[' * 100_000}\n")


def _deep_by_alias(program: Path) -> None:
    """Lists that are deep only because each repeats the one before inside more levels."""
    rows = ["a0: &a0 [x]", *(f"a{n}: &a{n} {'[' * 20}*a{n - 1}{']' * 20}" for n in range(1, 40))]
    put(program, _LEGS, "\n".join(rows))


def _link_outside(program: Path) -> None:
    """A session that is a link to a file elsewhere."""
    outside = program.parent / "elsewhere.yml"
    shutil.copy(program / _LEGS, outside)
    (program / _LEGS).unlink()
    (program / _LEGS).symlink_to(outside)


def _club_outside(program: Path) -> None:
    """A club.yml that is a link to a file elsewhere."""
    (program / "club.yml").rename(program.parent / "secret.yml")
    (program / "club.yml").symlink_to(program.parent / "secret.yml")


def _folder_outside(program: Path) -> None:
    """A folder of sessions that is a link to elsewhere."""
    (program / "sessions").rename(program.parent / "elsewhere")
    (program / "sessions").symlink_to(program.parent / "elsewhere")


def _link_in_circles(program: Path) -> None:
    """A session that is a link to itself."""
    (program / _LEGS).unlink()
    (program / _LEGS).symlink_to("legs.yml")


def _pipe(program: Path) -> None:
    """A session that is a named pipe, which would never end."""
    (program / _LEGS).unlink()
    os.mkfifo(program / _LEGS)


def _file_for_folder(program: Path) -> None:
    """A file where the folder of sessions should be."""
    shutil.rmtree(program / "sessions")
    put(program, "sessions", "legs\n")


def _no_folder(program: Path) -> None:
    """No programme's folder at all."""
    shutil.rmtree(program)


def _no_club(program: Path) -> None:
    """No club.yml."""
    (program / "club.yml").unlink()


def _no_plan(program: Path) -> None:
    """No plan in the folder of plans."""
    (program / "plans/regatta.yml").unlink()


def _renamed(old: str, new: str, about: str) -> Callable[[Path], None]:
    def rename(program: Path) -> None:
        (program / old).rename(program / new)

    rename.__doc__ = about
    return rename


def _space_in_a_name(program: Path) -> None:
    """A file named 'my legs.yml'."""
    put(program, "sessions/my legs.yml", (GOOD / _LEGS).read_bytes())


def _odd_bytes_in_a_name(program: Path) -> None:
    """A file name with a line break in it."""
    put(program, "sessions/legs\n::error::.yml", (GOOD / _LEGS).read_bytes())


MADE: Final[dict[str, Callable[[Path], None]]] = {
    "alias-bomb": _alias_bomb,
    "byte-order-mark-inside": _byte_order_mark,
    "club-outside": _club_outside,
    "club-missing": _no_club,
    "club-yaml": _renamed("club.yml", "club.yaml", "A file named club.yaml."),
    "conflict-left": _conflict,
    "control-character": _control_character,
    "deep-by-repeating": _deep_by_alias,
    "deep-nesting": _deep,
    "direction-mark": _turned_round,
    "file-for-a-folder": _file_for_folder,
    "file-name-capital": _renamed(_LEGS, "sessions/Legs.yml", "A file named Legs.yml."),
    "file-name-line-break": _odd_bytes_in_a_name,
    "file-name-space": _space_in_a_name,
    "file-name-yaml": _renamed(_LEGS, "sessions/legs.yaml", "A file named legs.yaml."),
    "file-too-large": _huge,
    "folder-missing": _no_folder,
    "folder-outside": _folder_outside,
    "latin-1": _latin_1,
    "link-in-circles": _link_in_circles,
    "link-outside": _link_outside,
    "named-pipe": _pipe,
    "no-break-space": _no_break_space,
    "no-plan": _no_plan,
    "tab": _tab,
    "id-too-long": _long_id,
    "too-many-days": _many_days,
    "too-many-files": _many_files,
    "too-many-values": _many_values,
    "utf-16": _utf_16,
    "very-deep-nesting": _very_deep,
}
"""What cannot be kept as a file: odd bytes, links, and sizes. Each says in its docstring what it makes."""
