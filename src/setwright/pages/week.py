"""A week of a plan: its sessions, and what is different from the week before."""

from collections.abc import Iterator

from setwright.dose.resolved import ResolvedPlan, ResolvedWeek
from setwright.outline.addresses import PLANS, plan_path, week_path
from setwright.outline.site import Site
from setwright.pages.page import Crumb, Page
from setwright.wording.words import span_of_days

KIND_WORDS = {"normal": "", "lighter": "Lighter week", "taper": "Taper"}


def pages(site: Site) -> Iterator[Page]:
    """Yield a page for each week of each plan."""
    for plan in site.plans:
        for week in plan.weeks:
            yield _page(plan, week)


def _page(plan: ResolvedPlan, week: ResolvedWeek) -> Page:
    phase = plan.plan.phases[week.phase]
    return Page(
        path=week_path(plan.ident, week.number),
        title=f"Week {week.number} of {plan.plan.name}",
        description=f"{span_of_days(week.starts, week.ends)}: {phase.aim}",
        template="week.md.jinja",
        context={"plan": plan, "week": week, "phase": phase, "kind_words": KIND_WORDS[week.remains.kind]},
        crumbs=(Crumb("Plans", PLANS), Crumb(plan.plan.name, plan_path(plan.ident))),
        before=_neighbour(plan, week.number - 1),
        after=_neighbour(plan, week.number + 1),
        kind="week",
    )


def _neighbour(plan: ResolvedPlan, number: int) -> Crumb | None:
    if not 1 <= number <= len(plan.weeks):
        return None
    return Crumb(f"Week {number}", week_path(plan.ident, number))
