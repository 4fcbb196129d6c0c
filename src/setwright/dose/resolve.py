"""From a programme to explicit doses: every week, every session, every exercise."""

from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from typing import Any

from setwright.dose.bands import Limit, LoadBand, load_bands
from setwright.dose.change import changes_between, own_changes, round_changes
from setwright.dose.dose import Dose
from setwright.dose.loads import Choice, choose_weight
from setwright.dose.progression import double_at, load_at, value_at
from setwright.dose.resolved import (
    ResolvedBlock,
    ResolvedItem,
    ResolvedPlan,
    ResolvedSession,
    ResolvedWeek,
    Skipped,
    Slot,
)
from setwright.dose.timing import USUAL_CHANGE_OVER_S, USUAL_REST_S, block_time, session_time
from setwright.dose.week_kind import Remains, remains_in, share_of_count, share_of_load
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare, Load, OneRepMaxShare, Weight
from setwright.model.plan import Change, Plan
from setwright.model.prescription import Prescription
from setwright.model.programme import Programme
from setwright.model.progress import Climb, Progress
from setwright.model.session import Block, Session
from setwright.model.vocabulary import WEEKDAYS, Weekday

_BLOCK_NAMES = {"straight": "Straight sets", "superset": "Superset", "circuit": "Circuit"}
_KEEPS_ALL = Remains()


def resolve(programme: Programme) -> tuple[ResolvedPlan, ...]:
    """Return every plan with every number explicit, in order of their first day and id."""
    plans = sorted(programme.plans.items(), key=lambda pair: (pair[1].starts, pair[0]))
    bands = _Bands(programme)
    return tuple(_PlanResolver(programme, ident, plan, bands).resolve() for ident, plan in plans)


@dataclass
class _Counted:
    """How often each session has been trained so far, and the last dose of each of its exercises."""

    trained: dict[str, int] = field(default_factory=dict)
    last_dose: dict[tuple[str, Slot], Dose] = field(default_factory=dict)


class _PlanResolver:
    def __init__(self, programme: Programme, ident: str, plan: Plan, bands: "_Bands") -> None:
        self.programme, self.ident, self.plan, self.bands = programme, ident, plan, bands
        self.counted = _Counted()

    def resolve(self) -> ResolvedPlan:
        weeks, number = [], 0
        for index, phase in enumerate(self.plan.phases):
            for phase_week in range(1, phase.weeks + 1):
                number += 1
                weeks.append(self.week(number, index, phase_week))
        return ResolvedPlan(self.ident, self.plan, tuple(weeks))

    def week(self, number: int, phase_index: int, phase_week: int) -> ResolvedWeek:
        phase = self.plan.phases[phase_index]
        starts = self.plan.starts + timedelta(weeks=number - 1)
        remains = remains_in(phase, phase_week)
        changes = [change for change in self.plan.changes if change.week == number]
        sessions, skipped = [], []
        for written_day, written_ident in phase.sessions.items():
            day, ident, reasons, left_out = _moved(written_day, written_ident, changes)
            on = _date_of(day, starts)
            if left_out is not None:
                skipped.append(Skipped(day, on, ident, left_out))
                continue
            doses = [c for c in changes if c.doses and _means(c, written_day, ident)]
            sessions.append(self.session(number, day, on, ident, remains, doses, reasons))
        if remains.kind == "normal":
            for ident in {session.session for session in sessions}:
                self.counted.trained[ident] = self.counted.trained.get(ident, 0) + 1
        for session in sessions:
            for item in session.items:
                self.counted.last_dose[session.session, item.slot] = item.dose
        return ResolvedWeek(
            number=number,
            starts=starts,
            ends=starts + timedelta(days=6),
            phase=phase_index,
            phase_week=phase_week,
            remains=remains,
            sessions=tuple(sorted(sessions, key=lambda s: s.date)),
            skipped=tuple(sorted(skipped, key=lambda s: s.date)),
        )

    def session(
        self,
        week: int,
        day: Weekday,
        on: date,
        ident: str,
        remains: Remains,
        changes: list[Change],
        reasons: list[str],
    ) -> ResolvedSession:
        written = self.programme.sessions[ident]
        count = self.counted.trained.get(ident, 0)
        # Lighter and taper weeks stand where the last real week stood.
        trained = count if remains.kind == "normal" else max(0, count - 1)
        names = _names(written)
        blocks = tuple(
            self.block(ident, index, block, names[index], trained, remains, changes)
            for index, block in enumerate(written.blocks)
        )
        whole = [change.why for change in changes if change.exercise is None]
        return ResolvedSession(
            plan=self.ident,
            week=week,
            day=day,
            date=on,
            session=ident,
            remains=remains,
            trained=trained,
            first_time=not any(key[0] == ident for key in self.counted.last_dose),
            blocks=blocks,
            time=session_time([block.time for block in blocks]),
            reasons=(*reasons, *whole),
        )

    def block(
        self, ident: str, index: int, block: Block, name: str, trained: int, remains: Remains, changes: list[Change]
    ) -> ResolvedBlock:
        rest_s = rest_at(block, trained)
        items = []
        for place, written in enumerate(block.exercises):
            own = [c for c in changes if c.exercise in (None, written.exercise)]
            items.append(self.item((index, place), block, written, rest_s, trained, remains, own))
        for change in changes:
            if change.exercise is None and change.rest is not None:
                rest_s = change.rest
        change_over_s = block.change_over if block.change_over is not None else USUAL_CHANGE_OVER_S[block.kind]
        together, items = self.compared(ident, block, items)
        return ResolvedBlock(
            index=index,
            kind=block.kind,
            name=name,
            rest_s=rest_s,
            change_over_s=change_over_s,
            items=tuple(items),
            time=block_time(block.kind, [item.dose for item in items], rest_s, change_over_s),
            note=block.note,
            changes=together,
        )

    def compared(
        self, ident: str, block: Block, items: list[ResolvedItem]
    ) -> tuple[tuple[str, ...], list[ResolvedItem]]:
        """Return what changed for the whole block since the last time, and the items with what changed for each."""
        befores = [self.counted.last_dose.get((ident, item.slot)) for item in items]
        pairs = [(before, item.dose) for before, item in zip(befores, items, strict=True) if before is not None]
        shared = {round_changes(before, now) for before, now in pairs}
        together = shared.pop() if block.kind != "straight" and len(shared) == 1 else None
        compared = []
        for before, item in zip(befores, items, strict=True):
            words: tuple[str, ...] = ()
            if before is not None:
                whole = changes_between(before, item.dose, rounds=block.kind != "straight")
                words = whole if together is None else own_changes(before, item.dose)
            compared.append(replace(item, changes=words))
        return together or (), compared

    def item(
        self,
        slot: Slot,
        block: Block,
        written: Prescription,
        block_rest_s: int,
        trained: int,
        remains: Remains,
        changes: list[Change],
    ) -> ResolvedItem:
        exercise = self.programme.exercises[written.exercise]
        dose = lightened(prescribed(block, written, exercise, block_rest_s, trained), remains)
        for change in changes:
            dose = overridden(dose, change)
        kit = self.bands.weighted_kit(written, exercise)
        return ResolvedItem(
            slot=slot,
            exercise=written.exercise,
            dose=dose,
            kit=kit,
            bands=self.bands.over(dose.load, kit, exercise),
            choice=self.bands.fixed(dose.load, kit, exercise),
            changes=(),
            reasons=tuple(change.why for change in changes if change.exercise is not None),
        )


def rest_at(block: Block, trained: int) -> int:
    """Return a block's rest in seconds after so many trained weeks."""
    start = block.rest if block.rest is not None else USUAL_REST_S[block.kind]
    return value_at(start, block.progress.rest if block.progress else None, trained)


def prescribed(block: Block, written: Prescription, exercise: Exercise, block_rest_s: int, trained: int) -> Dose:
    """Return the dose after so many trained weeks, before lighter weeks, tapers and single changes."""
    progress = written.progress or Progress()
    measure = written.measure
    amount: Any = getattr(written, measure)
    climb: Climb[Any] | None = getattr(progress, measure)
    load = written.load
    if progress.then is not None and load is not None and climb is not None:
        amount, load = double_at(amount, climb, load, progress.then.load, trained)
    else:
        amount, load = value_at(amount, climb, trained), load_at(load, progress.load, trained)
    tempo = written.tempo or exercise.tempo
    if progress.tempo is not None:
        tempo = progress.tempo.weeks[min(trained, len(progress.tempo.weeks) - 1)]
    rest_s = written.rest if written.rest is not None else block_rest_s
    if progress.rest is not None:
        first_s = written.rest if written.rest is not None else rest_at(block, 0)
        rest_s = value_at(first_s, progress.rest, trained)
    return Dose(
        sets=_sets(block, written, progress, trained),
        measure=measure,
        amount=amount,
        sides=exercise.sides,
        tempo=tempo if measure in ("reps", "work") else None,
        load=load,
        rest_s=rest_s,
    )


def lightened(dose: Dose, remains: Remains) -> Dose:
    """Return what a lighter week or a taper leaves of a dose."""
    if remains == _KEEPS_ALL:
        return dose
    amount = dose.amount
    if remains.reps != 100 and dose.measure != "distance":
        amount = share_of_count(int(dose.amount), remains.reps)
    return replace(
        dose,
        sets=share_of_count(dose.sets, remains.sets),
        amount=amount,
        load=share_of_load(dose.load, remains.load),
    )


def overridden(dose: Dose, change: Change) -> Dose:
    """Return a dose with the numbers that a change sets for one week."""
    numbers = change.doses
    amount = numbers.get(dose.measure, dose.amount)
    return replace(
        dose,
        sets=numbers.get("sets", dose.sets),
        amount=amount,
        load=numbers.get("load", dose.load),
        tempo=numbers.get("tempo", dose.tempo),
        rest_s=numbers.get("rest", dose.rest_s),
    )


def _sets(block: Block, written: Prescription, progress: Progress, trained: int) -> int:
    of_block = block.progress
    if block.kind != "straight":
        return value_at(block.rounds or 1, of_block.rounds if of_block else None, trained)
    if written.sets is not None:
        return value_at(written.sets, progress.sets, trained)
    return value_at(block.sets or 1, progress.sets or (of_block.sets if of_block else None), trained)


def _moved(day: Weekday, ident: str, changes: list[Change]) -> tuple[Weekday, str, list[str], str | None]:
    """Return the day and session after this week's changes, the reasons, and the reason to skip it, if any."""
    reasons: list[str] = []
    written_day = day
    for change in changes:
        if not _means(change, written_day, ident):
            continue
        if change.skip:
            return day, ident, reasons, change.why
        if change.move_to is not None:
            reasons.append(f"Moved from {written_day}: {change.why}")
            day = change.move_to
        elif change.do_instead is not None:
            ident = change.do_instead
            reasons.append(change.why)
    return day, ident, reasons, None


def _means(change: Change, day: Weekday, ident: str) -> bool:
    """Say whether a change is about that day's session; where it names both day and session, both must fit."""
    return change.day in (None, day) and change.session in (None, ident)


def _date_of(day: Weekday, week_starts: date) -> date:
    return week_starts + timedelta(days=(WEEKDAYS.index(day) - week_starts.weekday()) % 7)


def _names(session: Session) -> list[str]:
    """Name the blocks that the coach left unnamed: Superset 1, Superset 2, Circuit."""
    names = []
    for index, block in enumerate(session.blocks):
        same = [i for i, other in enumerate(session.blocks) if other.kind == block.kind and other.name is None]
        number = f" {same.index(index) + 1}" if block.name is None and len(same) > 1 else ""
        names.append(block.name or f"{_BLOCK_NAMES[block.kind]}{number}")
    return names


class _Bands:
    """Load bands, computed once for each different prescription."""

    def __init__(self, programme: Programme) -> None:
        self.club = programme.club
        self.known: dict[object, tuple[LoadBand, ...]] = {}

    def weighted_kit(self, written: Prescription, exercise: Exercise) -> str | None:
        """Return the first kit of the exercise that comes in weights."""
        return next((k for k in written.kit or exercise.kit if self.club.weights_kg(k)), None)

    def over(self, load: Load | None, kit: str | None, exercise: Exercise) -> tuple[LoadBand, ...]:
        if kit is None or not isinstance(load, BodyWeightShare | OneRepMaxShare):
            return ()
        per_hand = getattr(load, "per_hand", False)
        owned = self.club.weights_kg(kit, per_hand)
        if not owned:
            return ()
        limit = limit_of(exercise, per_hand)
        key = (load, kit, limit)
        if key not in self.known:
            start, end = self.club.body_weight.from_, self.club.body_weight.to
            if isinstance(load, OneRepMaxShare):
                start, end = (owned[0] * 100 / load.percent, owned[-1] * 100 / load.percent)
                limit = Limit(kg=limit.kg)  # a share of body weight says nothing about a share of 1RM
            self.known[key] = load_bands(load.percent, owned, start, end, limit)
        return self.known[key]

    def fixed(self, load: Load | None, kit: str | None, exercise: Exercise) -> Choice | None:
        if kit is None or not isinstance(load, Weight):
            return None
        owned = self.club.weights_kg(kit, load.per_hand)
        # A limit as a share of body weight must hold for the lightest member too.
        limit_kg = limit_of(exercise, load.per_hand).at(self.club.body_weight.from_)
        return choose_weight(load.kg, owned, limit_kg) if owned else None


def limit_of(exercise: Exercise, per_hand: bool) -> Limit:
    """Return an exercise's load limit on the same footing as a load: in all, or in each hand."""
    limit = exercise.limits.load if exercise.limits else None
    if not isinstance(limit, BodyWeightShare | Weight):
        return Limit()
    exact = limit.percent if isinstance(limit, BodyWeightShare) else limit.kg
    if limit.per_hand != per_hand:
        exact = exact / 2 if per_hand else exact * 2
    return Limit(percent=exact) if isinstance(limit, BodyWeightShare) else Limit(kg=exact)
