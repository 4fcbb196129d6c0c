"""What pages and PDF sheets share: the sheets' addresses, the boxes to write in, and how full a printed page is.

Pages link to the sheets by these addresses; the room ``handouts`` writes them.
"""

from typing import Final

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedSession
from setwright.model.load import Band

FOLDER: Final = "handouts"
REVIEWS: Final = f"{FOLDER}/review/all-exercises-review.pdf"
"""The review sheets of all exercises in one file."""


def session_sheet(session: ResolvedSession) -> str:
    """Return the path of a session's sheet. The file's name still says what it is after a download."""
    return f"{FOLDER}/{session.plan}/{session.plan}-week-{session.week:02}-{session.day}.pdf"


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


def boxes(dose: Dose, unit: str) -> list[str]:
    """Return what a member writes down after each set: the amount done, the load taken, the effort felt."""
    done = {"reps": "reps", "hold": "s", "work": "s", "distance": "m"}[dose.measure]
    match dose.heaviest:
        case None:
            return [done, "effort"]
        case Band():
            return [done, "band", "effort"]
        case _:
            return [done, unit, "effort"]


def density(session: ResolvedSession) -> str:
    """Return how tightly the browser prints a session: its lines have to share one sheet of A4 or US Letter."""
    lines = 2 * len(session.blocks) + sum(2 if item.bands else 1 for item in session.items)
    return "roomy" if lines <= 12 else "usual" if lines <= 18 else "tight" if lines <= 21 else "full"
