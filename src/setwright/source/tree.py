"""A YAML file as a tree in which every key and every value knows its line and column.

Scalars stay what the coach typed: nothing is turned into a date, a truth value or a number here (the models do that
where a number is wanted), so ``no``, ``12:30`` and ``1_000`` are texts. That is the YAML 1.2 reading of them, and
stricter still. Built from the parser's events, without recursion, so that no file can exhaust the stack.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, Final, NoReturn

import yaml

from setwright.model.units import shown
from setwright.source.finding import Finding, Position
from setwright.source.spilled import apart_from, spilled
from setwright.source.syntax import Stop, syntax_finding

MAX_BYTES: Final = 256 * 1024
MAX_VALUES: Final = 20_000
MAX_DEPTH: Final = 24

_INVISIBLE = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u00ad\u061c\u200b\u200e\u200f\u2028\u2029\u202a-\u202e\u2066-\u2069\u2800\u3164\ufeff\ufffe\uffff\ud800-\udfff]"
)
_CONFLICT = re.compile("^<{7}( |$)", re.MULTILINE)
_TOO_DEEP: Final = f"more than {MAX_DEPTH} levels inside each other"
_EMPTY: Final = ("", "~", "null", "Null", "NULL")

Path = tuple[str | int, ...]


@dataclass(slots=True)
class Node:
    """A value with the place where it starts; the children of a mapping also know where their keys start.

    ``size`` counts the values inside, repeats included; ``height`` the levels below; ``flow`` marks brackets or braces.
    """

    line: int
    column: int
    content: "str | list[Node] | dict[str, Node] | None"
    key_places: dict[str, tuple[int, int]] = field(default_factory=dict)
    size: int = 1
    height: int = 0
    flow: bool = False

    def data(self) -> Any:
        """Return plain strings, lists and dicts. Values left empty are left out."""
        if isinstance(self.content, dict):
            return {key: child.data() for key, child in self.content.items() if child.content is not None}
        if isinstance(self.content, list):
            return ["" if child.content is None else child.data() for child in self.content]
        return self.content


@dataclass(frozen=True)
class Tree:
    """One file, read. ``root`` is None where it could not be read at all."""

    file: str
    text: str
    root: Node | None
    findings: tuple[Finding, ...]
    empty: frozenset[Path] = frozenset()

    def place(self, path: Path, key: bool = False) -> Position:
        """Return where a value starts, or its key; for a path that leads nowhere, the deepest place on the way."""
        node = self.root
        if node is None:
            return Position(self.file)
        place = (node.line, node.column)
        for index, step in enumerate(path):
            last = index == len(path) - 1
            content = node.content
            if isinstance(content, dict) and step in content:
                place = node.key_places[str(step)] if last and key else (0, 0)
                node = content[str(step)]
            elif isinstance(content, list) and isinstance(step, int) and step < len(content):
                node, place = content[step], (0, 0)
            else:
                # A tag of a union or a key that is missing: stay with what contains it.
                continue
            place = place if place != (0, 0) else (node.line, node.column)
        return Position(self.file, *place)


class _UnreadableError(Exception):
    """Carries the one finding that makes a file unreadable out of the parser loop."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


def read_tree(file: str, raw: bytes) -> Tree:
    """Read one file's bytes. Never raises: whatever is wrong with the file comes back as findings."""
    text = ""
    try:
        text = _decode(file, raw)
        return _compose(file, text)
    except _UnreadableError as stop:
        return Tree(file, text, None, (stop.finding,))


def _decode(file: str, raw: bytes) -> str:
    if len(raw) > MAX_BYTES:
        said = f"this file is larger than {MAX_BYTES // 1024} KB"
        raise _UnreadableError(
            Finding(Position(file), "file-too-large", said, "split it, or check what was pasted into it")
        )
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        hint = "save it as UTF-8 in your editor"
        raise _UnreadableError(
            Finding(Position(file), "not-utf-8", "this file starts with a UTF-16 byte-order mark", hint)
        )
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = raw[: error.start].decode("utf-8", "replace")
        place = Position(file, before.count("\n") + 1, len(before.rsplit("\n", 1)[-1]) + 1)
        found = f"a byte that is not UTF-8 (0x{raw[error.start]:02x})"
        raise _UnreadableError(Finding(place, "not-utf-8", found, "save the file as UTF-8 in your editor")) from None
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if merge := _CONFLICT.search(text):
        place = Position(file, text.count("\n", 0, merge.start()) + 1)
        said = "a merge has left both sides of a conflict here"
        hint = "keep what is right of the two, and delete the lines of '<<<<<<<', '=======' and '>>>>>>>'"
        raise _UnreadableError(Finding(place, "conflict-markers", said, hint))
    if found_at := _INVISIBLE.search(text):
        before = text[: found_at.start()]
        place = Position(file, before.count("\n") + 1, len(before.rsplit("\n", 1)[-1]) + 1)
        code = f"U+{ord(found_at[0]):04X}"
        name = "a byte-order mark inside the text" if found_at[0] == "\ufeff" else "an invisible control character"
        raise _UnreadableError(
            Finding(place, "invisible-character", f"{name} ({code})", "delete it, or retype the line")
        )
    return text


def _compose(file: str, text: str) -> Tree:
    findings: list[Finding] = []
    root = _Composer(file, text, findings).compose()
    empty = dict(_empty_paths(root))
    for path, in_braces in empty.items():
        place = Tree(file, text, root, ()).place(path, key=True)
        what = f"{shown(path[-1])} has no value" if isinstance(path[-1], str) else "this item is empty"
        hint = (
            "write one, or put the text before it in quotes: a comma ends it" if in_braces else "write it or delete it"
        )
        findings.append(Finding(place, "no-value", what, hint))
    lists = list(spilled(text, root))
    findings = [*apart_from(lists, findings), *(whole.finding(file) for whole in lists)]
    return Tree(file, text, root, tuple(dict.fromkeys(findings)), frozenset((*empty, *(one.path for one in lists))))


def _empty_paths(root: Node) -> Iterator[tuple[Path, bool]]:
    """Yield the path of every empty value, and whether it stands inside braces."""
    waiting: list[tuple[Path, Node]] = [((), root)]
    while waiting:
        path, node = waiting.pop()
        pairs = node.content.items() if isinstance(node.content, dict) else ()
        items = enumerate(node.content) if isinstance(node.content, list) else ()
        for step, child in (*pairs, *items):
            waiting.append(((*path, step), child))
            if child.content is None:
                yield (*path, step), node.flow and isinstance(node.content, dict)


class _Composer:
    """Builds the tree from parser events, counting values so that aliases cannot multiply without end."""

    def __init__(self, file: str, text: str, findings: list[Finding]) -> None:
        self.file, self.text, self.findings = file, text, findings
        self.anchors: dict[str, Node] = {}
        self.unused: dict[str, Position] = {}  # anchors that nothing has repeated yet
        self.open: list[tuple[Node, str | None]] = []  # containers being filled, each with its anchor
        self.keys: list[tuple[str, int, int] | None] = []  # the key waiting for its value, one a container
        self.root: Node | None = None
        self.count = 0

    def compose(self) -> Node:
        for event in self.events():
            if isinstance(event, yaml.AliasEvent):
                self.alias(event)
            elif isinstance(event, yaml.ScalarEvent):
                self.scalar(event)
            elif isinstance(event, yaml.CollectionStartEvent):
                self.start(event)
            elif isinstance(event, yaml.CollectionEndEvent):
                self.end()
        for anchor, place in self.unused.items():
            hint = "to start a text with an ampersand, put the text in quotes"
            self.findings.append(Finding(place, "unused-anchor", f"nothing repeats '&{anchor}'", hint))
        if self.root is None or self.root.content in (None, {}, []):
            hint = "write it, starting from program/README.md, or delete the file"
            raise _UnreadableError(Finding(Position(self.file), "file-empty", "this file is empty", hint))
        return self.root

    def events(self) -> Iterator[Any]:
        """Yield the parser's events of one document; where it fails, stop with what a coach can mend."""
        last, documents = None, 0
        try:
            for last in yaml.parse(self.text, Loader=getattr(yaml, "CLoader", yaml.Loader)):
                documents += isinstance(last, yaml.DocumentStartEvent)
                if documents > 1:
                    self.stop(last.start_mark, "two-documents", "a second document starts here", "delete the '---'")
                yield last
        except yaml.YAMLError as error:
            inner = self.open[-1][0] if self.open else None
            bracket = (inner.line - 1, inner.column - 1) if inner is not None and inner.flow else None
            raise _UnreadableError(syntax_finding(self.file, self.text, Stop(error, last, bracket))) from None

    def scalar(self, event: Any) -> None:
        self.refuse_tag(event)
        mark = event.start_mark
        if found := _INVISIBLE.search(event.value):  # typed as an escape, such as "\\a"
            message = f"an invisible control character (U+{ord(found[0]):04X})"
            self.stop(mark, "invisible-character", message, "delete it, or use single quotes")
        plain_style = not event.style
        content = None if plain_style and event.value in _EMPTY else event.value
        node = Node(mark.line + 1, mark.column + 1, content)
        self.remember(event.anchor, node)
        self.put(node, event)

    def start(self, event: Any) -> None:
        self.refuse_tag(event)
        mark = event.start_mark
        if len(self.open) >= MAX_DEPTH:
            self.stop(mark, "too-deep", _TOO_DEEP, "flatten it")
        content: Any = {} if isinstance(event, yaml.MappingStartEvent) else []
        node = Node(mark.line + 1, mark.column + 1, content, flow=bool(event.flow_style))
        self.put(node, event)
        self.open.append((node, event.anchor))
        self.keys.append(None)

    def end(self) -> None:
        node, anchor = self.open.pop()
        self.keys.pop()
        self.remember(anchor, node)
        if self.open:
            parent = self.open[-1][0]
            parent.size += node.size
            parent.height = max(parent.height, node.height + 1)

    def alias(self, event: Any) -> None:
        mark, name = event.start_mark, event.anchor
        if any(name == anchor for _, anchor in self.open):
            self.stop(mark, "recursive-alias", f"'*{name}' stands inside what it repeats", "write it out")
        if (node := self.anchors.get(name)) is None:
            hint = "to start a text with an asterisk, put the text in quotes"
            self.stop(mark, "unknown-alias", f"'*{name}' points at nothing", hint)
        if len(self.open) + node.height >= MAX_DEPTH:
            self.stop(mark, "too-deep", _TOO_DEEP, "flatten it")
        self.unused.pop(name, None)
        self.put(node, event)

    def remember(self, anchor: str | None, node: Node) -> None:
        if anchor is not None:
            self.anchors[anchor] = node
            self.unused[anchor] = Position(self.file, node.line, node.column)

    def put(self, node: Node, event: Any) -> None:
        self.count += node.size
        mark = event.start_mark
        if self.count > MAX_VALUES:
            self.stop(mark, "too-many-values", f"more than {MAX_VALUES} values, repeats counted", "split the file")
        if not self.open:
            self.root = node
            return
        parent = self.open[-1][0]
        if isinstance(parent.content, list):
            parent.content.append(node)
        elif isinstance(parent.content, dict):
            self.put_in_mapping(parent, parent.content, node, mark)
        if not isinstance(node.content, dict | list) or node.size > 1:
            parent.size += node.size

    def put_in_mapping(self, parent: Node, content: dict[str, Node], node: Node, mark: Any) -> None:
        waiting = self.keys[-1]
        if waiting is None:
            if not isinstance(node.content, str):
                self.stop(mark, "key-not-a-word", "a key is a word followed by a colon", "write 'key: value'")
            self.keys[-1] = (node.content, mark.line + 1, mark.column + 1)
            return
        key, line, column = waiting
        self.keys[-1] = None
        if key in content:
            first = parent.key_places[key][0]
            message = f"{shown(key)} is written twice, first in line {first}"
            self.findings.append(
                Finding(Position(self.file, line, column), "duplicate-key", message, "keep one of the two")
            )
            return
        content[key] = node
        parent.key_places[key] = (line, column)

    def refuse_tag(self, event: Any) -> None:
        if event.tag is not None:
            hint = "leave it out; to start a text with '!', put the text in quotes"
            typed = shown(event.tag.replace("tag:yaml.org,2002:", "!!"))
            self.stop(event.start_mark, "tag-not-allowed", f"the tag {typed} is not used here", hint)

    def stop(self, mark: Any, rule: str, message: str, hint: str) -> NoReturn:
        raise _UnreadableError(Finding(Position(self.file, mark.line + 1, mark.column + 1), rule, message, hint))
