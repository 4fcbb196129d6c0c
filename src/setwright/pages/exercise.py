"""An exercise's page: everything a member learns and a physiotherapist reads, and where it stands in the plans."""

from collections.abc import Iterator

from setwright.outline.addresses import EXERCISES, exercise_path
from setwright.outline.site import Site
from setwright.outline.training import Appearance, appearances
from setwright.pages.page import Crumb, Page
from setwright.pages.plan import Bar, bars
from setwright.wording.doses import unit_of_work
from setwright.wording.limits import limits


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
                "limits": limits(site.language, exercise.limits),
                "appearances": [(place, _drawn(site, place)) for place in appearances(site, ident)],
                "routines": used_by.get(ident, []),
                "easier_than": _ways_to(site, ident, "harder"),
                "harder_than": _ways_to(site, ident, "easier"),
            },
            crumbs=(Crumb(site.language.say("Exercises"), EXERCISES),),
            kind="exercise",
            written_in=f"exercises/{ident}.yml",
        )


def _drawn(site: Site, place: Appearance) -> tuple[Bar, ...]:
    unit = unit_of_work(site.language, place.measure)
    return bars(site.language, place.work, [week.remains.kind for week in place.plan.weeks], unit, 36)


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
