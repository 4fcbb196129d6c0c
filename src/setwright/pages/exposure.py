"""What each week of a plan asks of the body: sets, repetitions, load lifted, time under tension, session load."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from setwright.dose.exposure import Exposure, session_load, week_exposure
from setwright.dose.resolved import ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.outline.addresses import EXPOSURE, REVIEW
from setwright.outline.site import Site
from setwright.pages.page import Crumb, Page


@dataclass(frozen=True)
class WeekView:
    """One week of the table. ``load`` is None where a session of that week has no effort written."""

    week: ResolvedWeek
    exposure: Exposure
    lifted_kg: Fraction
    load: Fraction | None


@dataclass(frozen=True)
class PlanView:
    """A plan with its weeks, and its regions and patterns, most worked first."""

    plan: ResolvedPlan
    weeks: tuple[WeekView, ...]
    regions: tuple[str, ...]
    patterns: tuple[str, ...]


def pages(site: Site) -> Iterator[Page]:
    """Yield the page."""
    say = site.language.say
    body_weight_kg = middle_kg(site)
    yield Page(
        path=EXPOSURE,
        title=say("What each week asks"),
        description=say("Sets by region and pattern, load lifted, time under tension and session load, week by week."),
        template="exposure.md.jinja",
        context={
            "plans": [plan_view(site, plan, body_weight_kg) for plan in site.plans],
            "body_weight_kg": body_weight_kg,
        },
        crumbs=(Crumb(say("Review"), REVIEW),),
        kind="exposure",
    )


def middle_kg(site: Site) -> Fraction:
    """Return the middle of the club's range of body weights, in whole kilograms, as an example to count with."""
    span = site.programme.club.body_weight
    return Fraction(round((span.from_ + span.to) / 2))


def plan_view(site: Site, plan: ResolvedPlan, body_weight_kg: Fraction) -> PlanView:
    """Return a plan week by week."""
    weeks = []
    for week in plan.weeks:
        found = week_exposure(week, site.programme)
        weeks.append(WeekView(week, found, found.lifted.at(body_weight_kg), load_of(site, week)))
    regions: dict[str, Fraction] = {}
    patterns: dict[str, int] = {}
    for view in weeks:
        for region, sets in view.exposure.by_region.items():
            regions[region] = regions.get(region, Fraction(0)) + sets
        for pattern, count in view.exposure.by_pattern.items():
            patterns[pattern] = patterns.get(pattern, 0) + count
    return PlanView(
        plan,
        tuple(weeks),
        tuple(sorted(regions, key=lambda region: (-regions[region], region))),
        tuple(sorted(patterns, key=lambda pattern: (-patterns[pattern], pattern))),
    )


def load_of(site: Site, week: ResolvedWeek) -> Fraction | None:
    """Return the session loads of a week together, or None where the coach wrote no effort for one of its sessions."""
    total = Fraction(0)
    for session in week.sessions:
        effort = site.programme.sessions[session.session].effort
        if effort is None:
            return None
        total += session_load(effort, minutes_of(site, session))
    return total


def minutes_of(site: Site, session: ResolvedSession) -> Fraction:
    """Return a session's minutes: the middle of its range, with its shortest warm-up."""
    warm_ups = [site.programme.routines[ident].takes for ident in site.programme.sessions[session.session].warm_up]
    middle_s = Fraction(session.time.low_s + session.time.high_s, 2) + min(warm_ups, default=0)
    return middle_s / 60
