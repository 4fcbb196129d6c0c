"""How values look on a page. Everything that a person wrote passes through an escape here or in the template."""

import re
from collections.abc import Callable
from typing import Any

from markupsafe import Markup, escape

from setwright.model.text import exercise_target, plain, spans
from setwright.model.units import plain_number
from setwright.wording import words

_IN_MARKDOWN = re.compile(r"[^\w ,.;:()/'%°–·’-]")


def heading(text: str) -> Markup:
    """Return text for a Markdown heading: every sign that Markdown or HTML might read becomes a character reference."""
    return Markup(_IN_MARKDOWN.sub(lambda match: f"&#{ord(match[0])};", text))  # noqa: S704 - escaped right here


def safe_attribute(text: str) -> str:
    """Return text for the front matter, which themes put into attributes and titles without escaping."""
    return re.sub(r"[<>&]", "", plain(text)).replace('"', "”")


def prose(text: str, exercise_address: Callable[[str], str]) -> Markup:
    """Return prose as HTML, escaped; links to exercises become addresses."""
    parts = []
    for span in spans(text):
        inner = _escape(span.text)
        if span.kind == "link":
            ident = exercise_target(span.target)
            address = exercise_address(ident) if ident else span.target
            parts.append(Markup('<a href="{}">{}</a>').format(address, inner))
        elif span.kind == "text":
            parts.append(inner)
        else:
            parts.append(Markup("<{0}>{1}</{0}>").format(Markup(span.kind), inner))  # noqa: S704 - em or strong
    return Markup("").join(parts)


def _escape(text: str) -> Markup:
    """Escape for HTML, and for the Markdown reader that sees the block first."""
    return Markup(str(escape(text)).replace("`", "&#96;").replace("~", "&#126;"))  # noqa: S704 - escaped right here


def coded(text: str) -> Markup:
    """Return text with what stands between backticks as code, escaped."""
    parts = text.split("`")
    return Markup("").join(
        Markup("<code>{}</code>").format(_escape(part)) if index % 2 else _escape(part)
        for index, part in enumerate(parts)
    )


def filters() -> dict[str, Callable[..., Any]]:
    """Return the filters that templates know."""
    return {
        "heading": heading,
        "day_long": words.day_long,
        "day_full": words.day_full,
        "coded": coded,
        "day_short": words.day_short,
        "tempo_words": words.tempo_words,
        "plural": words.plural,
        "reason_words": words.reason,
        "plain": plain,
        "number": plain_number,
        "capital_markup": lambda markup: markup[:1].upper() + markup[1:],
        "capital": lambda text: text[:1].upper() + text[1:],
    }
