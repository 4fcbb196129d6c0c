"""What the home page says of a day besides its session's name: where it stands, what is taken, and what else is on."""

from collections.abc import Iterator
from typing import Any

from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession, ResolvedWeek, Skipped
from setwright.model.text import plain
from setwright.model.vocabulary import WEEKDAYS
from setwright.outline.site import Site
from setwright.phone import attributes
from setwright.wording.blocks import reason
from setwright.wording.times import week_kind
from setwright.wording.vocabulary import kit


class Tables:
    """The tables of weights of a plan, each once, however many sessions take from it."""

    def __init__(self) -> None:
        self.written: list[str] = []
        self._places: dict[str, int] = {}

    def place(self, table: str) -> int:
        """Return where a table stands in the list, and put it there if it is new."""
        if table not in self._places:
            self._places[table] = len(self.written)
            self.written.append(table)
        return self._places[table]


def plan_facts(plan: ResolvedPlan) -> dict[str, Any]:
    """Return whom a plan is for, and the training beside it, by weekday from Monday, 0."""
    return {
        "about": plain(plan.plan.for_),
        "other": [
            {"weekday": WEEKDAYS.index(other.day), "what": plain(other.what), "hard": other.hard}
            for other in plan.plan.other_training
        ],
    }


def week_facts(site: Site, plan: ResolvedPlan, week: ResolvedWeek) -> dict[str, Any]:
    """Return a week's phase, its kind in words, and the sessions that are left out, by weekday from Monday, 0."""
    phase = plan.plan.phases[week.phase].name
    return {
        "phase": phase,
        "tag": week_kind(site.language, week.remains.kind, phase),
        "skipped": [_skipped(site, one) for one in week.skipped],
    }


def _skipped(site: Site, skipped: Skipped) -> dict[str, Any]:
    return {
        "day": None if skipped.day is None else WEEKDAYS.index(skipped.day),
        "name": site.programme.sessions[skipped.session].name,
        "why": plain(skipped.why),
    }


def session_facts(site: Site, session: ResolvedSession, tables: Tables) -> dict[str, Any]:
    """Return a session's kit in words, why it is not as planned, where it was moved from, and its weights."""
    return {
        "kit": kit(site.language, site.programme.club, site.kit_of(session)),
        "why": [plain(reason(site.language, why)) for why in session.reasons],
        "from": _moved_from(session),
        "loads": list(_loads(site, session, tables)),
    }


def _moved_from(session: ResolvedSession) -> int | None:
    """Return the weekday from which a session was moved, if it was."""
    return next((WEEKDAYS.index(why.moved_from) for why in session.reasons if why.moved_from), None)


def _loads(site: Site, session: ResolvedSession, tables: Tables) -> Iterator[dict[str, Any]]:
    """Yield the heaviest load of each exercise that is weighed, and for whom it is where members choose."""
    for main in session.items:
        for place, item in enumerate(main.ways):
            load = _load(site, item, tables)
            if load is not None:
                # The first way that fits a member is theirs, and whoever has none of them does what stands for all.
                before = main.ways[1:place] if place else main.instead
                others = [choice for way in before for choice in way.choices]
                yield load | ({"for": list(item.choices)} if place else {}) | ({"not": others} if others else {})


def _load(site: Site, item: ResolvedItem, tables: Tables) -> dict[str, Any] | None:
    unit, heaviest = site.programme.club.units, item.dose.heaviest
    take = item.take_of(heaviest)
    if heaviest is None or take is None or item.kit is None:
        return None
    of = {"kit": item.kit, "name": item.kit_name, "exercise": item.exercise, "hand": heaviest.per_hand}
    of |= {"way": attributes.way(heaviest)}
    if take.bands:
        table = tables.place(attributes.bands(take.bands, unit))
        return of | {"of": "1rm" if heaviest.of == "1RM" else "body-weight", "table": table}
    if take.choice and take.choice.weight_kg is not None:
        return of | {"weight": attributes.weight(take.choice.weight_kg, unit)}
    return None
