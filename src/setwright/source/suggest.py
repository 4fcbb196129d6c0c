"""Did you mean: the likeliest of the names that exist."""

from collections.abc import Iterable
from difflib import get_close_matches

from setwright.model.units import printable


def closest(written: str, known: Iterable[str]) -> str | None:
    """Return the known name that is most like a written one, swapped letters first; None where none is like it."""
    close = get_close_matches(written.lower(), sorted(set(known)), n=3, cutoff=0.6)
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
