"""A session's sheet for the wall, and a week's pack: an overview and the sheets of all its sessions."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from string import ascii_uppercase
from typing import Any

from setwright.dose.resolved import ResolvedBlock, ResolvedItem, ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk, item_data
from setwright.outline import paper
from setwright.outline.addresses import session_path, week_path
from setwright.outline.training import warm_up_minutes, week_before, whole_time
from setwright.review.words import Where
from setwright.wording import blocks
from setwright.wording.changes import in_a_line, since_last_time
from setwright.wording.choices import clinician_decides, for_whom
from setwright.wording.days import break_when, session_when, skipped_when, week_when
from setwright.wording.times import duration, durations, time_range, week_kind, weekday
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
    whole = time_range(language, whole_time(session, written, programme.routines))
    made_of = blocks.parts_of_time(language, session, warm_up_minutes(written, programme.routines))
    facts = [[say("Time"), say("%(time)s: %(parts)s", time=whole, parts=made_of)]]
    if written.effort:
        facts.append([say("Session effort"), say("about %(effort)s of 10", effort=written.effort)])
    facts.append([say("Kit"), _kit(desk, session)])
    shared = shared_cautions(desk, session)
    where = {"plan": plan.plan.name, "week": session.week, "weeks": len(plan.weeks), "phase": phase.name}
    return {
        **desk.frame(written.name, session_path(session)),
        "day": session_when(language, plan, session),
        "blank": not plan.groups or session.day is None,
        "week": session.week,
        "place": say("%(plan)s, week %(week)s of %(weeks)s, %(phase)s", **where),
        "kind": week_kind(language, session.remains.kind, phase.name),
        "aim": desk.prose(written.aim),
        "facts": facts,
        "notes": [
            *([desk.noted(written.note, ("session", session.session, "note"))] if written.note else []),
            *(desk.reasoned(blocks.reason(language, why), why.why) for why in session.reasons),
        ],
        "warm_ups": _choices(desk, written.warm_up),
        "take_care": [[letter, desk.prose(line)] for line, letter in shared.items()],
        "blocks": once(desk, [_block(desk, plan, session, block, shared) for block in session.blocks]),
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


def shared_cautions(desk: Desk, session: ResolvedSession) -> dict[str, str]:
    """Return the cautions that several exercises of a session have word for word, each with a letter, in order.

    A sheet says them once, before the work; at each exercise stands the letter. Beyond Z, what is left is said there.
    """
    exercises = dict.fromkeys(item.exercise for item in session.all_items)
    said = Counter(line for ident in exercises for line in desk.site.programme.exercises[ident].cautions)
    return dict(zip((line for line, count in said.items() if count > 1), ascii_uppercase, strict=False))


def _kit(desk: Desk, session: ResolvedSession) -> str:
    """Return the kit of a session, and what its easier ways need beside it."""
    language, club = desk.language, desk.site.programme.club
    said, easier = kit(language, club, desk.site.kit_of(session)), desk.site.kit_of_easier_ways(session)
    if not easier:
        return said
    return f"{said}; {language.say('for easier ways: %(kit)s', kit=kit(language, club, easier))}"


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


def _block(
    desk: Desk, plan: ResolvedPlan, session: ResolvedSession, block: ResolvedBlock, shared: Mapping[str, str]
) -> dict[str, Any]:
    language = desk.language
    items = [
        {
            **_place(desk, plan, session, block, item, shared),
            "optional": item.optional,
            "instead": [_instead(desk, plan, session, block, way, shared) for way in item.instead],
        }
        for item in block.items
    ]
    return {
        "name": blocks.block_name(language, block),
        "how": blocks.how_with_rest(language, block),
        "time": time_range(language, block.minutes),
        "note": desk.noted(block.note, ("session", session.session, block.index, "note")) if block.note else None,
        "optional": block.optional,
        "straight": block.rounds is None,
        "rest": durations(language, block.rests_s),
        "change_over": duration(language, block.change_over_s) if block.change_over_s else None,
        "changes": in_a_line(language, block.changes),
        "items": items,
    }


def _place(
    desk: Desk,
    plan: ResolvedPlan,
    session: ResolvedSession,
    block: ResolvedBlock,
    item: ResolvedItem,
    shared: Mapping[str, str],
) -> dict[str, Any]:
    """Return one exercise with what this session says of it."""
    language, written = desk.language, desk.site.programme.sessions[session.session].written(item.slot)
    where: Where = ("session", session.session, *item.slot)
    own_kit = None
    if written.kit is not None and (*where, "kit") in desk.site.not_reviewed:
        said = language.say("Kit of this session: %(kit)s.", kit=kit(language, desk.site.programme.club, written.kit))
        own_kit = [*desk.prose(said), desk.mark]
    if (*where, "height") in desk.site.not_reviewed:
        own_kit = [*(own_kit or []), *desk.prose(language.say("The height of this session:")), desk.mark]
    cautions = desk.site.programme.exercises[item.exercise].cautions
    return item_data(desk, item, block.rounds is not None) | {
        "note": desk.noted(written.note, (*where, "note")) if written.note else None,
        "own_kit": own_kit,
        "only": blocks.only_in(language, block, item),
        "own_rest": blocks.own_rest(language, item),
        "since": since_last_time(language, item.changes, session.first_time, week_before(plan, session, item)),
        "care_letters": [shared[line] for line in cautions if line in shared],
        "cautions": desk.all_prose(line for line in cautions if line not in shared),
        "instead": [],
        "optional": False,
    }


def _instead(
    desk: Desk,
    plan: ResolvedPlan,
    session: ResolvedSession,
    block: ResolvedBlock,
    way: ResolvedItem,
    shared: Mapping[str, str],
) -> dict[str, Any]:
    """Return what members with a choice do in the place of an exercise, with whom it is for."""
    language, club = desk.language, desk.site.programme.club
    where: Where = ("session", session.session, *way.slot, "for")
    whom = language.say("For %(whom)s.", whom=for_whom(language, club, way.choices))
    return _place(desk, plan, session, block, way, shared) | {
        "whom": desk.noted(whom, where),
        "clinician": clinician_decides(language, club, way.choices),
    }


def once(desk: Desk, blocks: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """Return blocks in which a table over 1RM that stands in an earlier place is not printed again, but pointed at."""
    first: dict[str, str] = {}

    def without_repeats(item: dict[str, Any]) -> dict[str, Any]:
        loads: list[dict[str, Any]] = []
        for load in item["loads"]:
            table = json.dumps(load["bands"]) if load["of_max"] else ""
            before = first.setdefault(table, item["name"]) if load["bands"] and table else None
            if before is not None and (before != item["name"] or any(json.dumps(o["bands"]) == table for o in loads)):
                said = desk.language.say("Your 1RM, and what to take: the table at %(exercise)s.", exercise=before)
                load = load | {"bands": [], "take": said}
            loads.append(load)
        return item | {"loads": loads, "instead": [without_repeats(way) for way in item["instead"]]}

    return [block | {"items": [without_repeats(item) for item in block["items"]]} for block in blocks]
