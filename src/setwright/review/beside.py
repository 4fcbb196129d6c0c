"""What members read beside the doses, line by line: notes, kit, warm-ups, aims, reasons, the club and its notices."""

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Any, Final

from pydantic import BaseModel

from setwright.model.club import Barbell, Club, KitEntry, Names, WeightList, WeightSteps
from setwright.model.plan import Phase, Plan
from setwright.model.prescription import MEASURES, Prescription
from setwright.model.programme import Programme
from setwright.model.session import Block, Session
from setwright.model.units import plain_number
from setwright.model.weekly import Rotation
from setwright.review.parts import Line, lines_at, written
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

_IN_DOSES: Final[dict[type[BaseModel], frozenset[str]]] = {
    Session: frozenset({"blocks", "accept"}),
    Block: frozenset({"sets", "rounds", "rest", "exercises", "progress"}),
    Prescription: frozenset(
        {"exercise", "sets", *MEASURES, "load", "feels_like", "tempo", "rest", "progress", "accept"}
    ),
    Plan: frozenset({"starts", "phases", "changes", "accept"}),
    Phase: frozenset({"weeks", "sessions", "lighter", "taper"}),
    Club: frozenset({"kit"}),
}
"""Keys that are compared as doses and days, or are read out in another way here; every other key is a line."""

_SECONDS: Final = frozenset({"takes", "hold", "work", "time_budget", "change_over"})
_KG: Final = frozenset({"from", "to"})


def texts_of(programme: Programme) -> dict[str, list[Line]]:
    """Return everything but exercises and doses that members read, by what says it: a session, a warm-up, the club."""
    found: dict[str, list[Line]] = {"club": list(_club(programme.club))}
    found |= {f"plan {ident}": list(_plan(plan)) for ident, plan in sorted(programme.plans.items())}
    found |= {f"session {ident}": list(_session(one)) for ident, one in sorted(programme.sessions.items())}
    found |= {f"{one.kind} {ident}": list(_lines(one)) for ident, one in sorted(programme.routines.items())}
    found |= {f"source {ident}": list(_lines(one)) for ident, one in sorted(programme.references.items())}
    return found


def _lines(thing: BaseModel, *before: str) -> Iterator[Line]:
    for name, info in type(thing).model_fields.items():
        if name not in _IN_DOSES.get(type(thing), ()):
            yield from lines_at((*before, info.alias or name), getattr(thing, name), _written)


def _club(club: Club) -> Iterator[Line]:
    yield from _lines(club)
    for name, entry in club.kit.items():
        yield from lines_at(("kit", name), _kit(entry), _written)


def _kit(entry: KitEntry) -> str:
    match entry:
        case Barbell():
            return f"a bar of {_kg([entry.bar])}, pairs of {_kg(entry.pairs)}"
        case WeightSteps() | WeightList():
            return f"{_kg(entry.weights_kg)}{', in pairs' if entry.pairs else ''}"
        case Names(names=names):
            return ", ".join(names)
        case list():
            return f"{_listed(size for size in entry if isinstance(size, Fraction))} cm"
        case _:
            return str(entry)


def _kg(weights: Iterable[Fraction]) -> str:
    return f"{_listed(weights)} kg"


def _listed(numbers: Iterable[Fraction]) -> str:
    return ", ".join(plain_number(number) for number in numbers)


def _plan(plan: Plan) -> Iterator[Line]:
    for name, day in plan.groups.items():
        yield from lines_at(("starts", name) if name else ("starts",), day, _written)
    yield from _lines(plan)
    for number, phase in enumerate(plan.phases, 1):
        yield from _lines(phase, "phase", str(number))
        if isinstance(phase.sessions, Rotation):
            yield from lines_at(("phase", str(number), "sessions in turn"), ", ".join(phase.sessions.rotate), _written)
    for change in plan.changes:
        about = change.exercise or change.session or change.day or "every session"
        yield from lines_at(("week", str(change.week), about, "why"), change.why, _written)


def _session(session: Session) -> Iterator[Line]:
    yield from _lines(session)
    for number, block in enumerate(session.blocks, 1):
        yield from _lines(block, "block", str(number))
        for _, one in block.prescriptions():
            yield from _lines(one, one.exercise)


def _written(key: str, value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Fraction):
        return f"{plain_number(value)} {'kg' if key in _KG else 'cm'}"
    return duration(ENGLISH, value) if key in _SECONDS else written(key, value)
