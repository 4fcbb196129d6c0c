"""A language that members read: sentences from a catalogue, with plurals, numbers, days and lists as it has them.

A sentence is known by its English form, its msgid, in which ``%(name)s`` stands for a value and ``%%`` for a percent
sign (gettext's ``python-format``). Where a catalogue lacks a sentence the English one is said.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date
from fractions import Fraction
from typing import Final

from babel import Locale
from babel.dates import format_date
from babel.lists import format_list
from babel.numbers import get_decimal_symbol

from setwright.model.units import plain_number


def later(msgid: str) -> str:
    """Return a sentence as it is: marks one for the catalogue that is said later."""
    return msgid


@dataclass(frozen=True, slots=True)
class Language:
    """One language: ``code`` as BCP 47 has it (``en``), its customs, and its sentences by msgid.

    ``messages`` hold one form of a sentence, or all forms of a plural; ``plural`` says which of them a count takes,
    and ``plural_rule`` says the same as an expression of n, as gettext writes it.
    """

    code: str
    locale: Locale
    messages: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    plural: Callable[[int], int] = lambda count: int(count != 1)
    plural_rule: str = "n != 1"

    def text(self, msgid: str) -> str:
        """Return a sentence with its places for values still open."""
        forms = self.messages.get(msgid)
        return forms[0] if forms else msgid

    def texts(self, one: str, other: str, count: int) -> str:
        """Return the form of a sentence that goes with a count, its places for values still open."""
        forms = self.messages.get(one)
        if forms is None or len(forms) < 2:
            return one if count == 1 else other
        return forms[self.plural(count)]

    def say(self, msgid: str, /, **values: object) -> str:
        """Return a sentence with its values."""
        return self.text(msgid) % values

    def many(self, one: str, other: str, count: int, /, **values: object) -> str:
        """Return a sentence that goes with a count, which it may hold as ``%(num)s``."""
        return self.texts(one, other, count) % {"num": count, **values}

    def number(self, number: Fraction | int, places: int = 2) -> str:
        """Return a number with at most so many places, without zeros at the end and without groups."""
        return plain_number(number, places).replace(".", str(get_decimal_symbol(self.locale)))

    def day(self, day: date, pattern: str) -> str:
        """Return a day in a pattern of the Unicode locale data (UTS 35), such as ``EEEE d MMMM y``."""
        return format_date(day, pattern, locale=self.locale)

    def weekday(self, index: int) -> str:
        """Return a weekday's name, 0 for Monday."""
        return str(self.locale.days["stand-alone"]["wide"][index])

    def listed(self, words: Iterable[str]) -> str:
        """Return words as a list without a last 'and': mat, kettlebell, box."""
        return format_list(list(words), style="unit", locale=self.locale)

    def joined(self, words: Iterable[str]) -> str:
        """Return words as a sentence lists them: cues, limits and figure."""
        *most, last = words
        return self.say("%(most)s and %(last)s", most=self.listed(most), last=last) if most else last

    def either(self, words: Iterable[str]) -> str:
        """Return words as a choice: this one, that one or another."""
        *most, last = (*words,) or ("",)
        return self.say("%(first)s or %(last)s", first=self.either(most), last=last) if most else last


ENGLISH: Final = Language("en", Locale("en"))
"""The language of the msgids, and of everything that the coach reads."""


def capital(text: str) -> str:
    """Return text with a capital to begin with."""
    return text[:1].upper() + text[1:]


def small(text: str) -> str:
    """Return text without a capital to begin with."""
    return text[:1].lower() + text[1:]
