"""What stands where in the plans: phases, weeks, the places of an exercise, and how long a session takes."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.dose.timing import TimeRange, in_minutes
from setwright.model.plan import Phase
from setwright.model.prescription import Measure
from setwright.model.routine import Routine
from setwright.model.session import Session, Slot
from setwright.outline.site import Site


@dataclass(frozen=True)
class PhaseView:
    """A phase with its weeks."""

    phase: Phase
    weeks: tuple[ResolvedWeek, ...]


@dataclass(frozen=True)
class Stretch:
    """Sessions of one kind, one after the other, with the same dose, whatever its rest.

    ``weeks`` are those that they stand in, in order; between two of them may lie one without the session. ``rounds``
    says whether its sets are rounds.
    """

    first: ResolvedSession
    weeks: tuple[int, ...]
    dose: Dose
    rounds: bool

    @property
    def kind(self) -> str:
        """What kind of weeks these are."""
        return self.first.remains.kind


@dataclass(frozen=True)
class Appearance:
    """Where an exercise stands in one session of one plan: its doses by week, and the work of each week of the plan.

    ``choices`` are those of the members who do it in the place of another.
    """

    plan: ResolvedPlan
    session: str
    stretches: tuple[Stretch, ...]
    work: tuple[float, ...]
    measure: Measure
    choices: tuple[str, ...] = ()


def phases(plan: ResolvedPlan) -> tuple[PhaseView, ...]:
    """Return the phases of a plan with their weeks."""
    return tuple(
        PhaseView(phase, tuple(week for week in plan.weeks if week.phase == index))
        for index, phase in enumerate(plan.plan.phases)
    )


def week_sets(week: ResolvedWeek) -> int:
    """Return all sets of a week."""
    return sum(item.dose.count for session in week.sessions for item in session.items)


def warm_up_minutes(written: Session, routines: dict[str, Routine]) -> TimeRange | None:
    """Return the time of the shortest and the longest warm-up as it is printed; None where there is none."""
    takes = [routines[ident].takes for ident in written.warm_up]
    return in_minutes(TimeRange(min(takes), max(takes))) if takes else None


def whole_time(session: ResolvedSession, written: Session, routines: dict[str, Routine]) -> TimeRange:
    """Return the session's time as it is printed, with its warm-up; a cool-down may wait for the evening."""
    return session.minutes + (warm_up_minutes(written, routines) or TimeRange(0, 0))


def appearances(site: Site, ident: str) -> list[Appearance]:
    """Return where an exercise stands, session by session, with weeks of equal doses taken together."""
    grouped: dict[tuple[str, str, Slot], list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]] = {}
    for plan, session, item in site.uses.get(ident, []):
        grouped.setdefault((plan.ident, session.session, item.slot), []).append((plan, session, item))
    found = []
    for uses in grouped.values():
        plan, first, item = uses[0]
        rounds = site.programme.sessions[first.session].blocks[item.slot[0]].kind != "straight"
        work = [0.0] * len(plan.weeks)
        for _, session, used in uses:
            work[session.week - 1] += work_of(used.dose)
        stretches = tuple(_stretches(uses, rounds))
        found.append(Appearance(plan, first.session, stretches, tuple(work), item.dose.measure, item.choices))
    return found


def week_before(plan: ResolvedPlan, session: ResolvedSession, item: ResolvedItem) -> int | None:
    """Return the week in which a plan last had an exercise before a session, in any session; None if it is new.

    Whoever does it by a choice may know it from any place; everyone else only from those where it stands for all.
    """
    earlier = [
        other.week
        for other in plan.sessions
        if (other.since_start, other.number) < (session.since_start, session.number)
        and any(one.exercise == item.exercise for one in (other.all_items if item.choices else other.items))
    ]
    return max(earlier, default=None)


def new_movements(plan: ResolvedPlan, session: ResolvedSession) -> list[str]:
    """Return the exercises of a session that the plan had in no session before, each once, in order."""
    new = (item.exercise for item in session.all_items if week_before(plan, session, item) is None)
    return list(dict.fromkeys(new))


def work_of(dose: Dose) -> float:
    """Return the week's work of one dose: repetitions, seconds or metres, over all sets and sides."""
    amount = sum(float(one.amount.high) for one in dose.working) / (100 if dose.measure == "distance" else 1)
    return amount * dose.side_count


def _stretches(uses: list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]], rounds: bool) -> Iterator[Stretch]:
    open_stretch: Stretch | None = None
    for _, session, item in uses:
        if open_stretch and _same(open_stretch.dose, item.dose) and open_stretch.kind == session.remains.kind:
            open_stretch = replace(open_stretch, weeks=(*open_stretch.weeks, session.week))
            continue
        if open_stretch:
            yield open_stretch
        open_stretch = Stretch(session, (session.week,), item.dose, rounds)
    if open_stretch:
        yield open_stretch


def _same(dose: Dose, other: Dose) -> bool:
    return dose.with_sets(rest_s=0) == other.with_sets(rest_s=0)
