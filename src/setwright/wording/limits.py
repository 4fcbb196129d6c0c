"""What a physiotherapist limits an exercise to, in words: one row for each key of ``Limits``, set or not."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Final

from setwright.dose.bounding import is_open
from setwright.model.limits import Limits, NoWeight
from setwright.model.load import AddedWeight, HelpShare, HelpWeight, Load, Weight, magnitude
from setwright.wording.doses import distance
from setwright.wording.language import Language, later
from setwright.wording.loads import load
from setwright.wording.times import duration


@dataclass(frozen=True, slots=True)
class LimitWords:
    """One limit. ``value`` is empty where none is set, and stands between ``before`` and ``after``.

    ``lines`` are the coach's own prose, for the limit that says for whom the exercise is not.
    """

    key: str
    label: str
    value: str
    before: str
    after: str
    lines: tuple[str, ...] = ()

    @property
    def said(self) -> str:
        """The limit in words: 12 a set; nothing where none is set, or where it is said in lines."""
        return f"{self.before}{self.value}{self.after}" if self.value else ""


_LABELS: Final[Mapping[str, str]] = {
    "load": later("Load"),
    "top_effort": later("Effort"),
    "least_reserve": later("In reserve"),
    "reps": later("Reps"),
    "hold": later("Hold"),
    "rep_time": later("One repetition"),
    "distance": later("Distance"),
    "height": later("Height"),
    "contacts": later("Landings"),
    "weekly_sets": later("Sets"),
    "weekly_step": later("Step of the load"),
    "earliest_phase": later("Earliest"),
    "earliest_week": later("Earliest"),
    "not_for": later("Not for"),
}
_ROUND_IT: Final[Mapping[str, str]] = {
    "top_effort": later("%(value)s of 10"),
    "least_reserve": later("%(value)s reps or more"),
    "reps": later("%(value)s a set"),
    "distance": later("%(value)s a set"),
    "height": later("%(value)s cm"),
    "contacts": later("%(value)s a session"),
    "weekly_sets": later("%(value)s a week"),
    "weekly_step": later("%(value)s %% a week"),
    "earliest_phase": later("phase %(value)s of a plan"),
    "earliest_week": later("week %(value)s of a plan"),
}
_HERE: Final = "\x00"


def limits(language: Language, of: Limits | None) -> tuple[LimitWords, ...]:
    """Return every limit that can be set, in the order of the language, with what is set."""
    given = of or Limits()
    return tuple(_row(language, key, getattr(given, key)) for key in Limits.model_fields)


def limits_set(language: Language, of: Limits | None) -> tuple[LimitWords, ...]:
    """Return the limits that are set and said in a few words: all but those in lines of prose."""
    return tuple(row for row in limits(language, of) if row.said)


def bound(language: Language, of: Limits | None, doses: Iterable[Load]) -> str | None:
    """Return the limits of load and effort to print beside a dose that does not keep to them by itself.

    That is a load of another kind than the limit: by effort, of 1RM, with a band, or a share for a limit in kilograms,
    which a table of weights keeps for the body weights that it covers.
    """
    if of is None:
        return None
    loads = tuple(doses)
    said = []
    if of.load is not None and any(type(one) is not type(of.load) for one in loads):
        said.append(never_beyond(language, of.load, added=all(isinstance(one, AddedWeight) for one in loads)))
    if any(is_open(one) for one in loads):
        if of.top_effort is not None:
            said.append(language.say("No harder than %(effort)s.", effort=load(language, of.top_effort)))
        if of.least_reserve is not None:
            said.append(language.say("Keep at least %(reserve)s.", reserve=load(language, of.least_reserve)))
    return " ".join(said) or None


def never_beyond(language: Language, limit: Load | NoWeight, added: bool = False) -> str:
    """Return the limit of a load as a sentence: never more than a weight, never less than some help, no weight at all.

    Args:
        language: the language to say it in.
        limit: the limit.
        added: whether what it limits is added to the body's own weight.
    """
    if isinstance(limit, NoWeight):
        return language.say("Without any weight.")
    if isinstance(limit, HelpShare | HelpWeight):
        return language.say("Never with less than %(help)s.", help=load(language, limit))
    if added and type(limit) is Weight:
        limit = AddedWeight(limit.kg, unit=limit.unit)
    return language.say("Never more than %(load)s.", load=load(language, limit))


def centimetres(language: Language, length_cm: Fraction) -> str:
    """Return a height: 30 cm."""
    return language.say("%(number)s cm", number=language.number(length_cm))


def _row(language: Language, key: str, value: Any) -> LimitWords:
    label = language.say(_LABELS[key])
    if key == "not_for":
        return LimitWords(key, label, "", "", "", tuple(value))
    before, _, after = language.say(_ROUND_IT[key], value=_HERE).partition(_HERE) if key in _ROUND_IT else ("", "", "")
    return LimitWords(key, label, "" if value is None else _written(language, key, value), before, after)


def _written(language: Language, key: str, value: Any) -> str:
    match key:
        case "load" if isinstance(value, NoWeight):
            return language.say("none, the body alone")
        case "load" if isinstance(value, HelpShare | HelpWeight):
            return language.say("at least %(help)s", help=load(language, value))
        case "load":
            return load(language, value)
        case "distance":
            return distance(language, value)
        case "top_effort" | "least_reserve":
            return language.number(magnitude(value))
        case "hold" | "rep_time":
            return duration(language, value)
        case "weekly_step" | "height":
            return language.number(value)
        case _:
            return str(value)
