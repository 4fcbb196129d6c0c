"""From a programme to explicit doses: every week, every session, every exercise."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from datetime import date

from setwright.dose.by_the_clock import on_the_beat, rounds_in, time_on_the_beat, with_what_is_left
from setwright.dose.change import Difference, changes_between, own_changes, round_changes
from setwright.dose.choosing import Course, any_of, picks_in
from setwright.dose.dose import Clock
from setwright.dose.heights import heights_of
from setwright.dose.moving import Placed, means, placed
from setwright.dose.prescribing import lightened, overridden, prescribed, rest_at
from setwright.dose.ramping import led_up_to, ramp_takes
from setwright.dose.resolved import (
    Group,
    Reason,
    ResolvedBlock,
    ResolvedItem,
    ResolvedPlan,
    ResolvedSession,
    ResolvedWeek,
    Skipped,
    Take,
)
from setwright.dose.sequence import Step, block_steps
from setwright.dose.taken import in_hand
from setwright.dose.taking import Weights
from setwright.dose.timing import USUAL_CHANGE_OVER_S, TimeRange, block_time, session_time
from setwright.dose.week_kind import Remains, remains_after, remains_in
from setwright.model.amounts import Rests
from setwright.model.calendar import Break, slug, week_after, week_starts
from setwright.model.plan import Change, Plan
from setwright.model.prescription import Prescription
from setwright.model.programme import Programme
from setwright.model.session import Block, Session, Slot
from setwright.model.vocabulary import WEEKDAYS, Weekday


def resolve(programme: Programme) -> tuple[ResolvedPlan, ...]:
    """Return every plan with every number explicit, in order of their first day and id; those without a date last."""
    plans = sorted(programme.plans.items(), key=lambda pair: (min(pair[1].groups.values(), default=date.max), pair[0]))
    bands = Weights(programme)
    return tuple(_PlanResolver(programme, ident, plan, bands).resolve() for ident, plan in plans)


@dataclass
class _Counted:
    """How often each session has been trained so far, and each of its exercises as it was the last time."""

    trained: dict[str, int] = field(default_factory=dict)
    last: dict[tuple[str, Slot], ResolvedItem] = field(default_factory=dict)


class _PlanResolver:
    def __init__(self, programme: Programme, ident: str, plan: Plan, bands: Weights) -> None:
        self.programme, self.ident, self.plan, self.bands = programme, ident, plan, bands
        self.counted = _Counted()

        self.groups = tuple(
            Group(name, slug(name), week_starts(day, plan.week_count, plan.breaks)) for name, day in plan.groups.items()
        )
        self.after = self.breaks_before()

    def resolve(self) -> ResolvedPlan:
        weeks = tuple(self.week(number) for number in range(1, self.plan.week_count + 1))
        return ResolvedPlan(self.ident, self.plan, weeks, self.groups)

    def week(self, number: int) -> ResolvedWeek:
        phase_index, phase_week = self.plan.phase_of(number)
        after = self.after.get(number)
        remains = remains_in(self.plan.phases[phase_index], phase_week)
        if after is not None and after.coming_back is not None:
            remains = remains_after(after.coming_back, remains)
        changes = [change for change in self.plan.changes if change.week == number]
        sessions: list[ResolvedSession] = []
        skipped: list[Skipped] = []
        for one in self.in_order(placed(planned, changes) for planned in self.plan.planned(number)):
            if one.left_out is not None:
                on = self.date_of(number, one)
                skipped.append(Skipped(one.day, one.planned.number, on, one.session, one.left_out))
                continue
            doses = [c for c in changes if c.doses and means(c, one.planned, one.session)]
            before = sum(session.day == one.day for session in sessions)
            place = one.planned.number if one.day is None else before + 1
            sessions.append(self.session(number, one, place, remains, doses))
        if remains.kind == "normal":
            for ident in {session.session for session in sessions}:
                self.counted.trained[ident] = self.counted.trained.get(ident, 0) + 1
        for session in sessions:
            for item in session.all_items:
                self.counted.last[session.session, item.slot] = item
        starts, ends = self.groups[0].span_of(number) if self.groups else (None, None)
        return ResolvedWeek(
            number=number,
            starts=starts,
            ends=ends,
            phase=phase_index,
            phase_week=phase_week,
            remains=remains,
            sessions=tuple(sessions),
            skipped=tuple(skipped),
            after=after,
        )

    def breaks_before(self) -> dict[int, Break]:
        """Return the weeks that come right after a break, with it, where it is the same week for every group."""
        found = {}
        for one in self.plan.breaks:
            weeks = {week_after(group.starts, one) for group in self.groups}
            week = weeks.pop()
            if week is not None and not weeks:
                found[week] = one
        return found

    def in_order(self, week: Iterable[Placed]) -> list[Placed]:
        """Return a week's sessions day by day, as they are done; where the days are open, in the order written."""
        return sorted(week, key=lambda one: 0 if one.day is None else self.day_of_week(one.day))

    def day_of_week(self, day: Weekday) -> int:
        """Return which day of the plan's weeks a weekday is, from 0."""
        return (WEEKDAYS.index(day) - WEEKDAYS.index(self.plan.first_weekday)) % 7

    def date_of(self, week: int, one: Placed) -> date | None:
        """Return the date of the plan's first start, where there is one and the day is fixed."""
        return self.groups[0].date_of(week, one.day) if self.groups and one.day is not None else None

    def since_start(self, week: int, one: Placed) -> int:
        """Return the days from the plan's first one; open days are spread evenly over their week."""
        starts = self.groups[0].starts if self.groups else ()
        first = (starts[week - 1] - starts[0]).days if starts else 7 * (week - 1)
        if one.day is not None:
            return first + self.day_of_week(one.day)
        return first + 7 * (one.planned.number - 1) // len(self.plan.planned(week))

    def session(self, week: int, one: Placed, number: int, remains: Remains, changes: list[Change]) -> ResolvedSession:
        ident = one.session
        written = self.programme.sessions[ident]
        count = self.counted.trained.get(ident, 0)
        # Lighter and taper weeks stand where the last real week stood.
        trained = count if remains.kind == "normal" else max(0, count - 1)
        numbers = _numbers(written)
        blocks = tuple(
            self.block(ident, index, block, numbers[index], trained, remains, changes)
            for index, block in enumerate(written.blocks)
        )
        whole = [Reason(change.why) for change in changes if change.exercise is None]
        return ResolvedSession(
            plan=self.ident,
            week=week,
            day=one.day,
            number=number,
            date=self.date_of(week, one),
            since_start=self.since_start(week, one),
            at=written.at,
            planned=one.planned.place,
            session=ident,
            remains=remains,
            trained=trained,
            first_time=not any(key[0] == ident for key in self.counted.last),
            blocks=blocks,
            time=session_time([block.time for block in blocks]),
            reasons=(*one.reasons, *whole),
        )

    def block(
        self,
        ident: str,
        index: int,
        block: Block,
        number: int | None,
        trained: int,
        remains: Remains,
        changes: list[Change],
    ) -> ResolvedBlock:
        rests_s = rest_at(block, trained)
        found = {}
        for place, written in block.prescriptions():
            own = [c for c in changes if c.exercise in (None, written.exercise)]
            found[place] = self.item((index, *place), block, written, rests_s, trained, remains, own)
        items = [
            replace(
                found[(place,)],
                optional=written.optional,
                instead=tuple(
                    replace(found[place, way], choices=tuple(one.for_)) for way, one in enumerate(written.instead)
                ),
            )
            for place, written in enumerate(block.exercises)
        ]
        for change in changes:
            if change.exercise is None and change.rest is not None:
                rests_s = (change.rest,)
        change_over_s = block.change_over if block.change_over is not None else USUAL_CHANGE_OVER_S[block.kind]
        items = _by_the_clock(items, rests_s, change_over_s)
        together, items = self.compared(ident, block, items)
        clock = items[0].dose.clock

        def gone_through(chosen: list[ResolvedItem]) -> tuple[tuple[Step, ...], TimeRange]:
            doses = [item.dose for item in chosen]
            if clock is not None and clock.every_s is not None:
                steps = on_the_beat(index, block.kind, doses, clock.every_s)
                return steps, time_on_the_beat(block.kind, doses, clock.every_s)
            names, own_rests_s = [item.exercise for item in chosen], [item.own_rest_s for item in chosen]
            steps = block_steps(index, block.kind, names, doses, rests_s, change_over_s, own_rests_s)
            time = block_time(steps, doses)
            if clock is not None and clock.lasts_s is not None:
                soonest_s = time.low_s if clock.up_to is not None else clock.lasts_s
                time = TimeRange(min(soonest_s, clock.lasts_s), clock.lasts_s)
            return steps, time

        courses, times = [], []
        for picks in picks_in(block):
            chosen = [item.ways[pick] for item, pick in zip(items, picks, strict=True)]
            steps, time = gone_through(chosen)
            core = [way for item, way in zip(items, chosen, strict=True) if not item.optional]
            shortest = TimeRange(0, 0) if block.optional or not core else gone_through(core)[1]
            courses.append(Course(picks, steps))
            times += [time, shortest]
        return ResolvedBlock(
            index=index,
            kind=block.kind,
            name=block.name,
            number=number,
            rests_s=rests_s,
            change_over_s=change_over_s,
            items=tuple(items),
            time=any_of(times),
            steps=courses[0].steps,
            note=block.note,
            changes=together,
            optional=block.optional,
            courses=tuple(courses[1:]),
            clock=clock,
        )

    def compared(
        self, ident: str, block: Block, items: list[ResolvedItem]
    ) -> tuple[tuple[Difference, ...], list[ResolvedItem]]:
        """Return what changed for the whole block since the last time, and the items with what changed for each."""
        befores = [self.counted.last.get((ident, item.slot)) for item in items]
        pairs = [(before.dose, item.dose) for before, item in zip(befores, items, strict=True) if before is not None]
        shared = {round_changes(before, now) for before, now in pairs}
        together = shared.pop() if block.kind != "straight" and len(shared) == 1 else None

        def with_changes(item: ResolvedItem) -> ResolvedItem:
            before = self.counted.last.get((ident, item.slot))
            different: tuple[Difference, ...] = ()
            if before is not None:
                hands = in_hand(before), in_hand(item)
                if together is None:
                    different = changes_between(before.dose, item.dose, block.kind != "straight", hands)
                else:
                    different = own_changes(before.dose, item.dose, hands)
            return replace(item, changes=different, instead=tuple(with_changes(way) for way in item.instead))

        return together or (), [with_changes(item) for item in items]

    def item(
        self,
        slot: Slot,
        block: Block,
        written: Prescription,
        block_rests_s: Rests,
        trained: int,
        remains: Remains,
        changes: list[Change],
    ) -> ResolvedItem:
        exercise = self.programme.exercises[written.exercise]
        planned = prescribed(block, written, exercise, block_rests_s, trained)
        dose = lightened(planned, remains, self.programme.club.bands)
        for change in changes:
            dose = overridden(dose, change)
        dose = led_up_to(dose, written.ramp or ())
        kit = self.bands.weighted_kit(written, exercise)
        takes = tuple(
            Take(
                load,
                self.bands.over(load, kit, exercise),
                self.bands.fixed(load, kit, exercise),
                self.bands.shown_from(load, kit),
            )
            for load in dose.loads
        )
        first = next((take for take in takes if take.load == dose.first.load), None)
        return ResolvedItem(
            slot=slot,
            exercise=written.exercise,
            dose=dose,
            kit=kit,
            kit_name=None if kit is None else self.programme.club.kit_name(kit),
            takes=takes,
            rounds=block.kind != "straight",
            changes=(),
            reasons=tuple(change.why for change in changes if change.exercise is not None),
            heights=heights_of(self.programme.club, exercise, written.kit or exercise.kit, written.height),
            own_rest_s=written.rest[0] if written.rest and block.kind != "straight" else None,
            ramp_takes=ramp_takes(dose, first, self.bands.owned_kg(dose.first.load, kit)),
        )


def _by_the_clock(items: list[ResolvedItem], rests_s: Rests, change_over_s: int) -> list[ResolvedItem]:
    """Return the exercises of a block with the rests, or the rounds, that its clock leaves them."""
    clock = items[0].dose.clock
    if clock is None:
        return items
    rounds = None
    if clock.every_s is None:
        doses, own_rests_s = [item.dose for item in items], [item.own_rest_s for item in items]
        rounds = rounds_in(clock, doses, rests_s, change_over_s, own_rests_s)
    return [_kept_to(item, clock, rounds) for item in items]


def _kept_to(item: ResolvedItem, clock: Clock, rounds: int | None) -> ResolvedItem:
    """Return an exercise, and what may be done in its place, with the rests or the rounds that a clock leaves."""
    dose = item.dose if clock.every_s is None else with_what_is_left(item.dose, clock.every_s)
    dose = dose if rounds is None else dose.of(rounds)
    return replace(item, dose=dose, instead=tuple(_kept_to(way, clock, rounds) for way in item.instead))


def _numbers(session: Session) -> list[int | None]:
    """Count the blocks of each kind that the coach left unnamed, where there are several: superset 1, superset 2."""
    numbers: list[int | None] = []
    for index, block in enumerate(session.blocks):
        same = [i for i, other in enumerate(session.blocks) if other.kind == block.kind and other.name is None]
        numbers.append(same.index(index) + 1 if block.name is None and len(same) > 1 else None)
    return numbers
