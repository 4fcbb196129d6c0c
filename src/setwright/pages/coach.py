"""In front of the group: the list of sessions, a coach's sheet for each, and the hall's screen."""

from collections.abc import Iterator

from setwright.dose.resolved import ResolvedPlan, ResolvedSession
from setwright.dose.timing import set_time
from setwright.outline.addresses import GROUP, HALL, coach_path
from setwright.outline.coaching import in_front
from setwright.outline.site import Site
from setwright.outline.training import whole_time
from setwright.pages.page import Crumb, Page
from setwright.wording import sharing, speaking
from setwright.wording.days import session_when


def pages(site: Site) -> Iterator[Page]:
    """Yield the list, the hall's screen, and a sheet for each session of each week of each plan."""
    say = site.language.say
    yield Page(
        path=GROUP,
        title=say("In front of the group"),
        description=say("A coach's sheet and the hall's screen for each session."),
        template="group.md.jinja",
        context={},
        kind="group",
    )
    yield Page(
        path=HALL,
        title=say("Hall's screen"),
        description=say("Runs a session for a whole group on one clock."),
        template="hall.md.jinja",
        context={},
        crumbs=(Crumb(say("In front of the group"), GROUP),),
        kind="hall",
    )
    for plan in site.plans:
        for session in plan.sessions:
            yield _page(site, plan, session)


def _page(site: Site, plan: ResolvedPlan, session: ResolvedSession) -> Page:
    programme, language, say = site.programme, site.language, site.language.say
    written = programme.sessions[session.session]
    front = in_front(site, session)
    return Page(
        path=coach_path(session),
        title=say("Coach's sheet: %(session)s", session=written.name),
        description=say(
            "What to lay out, say, show, count, watch for and offer. %(day)s, week %(week)s of %(plan)s.",
            day=session_when(language, plan, session),
            week=session.week,
            plan=plan.plan.name,
        ),
        template="coach.md.jinja",
        context={
            "plan": plan,
            "session": session,
            "written": written,
            "front": front,
            "sharing": sharing,
            "speaking": speaking,
            "set_time": set_time,
            "whole_time": whole_time(session, written, programme.routines),
            "warm_ups": [(ident, programme.routines[ident]) for ident in written.warm_up],
            "cool_downs": [(ident, programme.routines[ident]) for ident in written.cool_down],
        },
        crumbs=(Crumb(say("In front of the group"), GROUP),),
        kind="coach",
    )
