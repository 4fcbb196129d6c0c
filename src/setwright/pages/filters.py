"""How values look on a page. Everything that a person wrote passes through an escape here or in the template."""

import re
from collections.abc import Callable
from datetime import date
from fractions import Fraction
from typing import Any

from markupsafe import Markup, escape

from setwright.dose.dose import Dose
from setwright.model.tempo import Tempo
from setwright.model.text import exercise_target, plain, spans
from setwright.model.units import KG_PER_LB, plain_number

_MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
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


def day_long(day: date) -> str:
    """Return a day in full: Friday 20 August 2027."""
    return f"{day:%A} {day.day} {_MONTHS[day.month - 1]} {day.year}"


def day_plain(day: date) -> str:
    """Return a day without its year: Friday 20 August."""
    return f"{day:%A} {day.day} {_MONTHS[day.month - 1]}"


def day_short(day: date) -> str:
    """Return a day in short: 20 Aug."""
    return f"{day.day} {_MONTHS[day.month - 1][:3]}"


def day_full(day: date) -> str:
    """Return a day with its year: 20 August 2027."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def coded(text: str) -> Markup:
    """Return text with what stands between backticks as code, escaped."""
    parts = text.split("`")
    return Markup("").join(
        Markup("<code>{}</code>").format(_escape(part)) if index % 2 else _escape(part)
        for index, part in enumerate(parts)
    )


def span_of_days(first: date, last: date) -> str:
    """Return a span of days: 5 to 11 July, 28 June to 4 July."""
    month = _MONTHS[last.month - 1]
    if first.month == last.month:
        return f"{first.day} to {last.day} {month}"
    return f"{first.day} {_MONTHS[first.month - 1]} to {last.day} {month}"


def mass(kg: Fraction, unit: str) -> str:
    """Return a weight in the club's unit: 12 kg, 26.5 lb."""
    return f"{plain_number(kg if unit == 'kg' else kg / KG_PER_LB, 2 if unit == 'kg' else 1)} {unit}"


def tempo_words(tempo: Tempo) -> str:
    """Return a tempo in words: lower 3 s, lift 1 s."""
    parts = []
    if tempo.lowering_s:
        parts.append(f"lower {tempo.lowering_s} s")
    if tempo.pause_low_s:
        parts.append(f"pause {tempo.pause_low_s} s")
    if tempo.lifting_s is None:
        parts.append("lift fast, with control" if tempo.lowering_s else "fast, with control")
    elif tempo.lifting_s:
        parts.append(f"lift {tempo.lifting_s} s")
    if tempo.pause_high_s:
        parts.append(f"hold {tempo.pause_high_s} s at the top")
    return ", ".join(parts)


def plural(count: int, noun: str) -> str:
    """Return a count with its noun: 1 round, 3 rounds."""
    return f"{count} {noun}{'' if count == 1 else 's'}"


def big_amount(dose: Dose) -> tuple[str, str]:
    """Return a set's amount as a number and its word, for large type: ('8', 'reps'), ('30', 's hold')."""
    match dose.measure:
        case "reps":
            return str(dose.amount), "rep" if dose.amount == 1 else "reps"
        case "distance":
            return plain_number(Fraction(dose.amount) / 100), "m"
        case measure:
            seconds = int(dose.amount)
            if seconds >= 120 and seconds % 60 == 0:
                return str(seconds // 60), f"min {measure}"
            return str(seconds), f"s {measure}"


def filters() -> dict[str, Callable[..., Any]]:
    """Return the filters that templates know."""
    return {
        "heading": heading,
        "day_long": day_long,
        "day_full": day_full,
        "coded": coded,
        "day_short": day_short,
        "tempo_words": tempo_words,
        "plural": plural,
        "plain": plain,
        "number": plain_number,
        "capital_markup": lambda markup: markup[:1].upper() + markup[1:],
        "capital": lambda text: text[:1].upper() + text[1:],
    }
