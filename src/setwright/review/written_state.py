"""A state as JSON: numbers with their units, no sentences, with a schema of its own.

The same state always gives the same text, and the text gives the same state again, exactly.
"""

import json
from collections.abc import Mapping, Sequence
from datetime import date
from fractions import Fraction
from typing import Annotated, Any, Final, Literal

from pydantic import BaseModel, ConfigDict, Field, PlainSerializer, PlainValidator, ValidationError, WithJsonSchema

from setwright.dose.dose import Clock, Dose, Set, SetKind
from setwright.dose.timing import TimeRange
from setwright.errors import SetwrightError
from setwright.model.load import (
    AddedWeight,
    Band,
    BodyWeightShare,
    Effort,
    HelpShare,
    HelpWeight,
    Load,
    OneRepMaxShare,
    Reserve,
    Weight,
    parse_load,
)
from setwright.model.prescription import Measure
from setwright.model.span import Open, Span
from setwright.model.tempo import Tempo
from setwright.model.units import exact_number
from setwright.model.vocabulary import Sides
from setwright.review.parts import Line
from setwright.review.state import DayState, DoseState, State

FORMAT: Final = "setwright resolved programme"
VERSION: Final = 3
DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"


class StateError(SetwrightError):
    """A file that is not a resolved programme of this tool."""


class _Written(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)


def _number(value: Any) -> Fraction:
    if not isinstance(value, int | float | Fraction):
        raise ValueError("not a number")
    return value if isinstance(value, Fraction) else Fraction(str(value))


Number = Annotated[
    Fraction,
    PlainValidator(_number),
    PlainSerializer(lambda n: int(n) if n.denominator == 1 else float(exact_number(n))),
    WithJsonSchema({"type": "number"}),
]
"""An exact number; every number of a programme is a decimal that a JSON number holds whole."""

LoadUnit = Literal[
    "% bodyweight",
    "% 1RM",
    "kg",
    "lb",
    "kg added",
    "lb added",
    "% bodyweight of help",
    "kg of help",
    "lb of help",
    "RPE",
    "reps in reserve",
    "band",
    "band of help",
]
AmountUnit = Literal["reps", "s", "cm"]

_AMOUNT_UNITS: Final[dict[Measure, AmountUnit]] = {"reps": "reps", "hold": "s", "work": "s", "distance": "cm"}


class WrittenAmount(_Written):
    """How much of one set, from low to high; a single number has both ends the same.

    ``leave`` is there where it is as many as possible: so many must be left, and ``up_to`` ends it in any case.
    """

    low: Number
    high: Number
    unit: AmountUnit
    leave: int | None = None
    up_to: int | None = None


class WrittenLoad(_Written):
    """How heavy. ``written`` is the coach's own form; ``number`` is null for a band, whose name ``band`` holds."""

    written: str
    unit: LoadUnit
    number: Number | None = None
    per_hand: bool = False
    band: str | None = None


class WrittenTempo(_Written):
    """One repetition's pace in seconds. ``lifting_s`` is null for as fast as control allows."""

    lowering_s: int
    pause_low_s: int
    lifting_s: int | None
    pause_high_s: int


class WrittenSet(_Written):
    """One set: working sets and the ramp before them. ``rest_s`` is the rest after it; no load is the body alone.

    ``feels`` is how hard it should feel with its load, where the coach says so.
    """

    kind: SetKind
    amount: WrittenAmount
    load: WrittenLoad | None
    tempo: WrittenTempo | None
    rest_s: int
    feels: WrittenLoad | None = None


class WrittenClock(_Written):
    """How often a set starts, or how long as many rounds as possible go on, in seconds, and where they end anyway."""

    every_s: int | None = None
    lasts_s: int | None = None
    up_to: int | None = None


class WrittenDose(_Written):
    """One exercise of a session. ``rounds`` is true where its sets are rounds of a superset or circuit.

    ``choices`` are ids from club.yml: those of the members who do it in the place of the exercise before it. ``clock``
    is what its block keeps to, where it runs by the clock. As many rounds as possible are as many sets as they are
    counted as.
    """

    exercise: str
    rounds: bool
    measure: Measure
    sides: Sides
    sets: list[WrittenSet] = Field(min_length=1)
    choices: list[str] = []
    optional: bool = False
    clock: WrittenClock | None = None


class WrittenTime(_Written):
    """How long the session takes without its warm-up, in seconds."""

    low_s: int
    high_s: int


class WrittenDay(_Written):
    """One session on its day."""

    session: str
    date: date | None
    time: WrittenTime
    doses: list[WrittenDose]


class WrittenLine(_Written):
    """One value of a reviewed part: its key, the key without numbers, and the value as a coach writes it."""

    key: str
    field: str
    value: str


class WrittenExercise(_Written):
    """An exercise's name, and every value of the parts that a physiotherapist reviews."""

    name: str
    parts: dict[str, list[WrittenLine]]


class WrittenPlan(_Written):
    """A plan's name, and its sessions by week and place: a weekday, or session-1 where it is any day."""

    name: str
    weeks: dict[int, dict[str, WrittenDay]]


class WrittenState(_Written):
    """A programme with every number explicit."""

    format: Literal["setwright resolved programme"]
    version: Literal[3]
    exercises: dict[str, WrittenExercise]
    plans: dict[str, WrittenPlan]
    texts: dict[str, list[WrittenLine]]


def schema() -> str:
    """Return the JSON Schema (2020-12) of a resolved programme."""
    whole = {"$schema": DIALECT, **WrittenState.model_json_schema(mode="serialization")}
    return json.dumps(whole, ensure_ascii=False, indent=1) + "\n"


def to_json(state: State) -> str:
    """Return a state as JSON."""
    return as_json(written(state))


def as_json(whole: WrittenState) -> str:
    """Return a written state as JSON."""
    return json.dumps(whole.model_dump(mode="json"), ensure_ascii=False, indent=1) + "\n"


def written(state: State) -> WrittenState:
    """Return a state as it is written: numbers with their units."""
    return WrittenState(
        format=FORMAT,
        version=VERSION,
        exercises={
            ident: WrittenExercise(
                name=state.names[ident],
                parts=_write_lines(parts),
            )
            for ident, parts in state.exercises.items()
        },
        texts=_write_lines(state.texts),
        plans={
            plan: WrittenPlan(
                name=name,
                weeks={
                    week: {day: _write_day(one) for day, one in days.items()} for week, days in state.days[plan].items()
                },
            )
            for plan, name in state.plans.items()
        },
    )


def from_json(text: str) -> State:
    """Return the state that was written as JSON.

    Raises:
        StateError: where the text is something else, or was written by another version of this format.
    """
    try:
        data = json.loads(text)
        if isinstance(data, dict) and data.get("format") == FORMAT and data.get("version") != VERSION:
            raise StateError(f"this is no resolved programme of version {VERSION}: write it again, 'setwright resolve'")
        whole = WrittenState.model_validate(data)
        return State(
            exercises={ident: _read_lines(exercise.parts) for ident, exercise in whole.exercises.items()},
            texts=_read_lines(whole.texts),
            names={ident: exercise.name for ident, exercise in whole.exercises.items()},
            plans={ident: plan.name for ident, plan in whole.plans.items()},
            days={
                ident: {week: {day: _read_day(one) for day, one in days.items()} for week, days in plan.weeks.items()}
                for ident, plan in whole.plans.items()
            },
        )
    except (ValueError, ValidationError, RecursionError) as error:
        raise StateError("this file is no resolved programme; 'setwright resolve' writes one") from error


def _write_lines(lines: Mapping[str, Sequence[Line]]) -> dict[str, list[WrittenLine]]:
    return {
        name: [WrittenLine(key=line.key, field=line.field, value=line.text) for line in of_it]
        for name, of_it in lines.items()
    }


def _read_lines(lines: Mapping[str, Sequence[WrittenLine]]) -> dict[str, list[Line]]:
    return {name: [Line(line.key, line.value, line.field) for line in of_it] for name, of_it in lines.items()}


def _write_day(day: DayState) -> WrittenDay:
    time = WrittenTime(low_s=day.time.low_s, high_s=day.time.high_s)
    return WrittenDay(
        session=day.session,
        date=date.fromisoformat(day.date) if day.date else None,
        time=time,
        doses=[_write_dose(one) for one in day.doses],
    )


def _read_day(day: WrittenDay) -> DayState:
    time = TimeRange(day.time.low_s, day.time.high_s)
    return DayState(day.session, day.date.isoformat() if day.date else "", time, [_read_dose(one) for one in day.doses])


def _write_dose(state: DoseState) -> WrittenDose:
    dose = state.dose
    sets = [_write_set(one, _AMOUNT_UNITS[dose.measure]) for one in dose.sets]
    kept = dose.clock
    return WrittenDose(
        exercise=state.exercise,
        rounds=state.rounds,
        measure=dose.measure,
        sides=dose.sides,
        sets=sets,
        choices=list(state.choices),
        optional=state.optional,
        clock=WrittenClock(every_s=kept.every_s, lasts_s=kept.lasts_s, up_to=kept.up_to) if kept is not None else None,
    )


def _read_dose(written: WrittenDose) -> DoseState:
    sets = tuple(_read_set(one) for one in written.sets)
    kept = written.clock
    clock = Clock(kept.every_s, kept.lasts_s, kept.up_to) if kept is not None else None
    dose = Dose(written.measure, written.sides, sets, clock)
    return DoseState(written.exercise, written.rounds, dose, tuple(written.choices), written.optional)


def _write_set(one: Set, unit: AmountUnit) -> WrittenSet:
    tempo = one.tempo
    return WrittenSet(
        kind=one.kind,
        amount=_write_amount(one.amount, unit),
        load=_write_load(one.load) if one.load is not None else None,
        tempo=WrittenTempo(
            lowering_s=tempo.lowering_s,
            pause_low_s=tempo.pause_low_s,
            lifting_s=tempo.lifting_s,
            pause_high_s=tempo.pause_high_s,
        )
        if tempo is not None
        else None,
        rest_s=one.rest_s,
        feels=_write_load(one.feels) if one.feels is not None else None,
    )


def _read_set(written: WrittenSet) -> Set:
    tempo = written.tempo
    return Set(
        amount=_read_amount(written.amount),
        load=parse_load(written.load.written) if written.load is not None else None,
        tempo=Tempo(tempo.lowering_s, tempo.pause_low_s, tempo.lifting_s, tempo.pause_high_s) if tempo else None,
        rest_s=written.rest_s,
        kind=written.kind,
        feels=parse_load(written.feels.written) if written.feels is not None else None,
    )


def _write_amount(amount: Span, unit: AmountUnit) -> WrittenAmount:
    leave, up_to = (amount.leave, amount.up_to) if isinstance(amount, Open) else (None, None)
    return WrittenAmount(low=Fraction(amount.low), high=Fraction(amount.high), unit=unit, leave=leave, up_to=up_to)


def _read_amount(written: WrittenAmount) -> Span:
    low, high = _count(written.low), _count(written.high)
    return Span(low, high) if written.leave is None else Open(low, high, written.leave, written.up_to)


def _count(number: Fraction) -> int | Fraction:
    return int(number) if number.denominator == 1 else number


def _write_load(load: Load) -> WrittenLoad:
    match load:
        case BodyWeightShare():
            return _numbered(load, "% bodyweight", load.percent)
        case OneRepMaxShare():
            return _numbered(load, "% 1RM", load.percent)
        case HelpShare():
            return _numbered(load, "% bodyweight of help", load.percent)
        case HelpWeight():
            return _numbered(load, "kg of help" if load.unit == "kg" else "lb of help", load.number)
        case AddedWeight():
            return _numbered(load, "kg added" if load.unit == "kg" else "lb added", load.number)
        case Weight():
            return _numbered(load, load.unit, load.number)
        case Effort():
            return _numbered(load, "RPE", load.rpe)
        case Reserve():
            return _numbered(load, "reps in reserve", Fraction(load.reps))
        case Band():
            return WrittenLoad(written=str(load), unit="band of help" if load.helps else "band", band=load.name)


def _numbered(load: Load, unit: LoadUnit, number: Fraction) -> WrittenLoad:
    return WrittenLoad(written=str(load), unit=unit, number=number, per_hand=load.per_hand)
