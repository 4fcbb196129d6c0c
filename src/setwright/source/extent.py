"""How much a programme may hold in all: more than any club writes, so that no slip keeps the tool busy for hours."""

from collections.abc import Iterable, Iterator
from typing import Final

from setwright.model.plan import Plan
from setwright.source.finding import Finding, Position

MOST_DAYS: Final = 6000
"""Training days of all plans together, each a page of its own: ten years of twelve a week."""


def extent_findings(plans: Iterable[Plan], folder: Position) -> Iterator[Finding]:
    """Yield a finding where the plans hold more training days together than a club could mean."""
    days = sum(len(plan.planned(week)) for plan in plans for week in range(1, plan.week_count + 1))
    if days > MOST_DAYS:
        said = f"the plans hold {days} training days together, {MOST_DAYS} are the most"
        yield Finding(folder, "too-many-days", said, "move plans that are over out of this folder")
