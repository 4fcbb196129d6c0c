"""What the lines of a reviewed part are called: the keys of an exercise's file as a reviewer reads them."""

import re
from collections.abc import Mapping
from typing import Final

from setwright.wording.language import Language, capital, later

_KEYS: Final[Mapping[str, str]] = {
    "name": later("name"),
    "pattern": later("pattern"),
    "regions main": later("works mostly"),
    "regions also": later("works, too"),
    "sides": later("sides"),
    "kit": later("kit"),
    "tempo": later("tempo"),
    "why": later("why"),
    "set up": later("set-up"),
    "steps": later("step"),
    "breathing": later("breathing"),
    "feel": later("where to feel it"),
    "faults sign": later("fault"),
    "faults fix": later("what to change"),
    "easier exercise": later("easier"),
    "easier how": later("easier"),
    "harder exercise": later("harder"),
    "harder how": later("harder"),
    "at home use": later("at home"),
    "at home how": later("how at home"),
    "sources": later("source"),
    "cues": later("cue"),
    "cautions": later("caution"),
    "stop if": later("stop if"),
    "limits load": later("load"),
    "limits top effort": later("hardest effort"),
    "limits least reserve": later("least in reserve"),
    "limits reps": later("reps"),
    "limits hold": later("hold"),
    "limits rep time": later("time of one repetition"),
    "limits distance": later("distance"),
    "limits height": later("height"),
    "limits contacts": later("landings"),
    "limits weekly sets": later("sets a week"),
    "limits weekly step": later("step of the load"),
    "limits earliest phase": later("earliest phase"),
    "limits earliest week": later("earliest week"),
    "limits not for": later("not for"),
    "media photo": later("photo"),
    "media alt": later("what the photo shows"),
    "media film": later("film"),
    "media name": later("name of the film"),
}
"""By the key without its numbers. Angles and places of a figure stay as the coach wrote them."""


def line_name(language: Language, key: str, field: str) -> str:
    """Return what a line of a reviewed part is called: Caution 2; of a figure, its key as it stands in the file.

    Args:
        language: the language to say it in.
        key: the line's key, such as ``faults 2 fix``.
        field: the key without its numbers.
    """
    if field not in _KEYS:
        return language.say("as written: %(key)s", key=key.removeprefix("figure "))
    number = re.search(r"\d+", key)
    name = capital(language.say(_KEYS[field]))
    return language.say("%(name)s %(number)s", name=name, number=number[0]) if number else name
