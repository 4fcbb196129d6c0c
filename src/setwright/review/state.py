"""A programme boiled down to what two states of it are compared by: texts, limits and every dose, as plain data."""

import json
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.errors import SetwrightError
from setwright.model.programme import Programme
from setwright.review.parts import PARTS, Line, lines_of
from setwright.wording.doses import amount, dose_in_words
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration, time_range

FORMAT: Final = "setwright resolved programme"
VERSION: Final = 1


class StateError(SetwrightError):
    """A file that is not a resolved programme of this tool."""


@dataclass(frozen=True, slots=True)
class DoseState:
    """One exercise of one session in one week: its dose in words, and its numbers one by one."""

    exercise: str
    words: str
    numbers: dict[str, str]


@dataclass(frozen=True, slots=True)
class DayState:
    """One session on its day: its id, date and time, and every dose in order."""

    session: str
    date: str
    time: str
    doses: list[DoseState]


@dataclass(frozen=True)
class State:
    """A programme at one moment. ``days`` are keyed by plan, week and day, ``plans`` hold their names."""

    exercises: dict[str, dict[str, list[Line]]] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    plans: dict[str, str] = field(default_factory=dict)
    days: dict[str, dict[int, dict[str, DayState]]] = field(default_factory=dict)


def state_of(programme: Programme, plans: Sequence[ResolvedPlan]) -> State:
    """Return the state of a resolved programme."""
    return State(
        exercises={
            ident: {part: list(lines_of(exercise, part)) for part in PARTS}
            for ident, exercise in sorted(programme.exercises.items())
        },
        names={ident: exercise.name for ident, exercise in sorted(programme.exercises.items())},
        plans={plan.ident: plan.plan.name for plan in plans},
        days={
            plan.ident: {
                week.number: {session.day: _day(programme, session) for session in week.sessions} for week in plan.weeks
            }
            for plan in plans
        },
    )


def _day(programme: Programme, session: ResolvedSession) -> DayState:
    blocks = programme.sessions[session.session].blocks
    doses = [_dose(item, blocks[item.slot[0]].kind != "straight") for item in session.items]
    return DayState(session.session, session.date.isoformat(), time_range(ENGLISH, session.time), doses)


def _dose(item: ResolvedItem, rounds: bool) -> DoseState:
    dose = item.dose
    numbers = {"rounds" if rounds else "sets": str(dose.sets), "amount": amount(ENGLISH, dose)}
    if dose.load is not None:
        numbers["load"] = str(dose.load)
    if dose.tempo is not None:
        numbers["tempo"] = str(dose.tempo)
    numbers["rest"] = duration(ENGLISH, dose.rest_s)
    return DoseState(item.exercise, dose_in_words(ENGLISH, dose, rounds), numbers)


def to_json(state: State) -> str:
    """Return a state as JSON; the same state always gives the same text."""
    data = {
        "format": FORMAT,
        "version": VERSION,
        "plans": state.plans,
        "exercises": {
            ident: {
                "name": state.names[ident],
                **{part: [[x.key, x.text, x.field] for x in parts[part]] for part in PARTS},
            }
            for ident, parts in state.exercises.items()
        },
        "days": {
            plan: {str(week): {day: _day_data(one) for day, one in days.items()} for week, days in weeks.items()}
            for plan, weeks in state.days.items()
        },
    }
    return json.dumps(data, ensure_ascii=False, indent=1) + "\n"


def _day_data(day: DayState) -> dict[str, Any]:
    doses = [{"exercise": d.exercise, "words": d.words, "numbers": d.numbers} for d in day.doses]
    return {"session": day.session, "date": day.date, "time": day.time, "doses": doses}


def from_json(text: str) -> State:
    """Return the state that was written as JSON.

    Raises:
        StateError: where the text is something else, or was written by another version of this format.
    """
    try:
        data = json.loads(text)
        if data["format"] != FORMAT or data["version"] != VERSION:
            raise StateError(f"this is no resolved programme of version {VERSION}")
        return State(
            exercises={
                ident: {part: [Line(*line) for line in one[part]] for part in PARTS}
                for ident, one in data["exercises"].items()
            },
            names={ident: one["name"] for ident, one in data["exercises"].items()},
            plans=data["plans"],
            days={
                plan: {int(week): {day: _day_state(one) for day, one in days.items()} for week, days in weeks.items()}
                for plan, weeks in data["days"].items()
            },
        )
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise StateError("this file is no resolved programme; 'setwright resolve' writes one") from error


def _day_state(data: Any) -> DayState:
    doses = [DoseState(d["exercise"], d["words"], dict(d["numbers"])) for d in data["doses"]]
    return DayState(data["session"], data["date"], data["time"], doses)
