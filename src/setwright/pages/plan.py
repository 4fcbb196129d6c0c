"""A plan at a glance: its phases, every week, and how the amount of work goes up and down."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from setwright.dose.resolved import ResolvedPlan
from setwright.model.vocabulary import WEEKDAYS, Weekday
from setwright.outline.addresses import PLANS, plan_path
from setwright.outline.site import Site
from setwright.outline.training import phases, week_sets
from setwright.pages.page import Crumb, Page
from setwright.wording.language import Language


@dataclass(frozen=True)
class Bar:
    """One bar of a small chart, in the chart's own units; y grows downwards."""

    x: float
    y: float
    width: float
    height: float
    kind: str
    label: str


def pages(site: Site) -> Iterator[Page]:
    """Yield the list of plans, and a page for each."""
    language, say = site.language, site.language.say
    yield Page(
        path=PLANS,
        title=say("Plans"),
        description=say("All plans of the club."),
        template="plans.md.jinja",
        context={"plans": site.plans},
        crumbs=(),
        kind="plans",
    )
    for plan in site.plans:
        sets = [week_sets(week) for week in plan.weeks]
        yield Page(
            path=plan_path(plan.ident),
            title=plan.plan.name,
            description=plan.plan.for_,
            template="plan.md.jinja",
            context={
                "plan": plan,
                "phases": phases(plan),
                "sets": sets,
                "bars": bars(language, sets, [week.remains.kind for week in plan.weeks], say("sets")),
                "starts_on": starts_on(plan),
                "before": next((other for other in site.plans if other.ident == plan.plan.follows), None),
                "following": [other for other in site.plans if other.plan.follows == plan.ident],
            },
            crumbs=(Crumb(say("Plans"), PLANS),),
            kind="plan",
            written_in=f"plans/{plan.ident}.yml",
        )


def starts_on(plan: ResolvedPlan) -> Weekday | None:
    """Return the weekday on which each week of a plan starts; None where its members or groups differ in it."""
    days = {WEEKDAYS[group.starts[0].weekday()] for group in plan.groups}
    return days.pop() if len(days) == 1 else None


def bars(
    language: Language, values: Sequence[float], kinds: Sequence[str], unit: str, height: float = 60
) -> tuple[Bar, ...]:
    """Return bars for a small chart, one a week, as tall as their value; a week without any has a bar of no height."""
    most = max(values, default=0) or 1
    return tuple(
        Bar(
            x=index * 12,
            y=round(height - value / most * height, 1),
            width=9,
            height=round(value / most * height, 1),
            kind=kind,
            label=language.say("Week %(week)s: %(value)s %(unit)s", week=index + 1, value=f"{value:g}", unit=unit),
        )
        for index, (value, kind) in enumerate(zip(values, kinds, strict=True))
    )
