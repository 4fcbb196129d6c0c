"""What coaches write out of habit for amounts, loads and efforts, and how the same is written here.

Everything here takes a text that could not be read and returns words for a hint, or nothing where it knows no better.
"""

import re
from typing import Any, Final

from setwright.model.units import LONGEST_VALUE

_N: Final = r"[0-9]+(?:\.[0-9]+)?"
_DASH: Final = "[-‐‑–—~]"
_BETWEEN: Final = rf"\s*(?:{_DASH}?\s*to\s*{_DASH}?|or|until|\.{{2,}}|…|{_DASH})\s*"
_RANGE: Final = re.compile(
    rf"(?P<low>{_N})\s*(?P<first>[a-z]*?){_BETWEEN}(?P<high>{_N})\s*(?P<unit>[a-z]*)", re.IGNORECASE
)
_HALF_RANGE: Final = re.compile(rf"{_N}\s*[a-z]*?\s*(?:to|{_DASH})|(?:up\s+)?to\s+{_N}\s*[a-z]*", re.IGNORECASE)
_RANGE_OF_LOADS: Final = re.compile(rf"(?:RPE\s*)?{_N}[^0-9,;/|]*?{_BETWEEN}(?:RPE\s*)?{_N}\D?.*", re.IGNORECASE)
_REPS: Final = re.compile(r"(?:reps?|times|x)", re.IGNORECASE)
_ENDLESS: Final = re.compile(
    r"amrap|as many .*|max(?:imum|imal)?\.?(?: +\w+)?|(?:to |until )?failure|[0-9]+\s*[a-z]*\s*\+.*", re.IGNORECASE
)
_TIMES: Final = re.compile(r"(?P<sets>[0-9]+)\s*[x×*]\s*(?P<each>[0-9]+(?:\s*[a-z]+)?)", re.IGNORECASE)
_EFFORT: Final = re.compile(rf"(?:rpe|effort|@)?\s*(?P<rpe>{_N})(?:\s*(?:rpe|/\s*10|of 10|out of 10))?", re.IGNORECASE)
_RESERVE: Final = re.compile(
    r"(?P<n>[0-9]{1,2})\s*(?:rir|reps? (?:left|in (?:the )?(?:tank|reserve)|to go|spare))|rir\s*(?P<m>[0-9]{1,2})",
    re.IGNORECASE,
)

NO_RANGE_OF_EFFORTS: Final = "efforts have no ranges: write the hardest that it may feel, such as 'RPE 8'"


def _whole(pattern: re.Pattern[str], text: str) -> re.Match[str] | None:
    return pattern.fullmatch(text) if len(text) <= LONGEST_VALUE else None


def range_meant(text: str) -> str:
    """Return the range that '8-12', '8to12', '8 or 12' or '8 to 12 reps' means, as it is written here."""
    found = _whole(_RANGE, text)
    if found is None:
        return ""
    low, high = found["low"], found["high"]
    first, unit = ("" if _REPS.fullmatch(found[key]) else found[key] for key in ("first", "unit"))
    if first in ("", unit):
        first, (low, high) = "", sorted((low, high), key=float)
    return " ".join(part for part in (low, first, "to", high, unit) if part)


def is_half_range(text: str) -> bool:
    """Say whether a range lacks one of its ends: '8 to', 'to 12'."""
    return _whole(_HALF_RANGE, text) is not None


def says_reps(text: str) -> bool:
    """Say whether a range ends in a word for repetitions, which a count does without."""
    found = _whole(_RANGE, text)
    return found is not None and _REPS.fullmatch(found["unit"]) is not None


def is_range_of_loads(text: str) -> bool:
    """Say whether a text means loads or efforts from one to another, such as '40-50 kg' or 'RPE 7-8'."""
    return _whole(_RANGE_OF_LOADS, text) is not None


def in_a_row(value: Any, decimals: bool = True) -> list[str]:
    """Return what is written in one text for several sets, such as '8, 8, 6' or '40 kg 45 kg'; else nothing.

    Args:
        value: what a coach wrote.
        decimals: whether one comma between two digits may stand for a point.
    """
    text = str(value).strip() if isinstance(value, str | int) else ""
    if len(text) > LONGEST_VALUE or (
        decimals and re.fullmatch(r"[0-9]+,[0-9]+(?:[^0-9,].*)?", text) and not re.search("[;/|]", text)
    ):
        return []
    if re.fullmatch(r"[a-z -]+ band(?:\s*[,;/|]\s*[a-z -]+ band)+", text):
        return re.split(r"\s*[,;/|]\s*", text)
    dashed = re.fullmatch(rf"{_N}(?:\s*{_DASH}\s*{_N}){{2,}}", text)
    parts = [part.strip() for part in re.split(_DASH if dashed else r"[,;/|]", text)]
    if len(parts) < 2:
        parts = [part.strip() for part in re.findall(rf"{_N}[^0-9]*", text)]
        if "".join(parts).replace(" ", "") != text.replace(" ", ""):
            return []
    read = [re.fullmatch(rf"((?:RPE\s*)?{_N})\s*(.*)", part) for part in parts]
    if len(parts) < 2 or not all(read):
        return []
    numbers, units = [one[1] for one in read if one], [one[2] for one in read if one]
    if len({unit for unit in units if unit}) > 1 or (not units[-1] and any(units)):
        return []
    unit = "" if _REPS.fullmatch(units[-1]) else units[-1]
    return [f"{number} {unit}".strip() for number in numbers]


def is_endless(text: str) -> bool:
    """Say whether a text means a set that goes on as long as it can, such as AMRAP or '12+'."""
    return _whole(_ENDLESS, text) is not None


def endless(text: str, example: str) -> str:
    """Return a hint for a time or a distance that ends where nothing is left: nobody can plan its dose."""
    if not is_endless(text):
        return ""
    return (
        f"a set has an end here: write a range, such as '{example}', and how hard it is with 'load: RPE 8', "
        "or 'feels_like: RPE 8' beside a load"
    )


def sets_times(text: str) -> tuple[str, str] | None:
    """Return the sets and what is done in each where both are written in one, such as '3x8' or '3 x 30 s'."""
    found = _whole(_TIMES, text)
    return (found["sets"], found["each"]) if found else None


def effort_meant(text: str, bare: bool = False) -> str:
    """Return the effort or reserve that 'rpe 8' or '2 RIR' means, as it is written here.

    Args:
        text: what a coach wrote.
        bare: whether a number alone means an effort.
    """
    if found := _whole(_RESERVE, text):
        count = found["n"] or found["m"]
        return f"{count} {'rep' if count == '1' else 'reps'} in reserve"
    found = _whole(_EFFORT, text)
    if found is None or (not bare and re.fullmatch(_N, text)) or float(found["rpe"]) > 10:
        return ""
    return f"RPE {found['rpe']}"


_BODY: Final = r"(?:body ?weight|body|bw)"
_MASS: Final = rf"(?P<n>{_N})\s*(?P<unit>kgs?|lbs?|%)?"
_HELP_WORD: Final = r"(?:of )?(?:help|assist(?:ance|ed)?|support|counter ?weight|off|less|unloaded)"
_HELP: Final = re.compile(
    rf"(?:{_BODY}\s*)?(?:{_DASH}|minus)\s*{_MASS}|{_MASS.replace('?P<n>', '?P<m>').replace('?P<unit>', '?P<other>')}"
    rf"\s*(?:of\s+)?(?:{_BODY}\s*)?{_HELP_WORD}|(?:help|assist(?:ed|ance)?)\s*(?:of|by|with)?\s*(?P<o>{_N})\s*(?P<last>kgs?|lbs?|%)?",
    re.IGNORECASE,
)
_ADDED: Final = re.compile(
    rf"(?:{_BODY}\s*)?(?:\+|plus|and)\s*{_MASS}|{_MASS.replace('?P<n>', '?P<m>').replace('?P<unit>', '?P<other>')}"
    r"\s*(?:added|extra|more|on top)",
    re.IGNORECASE,
)
_SHARE_OF_BODY: Final = re.compile(rf"(?P<n>{_N})\s*%\s*(?:of\s+)?(?:{_BODY}|body ?mass|bm)", re.IGNORECASE)
_HELPING_BAND: Final = re.compile(r"(?P<name>[a-z][a-z -]{0,30}) band (?:help|assist\w*|support)", re.IGNORECASE)


def help_meant(text: str) -> str:
    """Return the help, the added weight or the share of body weight that '-15 kg', '+5 kg' or '15 % BW' means."""
    if found := _whole(_SHARE_OF_BODY, text):
        return f"{found['n']} % bodyweight"
    if found := _whole(_HELPING_BAND, text):
        return f"{found['name'].lower()} band of help"
    if found := _whole(_HELP, text):
        number, unit = (
            _first(found, "n", "m", "o"),
            (_first(found, "unit", "other", "last") or "kg").lower().rstrip("s"),
        )
        return f"{number} {'% bodyweight' if unit == '%' else unit} of help"
    if found := _whole(_ADDED, text):
        number, unit = _first(found, "n", "m"), (_first(found, "unit", "other") or "kg").lower().rstrip("s")
        return "" if unit == "%" else f"bodyweight + {number} {unit}"
    return ""


def _first(found: re.Match[str], *groups: str) -> str:
    return next((found[group] for group in groups if found[group]), "")
