"""A plan at a glance: its phases, every week, and how the amount of work goes up and down."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from setwright.model.vocabulary import WEEKDAYS
from setwright.outline.addresses import PLANS, plan_path
from setwright.outline.site import Site
from setwright.outline.training import phases, week_sets
from setwright.pages.page import Crumb, Page


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
    yield Page(
        path=PLANS,
        title="Plans",
        description="All plans of the club.",
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
                "bars": bars(sets, [week.remains.kind for week in plan.weeks], "sets"),
                "starts_on": WEEKDAYS[plan.plan.starts.weekday()],
            },
            crumbs=(Crumb("Plans", PLANS),),
            kind="plan",
        )


def bars(values: Sequence[float], kinds: Sequence[str], unit: str, height: float = 60) -> tuple[Bar, ...]:
    """Return bars for a small chart, one a week, as tall as their value; a week without any has a bar of no height."""
    most = max(values, default=0) or 1
    return tuple(
        Bar(
            x=index * 12,
            y=round(height - value / most * height, 1),
            width=9,
            height=round(value / most * height, 1),
            kind=kind,
            label=f"Week {index + 1}: {value:g} {unit}",
        )
        for index, (value, kind) in enumerate(zip(values, kinds, strict=True))
    )
