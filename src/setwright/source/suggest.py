"""Did you mean: the likeliest of the names that exist."""

from collections.abc import Iterable
from difflib import get_close_matches
from typing import Final

from setwright.model.units import printable

_LIKE: Final = 0.6
_ALL_BUT: Final = 0.8
"""How like two words of the trade must be: 'lats' is no slip for 'glutes', nor 'biceps' for 'quadriceps'."""


def closest(written: str, known: Iterable[str], like: float = _LIKE) -> str | None:
    """Return the known name that is most like a written one, swapped letters first; None where none is like it."""
    close = get_close_matches(written.lower(), sorted(set(known)), n=3, cutoff=like)
    swapped = [name for name in close if sorted(name) == sorted(written.lower())]
    return next(iter((*swapped, *close)), None)


def did_you_mean(written: str, known: Iterable[str], otherwise: str = "") -> str:
    """Return a hint that names the closest known name, or else lists a few, or else the given words."""
    names = sorted(set(known))
    if close := closest(written, names):
        return f"did you mean '{printable(close)}'?"
    if otherwise:
        return otherwise
    if not names:
        return "there is none yet"
    return f"one of: {', '.join(map(printable, names[:12]))}{', ...' if len(names) > 12 else ''}"


def which_word(written: str, words: Iterable[str]) -> str:
    """Return a hint for one of the fixed words of the trade: the one that was nearly written, or else all of them."""
    known = list(dict.fromkeys(words))
    close = closest(written, known, _ALL_BUT)
    return f"did you mean '{close}'?" if close else f"one of: {', '.join(known)}"
