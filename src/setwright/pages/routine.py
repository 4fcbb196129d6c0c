"""Warm-ups and cool-downs: a list of each, and a page for each."""

from collections.abc import Iterator

from setwright.outline.addresses import COOL_DOWNS, WARM_UPS, routine_path
from setwright.outline.site import Site
from setwright.pages.page import Crumb, Page
from setwright.wording.language import later

_LISTS = (
    ("warm-up", WARM_UPS, later("Warm-ups"), later("Pick one before you lift.")),
    (
        "cool-down",
        COOL_DOWNS,
        later("Cool-downs"),
        later("Pick one straight after the session, or keep it for the evening."),
    ),
)


def pages(site: Site) -> Iterator[Page]:
    """Yield the two lists and every routine's page."""
    for kind, path, title_of, intro_of in _LISTS:
        title, intro = site.language.say(title_of), site.language.say(intro_of)
        routines = [(i, r) for i, r in sorted(site.programme.routines.items()) if r.kind == kind]
        yield Page(
            path=path,
            title=title,
            description=intro,
            template="routines.md.jinja",
            context={"routines": routines, "intro": intro, "kind": kind},
            kind="routines",
        )
        for ident, routine in routines:
            yield Page(
                path=routine_path(kind, ident),
                title=routine.name,
                description=routine.why,
                template="routine.md.jinja",
                context={"ident": ident, "routine": routine, "sessions": _sessions_with(site, ident)},
                crumbs=(Crumb(title, path),),
                kind="routine",
                written_in=f"routines/{ident}.yml",
            )


def _sessions_with(site: Site, ident: str) -> list[str]:
    return [
        session.name
        for _, session in sorted(site.programme.sessions.items())
        if ident in (*session.warm_up, *session.cool_down)
    ]
