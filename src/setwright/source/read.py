"""Reading a whole programme: every file, every mistake, in one go."""

import stat
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from pydantic import BaseModel, ValidationError

from setwright.model.base import CoachModel
from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.plan import Plan
from setwright.model.programme import Programme
from setwright.model.reference import Reference
from setwright.model.routine import Routine
from setwright.model.session import Session
from setwright.model.sign_off import SignOff, SignOffs
from setwright.model.text import Id, parse_id
from setwright.source.extent import extent_findings
from setwright.source.finding import WARNING, Finding, Position, first_of
from setwright.source.links import Parts, link_findings
from setwright.source.media import read_photos
from setwright.source.messages import findings_of
from setwright.source.tree import MAX_BYTES, Tree, read_tree

FOLDERS: Final[dict[str, type[BaseModel]]] = {
    "plans": Plan,
    "sessions": Session,
    "exercises": Exercise,
    "routines": Routine,
}
"""Folders of one file a thing, and what stands in each."""

MAX_FILES: Final = 3000
_BESIDE: Final = ("media", "schema", "README.md")
_ALONE: Final = ("club.yml", "references.yml", "sign-offs.yml")
_ALONE_MISNAMED: Final = ("club.yaml", "references.yaml", "sign-offs.yaml")


class References(CoachModel):
    """The file references.yml: its keys are ids."""

    references: dict[Id, Reference]


@dataclass
class Places:
    """Where every value of the programme stands in its file."""

    label: str
    trees: dict[str, Tree] = field(default_factory=dict)

    def of(self, file: str, *path: str | int, key: bool = False) -> Position:
        """Return the position of a value, such as ``of("plans/relay.yml", "phases", 0, "weeks")``."""
        tree = self.trees.get(file)
        return tree.place(path, key=key) if tree else Position(f"{self.label}/{file}")

    def line(self, position: Position) -> str | None:
        """Return the source line of a position, if its file could be read."""
        tree = self.trees.get(position.file.removeprefix(f"{self.label}/"))
        lines = tree.text.split("\n") if tree else []
        return lines[position.line - 1] if position.line <= len(lines) else None


@dataclass(frozen=True)
class Reading:
    """What reading gave. ``programme`` is None where there are errors."""

    programme: Programme | None
    findings: tuple[Finding, ...]
    places: Places

    @property
    def errors(self) -> tuple[Finding, ...]:
        """Findings that stop publishing."""
        return tuple(f for f in self.findings if f.severity == "error")


Cache = dict[str, tuple[bytes, Tree, Any, tuple[Finding, ...]]]
"""Files as read before, by name: an unchanged file is not read twice while a preview runs."""


def read(folder: Path, label: str | None = None, cache: Cache | None = None) -> Reading:
    """Read the programme in a folder.

    Args:
        folder: the folder that holds club.yml, plans/, sessions/, exercises/ and routines/.
        label: how messages name the folder; its own name where nothing is given.
        cache: what an earlier reading left, for speed alone.

    Returns:
        The programme, or None, and every finding of every file, sorted by position. Mistakes in the files never raise.
    """
    return _Reader(folder, label or folder.name, {} if cache is None else cache).read()


class _Reader:
    def __init__(self, folder: Path, label: str, cache: Cache) -> None:
        self.folder, self.label, self.cache = folder, label, cache
        self.findings: list[Finding] = []
        self.places = Places(label)
        self.unusable: set[str] = set()  # files of the top that are reported already
        self.things: dict[str, dict[str, Any]] = {kind: {} for kind in FOLDERS}
        self.seen: dict[str, set[str]] = {kind: set() for kind in FOLDERS}

    def read(self) -> Reading:
        if not self.folder.is_dir():
            here = Position(self.label)
            self.findings.append(Finding(here, "no-programme", "there is no such folder", "run this where it stands"))
            return Reading(None, tuple(self.findings), self.places)
        paths = sorted(path for path in self.folder.rglob("*") if not _hidden(path, self.folder))
        if len(paths) > MAX_FILES:
            here, said = Position(self.label), f"more than {MAX_FILES} files and folders"
            self.findings.append(
                Finding(here, "too-many-files", said, "split it, or check that this is the right folder")
            )
            return Reading(None, tuple(self.findings), self.places)
        for name in self.files(paths):
            self.read_one(name)
        club = self.only("club.yml", Club)
        references = self.references()
        sign_offs = self.sign_offs()
        known = set(references) if references is not None else None
        parts = Parts(club, **self.things, references=known, ids=self.seen)
        self.findings += link_findings(parts, self.places.of)
        self.findings += extent_findings(parts.plans.values(), Position(f"{self.label}/plans"))
        photos, doubts = read_photos(self.folder, self.things["exercises"], self.places.of)
        self.findings += doubts
        if self.seen.get("plans") == set():
            missing = Position(f"{self.label}/plans")
            self.findings.append(Finding(missing, "no-plan", "there is no plan to publish", "write plans/<id>.yml"))
        findings = tuple(sorted(set(self.findings)))
        whole = club is not None and not any(f.severity == "error" for f in findings)
        programme = (
            Programme(club, **self.things, references=references or {}, sign_offs=sign_offs, photos=photos)
            if club and whole
            else None
        )
        return Reading(programme, findings, self.places)

    def files(self, paths: Iterable[Path]) -> Iterator[str]:
        """Yield the files to read, by name, in order; report those that have no place here."""
        root = self.folder.resolve()
        for path in paths:
            name = path.relative_to(self.folder).as_posix()
            if path.is_dir() and not path.is_symlink():
                continue
            first, _, rest = name.partition("/")
            if not _inside(path, root):
                self.unusable.add(name)
                self.count_as_there(first, rest)
                self.report(name, "path-outside", "this leads outside the programme's folder", "copy the file here")
            elif first in _BESIDE or name in _ALONE:
                continue
            elif first in FOLDERS and rest and path.suffix == ".yml":
                yield name
            elif path.suffix in (".yaml", ".yml") and first in (*FOLDERS, *_ALONE_MISNAMED):
                self.unusable.add(path.with_suffix(".yml").name)
                self.count_as_there(first, rest)
                self.report(name, "file-name", "this file's name does not end in '.yml'", "rename it")
            elif name in FOLDERS:
                self.count_as_there(first, rest)
                self.report(name, "unreadable", "this is not a folder", "make it a folder of '.yml' files")
            else:
                self.report(name, "unused-file", "nothing reads this file", "move or delete it", WARNING)

    def count_as_there(self, kind: str, rest: str) -> None:
        """Let ids lead to what is reported already; where a whole folder is, to anything at all."""
        if rest and kind in self.seen:
            self.seen[kind].add(_as_id(rest.rsplit(".", 1)[0]))
        else:
            self.seen.pop(kind, None)

    def report(self, name: str, rule: str, message: str, hint: str, severity: Any = "error") -> None:
        seen = "".join(sign if sign.isprintable() else "?" for sign in f"{self.label}/{name}")
        self.findings.append(Finding(Position(seen), rule, message, hint, severity))

    def read_one(self, name: str) -> None:
        kind, _, rest = name.partition("/")
        ident = rest.removesuffix(".yml")
        try:
            parse_id(ident)
        except ValueError:
            self.count_as_there(kind, rest)
            hint = f"use small letters, digits and hyphens, such as '{_as_id(ident)}.yml'"
            self.report(name, "file-name", "this file's name cannot be an id", hint)
            return
        self.seen.setdefault(kind, set()).add(ident)
        thing = self.model_of(name, FOLDERS[kind])
        if thing is not None:
            self.things[kind][ident] = thing

    def only(self, name: str, model: type[Club]) -> Club | None:
        if name in self.unusable:
            return None
        if not (self.folder / name).exists():
            self.report(name, "missing-file", f"{name} is missing", "every programme has one; see program/README.md")
            return None
        thing: Club | None = self.model_of(name, model)
        return thing

    def references(self) -> dict[str, Reference] | None:
        """Return the references, none where there is no such file, and None where it cannot be read."""
        if "references.yml" in self.unusable:
            return None
        if not (self.folder / "references.yml").exists():
            return {}
        thing = self.model_of("references.yml", References, under="references")
        return thing.references if thing is not None else None

    def sign_offs(self) -> tuple[SignOff, ...]:
        """Return the sign-offs in the order of the file; none where there is no such file."""
        if "sign-offs.yml" in self.unusable or not (self.folder / "sign-offs.yml").exists():
            return ()
        thing = self.model_of("sign-offs.yml", SignOffs, under="sign_offs")
        return tuple(thing.sign_offs) if thing is not None else ()

    def model_of(self, name: str, model: type[BaseModel], under: str = "") -> Any:
        """Return one file as its model, or None with findings; ``under`` is a key that the file leaves out."""
        raw = self.bytes_of(name)
        if raw is None:
            return None
        if (before := self.cache.get(name)) and before[0] == raw:
            _, tree, thing, findings = before
        else:
            tree = read_tree(f"{self.label}/{name}", raw)
            thing, findings = _validated(tree, model, under)
            self.cache[name] = (raw, tree, thing, findings)
        self.places.trees[name] = tree
        self.findings += findings
        return thing

    def bytes_of(self, name: str) -> bytes | None:
        path = self.folder / name
        try:
            if not stat.S_ISREG(path.stat().st_mode):
                self.report(name, "unreadable", "this is not a plain file", "replace it by one")
                return None
            with path.open("rb") as stream:
                return stream.read(MAX_BYTES + 1)
        except OSError as error:
            self.report(name, "unreadable", f"this file cannot be read: {error.strerror}", "check its permissions")
            return None


def _hidden(path: Path, folder: Path) -> bool:
    """Say whether a path below a folder is hidden, or stands in something hidden."""
    return any(part.startswith(".") for part in path.relative_to(folder).parts)


def _inside(path: Path, root: Path) -> bool:
    """Say whether a path, links followed, stays inside a folder. A link that leads in circles does not."""
    try:
        return path.resolve().is_relative_to(root)
    except (OSError, RuntimeError):
        return False


def _validated(tree: Tree, model: type[BaseModel], under: str) -> tuple[Any, tuple[Finding, ...]]:
    if tree.root is None:
        return None, tree.findings
    data = tree.root.data()
    try:
        thing = model.model_validate({under: data} if under else data)
    except ValidationError as error:
        found = findings_of(error, model, tree)
        return None, tuple(first_of((*tree.findings, *found), tree.file))
    return (thing if not tree.findings else None), tuple(first_of(tree.findings, tree.file))


def _as_id(text: str) -> str:
    words = "".join(c if c.isascii() and c.isalnum() else " " for c in text.lower()).split()
    return "-".join(words) or "a-name"
