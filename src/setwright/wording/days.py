"""When something of a plan is, in words: with its date, with one for each group, or as a place in its week."""

from collections.abc import Callable, Iterable
from datetime import date, timedelta

from setwright.dose.resolved import Group, ResolvedPlan, ResolvedSession, ResolvedWeek, Skipped
from setwright.model.calendar import Break
from setwright.wording.language import Language
from setwright.wording.times import day_full, day_long, span_of_days, span_with_year, weekday


def place(language: Language, session: ResolvedSession | Skipped) -> str:
    """Return where a session stands in its week: Friday; Friday, session 2; Session 1."""
    if session.day is None:
        return language.say("Session %(number)s", number=session.number)
    day = weekday(language, session.day)
    if session.number == 1:
        return day
    return language.say("%(day)s, session %(number)s", day=day, number=session.number)


def session_when(language: Language, plan: ResolvedPlan, session: ResolvedSession) -> str:
    """Return when a session is: its date, that of each group, or its place in the week and which days it may be on."""
    said = _when(language, plan, session.week, session)
    at = begins_at(session)
    return language.say("%(day)s, %(time)s", day=said, time=at) if at else said


def begins_at(session: ResolvedSession) -> str:
    """Return the time of day at which a session begins, 18:30; nothing where none is written."""
    return session.at.isoformat("minutes") if session.at is not None else ""


def skipped_when(language: Language, plan: ResolvedPlan, week: int, skipped: Skipped) -> str:
    """Return when a session would have been that is left out."""
    return _when(language, plan, week, skipped)


def _when(language: Language, plan: ResolvedPlan, week: int, one: ResolvedSession | Skipped) -> str:
    day = one.day
    if day is not None and plan.groups:
        said = by_group(language, plan.groups, lambda group: day_long(language, group.date_of(week, day)))
        if len(plan.groups) == 1 and one.number > 1:
            return language.say("%(day)s, session %(number)s", day=said, number=one.number)
        return said
    if day is not None:
        return place(language, one)
    if plan.groups:
        days = by_group(language, plan.groups, lambda group: span_with_year(language, *group.span_of(week)))
        return language.say("%(session)s, on any day (%(days)s)", session=place(language, one), days=days)
    return language.say("%(session)s, on any day", session=place(language, one))


def week_when(language: Language, plan: ResolvedPlan, week: ResolvedWeek, with_year: bool = False) -> str:
    """Return a week's days, those of each group, or nothing where the plan has no date."""
    span = span_with_year if with_year else span_of_days
    return by_group(language, plan.groups, lambda group: span(language, *group.span_of(week.number)))


def week_by_group(language: Language, plan: ResolvedPlan, week: ResolvedWeek) -> list[str]:
    """Return a week's days for each group, to stand below each other."""
    return [
        by_group(language, [group], lambda group: span_of_days(language, *group.span_of(week.number)))
        for group in plan.groups
    ]


def starts_when(language: Language, plan: ResolvedPlan) -> str:
    """Return the plan's first day, that of each group, or that each member chooses it."""
    said = by_group(language, plan.groups, lambda group: day_long(language, group.starts[0]))
    return said or language.say("when you like")


def ends_when(language: Language, plan: ResolvedPlan) -> str:
    """Return the plan's last day, that of each group, or how many weeks after its start it is."""

    def last(group: Group) -> str:
        return day_long(language, group.starts[-1] + timedelta(days=6))

    return by_group(language, plan.groups, last) or language.say("at the end of week %(week)s", week=len(plan.weeks))


def event_when(language: Language, plan: ResolvedPlan, said: Callable[[Language, date], str] = day_long) -> str:
    """Return the day that a plan leads up to, that of each group, or its place in the plan."""
    event = plan.plan.event
    days = [(group.name, day) for group in plan.groups if (day := plan.event_on(group)) is not None]
    if len({day for _, day in days}) == 1:
        return said(language, days[0][1])
    if days:
        return _joined(language, ((name, said(language, day)) for name, day in days))
    if event is None or event.day is None:
        return ""
    return language.say("%(day)s of week %(week)s", day=weekday(language, event.day), week=event.week)


def break_when(language: Language, one: Break) -> str:
    """Return the days of a break: 20 December 2027 to 2 January 2028."""
    return language.say("%(first)s to %(last)s", first=day_full(language, one.from_), last=day_full(language, one.to))


def by_group(language: Language, groups: Iterable[Group], said: Callable[[Group], str]) -> str:
    """Return what is said of each group, with its name where it has one; nothing where there is no group."""
    return _joined(language, ((group.name, said(group)) for group in groups))


def _joined(language: Language, said: Iterable[tuple[str, str]]) -> str:
    parts = [language.say("%(group)s: %(day)s", group=name, day=day) if name else day for name, day in said]
    if not parts:
        return ""
    whole = parts[0]
    for part in parts[1:]:
        whole = language.say("%(first)s; %(next)s", first=whole, next=part)
    return whole
