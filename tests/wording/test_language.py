"""A language says sentences, plurals, numbers and days as its catalogue and the Unicode locale data have them."""

from datetime import date
from fractions import Fraction
from io import BytesIO

import pytest
from babel.messages.pofile import read_po

from setwright.dose.timing import TimeRange
from setwright.wording import times
from setwright.wording.catalogue import language, spoken
from setwright.wording.language import ENGLISH, Language
from setwright.wording.pieces import pieces, plainly, stressed

POLISH = r"""
msgid ""
msgstr ""
"Language: pl\n"
"Content-Type: text/plain; charset=utf-8\n"
"Plural-Forms: nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 && (n%100<12 || n%100>14) ? 1 : 2);\n"

msgid "Rest"
msgstr "Przerwa"

msgid "%(percent)s %% of 1RM"
msgstr "%(percent)s%% 1RM"

#, fuzzy
msgid "Kit"
msgstr "Zestaw"

msgid "Time"
msgstr ""

msgid "%(num)s set"
msgid_plural "%(num)s sets"
msgstr[0] "%(num)s seria"
msgstr[1] "%(num)s serie"
msgstr[2] "%(num)s serii"
"""
"""The rule of plurals is that of the gettext manual, section 'Plural forms'. The words are from memory."""


def polish(text: str = POLISH) -> Language:
    return spoken("pl", read_po(BytesIO(text.encode()), locale="pl"))


def test_a_sentence_is_said_with_its_values() -> None:
    """The catalogue's sentence stands for the English one; a doubled percent sign is one."""
    assert polish().say("Rest") == "Przerwa"
    assert polish().say("%(percent)s %% of 1RM", percent=70) == "70% 1RM"


@pytest.mark.parametrize("sentence", ["Kit", "Time", "Where it appears"])
def test_what_is_not_translated_is_said_in_english(sentence: str) -> None:
    """A doubtful translation, an empty one, and none at all."""
    assert polish().say(sentence) == sentence


@pytest.mark.parametrize(
    ("count", "said"),
    [
        (0, "0 serii"),
        (1, "1 seria"),
        (2, "2 serie"),
        (5, "5 serii"),
        (12, "12 serii"),
        (22, "22 serie"),
        (25, "25 serii"),
    ],
)
def test_a_count_takes_the_form_that_its_language_has_for_it(count: int, said: str) -> None:
    """Polish has three forms, by the last figures of the count."""
    assert polish().many("%(num)s set", "%(num)s sets", count) == said


@pytest.mark.parametrize(("count", "said"), [(0, "0 sets"), (1, "1 set"), (2, "2 sets"), (21, "21 sets")])
def test_english_has_two_forms(count: int, said: str) -> None:
    """One is one; anything else is many."""
    assert ENGLISH.many("%(num)s set", "%(num)s sets", count) == said


def test_a_language_without_a_catalogue_has_its_own_numbers_and_days() -> None:
    """German writes a comma in numbers, and its weekdays by their own names (Unicode locale data)."""
    german = language("de")

    assert german.number(Fraction(25, 2)) == "12,5"
    assert german.number(Fraction(12345)) == "12345"
    assert german.weekday(0) == "Montag"
    assert german.day(date(2027, 8, 20), "EEEE, d. MMMM y") == "Freitag, 20. August 2027"
    assert german.say("Rest") == "Rest"


DAY = date(2027, 9, 5)


def test_days_are_said_as_members_know_them() -> None:
    """In full, in short, and as spans inside a month and across two."""
    assert times.day_long(ENGLISH, DAY) == "Sunday 5 September 2027"
    assert times.day_short(ENGLISH, DAY) == "5 Sep"
    assert times.span_of_days(ENGLISH, date(2027, 7, 5), date(2027, 7, 11)) == "5 to 11 July"
    assert times.span_of_days(ENGLISH, date(2027, 6, 28), date(2027, 7, 4)) == "28 June to 4 July"


@pytest.mark.parametrize(
    ("seconds", "said"), [(0, "0 s"), (45, "45 s"), (60, "1 min"), (90, "1 min 30 s"), (600, "10 min")]
)
def test_times_are_said_in_minutes_and_seconds(seconds: int, said: str) -> None:
    """As people say them, without a part that is none."""
    assert times.duration(ENGLISH, seconds) == said


def test_a_range_of_times_is_rounded_outwards() -> None:
    """A session is never said to be quicker or slower than it is."""
    assert times.time_range(ENGLISH, TimeRange(1679, 2041)) == "27 to 35 min"
    assert times.time_range(ENGLISH, TimeRange(1680, 1680)) == "28 min"


@pytest.mark.parametrize(
    ("words", "all_of_them", "one_of_them"),
    [
        (["cues"], "cues", "cues"),
        (["cues", "limits"], "cues and limits", "cues or limits"),
        (["cues", "limits", "figure"], "cues, limits and figure", "cues or limits or figure"),
    ],
)
def test_words_are_joined_in_a_sentence(words: list[str], all_of_them: str, one_of_them: str) -> None:
    """All of them, or a choice between them."""
    assert ENGLISH.joined(words) == all_of_them
    assert ENGLISH.either(words) == one_of_them


def test_a_stressed_value_is_a_piece_of_its_own() -> None:
    """Wherever a language puts it in its sentence."""
    said = pieces(ENGLISH.say("Take %(weight)s, the nearest that the club owns.", weight=stressed("10 kg")))

    assert [piece.text for piece in said if piece.stressed] == ["10 kg"]
    assert plainly(said) == "Take 10 kg, the nearest that the club owns."
