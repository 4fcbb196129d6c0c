"""How values look on a page. Everything that a person wrote passes through an escape here or in the template."""

import html
import re
from collections.abc import Callable
from functools import partial
from typing import Any

from markupsafe import Markup, escape

from setwright.dose.resolved import ResolvedItem, ResolvedPlan
from setwright.model.limits import Limits
from setwright.model.load import HelpShare, HelpWeight
from setwright.model.routine import RoutinePart
from setwright.model.text import exercise_target, plain, spans
from setwright.outline.site import Site
from setwright.outline.training import Stretch
from setwright.wording import blocks, changes, choices, days, doses, loads, times, vocabulary
from setwright.wording.items import ItemWords, item_words
from setwright.wording.language import Language, capital
from setwright.wording.limits import limits_set, never_beyond
from setwright.wording.pieces import Pieces
from setwright.wording.reviews import part_names, status

_IN_MARKDOWN = re.compile(r"[^\w ,.;:()/'%°–·’-]|_")


def heading(text: str) -> Markup:
    """Return text for a Markdown heading: every sign that Markdown or HTML might read becomes a character reference."""
    text = text.unescape() if isinstance(text, Markup) else text
    return Markup(_IN_MARKDOWN.sub(lambda match: f"&#{ord(match[0])};", text))  # noqa: S704 - escaped right here


def safe_attribute(text: str) -> str:
    """Return text for the front matter, escaped: themes put it as it is into attributes, titles and the search."""
    return html.escape(plain(text), quote=False).replace('"', "&quot;")


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


def stress(said: Pieces, tag: str) -> Markup:
    """Return a sentence with its stressed parts in a tag: ``strong``, or ``b`` for a number."""
    return Markup("").join(element(tag, piece.text) if piece.stressed else escape(piece.text) for piece in said)


def element(tag: str, text: str) -> Markup:
    """Return text in a tag, escaped unless it is markup already."""
    return Markup("<{0}>{1}</{0}>").format(Markup(tag), text)  # noqa: S704 - a tag's name, from a template


def link(address: str, text: str) -> Markup:
    """Return a link, for a place inside a sentence."""
    return Markup('<a href="{}">{}</a>').format(address, text)


def unbroken(text: str) -> Markup:
    """Return text that stays on one line."""
    return Markup("&#160;").join(escape(text).split(" "))


def marked_up(text: str) -> str:
    """Return a sentence of the catalogue as Jinja takes it, which is as markup: no translation can bring any in."""
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def filters(site: Site) -> dict[str, Callable[..., Any]]:
    """Return the filters that templates know; those with words speak the site's language."""
    language, unit = site.language, site.programme.club.units

    def in_words(item: ResolvedItem) -> ItemWords:
        limits = site.programme.exercises[item.exercise].limits
        return item_words(language, item, limits, unit, site.manner(item.exercise))

    def amount_of(part: RoutinePart) -> str:
        return doses.part_amount(language, part, site.programme.exercises[part.exercise] if part.exercise else None)

    return {
        "heading": heading,
        "coded": coded,
        "plain": plain,
        "stress": stress,
        "unbroken": unbroken,
        "capital_markup": lambda markup: markup[:1].upper() + markup[1:],
        "capital": capital,
        "in_words": in_words,
        "kit": partial(vocabulary.kit, language, site.programme.club),
        "kit_name": site.programme.club.kit_name,
        "is_help": lambda load: isinstance(load, HelpShare | HelpWeight),
        "for_whom": partial(choices.for_whom, language, site.programme.club),
        "clinician_decides": partial(choices.clinician_decides, language, site.programme.club),
        "part_amount": amount_of,
        "number": language.number,
        **_in_language(language, unit),
    }


def _in_language(language: Language, unit: str) -> dict[str, Callable[..., Any]]:
    spoken: dict[str, Callable[..., Any]] = {
        "day_long": times.day_long,
        "day_full": times.day_full,
        "day_short": times.day_short,
        "duration": times.duration,
        "time_range": times.time_range,
        "weekday": times.weekday,
        "week_kind": times.week_kind,
        "weeks": times.weeks,
        "rounds": blocks.rounds,
        "block_name": blocks.block_name,
        "reason": blocks.reason,
        "changes_in_words": changes.in_a_line,
        "tempo_words": doses.tempo_words,
        "limits_set": _limits_set,
        "never_beyond": never_beyond,
        "unit_of_work": doses.unit_of_work,
        "dose": doses.dose_in_words,
        "pattern": vocabulary.pattern,
        "pattern_means": vocabulary.pattern_means,
        "region": vocabulary.region,
        "regions": vocabulary.regions,
        "sides": vocabulary.sides,
        "routine_kind": vocabulary.routine_kind,
        "review_status": status,
        "part_names": part_names,
        "stretch_weeks": _stretch_weeks,
        "stretch_dose": _stretch_dose,
        "week_when": days.week_when,
        "session_when": days.session_when,
        "skipped_when": days.skipped_when,
        "starts_when": days.starts_when,
        "ends_when": days.ends_when,
        "event_when": days.event_when,
        "event_short": _event_short,
        "break_when": days.break_when,
        "place": days.place,
        "unit": loads.unit_of_weight,
    }
    of_weights: dict[str, Callable[..., Any]] = {
        "boxes": lambda item: doses.boxes(language, item.dose, unit),
        "to_take": lambda choice: loads.to_take(language, choice, unit),
    }
    return {name: partial(say, language) for name, say in spoken.items()} | of_weights


def _stretch_weeks(language: Language, stretch: Stretch) -> str:
    return capital(times.weeks_in_words(language, stretch.weeks))


def _stretch_dose(language: Language, stretch: Stretch) -> str:
    return doses.dose_in_words(language, stretch.dose, stretch.rounds)


def _event_short(language: Language, plan: ResolvedPlan) -> str:
    return days.event_when(language, plan, times.day_short)


def _limits_set(language: Language, limits: Limits | None) -> list[str]:
    return [f"{row.label}: {row.said}" for row in limits_set(language, limits)]
