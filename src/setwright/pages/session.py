"""A session in its week: what a member reads at arm's length while training."""

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.dose.resolved import ResolvedPlan, ResolvedSession
from setwright.outline.addresses import PLANS, plan_path, session_path, week_path
from setwright.outline.site import Site
from setwright.outline.training import new_movements, warm_up_minutes, whole_time
from setwright.pages.page import Crumb, Page
from setwright.phone import session_data
from setwright.wording.blocks import block_name
from setwright.wording.changes import first_time_in_words, in_a_line
from setwright.wording.days import place, session_when
from setwright.wording.language import Language

CUES_SHOWN = 3


@dataclass(frozen=True)
class ChangeLine:
    """What differs from the last time, for one exercise, or for a whole block where ``exercise`` is None."""

    exercise: str | None
    block: str
    words: str


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
    language, say = site.language, site.language.say
    return Page(
        path=session_path(session),
        title=written.name,
        description=say(
            "%(day)s, week %(week)s of %(plan)s. %(aim)s",
            day=session_when(language, plan, session),
            week=session.week,
            plan=plan.plan.name,
            aim=written.aim,
        ),
        template="session.md.jinja",
        context={
            "plan": plan,
            "week": week,
            "phase": plan.plan.phases[week.phase],
            "session": session,
            "for_guide": session_data.markup(session_data.data(site, plan, session)),
            "written": written,
            "kit": site.kit_of(session),
            "easier_kit": site.kit_of_easier_ways(session),
            "changes": changes(language, session),
            "first_time": first_time_in_words(
                language,
                (site.programme.exercises[ident].name for ident in new_movements(plan, session)),
                len({item.exercise for item in session.all_items}),
            ),
            "warm_ups": [(ident, routines[ident]) for ident in written.warm_up],
            "cool_downs": [(ident, routines[ident]) for ident in written.cool_down],
            "whole_time": whole_time(session, written, routines),
            "warm_up_minutes": warm_up_minutes(written, routines),
            "cues_shown": CUES_SHOWN,
            "asks_weight": any(
                take.load.of == "body weight" and take.bands for item in session.all_items for take in item.takes
            ),
        },
        crumbs=(
            Crumb(say("Plans"), PLANS),
            Crumb(plan.plan.name, plan_path(plan.ident)),
            Crumb(say("Week %(week)s", week=session.week), week_path(plan.ident, session.week)),
        ),
        before=_neighbour(site, before),
        after=_neighbour(site, after),
        kind="session",
        written_in=f"sessions/{session.session}.yml",
    )


def _neighbour(site: Site, session: ResolvedSession | None) -> Crumb | None:
    if session is None:
        return None
    name = site.programme.sessions[session.session].name
    day = place(site.language, session)
    label = site.language.say("Week %(week)s, %(day)s: %(session)s", week=session.week, day=day, session=name)
    return Crumb(label, session_path(session))


def changes(language: Language, session: ResolvedSession) -> tuple[ChangeLine, ...]:
    """Return one line for each block and each exercise whose dose differs from the last time."""
    lines = []
    for block in session.blocks:
        name = block_name(language, block)
        lines.append(ChangeLine(None, name, in_a_line(language, block.changes)))
        lines.extend(ChangeLine(item.exercise, name, in_a_line(language, item.changes)) for item in block.items)
    return tuple(line for line in lines if line.words)
