"""Catalogues of members' sentences, one a language, in gettext's form: ``catalogues/<code>.po``.

They are read as they lie there, so no compiled file can be out of step. English has none: its sentences are the msgids.
"""

import re
from gettext import c2py
from pathlib import Path
from typing import Final

from babel import Locale
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po

from setwright.wording.language import Language

FOLDER: Final = Path(__file__).parent / "catalogues"
IN_THEME: Final = re.compile(r'\{\{ _\("([^"]*)"\) \}\}')
"""A sentence in a file of the site engine's theme."""

TEMPLATE: Final = FOLDER / "members.pot"
"""Every sentence of members, for translators to begin with."""


def language(code: str) -> Language:
    """Return a language with its catalogue; without one it speaks English with its own numbers and days.

    Raises:
        UnknownLocaleError: for a code of no language.
    """
    path = FOLDER / f"{code}.po"
    locale = Locale.parse(code, sep="-")
    if not path.is_file():
        return Language(code, locale)
    with path.open("rb") as stream:
        return spoken(code, read_po(stream, locale=locale))


def spoken(code: str, catalogue: Catalog) -> Language:
    """Return the language of a catalogue. What is untranslated or marked fuzzy there is left out."""
    messages: dict[str, tuple[str, ...]] = {}
    for message in catalogue:
        if not message.id or message.fuzzy:
            continue
        ident = message.id if isinstance(message.id, str) else message.id[0]
        forms = (message.string,) if isinstance(message.string, str) else tuple(message.string or ())
        if forms and all(forms):
            messages[ident] = forms
    rule = str(catalogue.plural_expr)
    return Language(code, Locale.parse(code, sep="-"), messages, c2py(rule), rule)
