"""Numbers in free words: weights, heights, times, repetitions and efforts that a text asks for, with their units.

Read as a member would: "the 24 kg bell", "twenty reps", "3 x 12", "half your body weight", "40 to 50 cm", "to
failure". What a text warns of ("not the 24 kg bell", "less than 20 kg") is no request; "no more than 24 kg" allows 24.
A time of rest is none of a set.
"""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Final, Literal

from setwright.model.units import KG_PER_LB

Kind = Literal[
    "kg", "% bodyweight", "% 1RM", "effort", "reps", "sets", "seconds", "height_cm", "distance_cm", "heavier"
]
"""What is counted, and in what. ``heavier`` has no number of its own."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number in its unit, and the words that say it; ``per_hand`` where they say so."""

    kind: Kind
    number: Fraction
    said: str
    per_hand: bool = False


_ONES: Final = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
_TEENS: Final = ["thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"]
_TENS: Final = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety", "hundred"]
_WORDS: Final = {
    "a": 1,
    "an": 1,
    **{word: number for number, word in enumerate([*_ONES, *_TEENS], 1)},
    **{word: 10 * number for number, word in enumerate(_TENS, 2)},
}
_WORD: Final = rf"(?:{'|'.join(sorted(_WORDS, key=len, reverse=True))})(?![a-z])"
NUMBER: Final = rf"(?<![a-wyz\d_.,-])(?<!half )(?:\d{{1,4}}(?:[.,]\d{{1,2}})?|{_WORD}(?:[- ]{_WORD})?)"
"""A number in digits or in words, up to hundreds."""

_SCALES: Final[tuple[tuple[str, Kind, Fraction], ...]] = (
    (r"%\s*(?:of\s+)?(?:your\s+|the\s+)?body\s?weight", "% bodyweight", Fraction(1)),
    (r"%\s*(?:of\s+)?(?:your\s+|the\s+)?1\s?RM", "% 1RM", Fraction(1)),
    (r"(?:reps?|repetitions?)\s+(?:in reserve|left|to spare)", "effort", Fraction(-1)),
    (r"kg|kgs|kilos?|kilogram(?:me)?s?", "kg", Fraction(1)),
    (r"lbs?|pounds?", "kg", KG_PER_LB),
    (r"cm|centimet(?:re|er)s?", "height_cm", Fraction(1)),
    (r"inch(?:es)?", "height_cm", Fraction(254, 100)),
    (r"m(?:et(?:re|er)s?)?[\s-]+(?:high|tall|box|bench|step|chair)", "height_cm", Fraction(100)),
    (r"m|met(?:re|er)s?", "distance_cm", Fraction(100)),
    (r"s|secs?|seconds?", "seconds", Fraction(1)),
    (r"mins?|minutes?", "seconds", Fraction(60)),
    (r"reps?|repetitions?|times(?!\s+(?:a|an|per|each|every|as)\b)", "reps", Fraction(1)),
    (r"sets?|rounds?", "sets", Fraction(1)),
)
_RANGE: Final = rf"(?:\s*(?:to|or|and|-|–)\s*({NUMBER}))?"
_MEASURED: Final = tuple(
    (re.compile(rf"({NUMBER}){_RANGE}[\s-]*(?:{unit})(?!\w)", re.IGNORECASE), kind, scale)
    for unit, kind, scale in _SCALES
)
_PARTS: Final[dict[str, Fraction]] = {
    "three quarters": Fraction(75),
    "two thirds": Fraction(200, 3),
    "half": Fraction(50),
    "third": Fraction(100, 3),
    "quarter": Fraction(25),
    "fifth": Fraction(20),
    "tenth": Fraction(10),
}
_PART_OF_BODY: Final = re.compile(
    r"\b(?:three quarters|two thirds|half|a third|a quarter|a fifth|a tenth)(?: of)?\s+(?:your |their |the )?"
    r"(?:own )?body\s?weight",
    re.IGNORECASE,
)
"""Shares of body weight in words: 'half your body weight'."""
_EFFORT: Final = re.compile(rf"\b(?:RPE|effort)\s*(?:of\s+)?({NUMBER})", re.IGNORECASE)
_TIMES: Final = re.compile(r"(?<![\w.,])(\d{1,2})\s*(?:[x×]|sets? of)\s*(\d{1,3})(?!\s*(?:\w*kg|lb|\w))", re.IGNORECASE)
_ALL: Final = re.compile(
    r"\b(?:(?:to|until|till) (?:\w+ )?failure|as (?:heavy|many|long|far) as (?:you can|possible)|all[- ]out"
    r"|(?:at|for|to) (?:a|your|the) (?:max|maximum|limit)|every last rep(?:etition)?)\b",
    re.IGNORECASE,
)
"""Every repetition that there is. Common practice, no source."""
_HEAVIER: Final = re.compile(
    r"\b(?:heavier than (?:last \w+|the last \w+|before|planned|written)"
    r"|(?:go|take|lift|choose|grab|pick|use) (?:something |a |the |one )?heav(?:y|ier|iest)"
    r"|one (?:size|weight) up|next (?:size|weight|bell|kettlebell|dumbbell) up|add (?:some |more )?weight"
    r"|(?:double|twice) (?:the|last \w+|your usual))\b",
    re.IGNORECASE,
)
"""A step of the load that no number says. Common practice, no source."""
_CLAUSE: Final = re.compile(r"[,;:.!?()]\s+|\s+-\s+")
_NOT: Final = re.compile(
    r"\b(?:not|never|no|nobody|don't|avoid|instead of|rather than|without|below|under|less than|lighter than"
    r"|fewer than)\b",
    re.IGNORECASE,
)
_AT_MOST: Final = re.compile(
    r"\b(?:no|not|never)\s+(?:\w+\s+)?(?:more|heavier|higher|longer|farther) than\b", re.IGNORECASE
)
_OF_REST: Final = re.compile(
    r"\b(?:rest|wait|breaks?|recover|walk|jog|run|warm|between|before|after|every|within|apart|later|ago)\b",
    re.IGNORECASE,
)
_PER_HAND: Final = re.compile(r"\s*(?:in each hand|per hand|each hand|a hand)\b", re.IGNORECASE)


def quantities(text: str, names: Iterable[str] = ()) -> Iterator[Quantity]:
    """Yield every number with a unit that a text asks for, in order of kind.

    With the ``names`` of exercises, a number of them is one of repetitions: "fifty squats" of a goblet squat.
    """
    taken: set[int] = set()
    for pattern, kind, scale in (*_MEASURED, *((_counting(name), "reps", Fraction(1)) for name in names)):
        for match in pattern.finditer(text):
            if match.start() in taken:
                continue
            taken.add(match.start())
            if _is_asked(text, match, kind):
                per_hand = _PER_HAND.match(text, match.end()) is not None
                for written in filter(None, match.groups()):
                    number = number_of(written) * scale
                    yield Quantity(kind, number + 10 if scale < 0 else number, match[0], per_hand)
    for match in _PART_OF_BODY.finditer(text):
        if _is_asked(text, match, "% bodyweight"):
            per_hand = _PER_HAND.match(text, match.end()) is not None
            part = next(share for word, share in _PARTS.items() if word in match[0].casefold())
            yield Quantity("% bodyweight", part, match[0], per_hand)
    for match in _EFFORT.finditer(text):
        if _is_asked(text, match, "effort"):
            yield Quantity("effort", number_of(match[1]), match[0])
    for match in _TIMES.finditer(text):
        if _is_asked(text, match, "reps"):
            yield Quantity("sets", Fraction(match[1]), match[0])
            yield Quantity("reps", Fraction(match[2]), match[0])
    for match in _ALL.finditer(text):
        if _is_asked(text, match, "effort"):
            yield Quantity("effort", Fraction(10), match[0])
    for match in _HEAVIER.finditer(text):
        if _is_asked(text, match, "heavier"):
            yield Quantity("heavier", Fraction(0), match[0])


@cache
def _counting(name: str) -> re.Pattern[str]:
    """Return what finds a number of an exercise: 'fifty squats', '20 goblet squats', 'ten of these squats'.

    People call it by its name up to 'with' or 'from', or by the end of that.
    """
    words = [re.escape(word) for word in re.split(r"\s+(?:with|from|on|to|of|at|in|for)\s+", name.strip())[0].split()]
    called = "|".join(r"\s+".join(words[first:]) for first in range(len(words)))
    return re.compile(rf"({NUMBER})\s+(?:of\s+(?:the|these|those)\s+)?(?:{called})(?:e?s)?\b", re.IGNORECASE)


def number_of(written: str) -> Fraction:
    """Return a number from its digits, or from its words."""
    if written[:1].isdigit():
        return Fraction(written.replace(",", "."))
    first, *second = re.split(r"[- ]", written.casefold())
    if second and second[0] == "hundred":
        return Fraction(_WORDS[first] * 100)
    return Fraction(sum(_WORDS[word] for word in (first, *second)))


def _is_asked(text: str, match: re.Match[str], kind: Kind) -> bool:
    """Say whether a text asks for a number, and does not warn of it, nor speak of a rest."""
    starts = [cut.end() for cut in _CLAUSE.finditer(text) if cut.end() <= match.start()]
    ends = [cut.start() for cut in _CLAUSE.finditer(text) if cut.start() >= match.end()]
    before = text[max(starts, default=0) : match.start()]
    if kind == "seconds" and _OF_REST.search(before + text[match.end() : min(ends, default=len(text))]):
        return False
    return _AT_MOST.search(before) is not None or _NOT.search(before) is None
