"""What a coach says in front of a group, from the programme's own words: one sentence, and times of the clock."""

import re
from typing import Final

from setwright.dose.timing import TimeRange
from setwright.wording.language import Language

_SENTENCE: Final = re.compile(r".+?[.!?](?=\s|$)", re.DOTALL)


def one_sentence(text: str) -> str:
    """Return the first sentence of a text; all of it where it has no end."""
    found = _SENTENCE.match(text.strip())
    return found[0] if found else text.strip()


def on_the_clock(language: Language, starts_s: int, after: TimeRange) -> str:
    """Return when something begins: 18:40, or 18:52 to 18:55; without a start, 0:10."""
    low, high = (_clock(starts_s + after_s) for after_s in (after.low_s, after.high_s))
    return low if low == high else language.say("%(low)s to %(high)s", low=low, high=high)


def _clock(count_s: int) -> str:
    minutes = count_s // 60
    return f"{minutes // 60 % 24}:{minutes % 60:02}"
