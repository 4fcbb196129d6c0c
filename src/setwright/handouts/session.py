"""A session's sheet for the wall, and a week's pack: an overview and the sheets of all its sessions."""

from collections.abc import Iterable, Iterator
from typing import Any

from setwright.dose.resolved import ResolvedBlock, ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk, item_data
from setwright.outline import paper
from setwright.outline.addresses import session_path, week_path
from setwright.outline.training import whole_time
from setwright.wording import blocks
from setwright.wording.changes import in_a_line
from setwright.wording.days import break_when, session_when, skipped_when, week_when
from setwright.wording.times import duration, time_range, week_kind, weekday
from setwright.wording.vocabulary import kit


def sheets(desk: Desk) -> Iterator[Sheet]:
    """Yield a sheet for each session, and a pack for each week that has any."""
    for plan in desk.site.plans:
        for week in plan.weeks:
            inside = [session_data(desk, plan, session) for session in week.sessions]
            for session, data in zip(week.sessions, inside, strict=True):
                yield desk.sheet(paper.session_sheet(session), "session", data)
            if week.sessions:
                yield desk.sheet(paper.week_pack(plan.ident, week.number), "week", week_data(desk, plan, week, inside))


def session_data(desk: Desk, plan: ResolvedPlan, session: ResolvedSession) -> dict[str, Any]:
    """Return everything that a session's sheet shows."""
    programme = desk.site.programme
    written = programme.sessions[session.session]
    phase = plan.plan.phases[plan.weeks[session.week - 1].phase]
    language, say = desk.language, desk.language.say
    facts = [[say("Time"), time_range(language, whole_time(session, written, programme.routines))]]
    if written.effort:
        facts.append([say("Session effort"), say("about %(effort)s of 10", effort=written.effort)])
    facts.append([say("Kit"), kit(language, desk.site.kit_of(session))])
    where = {"plan": plan.plan.name, "week": session.week, "weeks": len(plan.weeks), "phase": phase.name}
    return {
        **desk.frame(written.name, session_path(session)),
        "day": session_when(language, plan, session),
        "blank": not plan.groups or session.day is None,
        "week": session.week,
        "place": say("%(plan)s, week %(week)s of %(weeks)s, %(phase)s", **where),
        "kind": week_kind(language, session.remains.kind, phase.name),
        "start": _start(session),
        "first_time": session.first_time,
        "aim": desk.prose(written.aim),
        "facts": facts,
        "notes": [
            *([desk.noted(written.note, ("session", session.session, "note"))] if written.note else []),
            *(desk.reasoned(blocks.reason(language, why), why.why) for why in session.reasons),
        ],
        "warm_ups": _choices(desk, written.warm_up),
        "blocks": [_block(desk, session, block) for block in session.blocks],
        "cool_downs": _choices(desk, written.cool_down),
        "warm_up_names": _names(desk, written.warm_up),
        "cool_down_names": _names(desk, written.cool_down),
    }


def week_data(desk: Desk, plan: ResolvedPlan, week: ResolvedWeek, sessions: list[dict[str, Any]]) -> dict[str, Any]:
    """Return everything that a week's pack shows."""
    phase, language, say = plan.plan.phases[week.phase], desk.language, desk.language.say
    where = {"phase": phase.name, "week": week.phase_week, "weeks": phase.weeks}
    title = say("Week %(week)s of %(plan)s", week=week.number, plan=plan.plan.name)
    return {
        **desk.frame(title, week_path(plan.ident, week.number)),
        "days": week_when(language, plan, week, with_year=True),
        "blank": not plan.groups,
        "phase": say("%(phase)s, week %(week)s of %(weeks)s", **where),
        "kind": week_kind(language, week.remains.kind, phase.name),
        "aim": desk.prose(phase.aim),
        "after": after_break(desk, week),
        "sessions": sessions,
        "skipped": [no_session(desk, skipped_when(language, plan, week.number, s), s.why) for s in week.skipped],
        "other": [
            {"day": weekday(language, other.day), "what": desk.prose(other.what), "hard": other.hard}
            for other in plan.plan.other_training
        ],
    }


def _start(session: ResolvedSession) -> int:
    """Return the size at which the sheet's template starts to look for the one that fits: 0 is the largest.

    A guess from how much there is to print. It only shortens the search and changes nothing that is found.
    """
    lines = sum(1 + bool(item.bands) for item in session.items) + len(session.blocks)
    return min(5, max(0, (lines - 8) // 2))


def _choices(desk: Desk, idents: Iterable[str]) -> list[list[str]]:
    routines = desk.site.programme.routines
    return [[routines[ident].name, duration(desk.language, routines[ident].takes)] for ident in idents]


def _names(desk: Desk, idents: Iterable[str]) -> str:
    return desk.language.either(desk.site.programme.routines[ident].name for ident in idents)


def no_session(desk: Desk, day: str, why: str) -> dict[str, Any]:
    """Return a day without its session, and why."""
    return {"day": desk.language.say("%(day)s: no session.", day=day), "why": desk.prose(why)}


def after_break(desk: Desk, week: ResolvedWeek) -> list[dict[str, str]] | None:
    """Return the break before a week, with its reason, where there is one."""
    if week.after is None:
        return None
    days = desk.language.say("After the break, %(days)s.", days=break_when(desk.language, week.after))
    return [{"kind": "strong", "text": f"{days} "}, *desk.prose(week.after.why)]


def _block(desk: Desk, session: ResolvedSession, block: ResolvedBlock) -> dict[str, Any]:
    language = desk.language
    written = desk.site.programme.sessions[session.session].blocks[block.index]
    items = []
    for item in block.items:
        where = ("session", session.session, *item.slot)
        note, kit_here = written.exercises[item.slot[1]].note, written.exercises[item.slot[1]].kit
        only = blocks.only_in(language, block, item)
        data = item_data(desk, item, block.rounds is not None)
        own_kit = None
        if kit_here is not None and (*where, "kit") in desk.site.not_reviewed:
            own_kit = [
                *desk.prose(language.say("Kit of this session: %(kit)s.", kit=kit(language, kit_here))),
                desk.mark,
            ]
        if (*where, "height") in desk.site.not_reviewed:
            own_kit = [*(own_kit or []), *desk.prose(language.say("The height of this session:")), desk.mark]
        noted = desk.noted(note, (*where, "note")) if note else None
        items.append(data | {"note": noted, "own_kit": own_kit, "only": only})
    return {
        "name": blocks.block_name(language, block),
        "how": blocks.how_with_rest(language, block),
        "time": time_range(language, block.time),
        "note": desk.noted(block.note, ("session", session.session, block.index, "note")) if block.note else None,
        "straight": block.rounds is None,
        "rest": duration(language, block.rest_s),
        "change_over": duration(language, block.change_over_s) if block.change_over_s else None,
        "changes": in_a_line(language, block.changes),
        "items": items,
    }
