"""The member's own pages: my settings, my log, and what is kept for a place without signal.

Their text is complete without JavaScript; what they do runs on the device, and nothing that is typed there leaves it.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass

from setwright.dose.resolved import ResolvedPlan
from setwright.model.club import Barbell, WeightList, WeightSteps
from setwright.model.load import OneRepMaxShare
from setwright.outline.addresses import LOG, OFFLINE, SETTINGS
from setwright.outline.site import Site
from setwright.pages.page import Crumb, Page
from setwright.palette import DAY
from setwright.phone import attributes

MANIFEST = "manifest.webmanifest"


@dataclass(frozen=True)
class KitView:
    """Kit that a member may have at home. ``weights`` says whether it comes in weights."""

    name: str
    weights: bool


def pages(site: Site) -> Iterator[Page]:
    """Yield my settings, my log and the offline page."""
    say = site.language.say
    yield Page(
        path=SETTINGS,
        title=say("My settings"),
        description=say("Body weight, kit at home, best lifts. Kept on this device only."),
        template="settings.md.jinja",
        context={"kit": kit(site), "lifts": lifts(site), "multiples": attributes.multiples(), "plans": own_plans(site)},
        kind="settings",
    )
    yield Page(
        path=LOG,
        title=say("My log"),
        description=say("The sets that you did, week by week. Kept on this device only."),
        template="log.md.jinja",
        context={},
        crumbs=(Crumb(say("My settings"), SETTINGS),),
        kind="log",
    )
    yield Page(
        path=OFFLINE,
        title=say("Without signal"),
        description=say("What this device keeps of these pages, so that you can train where there is no signal."),
        template="offline.md.jinja",
        context={},
        crumbs=(Crumb(say("My settings"), SETTINGS),),
        kind="offline",
    )


def kit(site: Site) -> list[KitView]:
    """Return the club's kit that an exercise of the programme needs, in the club's order."""
    used = {name for exercise in site.programme.exercises.values() for name in exercise.kit}
    used |= {name for plan in site.plans for session in plan.sessions for name in site.kit_of(session)}
    club = site.programme.club.kit
    names = [*club, *sorted(used - club.keys())]
    return [
        KitView(name, isinstance(club.get(name), WeightSteps | WeightList | Barbell)) for name in names if name in used
    ]


def own_plans(site: Site) -> list[ResolvedPlan]:
    """Return the plans of which a member chooses the group or the first day."""
    return [plan for plan in site.plans if len(plan.groups) != 1]


def lifts(site: Site) -> list[tuple[str, str]]:
    """Return the exercises that some plan loads with a share of 1RM, by id and name, in order of name."""
    every = (item for plan in site.plans for session in plan.sessions for item in session.all_items)
    loaded = {item.exercise for item in every if any(isinstance(load, OneRepMaxShare) for load in item.dose.loads)}
    named = [(ident, site.programme.exercises[ident].name) for ident in loaded]
    return sorted(named, key=lambda pair: (pair[1], pair[0]))


def files(site: Site) -> Iterator[tuple[str, str]]:
    """Yield the web app manifest (W3C), its addresses relative, so that the site may lie in a sub-folder."""
    club = site.programme.club
    icons = [
        {"src": f"assets/icons/icon-{size}.png", "sizes": f"{size}x{size}", "type": "image/png", "purpose": purpose}
        for size, purpose in ((192, "any"), (512, "any"))
    ]
    mask = {"src": "assets/icons/mask-512.png", "sizes": "512x512", "type": "image/png", "purpose": "maskable"}
    content = {
        "name": club.name,
        "short_name": short_name(club.name),
        "description": site.language.say("Strength training at %(club)s", club=club.name),
        "lang": site.language.code,
        "start_url": "./",
        "scope": "./",
        "display": "standalone",
        "background_color": DAY["md-default-bg-color"],
        "theme_color": DAY["md-primary-fg-color"],
        "icons": [*icons, mask],
    }
    yield MANIFEST, json.dumps(content, ensure_ascii=False, indent=1) + "\n"


def short_name(name: str, longest: int = 12) -> str:
    """Return a name for below an icon: as many whole words as fit, or the start of the first."""
    short = ""
    for word in name.split():
        longer = f"{short} {word}".strip()
        if len(longer) > longest:
            break
        short = longer
    return short or name[:longest]
