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

from setwright.source.finding import Finding, Position

MAX_BYTES: Final = 256 * 1024
MAX_VALUES: Final = 20_000
MAX_DEPTH: Final = 24

_INVISIBLE = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ufeff\ufffe\uffff\ud800-\udfff]"
)
_EMPTY: Final = ("", "~", "null", "Null", "NULL")

Path = tuple[str | int, ...]


@dataclass(slots=True)
class Node:
    """A value with the place where it starts; the children of a mapping also know where their keys start."""

    line: int
    column: int
    content: "str | list[Node] | dict[str, Node] | None"
    key_places: dict[str, tuple[int, int]] = field(default_factory=dict)
    size: int = 1

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
    empty = frozenset(_empty_paths(root))
    for path in sorted(empty, key=lambda p: tuple(map(str, p))):
        found = Tree(file, text, root, ()).place(path, key=True)
        what = f"'{path[-1]}' has no value" if path and isinstance(path[-1], str) else "nothing after the dash"
        findings.append(Finding(found, "no-value", what, "write one, or delete the line"))
    return Tree(file, text, root, tuple(findings), empty)


def _empty_paths(root: Node) -> Iterator[Path]:
    waiting: list[tuple[Path, Node]] = [((), root)]
    while waiting:
        path, node = waiting.pop()
        if isinstance(node.content, dict):
            waiting.extend(((*path, key), child) for key, child in node.content.items())
        elif isinstance(node.content, list):
            waiting.extend(((*path, index), child) for index, child in enumerate(node.content))
        elif node.content is None:
            yield path


class _Composer:
    """Builds the tree from parser events, counting values so that aliases cannot multiply without end."""

    def __init__(self, file: str, text: str, findings: list[Finding]) -> None:
        self.file, self.text, self.findings = file, text, findings
        self.anchors: dict[str, Node] = {}
        self.open: list[tuple[Node, str | None]] = []  # containers being filled, each with its anchor
        self.keys: list[tuple[str, int, int] | None] = []  # the key waiting for its value, one a container
        self.root: Node | None = None
        self.count = 0

    def compose(self) -> Node:
        documents = 0
        for event in _events(self.file, self.text):
            mark = event.start_mark
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    self.stop(mark, "two-documents", "a second document starts here", "delete the line '---'")
            elif isinstance(event, yaml.AliasEvent):
                self.alias(event)
            elif isinstance(event, yaml.ScalarEvent):
                self.refuse_tag(event)
                empty = event.style is None and event.value in _EMPTY
                node = Node(mark.line + 1, mark.column + 1, None if empty else event.value)
                self.remember(event.anchor, node)
                self.put(node, event)
            elif isinstance(event, yaml.MappingStartEvent | yaml.SequenceStartEvent):
                self.start(event)
            elif isinstance(event, yaml.MappingEndEvent | yaml.SequenceEndEvent):
                node, anchor = self.open.pop()
                self.keys.pop()
                self.remember(anchor, node)
                if self.open:
                    self.open[-1][0].size += node.size
        if self.root is None or self.root.content in (None, {}, []):
            hint = "write it, starting from program/README.md, or delete the file"
            raise _UnreadableError(Finding(Position(self.file), "file-empty", "this file is empty", hint))
        return self.root

    def start(self, event: Any) -> None:
        self.refuse_tag(event)
        mark = event.start_mark
        if len(self.open) >= MAX_DEPTH:
            self.stop(mark, "too-deep", f"more than {MAX_DEPTH} levels inside each other", "flatten it")
        content: Any = {} if isinstance(event, yaml.MappingStartEvent) else []
        node = Node(mark.line + 1, mark.column + 1, content)
        self.put(node, event)
        self.open.append((node, event.anchor))
        self.keys.append(None)

    def alias(self, event: Any) -> None:
        if (node := self.anchors.get(event.anchor)) is None:
            hint = "to start a text with an asterisk, put the text in quotes"
            self.stop(event.start_mark, "unknown-alias", f"'*{event.anchor}' points at nothing", hint)
        self.put(node, event)

    def remember(self, anchor: str | None, node: Node) -> None:
        if anchor is not None:
            self.anchors[anchor] = node

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
            message = f"'{key}' is written twice, first in line {first}"
            self.findings.append(
                Finding(Position(self.file, line, column), "duplicate-key", message, "keep one of the two")
            )
            return
        content[key] = node
        parent.key_places[key] = (line, column)

    def refuse_tag(self, event: Any) -> None:
        if event.tag is not None:
            hint = "leave it out; to start a text with '!', put the text in quotes"
            self.stop(event.start_mark, "tag-not-allowed", f"the tag '{event.tag[:40]}' is not used here", hint)

    def stop(self, mark: Any, rule: str, message: str, hint: str) -> NoReturn:
        raise _UnreadableError(Finding(Position(self.file, mark.line + 1, mark.column + 1), rule, message, hint))


def _events(file: str, text: str) -> Iterator[Any]:
    """Yield the parser's events: the fast parser's, and the other one's words where it fails."""
    fast = getattr(yaml, "CLoader", yaml.Loader)
    try:
        yield from yaml.parse(text, Loader=fast)
        return
    except yaml.YAMLError as error:
        problem = error
    try:
        for _ in yaml.parse(text, Loader=yaml.Loader):
            pass
    except yaml.YAMLError as error:
        problem = error
    raise _UnreadableError(_syntax_finding(file, text, problem))


_SYNTAX: Final = (
    ("mapping values are not allowed", "a colon where none is expected", "if the text holds ': ', put it in quotes"),
    ("could not find expected ':'", "a key without a colon", "write 'key: value', or indent the line to belong above"),
    ("cannot start any token", "this sign cannot start a text", "put the text in quotes"),
    ("unexpected end of stream", "the quotes are never closed", "add the closing quote"),
    ("expected ',' or ']'", "this list is never closed", "add ',' between items and ']' at its end"),
    ("expected ',' or '}'", "these braces are never closed", "add ',' between keys and '}' at the end"),
    ("expected <block end>", "this line is not where its neighbours are", "indent it like the lines beside it"),
    ("expected alphabetic or numeric", "an asterisk or ampersand starts this text", "put the text in quotes"),
    ("unknown escape character", "a backslash in double quotes", "use single quotes"),
)


def _syntax_finding(file: str, text: str, error: yaml.YAMLError) -> Finding:
    """Word a parser's complaint for a coach, at its place."""
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    line, column = (mark.line, mark.column) if mark else (0, 0)
    lines = text.split("\n")
    around = lines[line] if line < len(lines) else ""
    for number in (line, line - 1):
        if 0 <= number < len(lines) and (tab := re.match(r" *\t", lines[number])):
            place = Position(file, number + 1, tab.end())
            return Finding(place, "tab", "a tab in the indentation", "use spaces; set your editor to insert them")
    problem = str(getattr(error, "problem", "") or "")
    rule, said, hint = "not-yaml", "this cannot be read as YAML", "compare it with an example in program/README.md"
    for part, words, fix in _SYNTAX:
        if part in problem:
            said, hint = words, fix
            break
    if "\t" in around:
        return Finding(Position(file, line + 1, around.index("\t") + 1), "tab", "a tab in the line", "use spaces")
    return Finding(Position(file, line + 1, column + 1), rule, said, hint)
