"""The sentences of browser code in the site's language: the module that stands in for the one of English."""

import json
import re
from typing import Final

from setwright.outline.packaged import package_files
from setwright.wording.language import ENGLISH, Language

PATH: Final = "assets/js/catalogue.js"
_RULE: Final = re.compile(r"[n0-9 ()%!=<>&|?:+-]+")


def module(language: Language) -> str | None:
    """Return the module of a language, with the sentences that the browser's code holds; None for English.

    Raises:
        ValueError: for a catalogue whose rule of plurals is no expression of n.
    """
    if language is ENGLISH:
        return None
    if not _RULE.fullmatch(language.plural_rule):
        raise ValueError(f"no rule of plurals: {language.plural_rule}")
    code = "\n".join(raw.decode() for name, raw in package_files("phone", "assets") if name.endswith(".js"))
    sentences = {
        msgid: list(forms)
        for msgid, forms in sorted(language.messages.items())
        if json.dumps(msgid, ensure_ascii=False) in code
    }
    written = json.dumps(sentences, ensure_ascii=False, indent=1)
    return (
        f"export const LANGUAGE = {json.dumps(language.code)};\n"
        f"export const SENTENCES = {written};\n"
        f"export const plural = (n) => Number({language.plural_rule});\n"
    )
