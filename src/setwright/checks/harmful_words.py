"""A text that asks for something harmful.

Looks in every instruction for a short list of phrases: holding the breath, going on until one drops, working through
pain, stretching until it hurts. A sentence that warns of it passes ("do not hold your breath", "if you hold your
breath, stay higher"). What is described as a fault may say anything.

Why it matters: a coach's word is followed. Breath held under load drives the blood pressure up, and pain is a sign to
stop, on every page.
"""

import re
from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.texts import instructions

ID = "harmful-words"
SEVERITY = "warning"
SOURCE = COMMON

PHRASES: Final = (
    r"hold(?:ing)? (?:your|the|a deep|a) breath",
    r"without breathing",
    r"(?:until|till) (?:you|your \w+) (?:drop|collapse|fall over|cannot stand|are sick|faint|give out|gives? out)",
    r"(?:until|till|to) (?:total |complete )?exhaustion",
    r"(?:through|past|despite|ignore|ignoring) (?:the |any |your )?pain",
    r"(?:until|till) it hurts",
    r"no pain,? no gain",
    r"pain is (?:good|normal|weakness|part of it)",
    r"bounce (?:in|into|at the end of) (?:the |a )?stretch",
)
"""What an instruction should not ask for. Common practice, no source."""

_PHRASE: Final = re.compile(rf"\b(?:{'|'.join(PHRASES)})\b", re.IGNORECASE)
_WARNS: Final = re.compile(
    r"\b(?:not|never|no|don't|cannot|can't|without|avoid|stop|if|when|instead|rather|tend|tempted|nobody|wrong)\b",
    re.IGNORECASE,
)
_SENTENCE: Final = re.compile(r"(?<=[.!?;:])\s+")

BAD: Example = {"exercises/goblet-squat": "breathing: Hold your breath until you stand."}
GOOD: Example = {"exercises/goblet-squat": "breathing: Breathe out on the way up, and never hold your breath."}


def harmful_phrase(text: str) -> str | None:
    """Return the first phrase of a text that asks for something harmful; None where it warns of it or says nothing."""
    for sentence in _SENTENCE.split(" ".join(text.split())):
        for match in _PHRASE.finditer(sentence):
            if not _WARNS.search(sentence[: match.start()]):
                return match[0]
    return None


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each text with such a phrase."""
    for file, path, text, accept in instructions(subject.programme):
        phrase = harmful_phrase(text)
        if phrase is not None:
            yield Doubt(
                subject.at(file, *path),
                f"this asks for something harmful: '{phrase}'",
                "say how to breathe, or when to stop; a warning of it may stand",
                accept,
            )
