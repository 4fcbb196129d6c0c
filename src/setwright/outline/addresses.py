"""The addresses of all kinds of pages.

Every page is an ``index.md`` in a folder of its own: then an address means the same seen from the source and from the
built site, whether or not an engine rewrites the links inside HTML blocks (MkDocs does not, its successor does).
"""

import posixpath
from typing import Final

from setwright.dose.resolved import ResolvedSession

HOME: Final = "index.md"
PLANS: Final = "plans/index.md"
EXERCISES: Final = "exercises/index.md"
WARM_UPS: Final = "warm-ups/index.md"
COOL_DOWNS: Final = "cool-downs/index.md"
FIND: Final = "find/index.md"
NUMBERS: Final = "numbers/index.md"
SAFETY: Final = "safety/index.md"
SOURCES: Final = "sources/index.md"
REVIEW: Final = "review/index.md"
CHECKS: Final = "checks/index.md"
EXPOSURE: Final = "weekly-load/index.md"
DATA: Final = "data/index.md"
FIGURES: Final = "figures/index.md"
SETTINGS: Final = "settings/index.md"
LOG: Final = "log/index.md"
GROUP: Final = "group/index.md"
HALL: Final = "hall/index.md"
OFFLINE: Final = "offline/index.md"
MORE: Final = "more/index.md"

ROUTINE_FOLDERS: Final = {"warm-up": "warm-ups", "cool-down": "cool-downs"}


def plan_path(plan: str) -> str:
    """Return the source path of a plan's page."""
    return f"plans/{plan}/index.md"


def week_path(plan: str, week: int) -> str:
    """Return the source path of a week's page."""
    return f"plans/{plan}/week-{week:02}/index.md"


def session_path(session: ResolvedSession) -> str:
    """Return the source path of a session's page in its week."""
    return f"plans/{session.plan}/week-{session.week:02}/{session.place}/index.md"


def coach_path(session: ResolvedSession) -> str:
    """Return the source path of the coach's sheet of a session in its week."""
    return f"group/{session.plan}/week-{session.week:02}/{session.place}/index.md"


def hall_address(session: ResolvedSession) -> str:
    """Return what follows the address of the hall's screen for a session."""
    return f"?session={folder_of(session_path(session))}"


def exercise_path(ident: str) -> str:
    """Return the source path of an exercise's page."""
    return f"exercises/{ident}/index.md"


def check_path(rule: str) -> str:
    """Return the source path of a check's page."""
    return f"checks/{rule}/index.md"


def routine_path(kind: str, ident: str) -> str:
    """Return the source path of a warm-up's or cool-down's page."""
    return f"{ROUTINE_FOLDERS[kind]}/{ident}/index.md"


def folder_of(path: str) -> str:
    """Return the address of a source path's page in the site: a folder, '' for the home page."""
    return path.removesuffix("index.md") if path == HOME or path.endswith("/index.md") else path


def relative(from_path: str, to: str) -> str:
    """Return the address of a page or file as seen from another page; ``to`` may end in an anchor."""
    target, _, anchor = to.partition("#")
    start = folder_of(from_path)
    address = posixpath.relpath("/" + folder_of(target), "/" + start) if target else ""
    if (target and folder_of(target).endswith("/")) or target == HOME:
        address += "/"
    return address + (f"#{anchor}" if anchor else "")
