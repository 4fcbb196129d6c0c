"""The addresses of calendars and of the programme as data. Pages link to them; the room ``feeds`` writes them."""

from typing import Final

from setwright.dose.resolved import Group

FOLDER: Final = "feeds"

PROGRAMME: Final = f"{FOLDER}/programme.json"
SCHEMA: Final = f"{FOLDER}/programme.schema.json"
SETS: Final = f"{FOLDER}/sets.csv"
METADATA: Final = f"{SETS}-metadata.json"
"""Where a reader of W3C's CSV on the Web looks for it (Model for Tabular Data, 5.3)."""
WORKBOOK: Final = f"{FOLDER}/programme.xlsx"


def table_path(plan: str) -> str:
    """Return the path of a plan's table, as coaches keep one."""
    return f"{FOLDER}/plans/{plan}.csv"


def calendar_path(plan: str, group: Group) -> str:
    """Return the path of a plan's calendar for those who begin together."""
    return f"{FOLDER}/{plan}-{group.slug}.ics" if group.slug else f"{FOLDER}/{plan}.ics"
