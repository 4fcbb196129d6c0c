"""A text that asks for something harmful.

Looks in every instruction for a short list of phrases: holding the breath, going on until one drops, working through
pain, stretching until it hurts, a bar behind the neck; where it is about a jump or a box, also bare feet and closed
eyes. A sentence that warns of it passes ("do not hold your breath", "if you hold your breath, stay higher"). What is
described as a fault may say anything.

Why it matters: a coach's word is followed. Breath held under load drives the blood pressure up, and pain is a sign to
stop, on every page.
"""

import re
from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.spoken import spoken
from setwright.checks.texts import instructions
from setwright.dose.contacts import is_jump

ID = "harmful-words"
SEVERITY = "warning"
SOURCE = COMMON

PHRASES: Final = (
    r"hold(?:ing)? (?:your|the|a deep|a) breath",
    r"without breathing",
    r"(?:do not|don't|never|stop) (?:breathe|breathing|exhale|inhale) (?:until|till|before|out until)",
    r"(?:until|till) (?:you|your \w+) (?:drop|collapse|fall over|cannot stand|are sick|faint|give out|gives? out)",
    r"(?:until|till|to) (?:total |complete )?exhaustion",
    r"(?:through|past|despite|ignore|ignoring) (?:the |any |your )?pain",
    r"(?:until|till) it hurts",
    r"no pain,? no gain",
    r"(?:(?:some|a little|mild|slight) )?pain (?:in (?:\w+ ){1,3})?is (?:good|normal|fine|okay|weakness|part of it)",
    r"(?:carry on|go on|keep going|continue) (?:even )?(?:if|when|though|while) (?:it|something) hurts",
    r"bounce (?:\w+ ){0,4}?(?:in|into|at the end of) (?:the |a |an |each |every |your )?stretch(?:es)?",
    r"(?:lower|press|pull|bring|push)(?:s|ing)? (?:\w+ ){0,3}(?:behind|down to) (?:your|the) neck",
)
"""What an instruction should not ask for. Common practice, no source."""

_PHRASE: Final = re.compile(rf"\b(?:{'|'.join(PHRASES)})\b", re.IGNORECASE)
_OF_JUMPS: Final = re.compile(
    r"\b(?:barefoot|bare feet|in socks|eyes (?:closed|shut)|(?:close|shut) your eyes|blindfold(?:ed)?|in the dark)\b",
    re.IGNORECASE,
)
"""What makes a landing a fall. Common practice, no source."""
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
        if (phrase := _asked_for(_PHRASE, sentence)) is not None:
            return phrase
    return None


def _asked_for(pattern: re.Pattern[str], sentence: str) -> str | None:
    matches = pattern.finditer(sentence)
    return next((match[0] for match in matches if not _WARNS.search(sentence[: match.start()])), None)


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
    risky = {ident for ident, one in subject.programme.exercises.items() if is_jump(one) or "box" in one.kit}
    for sentence in spoken(subject):
        phrase = _asked_for(_OF_JUMPS, sentence.text) if risky.intersection(sentence.about) else None
        if phrase is not None:
            yield Doubt(
                subject.at(sentence.file, *sentence.path),
                f"this asks for something harmful in a jump or on a box: '{phrase}'",
                "jumps and boxes want shoes, light and open eyes; leave it out",
                sentence.accept,
            )
