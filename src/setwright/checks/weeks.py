"""Which weeks of a plan follow each other: what all checks of growth from week to week share."""

from collections.abc import Iterator, Sequence

from setwright.dose.resolved import ResolvedPlan, ResolvedWeek
from setwright.model.plan import Plan
from setwright.model.weekly import Rotation


def is_full(plan: Plan, week: ResolvedWeek) -> bool:
    """Say whether a week is as planned: normal, nothing left out or exchanged, no dose changed."""
    changed = any(c.skip or c.do_instead or c.doses for c in plan.changes if c.week == week.number)
    return week.remains.kind == "normal" and bool(week.sessions) and not changed


def last_full(plan: ResolvedPlan, before_phase: int) -> ResolvedWeek | None:
    """Return the last week before a phase that is as planned; if there is none, the last normal one."""
    normal = [w for w in plan.weeks if w.phase < before_phase and w.remains.kind == "normal" and w.sessions]
    full = [week for week in normal if is_full(plan.plan, week)]
    return (full or normal)[-1] if normal else None


def comparable(plan: Plan, full: Sequence[ResolvedWeek], week: ResolvedWeek) -> list[ResolvedWeek]:
    """Return the full weeks before a week that it can be judged by, in order.

    Where sessions take turns, no week of the phase is like the one before it, and that is no growth: a week is judged
    by the last one with the same sessions, and in the first turn by the weeks before the phase.
    """
    if not isinstance(plan.phases[week.phase].sessions, Rotation):
        return list(full)
    held = sorted(session.session for session in week.sessions)
    return [
        one for one in full if one.phase != week.phase or sorted(session.session for session in one.sessions) == held
    ]


def week_pairs(plan: ResolvedPlan) -> Iterator[tuple[ResolvedWeek, ResolvedWeek]]:
    """Yield each normal week with the last full one before it.

    Lighter weeks and tapers are passed over, so that coming back from one is no step. A week that a change made is
    judged, and is not what the next one is judged by: made lighter, it makes nothing after it a step. Where sessions
    take turns, see ``comparable``.
    """
    full: list[ResolvedWeek] = []
    for week in plan.weeks:
        if week.remains.kind != "normal" or not week.sessions:
            continue
        before = comparable(plan.plan, full, week)
        if before:
            yield before[-1], week
        if is_full(plan.plan, week):
            full.append(week)
