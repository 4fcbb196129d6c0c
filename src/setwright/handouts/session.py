"""A session's sheet for the wall, and a week's pack: an overview and the sheets of all its sessions."""

from collections.abc import Iterable, Iterator
from typing import Any

from setwright.dose.resolved import ResolvedBlock, ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk, item_data
from setwright.outline import paper
from setwright.outline.addresses import session_path, week_path
from setwright.outline.training import whole_time
from setwright.wording import words
from setwright.wording.changes import in_words
from setwright.wording.words import KIND_WORDS, day_long, span_of_days


def sheets(desk: Desk) -> Iterator[Sheet]:
    """Yield a sheet for each session, and a pack for each week that has any."""
    for plan in desk.site.plans:
        for week in plan.weeks:
            inside = [session_data(desk, plan, session) for session in week.sessions]
            for session, data in zip(week.sessions, inside, strict=True):
                yield Sheet(paper.session_sheet(session), "session", data)
            if week.sessions:
                yield Sheet(paper.week_pack(plan.ident, week.number), "week", week_data(desk, plan, week, inside))


def session_data(desk: Desk, plan: ResolvedPlan, session: ResolvedSession) -> dict[str, Any]:
    """Return everything that a session's sheet shows."""
    programme = desk.site.programme
    written = programme.sessions[session.session]
    phase = plan.plan.phases[plan.weeks[session.week - 1].phase]
    facts = [["Time", words.minutes(whole_time(session, written, programme.routines))]]
    if written.effort:
        facts.append(["Effort", f"about {written.effort} of 10"])
    facts.append(["Kit", ", ".join(desk.site.kit_of(session)) or "none"])
    return {
        **desk.frame(written.name, session_path(session)),
        "day": day_long(session.date),
        "week": session.week,
        "place": f"{plan.plan.name}, week {session.week} of {len(plan.weeks)}, {phase.name}",
        "kind": KIND_WORDS[session.remains.kind],
        "start": _start(session),
        "first_time": session.first_time,
        "aim": desk.prose(written.aim),
        "facts": facts,
        "notes": [
            *([desk.prose(written.note)] if written.note else []),
            *desk.all_prose(map(words.reason, session.reasons)),
        ],
        "warm_ups": _choices(desk, written.warm_up),
        "blocks": [_block(desk, session, block) for block in session.blocks],
        "cool_downs": _choices(desk, written.cool_down),
    }


def week_data(desk: Desk, plan: ResolvedPlan, week: ResolvedWeek, sessions: list[dict[str, Any]]) -> dict[str, Any]:
    """Return everything that a week's pack shows."""
    phase = plan.plan.phases[week.phase]
    return {
        **desk.frame(f"Week {week.number} of {plan.plan.name}", week_path(plan.ident, week.number)),
        "days": f"{span_of_days(week.starts, week.ends)} {week.ends.year}",
        "phase": f"{phase.name}, week {week.phase_week} of {phase.weeks}",
        "kind": KIND_WORDS[week.remains.kind],
        "aim": desk.prose(phase.aim),
        "sessions": sessions,
        "skipped": [{"day": day_long(skipped.date), "why": desk.prose(skipped.why)} for skipped in week.skipped],
        "other": [
            {"day": other.day.capitalize(), "what": desk.prose(other.what), "hard": other.hard}
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
    return [[routines[ident].name, words.seconds(routines[ident].takes)] for ident in idents]


def _block(desk: Desk, session: ResolvedSession, block: ResolvedBlock) -> dict[str, Any]:
    written = desk.site.programme.sessions[session.session].blocks[block.index]
    items = []
    for item in block.items:
        note = written.exercises[item.slot[1]].note
        fewer = block.rounds is not None and item.dose.count != block.rounds
        only = f"only in the first {_counted(item.dose.count, 'round')}" if fewer else None
        data = item_data(desk, item, block.rounds is not None)
        items.append(data | {"note": desk.prose(note) if note else None, "only": only})
    return {
        "name": words.block_name(block),
        "how": _how(block),
        "time": words.minutes(block.time),
        "note": desk.prose(block.note) if block.note else None,
        "straight": block.rounds is None,
        "rest": words.seconds(block.rest_s),
        "change_over": words.seconds(block.change_over_s) if block.change_over_s else None,
        "changes": list(in_words(block.changes)),
        "items": items,
    }


def _how(block: ResolvedBlock) -> str:
    """Return how a block is gone through, its rest included."""
    if block.rounds is None:
        return "All sets of one exercise, then the next." if len(block.items) > 1 else "Rest after each set."
    order = "1, then 2" if len(block.items) == 2 else f"1 to {len(block.items)} in order"
    change_over = f" {words.seconds(block.change_over_s)} to change over." if block.change_over_s else ""
    return f"{_counted(block.rounds, 'round')} of {order}, then rest {words.seconds(block.rest_s)}.{change_over}"


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"
