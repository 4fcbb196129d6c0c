"""A session in its week: what a member reads at arm's length while training."""

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.dose.resolved import ResolvedPlan, ResolvedSession
from setwright.outline.addresses import PLANS, plan_path, session_path, week_path
from setwright.outline.site import Site
from setwright.outline.training import whole_time
from setwright.pages.page import Crumb, Page
from setwright.wording.changes import in_words
from setwright.wording.words import KIND_WORDS, block_name, day_long

CUES_SHOWN = 3


@dataclass(frozen=True)
class ChangeLine:
    """What differs from the last time, for one exercise, or for a whole block where ``exercise`` is None."""

    exercise: str | None
    block: str
    words: tuple[str, ...]


def pages(site: Site) -> Iterator[Page]:
    """Yield a page for each session of each week of each plan."""
    for plan in site.plans:
        sessions = list(plan.sessions)
        for index, session in enumerate(sessions):
            before = sessions[index - 1] if index else None
            after = sessions[index + 1] if index + 1 < len(sessions) else None
            yield _page(site, plan, session, before, after)


def _page(
    site: Site,
    plan: ResolvedPlan,
    session: ResolvedSession,
    before: ResolvedSession | None,
    after: ResolvedSession | None,
) -> Page:
    written = site.programme.sessions[session.session]
    routines = site.programme.routines
    week = plan.weeks[session.week - 1]
    return Page(
        path=session_path(session),
        title=written.name,
        description=f"{day_long(session.date)}, week {session.week} of {plan.plan.name}. {written.aim}",
        template="session.md.jinja",
        context={
            "plan": plan,
            "week": week,
            "phase": plan.plan.phases[week.phase],
            "session": session,
            "written": written,
            "kit": site.kit_of(session),
            "kind_words": KIND_WORDS[session.remains.kind],
            "changes": changes(session),
            "warm_ups": [(ident, routines[ident]) for ident in written.warm_up],
            "cool_downs": [(ident, routines[ident]) for ident in written.cool_down],
            "whole_time": whole_time(session, written, routines),
            "cues_shown": CUES_SHOWN,
        },
        crumbs=(
            Crumb("Plans", PLANS),
            Crumb(plan.plan.name, plan_path(plan.ident)),
            Crumb(f"Week {session.week}", week_path(plan.ident, session.week)),
        ),
        before=_neighbour(site, before),
        after=_neighbour(site, after),
        kind="session",
    )


def _neighbour(site: Site, session: ResolvedSession | None) -> Crumb | None:
    if session is None:
        return None
    name = site.programme.sessions[session.session].name
    return Crumb(f"Week {session.week}, {session.day.capitalize()}: {name}", session_path(session))


def changes(session: ResolvedSession) -> tuple[ChangeLine, ...]:
    """Return one line for each block and each exercise whose dose differs from the last time."""
    lines = []
    for block in session.blocks:
        lines.append(ChangeLine(None, block_name(block), in_words(block.changes)))
        lines.extend(ChangeLine(item.exercise, block_name(block), in_words(item.changes)) for item in block.items)
    return tuple(line for line in lines if line.words)
