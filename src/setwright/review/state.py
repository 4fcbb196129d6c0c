"""A programme boiled down to what two states of it are compared by: texts, limits, doses and what stands beside."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedPlan, ResolvedSession
from setwright.dose.timing import TimeRange
from setwright.model.programme import Programme
from setwright.review.beside import texts_of
from setwright.review.parts import PARTS, Line, lines_of


@dataclass(frozen=True, slots=True)
class DoseState:
    """One exercise of one session in one week; ``rounds`` where its sets are rounds.

    ``choices`` are those of the members who do it in the place of another; ``optional`` is what they may leave out.
    """

    exercise: str
    rounds: bool
    dose: Dose
    choices: tuple[str, ...] = ()
    optional: bool = False


@dataclass(frozen=True, slots=True)
class DayState:
    """One session on its day: its id, date (ISO 8601, or nothing where there is none) and time, every dose in order."""

    session: str
    date: str
    time: TimeRange
    doses: list[DoseState]


@dataclass(frozen=True)
class State:
    """A programme at one moment.

    ``days`` are keyed by plan, week and day, ``plans`` hold their names, and ``texts`` what stands beside the doses, by
    what says it.
    """

    exercises: dict[str, dict[str, list[Line]]] = field(default_factory=dict)
    names: dict[str, str] = field(default_factory=dict)
    plans: dict[str, str] = field(default_factory=dict)
    days: dict[str, dict[int, dict[str, DayState]]] = field(default_factory=dict)
    texts: dict[str, list[Line]] = field(default_factory=dict)


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
                week.number: {session.place: _day(session) for session in week.sessions} for week in plan.weeks
            }
            for plan in plans
        },
        texts=texts_of(programme),
    )


def _day(session: ResolvedSession) -> DayState:
    doses = [
        DoseState(
            way.exercise,
            block.kind != "straight",
            way.dose,
            way.choices,
            block.optional or item.optional,
        )
        for block in session.blocks
        for item in block.items
        for way in item.ways
    ]
    return DayState(session.session, session.date.isoformat() if session.date else "", session.time, doses)
