"""Times, days and weeks in words, the same wherever they are shown."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Final

from setwright.dose.timing import TimeRange
from setwright.model.vocabulary import WEEKDAYS, Weekday
from setwright.wording.language import Language, later

_KINDS: Final[Mapping[str, str]] = {"lighter": later("Lighter week"), "taper": later("Taper")}


def duration(language: Language, count_s: int) -> str:
    """Return a time as people say it: 45 s, 2 min, 1 min 30 s."""
    minutes, seconds = divmod(count_s, 60)
    if not minutes:
        return language.say("%(seconds)s s", seconds=seconds)
    if not seconds:
        return language.say("%(minutes)s min", minutes=minutes)
    return language.say("%(minutes)s min %(seconds)s s", minutes=minutes, seconds=seconds)


def durations(language: Language, each_s: Sequence[int]) -> str:
    """Return several times as people say them: 60 s, 60 s, 2 min."""
    return language.listed(duration(language, count_s) for count_s in each_s)


def time_range(language: Language, time: TimeRange) -> str:
    """Return a range in whole minutes, rounded outwards: 28 to 35 min."""
    low, high = time.low_s // 60, -(-time.high_s // 60)
    if low == high:
        return language.say("%(minutes)s min", minutes=low)
    return language.say("%(low)s to %(high)s min", low=low, high=high)


# What stands in quotes below is a pattern of the Unicode locale data: E weekday, d day, M month, y year.


def day_long(language: Language, day: date) -> str:
    """Return a day in full: Friday 20 August 2027."""
    return language.day(day, language.say("EEEE d MMMM y"))


def day_short(language: Language, day: date) -> str:
    """Return a day in short: 20 Aug."""
    return language.day(day, language.say("d MMM"))


def day_full(language: Language, day: date) -> str:
    """Return a day with its year: 20 August 2027."""
    return language.day(day, language.say("d MMMM y"))


def span_of_days(language: Language, first: date, last: date) -> str:
    """Return a span of days: 5 to 11 July, 28 June to 4 July."""
    begins = language.say("d") if first.month == last.month else language.say("d MMMM")
    said = language.day(first, begins), language.day(last, language.say("d MMMM"))
    return language.say("%(first)s to %(last)s", first=said[0], last=said[1])


def span_with_year(language: Language, first: date, last: date) -> str:
    """Return a span of days with the year in which it ends: 5 to 11 July 2027."""
    return language.say("%(days)s %(year)s", days=span_of_days(language, first, last), year=last.year)


def weekday(language: Language, day: Weekday) -> str:
    """Return a weekday's name: Monday."""
    return language.weekday(WEEKDAYS.index(day))


def week_kind(language: Language, kind: str, phase: str = "") -> str:
    """Return what a week is where it is not a usual one: Lighter week, Taper; nothing for others.

    Nothing either beside the name of a phase that says so itself.
    """
    said = language.say(_KINDS[kind]) if kind in _KINDS else ""
    return "" if said.casefold() == phase.casefold() else said


def weeks(language: Language, count: int) -> str:
    """Return a number of weeks: 1 week, 8 weeks."""
    return language.many("%(num)s week", "%(num)s weeks", count)


def weeks_in_words(language: Language, weeks: Sequence[int]) -> str:
    """Return weeks as people say them: week 4; weeks 1, 2 and 5; weeks 1 to 3 and 5. Only weeks that touch are a range.

    Args:
        language: what it is said in.
        weeks: at least one, each in its place; a week that stands there twice is said once.
    """
    runs: list[list[int]] = []
    for week in dict.fromkeys(weeks):
        if runs and week == runs[-1][1] + 1:
            runs[-1][1] = week
        else:
            runs.append([week, week])
    said = language.joined(part for first, last in runs for part in _run(language, first, last))
    return language.many("week %(weeks)s", "weeks %(weeks)s", len(set(weeks)), weeks=said)


def _run(language: Language, first: int, last: int) -> tuple[str, ...]:
    """Return one week, two of them, or three and more as a range."""
    if last - first < 2:
        return tuple(map(str, range(first, last + 1)))
    return (language.say("%(first)s to %(last)s", first=first, last=last),)
