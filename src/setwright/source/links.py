"""Ids that point from one file to another: each must lead somewhere.

A file that could not be read still counts as existing, so that one mistake gives one finding.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from typing import Any

from pydantic import BaseModel

from setwright.model.amounts import Loads
from setwright.model.choices import Alternative
from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.load import Band, Load
from setwright.model.plan import Change, Plan
from setwright.model.region import REGIONS
from setwright.model.routine import Routine
from setwright.model.session import Session, path_in_block
from setwright.model.text import exercise_target, spans
from setwright.model.units import shown
from setwright.model.weekly import Rotation, planned
from setwright.source.finding import Finding, Position, first_of
from setwright.source.places import missed_place, sessions_at
from setwright.source.set_lists import misfit
from setwright.source.suggest import did_you_mean, which_word

Place = Callable[..., Position]
Key = str | int


@dataclass
class Parts:
    """What could be read of a programme, and the ids of every file, read or not; no ids where a folder is not there."""

    club: Club | None = None
    plans: dict[str, Plan] = field(default_factory=dict)
    sessions: dict[str, Session] = field(default_factory=dict)
    exercises: dict[str, Exercise] = field(default_factory=dict)
    routines: dict[str, Routine] = field(default_factory=dict)
    references: set[str] | None = None
    ids: dict[str, set[str]] = field(default_factory=dict)


def link_findings(parts: Parts, place: Place) -> Iterator[Finding]:
    """Yield a finding for every id that leads nowhere, with the closest one that exists."""
    linker = _Linker(parts, place)
    for ident, exercise in parts.exercises.items():
        yield from linker.first_of(f"exercises/{ident}.yml", linker.exercise, exercise)
    for ident, routine in parts.routines.items():
        yield from linker.first_of(f"routines/{ident}.yml", linker.routine, routine)
    for ident, session in parts.sessions.items():
        yield from linker.first_of(f"sessions/{ident}.yml", linker.session, session)
    for ident, plan in parts.plans.items():
        yield from linker.first_of(f"plans/{ident}.yml", linker.plan, plan)
    if parts.club:
        yield from linker.prose("club.yml", parts.club)
        yield from linker.kit_names("club.yml", parts.club)


class _Linker:
    def __init__(self, parts: Parts, place: Place) -> None:
        self.parts, self.place = parts, place

    def first_of(self, file: str, check: Callable[[str, Any], Iterator[Finding]], thing: Any) -> Iterator[Finding]:
        """Yield what a check finds in a file, but no more than anyone reads."""
        yield from first_of(check(file, thing), self.place(file).file)

    def known(self, kind: str, ident: str, file: str, *path: Key) -> Iterator[Finding]:
        ids = self.parts.ids.get(f"{kind}s")
        if ids is not None and ident not in ids:
            yield self.unknown(kind, ident, ids, file, *path)

    def unknown(self, kind: str, written: str, ids: Iterable[str], file: str, *path: Key) -> Finding:
        message = f"unknown {kind} {shown(written)}"
        return Finding(self.place(file, *path), f"unknown-{kind}", message, did_you_mean(written, ids))

    def exercise(self, file: str, exercise: Exercise) -> Iterator[Finding]:
        for way in ("easier", "harder"):
            for index, variation in enumerate(getattr(exercise, way)):
                if file == f"exercises/{variation.exercise}.yml":
                    message, hint = f"this is its own {way} way", "name another exercise, or write {how: ...}"
                    yield Finding(self.place(file, way, index), "own-variation", message, hint)
                elif variation.exercise is not None:
                    yield from self.known("exercise", variation.exercise, file, way, index)
        for key in ("main", "also"):
            yield from self.regions(getattr(exercise.regions, key), file, "regions", key)
        yield from self.kit(exercise.kit, file, "kit")
        yield from self.sources(exercise.sources, file)
        yield from self.prose(file, exercise)

    def routine(self, file: str, routine: Routine) -> Iterator[Finding]:
        for index, part in enumerate(routine.exercises):
            if part.exercise is not None:
                yield from self.known("exercise", part.exercise, file, "exercises", index, "exercise")
        yield from self.sources(routine.sources, file)
        yield from self.prose(file, routine)

    def session(self, file: str, session: Session) -> Iterator[Finding]:
        for key, kind in (("warm_up", "warm-up"), ("cool_down", "cool-down")):
            for index, ident in enumerate(getattr(session, key)):
                yield from self.routine_of(kind, ident, file, key, index)
        for b, block in enumerate(session.blocks):
            for where, written in block.prescriptions():
                path: tuple[Key, ...] = ("blocks", b, *path_in_block(where))
                if isinstance(written, Alternative):
                    yield from self.choices(written.for_, file, *path, "for")
                yield from self.known("exercise", written.exercise, file, *path, "exercise")
                yield from self.kit(written.kit or [], file, *path, "kit")
                progress = written.progress
                listed = progress.load.weeks if progress and progress.load and progress.load.weeks else []
                yield from self.bands(written.load or (), file, *path, "load")
                for w, loads in enumerate(listed):
                    yield from self.bands(loads, file, *path, "progress", "load", "weeks", w)
        if session.at is not None and self.parts.club is not None and self.parts.club.time_zone is None:
            message, hint = (
                "on which clock? club.yml has no time zone",
                "add 'time_zone: Europe/Vienna', or yours, there",
            )
            yield Finding(self.place(file, "at"), "at-without-zone", message, hint)
        yield from self.prose(file, session)

    def routine_of(self, kind: str, ident: str, file: str, *path: Key) -> Iterator[Finding]:
        found = self.parts.routines.get(ident)
        right = [i for i, routine in self.parts.routines.items() if routine.kind == kind]
        if ident not in self.parts.ids.get("routines", {ident}):
            yield self.unknown(kind, ident, right, file, *path)
        elif found is not None and found.kind != kind:
            message, place = f"'{ident}' is a {found.kind}, not a {kind}", self.place(file, *path)
            yield Finding(place, f"unknown-{kind}", message, did_you_mean(ident, right))

    def plan(self, file: str, plan: Plan) -> Iterator[Finding]:
        yield from self.sessions_of(file, plan)
        yield from self.followed(file, plan)
        for c, change in enumerate(plan.changes):
            yield from self.change(file, c, plan, change)
        yield from self.repeated(file, plan)
        yield from self.prose(file, plan)

    def sessions_of(self, file: str, plan: Plan) -> Iterator[Finding]:
        """Yield a finding for each session of a phase that there is not."""
        for p, phase in enumerate(plan.phases):
            weeks = range(1, phase.weeks + 1) if isinstance(phase.sessions, Rotation) else (1,)
            places = {one.path: one.session for week in weeks for one in planned(phase.sessions, week, "monday")}
            for path, ident in places.items():
                yield from self.known("session", ident, file, "phases", p, *path)

    def followed(self, file: str, plan: Plan) -> Iterator[Finding]:
        """Yield a finding where a plan follows one that there is not, itself, or one that follows it in turn."""
        if plan.follows is None:
            return
        yield from self.known("plan", plan.follows, file, "follows")
        own = file.removeprefix("plans/").removesuffix(".yml")
        chain = [own]
        while (before := self.parts.plans.get(chain[-1])) is not None and before.follows is not None:
            if before.follows in chain:
                if before.follows == own:
                    said = (
                        "this plan follows itself" if len(chain) == 1 else f"'{own}' and '{chain[1]}' follow each other"
                    )
                    hint = "name the plan that members come from, or leave 'follows' out"
                    yield Finding(self.place(file, "follows"), "follows-itself", said, hint)
                return
            chain.append(before.follows)

    def repeated(self, file: str, plan: Plan) -> Iterator[Finding]:
        """Yield a finding for each change of what an earlier one changes: the same week, day, session and exercise."""
        first: dict[tuple[Any, ...], int] = {}
        for index, change in enumerate(plan.changes):
            whole = [key for key in ("skip", "move_to", "do_instead") if getattr(change, key)]
            for key in (*whole, *change.doses):
                about = (change.week, change.day, change.number, change.session, change.exercise, key)
                before = first.setdefault(about, index)
                if before != index:
                    line = self.place(file, "changes", before).line
                    message, here = f"line {line} says '{key}' of the same already", ("changes", index, key)
                    yield Finding(self.place(file, *here), "change-repeated", message, "keep one of the two")

    def change(self, file: str, index: int, plan: Plan, change: Change) -> Iterator[Finding]:
        here = ("changes", index)
        week = plan.planned(change.week)
        this_week = [other for other in plan.changes if other.week == change.week]
        instead = {other.do_instead for other in this_week if other.do_instead}
        held = {*(one.session for one in week), *instead}
        if change.do_instead is not None:
            yield from self.known("session", change.do_instead, file, *here, "do_instead")
        if missed := missed_place(plan, change):
            key, message, hint = missed
            yield Finding(self.place(file, *here, key), "change-misses", message, hint)
            return
        there = sessions_at(plan, change)
        if (change.day or change.number) and change.session is not None and change.session not in there:
            where = change.day or f"session {change.number}"
            message = f"{where} of week {change.week} does not hold session '{change.session}'"
            hint = f"write the {'day' if change.day else 'number'} or the session, or '{there[0]}'"
            yield Finding(self.place(file, *here, "session"), "change-misses", message, hint)
            return
        moved_before = [other.move_to for other in plan.changes[:index] if other.week == change.week]
        if change.move_to is not None and change.move_to in (*(one.day for one in week), *moved_before):
            message = f"{change.move_to} of week {change.week} already has a session"
            yield Finding(self.place(file, *here, "move_to"), "change-misses", message, "choose another day")
        if change.session is not None and change.session not in held:
            message = f"week {change.week} does not hold session '{change.session}'"
            hint = did_you_mean(change.session, held)
            yield Finding(self.place(file, *here, "session"), "change-misses", message, hint)
            return
        if change.exercise is None:
            return
        ident = change.session or (there[-1] if there else "")
        session = self.parts.sessions.get(ident)
        if session is not None:
            inside = {written.exercise: written for block in session.blocks for _, written in block.prescriptions()}
            if change.exercise not in inside:
                message = f"session '{ident}' does not hold exercise '{change.exercise}'"
                hint = did_you_mean(change.exercise, inside)
                yield Finding(self.place(file, *here, "exercise"), "change-misses", message, hint)
                return
            measure = inside[change.exercise].measure
            wrong = [key for key in change.doses if key in ("reps", "hold", "work", "distance") and key != measure]
            if wrong:
                message = f"'{change.exercise}' counts {measure} there, not {wrong[0]}"
                yield Finding(self.place(file, *here, wrong[0]), "change-misses", message, f"write '{measure}'")
            elif odd := misfit(plan, change, session):
                key, message, hint = odd
                yield Finding(self.place(file, *here, key), "list-length-differs", message, hint)
            in_rounds = [block for block in session.blocks if block.kind != "straight"]
            if change.rest is not None and any(
                change.exercise == w.exercise for b in in_rounds for _, w in b.prescriptions()
            ):
                message = f"the rest belongs to the whole round that '{change.exercise}' is in"
                hint = "leave out 'exercise' to change every rest of the session"
                yield Finding(self.place(file, *here, "rest"), "change-misses", message, hint)

    def kit(self, kit: Iterable[str], file: str, *path: Key) -> Iterator[Finding]:
        if self.parts.club is None:
            return
        for index, name in enumerate(kit):
            if name not in self.parts.club.kit:
                hint = did_you_mean(name, self.parts.club.kit, f"add {shown(name)} to 'kit' in club.yml")
                yield Finding(self.place(file, *path, index), "unknown-kit", f"the club owns no {shown(name)}", hint)

    def kit_names(self, file: str, club: Club) -> Iterator[Finding]:
        for name in club.kit_names:
            if name not in club.kit:
                place = self.place(file, "kit_names", name, key=True)
                hint = did_you_mean(name, club.kit, "name what stands under 'kit'")
                yield Finding(place, "unknown-kit", f"the club owns no {shown(name)}", hint)

    def bands(self, loads: Loads, file: str, *path: Key) -> Iterator[Finding]:
        for index, load in enumerate(loads):
            yield from self.band(load, file, *path, *((index,) if len(loads) > 1 else ()))

    def band(self, load: Load, file: str, *path: Key) -> Iterator[Finding]:
        if not isinstance(load, Band) or self.parts.club is None:
            return
        names = {name for kit in self.parts.club.kit for name in self.parts.club.names(kit)}
        if load.name not in names:
            message, hint = f"the club owns no {load.name} band", did_you_mean(load.name, names)
            yield Finding(self.place(file, *path), "unknown-kit", message, hint)

    def regions(self, names: Iterable[str], file: str, *path: Key) -> Iterator[Finding]:
        if self.parts.club is None:
            return
        known = (*REGIONS, *self.parts.club.regions)
        for index, name in enumerate(names):
            if name not in known:
                place = self.place(file, *path, index)
                yield Finding(place, "not-a-choice", f"{shown(name)} is not known here", which_word(name, known))

    def choices(self, ids: Iterable[str], file: str, *path: Key) -> Iterator[Finding]:
        for index, ident in enumerate(ids):
            known = self.parts.club.choices if self.parts.club is not None else {ident: ""}
            if ident not in known:
                hint = did_you_mean(ident, known, f"write it under 'choices' in club.yml: '{ident}: I ...'")
                place = self.place(file, *path, index)
                yield Finding(place, "unknown-choice", f"unknown choice {shown(ident)}", hint)

    def sources(self, ids: Iterable[str], file: str) -> Iterator[Finding]:
        known = self.parts.references
        for index, ident in enumerate(ids):
            if known is not None and ident not in known:
                message, place = f"unknown source {shown(ident)}", self.place(file, "sources", index)
                yield Finding(place, "unknown-source", message, did_you_mean(ident, known, "add it to references.yml"))

    def prose(self, file: str, thing: BaseModel) -> Iterator[Finding]:
        """Check the exercise links inside texts, however deep they stand."""
        for path, text in _texts(thing, ()):
            for span in spans(text):
                ident = exercise_target(span.target)
                if ident is not None:
                    yield from self.known("exercise", ident, file, *path)


def named_exercises(thing: BaseModel) -> set[str]:
    """Return the exercises that links in a thing's texts lead to."""
    targets = (exercise_target(span.target) for _, text in _texts(thing, ()) for span in spans(text))
    return {ident for ident in targets if ident is not None}


def _texts(value: Any, path: tuple[Key, ...]) -> Iterator[tuple[tuple[Key, ...], str]]:
    if isinstance(value, BaseModel):
        for name, info in type(value).model_fields.items():
            yield from _texts(getattr(value, name), (*path, info.alias or name))
    elif isinstance(value, list):
        for index, item in enumerate(value):
            yield from _texts(item, (*path, index))
    elif isinstance(value, dict):
        for key, item in value.items():
            yield from _texts(item, (*path, key))
    elif isinstance(value, str) and "](" in value:
        yield path, value
