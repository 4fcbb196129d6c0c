"""A plan's booklet: everything of one plan on paper, in an order to read and to look things up in."""

from collections.abc import Iterable, Iterator
from typing import Any

from setwright.dose.resolved import ResolvedPlan, ResolvedSession, ResolvedWeek
from setwright.dose.rules import RULES, Rule
from setwright.handouts.exercise import card_data
from setwright.handouts.session import after_break, no_session, session_data
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk, part_data
from setwright.outline import paper
from setwright.outline.addresses import plan_path, routine_path
from setwright.outline.training import phases, week_sets
from setwright.wording.days import (
    break_when,
    ends_when,
    event_when,
    place,
    skipped_when,
    starts_when,
    week_by_group,
    week_when,
)
from setwright.wording.times import duration, week_kind, weekday
from setwright.wording.vocabulary import routine_kind


def sheets(desk: Desk) -> Iterator[Sheet]:
    """Yield a booklet for each plan."""
    for plan in desk.site.plans:
        yield desk.sheet(paper.booklet(plan.ident), "booklet", booklet_data(desk, plan))


def booklet_data(desk: Desk, plan: ResolvedPlan) -> dict[str, Any]:
    """Return everything that a plan's booklet shows."""
    routines = _routines(desk, plan)
    exercises = _exercises(desk, plan, routines)
    event = plan.plan.event
    language, say = desk.language, desk.language.say
    first, last = starts_when(language, plan), ends_when(language, plan)
    facts = [[say("Starts"), first], [say("Ends"), last]]
    if event:
        facts.append([event.name, event_when(language, plan)])
    facts += [[say("Break"), break_when(language, one)] for one in plan.plan.breaks]
    before = next((other for other in desk.site.plans if other.ident == plan.plan.follows), None)
    if before:
        facts.append([say("Follows"), before.plan.name])
    return {
        **desk.frame(plan.plan.name, plan_path(plan.ident)),
        "for": desk.prose(plan.plan.for_),
        "aim": desk.prose(plan.plan.aim) if plan.plan.aim else None,
        "facts": facts,
        "call": desk.all_prose(desk.red_flags.call),
        "stop": desk.all_prose(desk.red_flags.stop),
        "ask_first": desk.all_prose(desk.red_flags.ask),
        "care": desk.all_prose(desk.red_flags.care),
        "phases": [_phase(desk, plan, view.phase.name, view.phase.aim, view.weeks) for view in phases(plan)],
        "other": [
            {"day": weekday(language, other.day), "what": desk.prose(other.what), "hard": other.hard}
            for other in plan.plan.other_training
        ],
        "routines": [_routine(desk, ident) for ident in routines],
        "cards": exercises,
        "exercises": [card_data(desk, ident) for ident in exercises],
        "rules": [_rule(desk, rule) for rule in RULES.values()],
    }


def _phase(desk: Desk, plan: ResolvedPlan, name: str, aim: str, weeks: Iterable[ResolvedWeek]) -> dict[str, Any]:
    return {
        "name": name,
        "aim": desk.prose(aim),
        "weeks": [
            {
                "number": week.number,
                "title": _title(desk, plan, week),
                "days": week_by_group(desk.language, plan, week),
                "blank": not plan.groups,
                "after": after_break(desk, week),
                "kind": week_kind(desk.language, week.remains.kind),
                "sets": week_sets(week),
                "sessions": [_session(desk, plan, session) for session in week.sessions],
                "skipped": [
                    no_session(desk, skipped_when(desk.language, plan, week.number, s), s.why) for s in week.skipped
                ],
            }
            for week in weeks
        ],
    }


def _title(desk: Desk, plan: ResolvedPlan, week: ResolvedWeek) -> str:
    days = week_when(desk.language, plan, week)
    if not days:
        return desk.language.say("Week %(week)s", week=week.number)
    return desk.language.say("Week %(week)s, %(days)s", week=week.number, days=days)


def _session(desk: Desk, plan: ResolvedPlan, session: ResolvedSession) -> dict[str, Any]:
    data = session_data(desk, plan, session)
    left_out = ("notice", "contact", "emergency", "stop_if", "code", "safety_address", "club", "place")
    kept = {key: value for key, value in data.items() if key not in left_out}
    return kept | {"short_day": place(desk.language, session)}


def _routines(desk: Desk, plan: ResolvedPlan) -> list[str]:
    """Return the warm-ups and cool-downs that the plan's sessions offer, warm-ups first."""
    programme = desk.site.programme
    offered: dict[str, None] = {}
    for kind in ("warm_up", "cool_down"):
        for session in plan.sessions:
            offered.update(dict.fromkeys(getattr(programme.sessions[session.session], kind)))
    return list(offered)


def _exercises(desk: Desk, plan: ResolvedPlan, routines: Iterable[str]) -> list[str]:
    """Return every exercise of the plan, its routines and their easier and harder ways, by name."""
    programme = desk.site.programme
    found = {item.exercise for session in plan.sessions for item in session.all_items}
    for ident in list(found):
        ways = (*programme.exercises[ident].easier, *programme.exercises[ident].harder)
        found.update(way.exercise for way in ways if way.exercise)
    for ident in routines:
        found.update(part.exercise for part in programme.routines[ident].exercises if part.exercise)
    return sorted(found, key=lambda ident: (desk.name(ident).casefold(), ident))


def _routine(desk: Desk, ident: str) -> dict[str, Any]:
    routine = desk.site.programme.routines[ident]
    return {
        "name": routine.name,
        "kind": routine_kind(desk.language, routine.kind),
        "takes": duration(desk.language, routine.takes),
        "rounds": _rounds(desk, routine.rounds),
        "why": desk.prose(routine.why),
        "when": desk.prose(routine.when) if routine.when else None,
        "parts": [part_data(desk, part, ident, index) for index, part in enumerate(routine.exercises)],
        "cautions": desk.all_prose(routine.cautions),
        "address": desk.address(routine_path(routine.kind, ident)),
    }


def _rounds(desk: Desk, count: int) -> str | None:
    return desk.language.many("%(num)s round.", "%(num)s rounds.", count) if count > 1 else None


def _rule(desk: Desk, rule: Rule) -> dict[str, str]:
    source = desk.language.say("Source: %(source)s", source=rule.source)
    if rule.from_memory:
        source = f"{source} {desk.language.say('From memory:')} {rule.from_memory}"
    return {"title": rule.title, "says": rule.says, "source": source}
