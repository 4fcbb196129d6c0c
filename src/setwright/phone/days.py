"""The list of training days that the home page reads in the browser to show today and this week."""

import json
from collections.abc import Iterator

from setwright.outline.addresses import folder_of, plan_path, session_path, week_path
from setwright.outline.site import Site
from setwright.outline.training import whole_time
from setwright.phone import agenda
from setwright.wording.times import day_plain, time_range


def days_path(plan: str) -> str:
    """Return the path of a plan's list of days."""
    return f"assets/days/{plan}.json"


def files(site: Site) -> Iterator[tuple[str, str]]:
    """Yield one JSON file a plan: its weeks with their days, addresses relative to the site's root."""
    for plan in site.plans:
        tables = agenda.Tables()
        weeks = [
            {
                **agenda.week_facts(site, plan, week),
                "number": week.number,
                "starts": week.starts.isoformat(),
                "said": day_plain(site.language, week.starts),
                "ends": week.ends.isoformat(),
                "url": folder_of(week_path(plan.ident, week.number)),
                "kind": week.remains.kind,
                "days": [
                    {
                        **agenda.session_facts(site, week, session, tables),
                        "date": session.date.isoformat(),
                        "said": day_plain(site.language, session.date),
                        "name": site.programme.sessions[session.session].name,
                        "time": time_range(
                            site.language,
                            whole_time(session, site.programme.sessions[session.session], site.programme.routines),
                        ),
                        "url": folder_of(session_path(session)),
                    }
                    for session in week.sessions
                ],
            }
            for week in plan.weeks
        ]
        content = {
            **agenda.plan_facts(plan),
            "plan": plan.plan.name,
            "url": folder_of(plan_path(plan.ident)),
            "tables": tables.written,
            "weeks": weeks,
        }
        yield days_path(plan.ident), json.dumps(content, ensure_ascii=False, separators=(",", ":")) + "\n"
