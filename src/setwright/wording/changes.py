"""What changed since the last time, in words and numbers."""

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Final

from setwright.dose.change import (
    AmountChange,
    AmountsChange,
    CountChange,
    Difference,
    FeelChange,
    LastsChange,
    LoadChange,
    LoadsChange,
    RestChange,
    RestsChange,
    SameWeight,
    TempoChange,
    TemposChange,
)
from setwright.dose.dose import metres
from setwright.model.load import (
    Band,
    BodyWeightShare,
    Effort,
    HelpShare,
    HelpWeight,
    Load,
    OneRepMaxShare,
    Reserve,
    Weight,
    magnitude,
    same_kind,
)
from setwright.model.tempo import Tempo
from setwright.wording.clocks import open_rounds
from setwright.wording.doses import amounts, numbers
from setwright.wording.language import Language, later
from setwright.wording.loads import load, loads
from setwright.wording.times import duration, durations

_SMALL: Final[Mapping[int, str]] = {1: later("one"), 2: later("two"), 3: later("three"), 4: later("four")}


def in_words(language: Language, changes: Iterable[Difference]) -> tuple[str, ...]:
    """Return each change in words: one round more, 2 more reps, 1.5 % of body weight heavier."""
    return tuple(change_in_words(language, change) for change in changes)


def in_a_line(language: Language, changes: Iterable[Difference]) -> str:
    """Return all changes in one line; none at all is an empty one."""
    found = tuple(changes)
    listed = any(isinstance(change, AmountsChange | LoadsChange | TemposChange | RestsChange) for change in found)
    return ("; " if listed else ", ").join(in_words(language, found))


def since_last_time(language: Language, changes: Iterable[Difference], first_time: bool, week: int | None) -> str:
    """Return what changed about an exercise since the last time, or that nothing did.

    Args:
        language: the language to say it in.
        changes: what differs from the last time in the same session.
        first_time: whether the session itself stands in the plan for the first time.
        week: the week in which the plan last had the exercise, in whichever session; None where it is new.
    """
    said = in_a_line(language, changes)
    if said:
        return said
    if not first_time:
        return language.say("as before")
    return language.say("new") if week is None else language.say("known from week %(week)s", week=week)


def first_time_in_words(language: Language, names: Iterable[str], exercises: int) -> str:
    """Return what a member hears before a session that is new.

    Args:
        language: the language to say it in.
        names: the movements in it that the plan did not have before.
        exercises: how many exercises it has in all.
    """
    new = tuple(names)
    if not new:
        return language.say("All of its movements are known. Go lighter than you think on the first round.")
    if len(new) == exercises:
        return language.say("Go lighter than you think, and learn the movements first.")
    said = language.listed(new)
    return language.say("New in it: %(names)s. Go lighter than you think, and learn these first.", names=said)


def change_in_words(language: Language, change: Difference) -> str:
    """Return one change in words."""
    match change:
        case CountChange(by=by, rounds=rounds):
            return _rounds(language, by) if rounds else _sets(language, by)
        case LastsChange(before=before, now=clock):
            now = open_rounds(language, clock) if clock else language.say("rounds with a number")
            return _instead(language, now, duration(language, before.lasts_s or 0)) if before else now
        case AmountChange():
            return _amount(language, change)
        case LoadChange():
            return _load(language, change)
        case TempoChange():
            return _tempo(language, change)
        case RestChange(by_s=by_s):
            if by_s > 0:
                return language.say("%(number)s s more rest", number=by_s)
            return language.say("%(number)s s less rest", number=-by_s)
        case RestsChange(before_s=was_s, now_s=is_s):
            now = language.say("rest %(time)s", time=durations(language, is_s))
            return _instead(language, now, durations(language, was_s))
        case SameWeight():
            return language.say("same weight")
        case FeelChange(now=effort):
            return language.say("should feel like %(effort)s", effort=load(language, effort))
        case AmountsChange(measure=measure, before=was, now=is_):
            return _instead(language, amounts(language, measure, is_), numbers(language, measure, was))
        case LoadsChange(before=was, now=is_):
            return _instead(language, loads(language, is_), loads(language, was))
        case TemposChange(before=was, now=is_):
            return _instead(language, _tempos(language, is_), _tempos(language, was))


def _instead(language: Language, now: str, before: str) -> str:
    return language.say("%(now)s instead of %(before)s", now=now, before=before)


def _sets(language: Language, by: int) -> str:
    count = abs(by)
    number = language.say(_SMALL[count]) if count in _SMALL else str(count)
    if by > 0:
        return language.many("%(number)s set more", "%(number)s sets more", count, number=number)
    return language.many("%(number)s set fewer", "%(number)s sets fewer", count, number=number)


def _rounds(language: Language, by: int) -> str:
    count = abs(by)
    number = language.say(_SMALL[count]) if count in _SMALL else str(count)
    if by > 0:
        return language.many("%(number)s round more", "%(number)s rounds more", count, number=number)
    return language.many("%(number)s round fewer", "%(number)s rounds fewer", count, number=number)


def _tempo(language: Language, change: TempoChange) -> str:
    now = language.say("tempo %(tempo)s", tempo=change.now) if change.now else language.say("no set tempo")
    return _instead(language, now, str(change.before)) if change.before else now


def _tempos(language: Language, tempos: Iterable[Tempo | None]) -> str:
    said = language.listed(str(tempo) if tempo else language.say("no set tempo") for tempo in tempos)
    return language.say("tempo %(tempo)s", tempo=said)


def _amount(language: Language, change: AmountChange) -> str:
    # Of a range, the upper end says how far it went; where that stays, the lower one.
    higher = Fraction(change.now.high - change.before.high)
    by = higher or Fraction(change.now.low - change.before.low)
    if change.measure == "reps":
        count = abs(int(by))
        if by > 0:
            return language.many("%(num)s more rep", "%(num)s more reps", count)
        return language.many("%(num)s fewer rep", "%(num)s fewer reps", count)
    if change.measure == "distance":
        number = language.number(metres(abs(by)))
        if by > 0:
            return language.say("%(number)s m farther", number=number)
        return language.say("%(number)s m less far", number=number)
    if by > 0:
        return language.say("%(number)s s longer", number=abs(int(by)))
    return language.say("%(number)s s shorter", number=abs(int(by)))


def _load(language: Language, change: LoadChange) -> str:
    before, now = change.before, change.now
    if now is None:
        return language.say("without weight")
    if before is None:
        return language.say("now with %(load)s", load=load(language, now))
    if isinstance(now, Band) or not same_kind(before, now):
        return _instead(language, load(language, now), load(language, before))
    return _by(language, now, magnitude(now) - magnitude(before))


def _by(language: Language, now: Load, by: Fraction) -> str:
    number = language.number(abs(by))
    match now:
        case BodyWeightShare() | Weight() | OneRepMaxShare():
            if by > 0:
                return _in_hands(language, now, language.say("%(load)s heavier", load=_size(language, now, abs(by))))
            return _in_hands(language, now, language.say("%(load)s lighter", load=_size(language, now, abs(by))))
        case HelpShare() | HelpWeight():
            share = isinstance(now, HelpShare)
            size = load(
                language, BodyWeightShare(abs(by)) if share else Weight(abs(by), unit=getattr(now, "unit", "kg"))
            )
            if by > 0:
                return language.say("%(weight)s more help", weight=size)
            return language.say("%(weight)s less help", weight=size)
        case Effort():
            if by > 0:
                return language.say("effort %(number)s higher", number=number)
            return language.say("effort %(number)s lower", number=number)
        case Reserve():
            count = abs(int(by))
            if by > 0:
                return language.many("%(num)s rep more in reserve", "%(num)s reps more in reserve", count)
            return language.many("%(num)s rep less in reserve", "%(num)s reps less in reserve", count)
        case Band():
            raise ValueError("bands have names, not numbers")


def _size(language: Language, now: BodyWeightShare | OneRepMaxShare | Weight, by: Fraction) -> str:
    match now:
        case BodyWeightShare():
            return load(language, BodyWeightShare(by))
        case OneRepMaxShare():
            return load(language, OneRepMaxShare(by))
        case Weight(unit=unit):
            return load(language, Weight(by, unit=unit))


def _in_hands(language: Language, now: Load, said: str) -> str:
    return language.say("%(change)s in each hand", change=said) if now.per_hand else said
