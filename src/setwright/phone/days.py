"""A plan's weeks as the phone reads them: which sessions they hold and on which days they start for whom.

The phone finds every date from these, for a group as for a member's own start, by the rule of ``week_starts``.
"""

import json
from collections.abc import Iterator
from typing import Any

from setwright.dose.resolved import ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.model.text import plain
from setwright.model.vocabulary import WEEKDAYS, Weekday
from setwright.outline.addresses import folder_of, plan_path, session_path, week_path
from setwright.outline.site import Site
from setwright.outline.training import whole_time
from setwright.phone import agenda
from setwright.wording.times import time_range


def days_path(plan: str) -> str:
    """Return the path of a plan's list of days."""
    return f"assets/days/{plan}.json"


def files(site: Site) -> Iterator[tuple[str, str]]:
    """Yield one JSON file a plan: its weeks with their days, addresses relative to the site's root."""
    for plan in site.plans:
        yield days_path(plan.ident), json.dumps(days_of(site, plan), ensure_ascii=False, separators=(",", ":")) + "\n"


def days_of(site: Site, plan: ResolvedPlan) -> dict[str, Any]:
    """Return a plan's weeks as plain data: weekdays count from 0, Monday; what is any day or any start is null."""
    event, tables = plan.plan.event, agenda.Tables()
    weeks = [_week(site, plan, week, tables) for week in plan.weeks]
    return {
        **agenda.plan_facts(plan),
        "plan": plan.plan.name,
        "ident": plan.ident,
        "url": folder_of(plan_path(plan.ident)),
        "follows": plan.plan.follows,
        "long_gap": site.programme.club.long_gap,
        "groups": [
            {
                "name": group.name,
                "slug": group.slug,
                "starts": group.starts[0].isoformat(),
                "event": on.isoformat() if (on := plan.event_on(group)) else None,
            }
            for group in plan.groups
        ],
        "first": _index(plan.plan.first_weekday) if plan.plan.keeps_weekdays else None,
        "breaks": [
            {"from": one.from_.isoformat(), "to": one.to.isoformat(), "why": plain(one.why)} for one in plan.plan.breaks
        ],
        "event": {"name": event.name, "week": event.week, "day": _index(event.day)} if event else None,
        "tables": tables.written,
        "weeks": weeks,
    }


def _week(site: Site, plan: ResolvedPlan, week: ResolvedWeek, tables: agenda.Tables) -> dict[str, Any]:
    return {
        **agenda.week_facts(site, plan, week),
        "number": week.number,
        "url": folder_of(week_path(plan.ident, week.number)),
        "kind": week.remains.kind,
        "days": [_day(site, session, tables) for session in week.sessions],
    }


def _index(day: Weekday | None) -> int | None:
    return WEEKDAYS.index(day) if day is not None else None


def _day(site: Site, session: ResolvedSession, tables: agenda.Tables) -> dict[str, Any]:
    written = site.programme.sessions[session.session]
    whole = whole_time(session, written, site.programme.routines)
    return {
        **agenda.session_facts(site, session, tables),
        "place": session.place,
        "planned": session.planned,
        "day": _index(session.day),
        "number": session.number,
        "at": session.at.isoformat("minutes") if session.at else None,
        "name": written.name,
        "time": time_range(site.language, whole),
        "longest_s": whole.high_s,
        "url": folder_of(session_path(session)),
    }
