"""Choices of members in words: for whom something is, and that a clinician decides where one speaks of illness."""

import re
from collections.abc import Iterable
from typing import Final

from setwright.model.club import Club
from setwright.wording.language import Language

_ILL: Final = re.compile(
    r"\b(?:pain\w*|hurt\w*|ach(?:e|es|ing|y)|\w*ache|sore\w*|injur\w+|ill|illness\w*|sick\w*|disease\w*|disorder\w*"
    r"|pregnan\w+|birth|postnatal|operat\w+|surg\w+|heart|blood pressure|dizz\w+|faint\w*|asthma\w*|diabet\w+"
    r"|arthrit\w+|arthros\w+|osteopor\w+|hernia\w*|fractur\w+|broke\w*|sprain\w*|strain\w*|torn|tear|concuss\w+"
    r"|dislocat\w+|unstable|swell\w*|swollen|numb\w*|tingl\w+|medic\w+|doctor\w*|physio\w*|clinic\w*|rehab\w*"
    r"|recover\w+|fever\w*|flu|infect\w+|epilep\w+|stroke|cancer\w*|slipped disc|sciatica|tend[io]n\w*|inflam\w+"
    r"|diagnos\w+|health|breathless\w*)\b",
    re.IGNORECASE,
)
"""Words of pain, injury and illness. Common practice, no source: rather a line too many than one too few."""


_NEW: Final = re.compile(
    r"\b(?:first (?:season|year|winter|summer|month|weeks?|time|plan)|new (?:to|here|member)|beginn\w+|novice\w*"
    r"|start(?:ing)? out|never (?:lifted|trained|done)|not (?:lifted|trained)|unused to|long break|com(?:e|ing) back"
    r"|years? off|out of practice)\b",
    re.IGNORECASE,
)
"""Words of members who are new to it, or come back. Common practice, no source."""


def speaks_of_beginning(sentence: str) -> bool:
    """Say whether a choice is about being new to strength work or coming back to it, as far as its words tell."""
    return _NEW.search(sentence) is not None


def speaks_of_illness(sentence: str) -> bool:
    """Say whether a choice is about pain, an injury or an illness, as far as its words tell."""
    return _ILL.search(sentence) is not None


def for_whom(language: Language, club: Club, choices: Iterable[str]) -> str:
    """Return whom something is for, in the sentences of the choices."""
    return language.either(language.say("“%(sentence)s”", sentence=club.choices[ident]) for ident in choices)


def clinician_decides(language: Language, club: Club, choices: Iterable[str]) -> str | None:
    """Return the line that leaves it to a clinician, where a choice speaks of pain, an injury or an illness."""
    if not any(speaks_of_illness(club.choices[ident]) for ident in choices):
        return None
    return language.say(
        "With pain, an injury or an illness, a clinician decides whether you train and which way is right for you. "
        "What is offered here is no treatment."
    )
