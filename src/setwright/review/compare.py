"""What changed between two states of a programme: limits and texts of exercises, doses, and what stands beside them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import zip_longest
from typing import Final

from setwright.review.difference import Row, rows
from setwright.review.parts import Line, Part
from setwright.review.state import DayState, DoseState, State
from setwright.wording.doses import dose_in_words
from setwright.wording.language import ENGLISH
from setwright.wording.reviews import part_name
from setwright.wording.times import durations, time_range

ORDER: Final[tuple[Part, ...]] = ("limits", "cautions", "cues", "text", "figure")
"""What a physiotherapist looks at first."""


@dataclass(frozen=True, slots=True)
class PartChange:
    """A reviewed part of an exercise that differs, line by line."""

    part: str
    rows: tuple[Row, ...]

    def label(self, row: Row) -> str:
        """Return what a line is called: its key, with the part before it where the key does not say it already."""
        return row.label if row.label.startswith(self.part) else f"{part_name(ENGLISH, self.part)}: {row.label}"


@dataclass(frozen=True, slots=True)
class ExerciseChange:
    """An exercise that is new (``way`` added), gone (removed) or changed."""

    ident: str
    name: str
    way: str
    parts: tuple[PartChange, ...]


@dataclass(frozen=True, slots=True)
class DoseChange:
    """One exercise of a session whose dose differs in some weeks. An empty text: it was, or is, not there."""

    exercise: str
    old: str
    new: str
    weeks: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class SessionChange:
    """One session of one plan, with what differs and in which weeks; ``times`` is how long it took and takes."""

    plan: str
    session: str
    doses: tuple[DoseChange, ...]
    times: tuple[tuple[str, str, tuple[int, ...]], ...]


@dataclass(frozen=True, slots=True)
class DayChange:
    """A training day that came, went, moved or holds another session."""

    plan: str
    week: int
    day: str
    old: str
    new: str


@dataclass(frozen=True, slots=True)
class TextChange:
    """What stands beside the doses in one thing, a session or the club, line by line; ``way`` as of an exercise."""

    what: str
    way: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Comparison:
    """Everything that differs between two states, with the names that both know."""

    exercises: tuple[ExerciseChange, ...]
    sessions: tuple[SessionChange, ...]
    days: tuple[DayChange, ...]
    plans: tuple[tuple[str, str], ...]
    names: dict[str, str]
    texts: tuple[TextChange, ...] = ()

    @property
    def is_empty(self) -> bool:
        """Whether the two states are the same to a member and to a reviewer."""
        return not (self.exercises or self.sessions or self.days or self.plans or self.texts)


def compare(old: State, new: State) -> Comparison:
    """Return what changed from one state to another."""
    gone = [(ident, f"plan {ident} is gone") for ident in old.plans if ident not in new.plans]
    come = [(ident, f"plan {ident} is new") for ident in new.plans if ident not in old.plans]
    both = [plan for plan in new.plans if plan in old.plans]
    return Comparison(
        exercises=tuple(_exercises(old, new)),
        sessions=tuple(change for plan in both for change in _sessions(plan, old.days[plan], new.days[plan])),
        days=tuple(change for plan in both for change in _days(plan, old.days[plan], new.days[plan])),
        plans=(*gone, *come),
        names={**old.names, **new.names},
        texts=tuple(_texts(old.texts, new.texts)),
    )


def _exercises(old: State, new: State) -> Iterator[ExerciseChange]:
    for ident in sorted({*old.exercises, *new.exercises}):
        before, after = old.exercises.get(ident), new.exercises.get(ident)
        name = new.names.get(ident) or old.names[ident]
        if before is None or after is None:
            yield ExerciseChange(ident, name, "added" if before is None else "removed", ())
            continue
        parts = [PartChange(part, rows(before[part], after[part])) for part in ORDER]
        changed = tuple(part for part in parts if part.rows)
        if changed:
            yield ExerciseChange(ident, name, "changed", changed)


def _texts(old: Mapping[str, Sequence[Line]], new: Mapping[str, Sequence[Line]]) -> Iterator[TextChange]:
    for what in dict.fromkeys((*new, *old)):
        if what not in old or what not in new:
            yield TextChange(what, "added" if what in new else "removed", ())
        elif different := rows(old[what], new[what]):
            yield TextChange(what, "changed", different)


Weeks = dict[int, dict[str, DayState]]


def _days(plan: str, old: Weeks, new: Weeks) -> Iterator[DayChange]:
    for week in sorted({*old, *new}):
        before, after = old.get(week, {}), new.get(week, {})
        for day in dict.fromkeys((*before, *after)):
            was, now = before.get(day), after.get(day)
            if was is None or now is None or (was.session, was.date) != (now.session, now.date):
                yield DayChange(plan, week, day, _held(was), _held(now))


def _held(day: DayState | None) -> str:
    if day is None:
        return "nothing"
    return f"{day.session}, {day.date}" if day.date else day.session


def _sessions(plan: str, old: Weeks, new: Weeks) -> Iterator[SessionChange]:
    """Yield each session that stands in the same week in both states, with what differs, weeks taken together."""
    doses: dict[str, dict[tuple[str, str, str], list[int]]] = {}
    times: dict[str, dict[tuple[str, str], list[int]]] = {}
    for week in sorted({*old} & {*new}):
        ours, theirs = _by_session(old[week]), _by_session(new[week])
        for session in theirs:
            if session not in ours:
                continue
            for was, now in zip_longest(ours[session], theirs[session]):
                if was is None or now is None:
                    continue
                for change in _doses(was.doses, now.doses):
                    doses.setdefault(session, {}).setdefault(change, []).append(week)
                took, takes = time_range(ENGLISH, was.time), time_range(ENGLISH, now.time)
                if took != takes:
                    times.setdefault(session, {}).setdefault((took, takes), []).append(week)
    for session in sorted({*doses, *times}):
        yield SessionChange(
            plan,
            session,
            tuple(_together(doses.get(session, {}))),
            tuple((was, now, tuple(weeks)) for (was, now), weeks in times.get(session, {}).items()),
        )


def _together(changes: dict[tuple[str, str, str], list[int]]) -> Iterator[DoseChange]:
    """Yield changes exercise by exercise, in order of first appearance, and week by week inside."""
    for exercise in dict.fromkeys(what[0] for what in changes):
        for what, weeks in changes.items():
            if what[0] == exercise:
                yield DoseChange(*what, tuple(weeks))


def _by_session(days: dict[str, DayState]) -> dict[str, list[DayState]]:
    found: dict[str, list[DayState]] = {}
    for day in days.values():
        found.setdefault(day.session, []).append(day)
    return found


def _doses(old: Sequence[DoseState], new: Sequence[DoseState]) -> Iterator[tuple[str, str, str]]:
    """Yield exercise, old and new dose of each difference; an exercise keeps its place by how often it stood before."""
    before, after = _by_place(old), _by_place(new)
    for place in dict.fromkeys((*before, *after)):
        was, now = before.get(place), after.get(place)
        if was is None:
            yield place[0], "", _said(now) if now else ""
        elif now is None:
            yield place[0], _said(was), ""
        elif was != now:
            yield place[0], *_apart(was, now)


def _by_place(doses: Sequence[DoseState]) -> dict[tuple[str, tuple[str, ...], int], DoseState]:
    found: dict[tuple[str, tuple[str, ...], int], DoseState] = {}
    for dose in doses:
        number = sum(1 for ident, choices, _ in found if (ident, choices) == (dose.exercise, dose.choices))
        found[dose.exercise, dose.choices, number] = dose
    return found


def _apart(was: DoseState, now: DoseState) -> tuple[str, str]:
    """Return both doses in words, with the rest where it is the rest that differs."""
    rested, rests = was.dose.rests_s, now.dose.rests_s
    if rested == rests:
        return _said(was), _said(now)
    return f"{_said(was)}, rest {durations(ENGLISH, rested)}", f"{_said(now)}, rest {durations(ENGLISH, rests)}"


def _said(state: DoseState) -> str:
    said = dose_in_words(ENGLISH, state.dose, state.rounds)
    whom = f"for {' or '.join(state.choices)}: {said}" if state.choices else said
    return f"{whom}, optional" if state.optional else whom
