"""Did you mean: the likeliest of the names that exist."""

from collections.abc import Iterable
from difflib import get_close_matches


def did_you_mean(written: str, known: Iterable[str], otherwise: str = "") -> str:
    """Return a hint that names the closest known name, or else lists a few, or else the given words."""
    names = sorted(set(known))
    if close := get_close_matches(written.lower(), names, n=1, cutoff=0.6):
        return f"did you mean '{close[0]}'?"
    if otherwise:
        return otherwise
    if not names:
        return "there is none yet"
    return f"one of: {', '.join(names[:12])}{', ...' if len(names) > 12 else ''}"
