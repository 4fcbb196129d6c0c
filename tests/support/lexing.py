"""Where words stand in templates, styles and browser code, apart from those that a catalogue says."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

from babel.messages.jslexer import tokenize
from jinja2 import Environment, nodes

_SAYS = re.compile(r'\b(say|pieces|many)\(\s*"((?:[^"\\]|\\.)*)"(?:\s*,\s*"((?:[^"\\]|\\.)*)")?')
_LETTERS = re.compile(r"[^\W\d_]{2,}")
_TEXTS = {"aria-label", "alt", "title", "placeholder"}
"""Attributes that a reader sees or hears."""


class _Markup(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.silent = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.silent += tag == "style"
        self.found += [value for name, value in attrs if name in _TEXTS and value and _LETTERS.search(value)]

    def handle_endtag(self, tag: str) -> None:
        self.silent -= tag == "style"

    def handle_data(self, data: str) -> None:
        # An anchor's name after a heading, {#stop-if}, is no word.
        text = re.sub(r"\{#[^}]*\}", "", data)
        if not self.silent and _LETTERS.search(text):
            self.found.append(text.strip())


def in_markup(text: str) -> list[str]:
    """Return the texts of markup that a reader sees or hears."""
    reader = _Markup()
    reader.feed(text)
    reader.close()
    return reader.found


def in_template(path: Path) -> list[str]:
    """Return the words of a Jinja template: between its tags, and in literals that it writes out."""
    environment = Environment(autoescape=True, comment_start_string="{##", comment_end_string="##}")
    source = path.read_text("utf-8")
    markup = "".join(value if kind == "data" else "" for _, kind, value in environment.lex(source))
    written = [literal for output in environment.parse(source).find_all(nodes.Output) for literal in _literals(output)]
    return [*in_markup(markup), *(text for text in written if " " in text.strip() and _LETTERS.search(text))]


def _literals(node: nodes.Node) -> Iterator[str]:
    """Yield the literals below a node that reach the reader as they are, not through the catalogue."""
    if isinstance(node, nodes.Call) and isinstance(node.node, nodes.Name) and node.node.name in ("_", "ngettext"):
        for argument in node.kwargs:
            yield from _literals(argument.value)
    elif isinstance(node, nodes.Const):
        if isinstance(node.value, str):
            yield node.value
    elif not isinstance(node, nodes.TemplateData):
        for child in node.iter_child_nodes():
            yield from _literals(child)


def in_script(path: Path) -> list[str]:
    """Return the literals of a script that read like words: two of them, or one that begins like a sentence."""
    source = path.read_text("utf-8")
    said = {text for match in _SAYS.finditer(source) for text in (match[2], match[3] if match[1] == "many" else "")}
    found = []
    for token in tokenize(source, jsx=False):
        if token.type in ("string", "template_string"):
            text = re.sub(r"\$\{[^}]*\}", "", token.value[1:-1])
            if token.value[1:-1] not in said and _reads_like_words(text):
                found.append(token.value[1:-1])
    return found


def _reads_like_words(text: str) -> bool:
    words = re.findall(r"(?<![\w.#\[:=-])[^\W\d_]{2,}(?![\w=\]#-])", text)
    return (" " in text.strip() and bool(words)) or re.fullmatch(r"[A-Z][a-z]+", text) is not None


def in_typst(path: Path) -> list[str]:
    """Return the words of a Typst template: in its content, outside of expressions, and in strings of several words."""
    return list(_typst(re.sub(r"(?m)(^|\s)//.*$", "", path.read_text("utf-8"))))


_WORD = re.compile(r"[A-Za-z_][\w-]*")
_FIELD = re.compile(r"\.[A-Za-z_][\w-]*")
_STATEMENTS = {"let", "set", "show", "import", "if", "for", "while", "context", "return", "else"}


def _typst(source: str) -> Iterator[str]:
    """Walk through a source with a stack of modes: content, where letters are words, and code, where they are names."""
    at, modes = 0, ["content"]
    while at < len(source):
        sign = source[at]
        if sign == '"':
            end = at + 1
            while source[end] != '"':
                end += 2 if source[end] == "\\" else 1
            text = source[at + 1 : end]
            if modes[-1] != "content" and " " in text.strip() and _LETTERS.search(text):
                yield text
            at = end + 1
        elif sign in "([{":
            modes.append("content" if sign == "[" else "code")
            at += 1
        elif sign in ")]}":
            while modes.pop() == "statement":
                pass
            at += 1
            while modes[-1] == "content" and (field := _FIELD.match(source, at)):
                at = field.end()
            if (
                sign == "]"
                and modes[-1] == "inline"
                and not source[at : at + 6].lstrip().startswith(("else", "(", "["))
            ):
                modes.pop()
        elif modes[-1] == "content" and sign == "#" and source[at + 1] not in "([{":
            name = _WORD.match(source, at + 1)
            at = name.end() if name else at + 1
            if name and name[0] in _STATEMENTS:
                modes.append("inline" if len(modes) > 1 else "statement")
            else:
                while field := _FIELD.match(source, at):
                    at = field.end()
        elif modes[-1] == "statement" and sign == "\n":
            modes.pop()
            at += 1
        elif modes[-1] == "content" and (word := _WORD.match(source, at)):
            if len(word[0]) > 1:
                yield word[0]
            at = word.end()
        else:
            at += 1
