"""A plan's days as an iCalendar file (RFC 5545, with the names of RFC 7986), one for each group.

The same programme at the same commit gives the same bytes. What a program tells a change by comes from the repository:
LAST-MODIFIED and SEQUENCE are those of the newest commit of the plan's files. Alarms are left to the member.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from typing import Final
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo

from icalendar import Calendar, Event, Timezone, vText

from setwright.dose.resolved import Group, ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.model.calendar import slug
from setwright.model.text import plain
from setwright.outline.addresses import folder_of, plan_path, session_path, week_path
from setwright.outline.feeds import calendar_path
from setwright.outline.site import Site
from setwright.outline.training import whole_time
from setwright.wording.times import time_range

_NEVER: Final = datetime(1980, 1, 1, tzinfo=UTC)
"""The stamp of a file of which nobody knows when it changed: always the same, so that its bytes are."""


@dataclass(frozen=True)
class Revision:
    """How often the files of a plan were committed, and when the last time."""

    count: int
    at: datetime


def files(site: Site, site_url: str | None, revisions: dict[str, Revision]) -> Iterator[tuple[str, bytes]]:
    """Yield the path and the bytes of each calendar; a plan without a start has none.

    Args:
        site: what is published.
        site_url: where it is published, for links back and for identities; None where it is nowhere yet.
        revisions: by plan, when its files changed, where that is known.
    """
    for plan in site.plans:
        for group in plan.groups:
            made = _Calendar(site, plan, group, site_url, revisions.get(plan.ident))
            yield calendar_path(plan.ident, group), made.calendar().to_ical(sorted=False)


@dataclass(frozen=True)
class _Calendar:
    site: Site
    plan: ResolvedPlan
    group: Group
    site_url: str | None
    revision: Revision | None

    def calendar(self) -> Calendar:
        name = f"{self.plan.plan.name} ({self.group.name})" if self.group.name else self.plan.plan.name
        calendar = Calendar()
        calendar.add("PRODID", "-//Setwright//Training calendar//EN")
        calendar.add("VERSION", "2.0")
        calendar.add("CALSCALE", "GREGORIAN")
        calendar.add("NAME", vText(name))
        calendar.add("REFRESH-INTERVAL", timedelta(days=1), parameters={"VALUE": "DURATION"})
        if (url := self.address(plan_path(self.plan.ident))) is not None:
            calendar.add("URL", url)
        if (zone := self.zone()) is not None:
            years = self.group.starts[0].year, self.group.starts[-1].year + 2
            calendar.add_component(
                Timezone.from_tzid(zone.key, first_date=date(years[0], 1, 1), last_date=date(years[1], 1, 1))
            )
        for event in self.events():
            calendar.add_component(event)
        return calendar

    def zone(self) -> ZoneInfo | None:
        """Return the club's clock where some session begins by it."""
        name = self.site.programme.club.time_zone
        timed = any(session.at is not None and session.day is not None for session in self.plan.sessions)
        return ZoneInfo(name) if timed and name is not None else None

    def events(self) -> Iterator[Event]:
        for week in self.plan.weeks:
            for session in week.sessions:
                if session.day is not None:
                    yield self.session(session, self.group.date_of(week.number, session.day))
            if any(session.day is None for session in week.sessions):
                yield self.open_week(week)
        for one in self.plan.plan.breaks:
            closed = self.event(f"break-{one.from_.isoformat()}", self.said("Break"), plain(one.why), None)
            yield _all_day(closed, one.from_, one.to)
        if (on := self.plan.event_on(self.group)) is not None and self.plan.plan.event is not None:
            name = self.plan.plan.event.name
            yield _all_day(self.event("event", name, self.plan.plan.name, plan_path(self.plan.ident)), on, on)

    def session(self, session: ResolvedSession, on: date) -> Event:
        written = self.site.programme.sessions[session.session]
        whole = whole_time(session, written, self.site.programme.routines)
        about = f"{self.of_week(session.week)} {plain(written.aim)} {time_range(self.site.language, whole)}."
        place = f"week-{session.week:02}-{session.planned}"
        event = self.event(place, written.name, about, session_path(session))
        zone = self.zone()
        if session.at is None or zone is None:
            return _all_day(event, on, on)
        event.add("DTSTART", datetime.combine(on, session.at, zone))
        event.add("DURATION", timedelta(minutes=-(-whole.high_s // 60)))
        return event

    def open_week(self, week: ResolvedWeek) -> Event:
        """Return the entry of a week whose sessions are on any day: all its days, with the sessions in their order."""
        sessions = self.site.programme.sessions
        names = [f"{one.number}. {sessions[one.session].name}" for one in week.sessions if one.day is None]
        about = "\n".join([self.said("In this order, on days that suit you:"), *names])
        place = f"week-{week.number:02}-any-day"
        event = self.event(place, self.of_week(week.number), about, week_path(self.plan.ident, week.number))
        return _all_day(event, *self.group.span_of(week.number))

    def event(self, place: str, summary: str, about: str, path: str | None) -> Event:
        event = Event()
        group = f"-{self.group.slug}" if self.group.slug else ""
        event.add("UID", f"{self.plan.ident}{group}-{place}@{self.domain()}")
        event.add("DTSTAMP", self.revision.at if self.revision else _NEVER)
        if self.revision:
            event.add("LAST-MODIFIED", self.revision.at)
            event.add("SEQUENCE", self.revision.count - 1)
        event.add("SUMMARY", summary)
        url = self.address(path) if path is not None else None
        event.add("DESCRIPTION", f"{about}\n{url}" if url else about)
        if url:
            event.add("URL", url)
        return event

    def domain(self) -> str:
        """Return what makes an identity this club's own: where it publishes, or a name that nobody can own."""
        host = urlsplit(self.site_url).hostname if self.site_url else None
        return host or f"{slug(self.site.programme.club.name) or 'club'}.invalid"

    def address(self, path: str) -> str | None:
        return f"{self.site_url.rstrip('/')}/{folder_of(path)}" if self.site_url else None

    def of_week(self, week: int) -> str:
        return self.site.language.say("%(plan)s, week %(week)s.", plan=self.plan.plan.name, week=week)

    def said(self, words: str) -> str:
        return self.site.language.say(words)


def _all_day(event: Event, first: date, last: date) -> Event:
    """Give an event whole days; its end is the day after the last (RFC 5545, 3.6.1). It leaves the day free."""
    event.add("DTSTART", first)
    event.add("DTEND", last + timedelta(days=1))
    event.add("TRANSP", "TRANSPARENT")
    return event
