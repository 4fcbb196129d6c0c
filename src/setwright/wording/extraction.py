"""Finding every sentence of members in Python, templates and browser code, for the template of the catalogues.

``python -m setwright.wording.extraction`` writes ``catalogues/members.pot`` anew and takes every catalogue along.
"""

import ast
import json
import re
from collections.abc import Iterator
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from typing import IO, Any, Final

from babel.messages.catalog import Catalog
from babel.messages.extract import extract
from babel.messages.pofile import read_po, write_po

from setwright.wording.catalogue import FOLDER, IN_THEME, TEMPLATE

ROOT: Final = Path(__file__).parent.parent
_JINJA_CALLS: Final[dict[str, Any]] = {"_": None, "ngettext": (1, 2)}
_CALLS: Final = {"say": 1, "later": 1, "pieces": 1, "many": 2}
"""What says a sentence in Python and in browser code, and how many of its first arguments are forms of one."""

_TEXT: Final = r'"(?:[^"\\]|\\.)*"'
_IN_SCRIPT: Final = re.compile(rf"\b(say|pieces|many)\(\s*({_TEXT})(?:\s*,\s*({_TEXT}))?")
_JINJA: Final = {
    "comment_start_string": "{##",
    "comment_end_string": "##}",
    "trim_blocks": "true",
    "lstrip_blocks": "true",
    "newstyle_gettext": "true",
    "silent": "false",
}
_COACHS: Final = ("pages/templates/check.md.jinja", "pages/templates/checks.md.jinja", "cli.py", "checks/", "source/")
"""Files that hold the coach's words alone."""

_NO_DAY: Final = datetime(2000, 1, 1, tzinfo=UTC)


def sentences() -> Catalog:
    """Return the catalogue of every sentence, with the files that it stands in, in their order."""
    catalogue = Catalog(
        project="Setwright",
        version="members",
        msgid_bugs_address="",
        copyright_holder="",
        creation_date=_NO_DAY,
        revision_date=_NO_DAY,
        header_comment="# Every sentence that members read. Made by python -m setwright.wording.extraction.",
    )
    for path in sorted(ROOT.rglob("*")):
        name = path.relative_to(ROOT).as_posix()
        if not path.is_file() or name.startswith(_COACHS):
            continue
        for message in _found(name, path.read_bytes()):
            catalogue.add(message, None, [(name, 0)])
    return catalogue


def template() -> bytes:
    """Return the template of the catalogues; the same sources give the same bytes."""
    return _written(sentences())


def update(path: Path) -> bytes:
    """Return a catalogue that follows the sources: new sentences are empty, gone ones are kept as comments."""
    with path.open("rb") as stream:
        catalogue = read_po(stream)
    catalogue.update(sentences(), no_fuzzy_matching=True)
    return _written(catalogue)


def _found(name: str, raw: bytes) -> Iterator[str | tuple[str, ...]]:
    if name.startswith("pages/theme/"):
        yield from (match[1] for match in IN_THEME.finditer(raw.decode()))
    elif name.endswith(".py"):
        yield from _in_python(raw.decode())
    elif name.endswith(".js"):
        yield from _in_script(raw.decode())
    elif name.endswith(".jinja"):
        for _, message, _, _ in extract("jinja2.ext:babel_extract", _File(raw), _JINJA_CALLS, options=_JINJA):
            yield message


def _in_python(source: str) -> Iterator[str | tuple[str, ...]]:
    """Yield what Python says, in the order of its lines; calls inside other calls and texts too."""
    calls = [node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.Call)]
    for call in sorted(calls, key=lambda node: (node.lineno, node.col_offset)):
        name = call.func.attr if isinstance(call.func, ast.Attribute) else getattr(call.func, "id", "")
        first = call.args[: _CALLS.get(name, 0)]
        texts = tuple(arg.value for arg in first if isinstance(arg, ast.Constant) and isinstance(arg.value, str))
        if texts and len(texts) == _CALLS[name]:
            yield texts[0] if len(texts) == 1 else texts


def _in_script(source: str) -> Iterator[str | tuple[str, ...]]:
    """Yield what browser code says. Its texts stand in double quotes, as JSON has them."""
    for match in _IN_SCRIPT.finditer(source):
        one = json.loads(match[2])
        yield (one, json.loads(match[3])) if match[1] == "many" else one


class _File(BytesIO):
    """A file as the extractor of templates wants it."""

    name = ""


def _written(catalogue: Catalog) -> bytes:
    stream: IO[bytes] = BytesIO()
    write_po(stream, catalogue, width=100, include_lineno=False, sort_output=True, omit_header=False)
    stream.seek(0)
    # Which release of the tool wrote it is no part of a catalogue.
    return b"".join(line for line in stream if not line.startswith(b'"Generated-By: '))


def main() -> None:
    """Write the template anew, and every catalogue with it."""
    FOLDER.mkdir(exist_ok=True)
    TEMPLATE.write_bytes(template())
    for path in sorted(FOLDER.glob("*.po")):
        path.write_bytes(update(path))


if __name__ == "__main__":
    main()
