"""What stands where in the plans: phases, weeks, the places of an exercise, and how long a session takes."""

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.dose.timing import TimeRange
from setwright.model.plan import Phase
from setwright.model.routine import Routine
from setwright.model.session import Session
from setwright.outline.site import Site
from setwright.wording.words import dose_in_words


@dataclass(frozen=True)
class PhaseView:
    """A phase with its weeks."""

    phase: Phase
    weeks: tuple[ResolvedWeek, ...]


@dataclass(frozen=True)
class Stretch:
    """Weeks in a row with the same dose."""

    first: ResolvedSession
    last: ResolvedSession
    dose: str
    kind: str


@dataclass(frozen=True)
class Appearance:
    """Where an exercise stands in one session of one plan: its doses by week, and the work of each week of the plan."""

    plan: ResolvedPlan
    session: str
    stretches: tuple[Stretch, ...]
    work: tuple[float, ...]
    unit: str


def phases(plan: ResolvedPlan) -> tuple[PhaseView, ...]:
    """Return the phases of a plan with their weeks."""
    return tuple(
        PhaseView(phase, tuple(week for week in plan.weeks if week.phase == index))
        for index, phase in enumerate(plan.plan.phases)
    )


def week_sets(week: ResolvedWeek) -> int:
    """Return all sets of a week."""
    return sum(item.dose.count for session in week.sessions for item in session.items)


def whole_time(session: ResolvedSession, written: Session, routines: dict[str, Routine]) -> TimeRange:
    """Return the session's time with its shortest and its longest warm-up; a cool-down may wait for the evening."""
    warm_ups = [routines[ident].takes for ident in written.warm_up] or [0]
    return session.time + TimeRange(min(warm_ups), max(warm_ups))


def appearances(site: Site, ident: str) -> list[Appearance]:
    """Return where an exercise stands, session by session, with weeks of equal doses taken together."""
    grouped: dict[tuple[str, str, tuple[int, int]], list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]] = {}
    for plan, session, item in site.uses.get(ident, []):
        grouped.setdefault((plan.ident, session.session, item.slot), []).append((plan, session, item))
    found = []
    for uses in grouped.values():
        plan, first, item = uses[0]
        rounds = site.programme.sessions[first.session].blocks[item.slot[0]].kind != "straight"
        work = [0.0] * len(plan.weeks)
        for _, session, used in uses:
            work[session.week - 1] += work_of(used.dose)
        unit = {"reps": "reps", "distance": "metres"}.get(item.dose.measure, "seconds")
        found.append(Appearance(plan, first.session, tuple(_stretches(uses, rounds)), tuple(work), unit))
    return found


def work_of(dose: Dose) -> float:
    """Return the week's work of one dose: repetitions, seconds or metres, over all sets and sides."""
    amount = sum(float(one.amount.high) for one in dose.working) / (100 if dose.measure == "distance" else 1)
    return amount * dose.side_count


def _stretches(uses: list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]], rounds: bool) -> Iterator[Stretch]:
    open_stretch: Stretch | None = None
    for _, session, item in uses:
        said, kind = dose_in_words(item.dose, rounds), session.remains.kind
        if open_stretch and (open_stretch.dose, open_stretch.kind) == (said, kind):
            open_stretch = Stretch(open_stretch.first, session, said, kind)
            continue
        if open_stretch:
            yield open_stretch
        open_stretch = Stretch(session, session, said, kind)
    if open_stretch:
        yield open_stretch
