"""Finding every sentence of members in Python, templates and browser code, for the template of the catalogues.

``python -m setwright.wording.extraction`` writes ``catalogues/members.pot`` anew and takes every catalogue along.
"""

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
KEYWORDS: Final[dict[str, Any]] = {
    "say": None,
    "later": None,
    "many": (1, 2),
    "_": None,
    "ngettext": (1, 2),
    "pieces": None,
}
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
        for message, context in _found(name, path.read_bytes()):
            catalogue.add(message, None, [(name, 0)], context=context)
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


def _found(name: str, raw: bytes) -> Iterator[tuple[Any, str | None]]:
    if name.startswith("pages/theme/"):
        for match in IN_THEME.finditer(raw.decode()):
            yield match[1], None
        return
    method, options = _method(name)
    if method is None:
        return
    for _, message, _, context in extract(method, _Named(raw), KEYWORDS, options=options):
        yield message, context


def _method(name: str) -> tuple[str | None, dict[str, str]]:
    if name.endswith(".py"):
        return "python", {}
    if name.endswith(".jinja"):
        return "jinja2.ext:babel_extract", _JINJA if name.startswith("pages/") else {}
    return ("javascript", {}) if name.endswith(".js") else (None, {})


class _Named(BytesIO):
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
