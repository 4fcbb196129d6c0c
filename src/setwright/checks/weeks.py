"""Which weeks of a plan follow each other: what all checks of growth from week to week share."""

from collections.abc import Iterator

from setwright.dose.resolved import ResolvedPlan, ResolvedWeek
from setwright.model.plan import Plan


def is_full(plan: Plan, week: ResolvedWeek) -> bool:
    """Say whether a week is as planned: normal, nothing left out or exchanged, no dose changed."""
    changed = any(c.skip or c.do_instead or c.doses for c in plan.changes if c.week == week.number)
    return week.remains.kind == "normal" and bool(week.sessions) and not changed


def last_full(plan: ResolvedPlan, before_phase: int) -> ResolvedWeek | None:
    """Return the last week before a phase that is as planned; if there is none, the last normal one."""
    normal = [w for w in plan.weeks if w.phase < before_phase and w.remains.kind == "normal" and w.sessions]
    full = [week for week in normal if is_full(plan.plan, week)]
    return (full or normal)[-1] if normal else None


def week_pairs(plan: ResolvedPlan) -> Iterator[tuple[ResolvedWeek, ResolvedWeek]]:
    """Yield each normal week with the last full one before it.

    Lighter weeks and tapers are passed over, so that coming back from one is no step. A week that a change made is
    judged, and is not what the next one is judged by: made lighter, it makes nothing after it a step.
    """
    full: ResolvedWeek | None = None
    for week in plan.weeks:
        if week.remains.kind != "normal" or not week.sessions:
            continue
        if full is not None:
            yield full, week
        if is_full(plan.plan, week):
            full = week
