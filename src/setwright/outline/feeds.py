"""The addresses of calendar files. Pages link to them; the room ``feeds`` writes them."""

from typing import Final

from setwright.dose.resolved import Group

FOLDER: Final = "feeds"


def calendar_path(plan: str, group: Group) -> str:
    """Return the path of a plan's calendar for those who begin together."""
    return f"{FOLDER}/{plan}-{group.slug}.ics" if group.slug else f"{FOLDER}/{plan}.ics"
