"""What pages and sheets say about a review: where an exercise stands, who signed it, what a reviewer is asked."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Final

from setwright.model.sign_off import SignOff
from setwright.wording.language import Language, later
from setwright.wording.limits import centimetres
from setwright.wording.times import day_long

STATUS_WORDS: Final[Mapping[str, str]] = {
    "reviewed": later("Reviewed"),
    "changed": later("Changed since its review"),
    "changed-back": later("Changed back: ask again"),
    "unreviewed": later("Not reviewed"),
}
PART_NAMES: Final[Mapping[str, str]] = {
    "text": later("description"),
    "cues": later("cues"),
    "cautions": later("cautions"),
    "limits": later("limits"),
    "figure": later("figure"),
    "words": later("notes and kit in sessions"),
    "dosage": later("dosage"),
}
_QUESTIONS: Final = (
    later("Set-up and steps describe this movement correctly and completely."),
    later("Breathing and tempo suit it."),
    later("Cues, and common faults with what to change, are right."),
    later("The figure shows it correctly."),
    later("Easier and harder ways lead where they say, and the way at home is sound."),
    later("Cautions, and when to stop, are complete and right."),
    later("Every dose on this sheet is acceptable, and so are the limits."),
    later("The named sources support what is said."),
)


def status(language: Language, of: str) -> str:
    """Return where an exercise stands."""
    return language.say(STATUS_WORDS[of])


def part_name(language: Language, part: str) -> str:
    """Return what a reviewed part is called."""
    return language.say(PART_NAMES[part])


def part_names(language: Language, parts: Iterable[str]) -> str:
    """Return the names of parts in a sentence: cues, limits and figure."""
    return language.joined(part_name(language, part) for part in parts)


def standing(language: Language, of: str, sign_off: SignOff | None, changed: Iterable[str]) -> str:
    """Return where an exercise stands in one line: with whose sign-off, and what is not as it was then."""
    said = status(language, of)
    if sign_off is None:
        return said
    day = day_long(language, sign_off.date)
    by = language.say(
        "%(status)s: %(who)s, %(role)s, %(day)s", status=said, who=sign_off.who, role=sign_off.role, day=day
    )
    parts = language.listed(part_name(language, part) for part in changed)
    return language.say("%(by)s. Not as it was then: %(parts)s", by=by, parts=parts) if parts else by


def said_where(language: Language, name: str, field: str) -> str:
    """Return what says something of an exercise: a session, a routine or a plan by its name, and whether it is kit."""
    match field:
        case "kit":
            return language.say("%(name)s, kit", name=name)
        case "height":
            return language.say("%(name)s, height", name=name)
        case _:
            return name


def said_what(language: Language, text: str, field: str) -> str:
    """Return what is said there: the coach's own words, and a height in the language's."""
    return centimetres(language, Fraction(text.removesuffix(" cm"))) if field == "height" else text


def questions(language: Language) -> tuple[str, ...]:
    """Return what a reviewer is asked to look at, one box each. Common practice, no source."""
    return tuple(language.say(question) for question in _QUESTIONS)
