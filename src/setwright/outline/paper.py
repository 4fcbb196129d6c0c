"""What pages and PDF sheets share: the sheets' addresses, and how full a printed page is.

Pages link to the sheets by these addresses; the room ``handouts`` writes them.
"""

from typing import Final

from setwright.dose.resolved import ResolvedSession

FOLDER: Final = "handouts"
REVIEWS: Final = f"{FOLDER}/review/all-exercises-review.pdf"
"""The review sheets of all exercises in one file."""


def session_sheet(session: ResolvedSession) -> str:
    """Return the path of a session's sheet. The file's name still says what it is after a download."""
    return f"{FOLDER}/{session.plan}/{session.plan}-week-{session.week:02}-{session.place}.pdf"


def coach_sheet(session: ResolvedSession) -> str:
    """Return the path of a coach's sheet of a session in its week."""
    return f"{FOLDER}/{session.plan}/{session.plan}-week-{session.week:02}-{session.place}-coach.pdf"


def week_pack(plan: str, week: int) -> str:
    """Return the path of a week's pack: an overview and all its session sheets."""
    return f"{FOLDER}/{plan}/{plan}-week-{week:02}.pdf"


def booklet(plan: str) -> str:
    """Return the path of a plan's booklet."""
    return f"{FOLDER}/{plan}/{plan}-booklet.pdf"


def exercise_card(ident: str) -> str:
    """Return the path of an exercise's card."""
    return f"{FOLDER}/exercises/{ident}.pdf"


def review_sheet(ident: str) -> str:
    """Return the path of an exercise's sheet for the physiotherapist."""
    return f"{FOLDER}/review/{ident}-review.pdf"


def density(session: ResolvedSession) -> str:
    """Return how tightly the browser prints a session: its lines have to share one sheet of A4 or US Letter."""
    lines = 2 * len(session.blocks) + sum(2 if item.bands else 1 for item in session.all_items)
    return "roomy" if lines <= 12 else "usual" if lines <= 18 else "tight" if lines <= 21 else "full"
