"""A language that nobody speaks: English with every sentence in brackets, so that what comes from elsewhere shows."""

from babel import Locale

from setwright.wording.extraction import sentences
from setwright.wording.language import Language

OPEN, CLOSE = "⟦⟧"


def pseudo() -> Language:
    """Return English with each sentence of the catalogue, in all its forms, between two brackets."""
    messages = {}
    for message in sentences():
        forms = message.id if isinstance(message.id, tuple) else (message.id,)
        if forms != ("",):
            messages[forms[0]] = tuple(f"{OPEN}{form}{CLOSE}" for form in forms)
    return Language("en", Locale("en"), messages)


def outside(text: str) -> list[str]:
    """Return what stands between the brackets of a text, stretch by stretch, where it holds a letter."""
    depth, found = 0, [""]
    for sign in text:
        if sign == OPEN:
            depth += 1
            found.append("")
        elif sign == CLOSE:
            depth -= 1
        elif depth == 0:
            found[-1] += sign
    if depth:
        raise ValueError(f"a bracket is left open in {text!r}")
    return [part.strip() for part in found if any(sign.isalpha() for sign in part)]
