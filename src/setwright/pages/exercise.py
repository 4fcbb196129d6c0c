"""An exercise's page: everything a member learns and a physiotherapist reads, and where it stands in the plans."""

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.words import dose_in_words
from setwright.pages.page import EXERCISES, Crumb, Page, exercise_path
from setwright.pages.plan import Bar, bars
from setwright.pages.review import limits_in_words
from setwright.pages.site import Site


@dataclass(frozen=True)
class Stretch:
    """Weeks in a row with the same dose."""

    first: ResolvedSession
    last: ResolvedSession
    dose: str
    kind: str


@dataclass(frozen=True)
class Appearance:
    """Where an exercise stands in one session of one plan: its doses by week, and the work of each week as bars."""

    plan: ResolvedPlan
    session: str
    stretches: tuple[Stretch, ...]
    bars: tuple[Bar, ...]
    unit: str


def pages(site: Site) -> Iterator[Page]:
    """Yield a page for each exercise."""
    used_by = _routines_by_exercise(site)
    for ident, exercise in sorted(site.programme.exercises.items()):
        yield Page(
            path=exercise_path(ident),
            title=exercise.name,
            description=exercise.why,
            template="exercise.md.jinja",
            context={
                "ident": ident,
                "exercise": exercise,
                "limits": limits_in_words(exercise.limits),
                "appearances": appearances(site, ident),
                "routines": used_by.get(ident, []),
                "easier_than": _ways_to(site, ident, "harder"),
                "harder_than": _ways_to(site, ident, "easier"),
            },
            crumbs=(Crumb("Exercises", EXERCISES),),
            kind="exercise",
        )


def appearances(site: Site, ident: str) -> list[Appearance]:
    """Return where an exercise stands, session by session, with weeks of equal doses taken together."""
    grouped: dict[tuple[str, str, tuple[int, int]], list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]]] = {}
    for plan, session, item in site.uses.get(ident, []):
        grouped.setdefault((plan.ident, session.session, item.slot), []).append((plan, session, item))
    found = []
    for uses in grouped.values():
        plan, first, item = uses[0]
        rounds = site.programme.sessions[first.session].blocks[item.slot[0]].kind != "straight"
        work = [0.0] * len(plan.weeks)
        for _, session, used in uses:
            work[session.week - 1] += work_of(used.dose)
        kinds = [week.remains.kind for week in plan.weeks]
        unit = {"reps": "reps", "distance": "metres"}.get(item.dose.measure, "seconds")
        drawn = bars(work, kinds, unit, 36)
        found.append(Appearance(plan, first.session, tuple(_stretches(uses, rounds)), drawn, unit))
    return found


def work_of(dose: Dose) -> float:
    """Return the week's work of one dose: repetitions, seconds or metres, over all sets and sides."""
    amount = float(dose.amount) / (100 if dose.measure == "distance" else 1)
    return dose.sets * amount * dose.side_count


def _stretches(uses: list[tuple[ResolvedPlan, ResolvedSession, ResolvedItem]], rounds: bool) -> Iterator[Stretch]:
    open_stretch: Stretch | None = None
    for _, session, item in uses:
        said, kind = dose_in_words(item.dose, rounds), session.remains.kind
        if open_stretch and (open_stretch.dose, open_stretch.kind) == (said, kind):
            open_stretch = Stretch(open_stretch.first, session, said, kind)
            continue
        if open_stretch:
            yield open_stretch
        open_stretch = Stretch(session, session, said, kind)
    if open_stretch:
        yield open_stretch


def _routines_by_exercise(site: Site) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for ident, routine in sorted(site.programme.routines.items()):
        for part in routine.exercises:
            if part.exercise and ident not in found.setdefault(part.exercise, []):
                found[part.exercise].append(ident)
    return found


def _ways_to(site: Site, ident: str, way: str) -> list[str]:
    """Return the exercises that name this one as their easier or harder way."""
    return [
        other
        for other, exercise in sorted(site.programme.exercises.items())
        if any(variation.exercise == ident for variation in getattr(exercise, way))
    ]
