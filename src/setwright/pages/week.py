"""A week of a plan: its sessions, and what is different from the week before."""

from collections.abc import Iterator

from setwright.dose.resolved import ResolvedPlan, ResolvedWeek
from setwright.outline.addresses import PLANS, plan_path, week_path
from setwright.outline.site import Site
from setwright.outline.training import week_before
from setwright.pages.page import Crumb, Page
from setwright.wording.changes import since_last_time
from setwright.wording.days import week_when


def pages(site: Site) -> Iterator[Page]:
    """Yield a page for each week of each plan."""
    for plan in site.plans:
        for week in plan.weeks:
            yield _page(site, plan, week)


def _page(site: Site, plan: ResolvedPlan, week: ResolvedWeek) -> Page:
    phase, language, say = plan.plan.phases[week.phase], site.language, site.language.say
    return Page(
        path=week_path(plan.ident, week.number),
        title=say("Week %(week)s of %(plan)s", week=week.number, plan=plan.plan.name),
        description=f"{when}: {phase.aim}" if (when := week_when(language, plan, week)) else phase.aim,
        template="week.md.jinja",
        context={
            "plan": plan,
            "week": week,
            "phase": phase,
            "since_last_time": since_last_time,
            "week_before": week_before,
            "open_days": any(session.day is None for session in week.sessions),
        },
        crumbs=(Crumb(say("Plans"), PLANS), Crumb(plan.plan.name, plan_path(plan.ident))),
        before=_neighbour(site, plan, week.number - 1),
        after=_neighbour(site, plan, week.number + 1),
        kind="week",
        written_in=f"plans/{plan.ident}.yml",
    )


def _neighbour(site: Site, plan: ResolvedPlan, number: int) -> Crumb | None:
    if not 1 <= number <= len(plan.weeks):
        return None
    return Crumb(site.language.say("Week %(week)s", week=number), week_path(plan.ident, number))
