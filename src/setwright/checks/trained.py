"""What was trained of an exercise so far, indexed: a use in a long plan costs no more than in a short one."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import takewhile

from setwright.dose.resolved import ResolvedItem, ResolvedSession
from setwright.model.load import Load
from setwright.model.session import Slot

Use = tuple[ResolvedSession, ResolvedItem]


@dataclass
class History:
    """Uses of an exercise in order of date; ``several_loads`` where some sets have loads of their own."""

    uses: list[Use] = field(default_factory=list)
    several_loads: bool = False
    _highs: dict[Load | None, tuple[Fraction | int, Fraction | int]] = field(default_factory=dict)
    _places: dict[int, "History"] = field(default_factory=dict)
    _in_places: dict[int, int] = field(default_factory=dict)

    def add(self, use: Use) -> None:
        """Add what was trained last."""
        dose = use[1].dose
        self.uses.append(use)
        self.several_loads = self.several_loads or len(dose.loads) > 1
        high = dose.amount.high
        least, most = self._highs.get(dose.heaviest, (high, high))
        self._highs[dose.heaviest] = (min(least, high), max(most, high))

    def recent(self, day: int, days: int) -> list[Use]:
        """Return the uses of so many days before a day; the latest one alone where there are none."""
        found = [*takewhile(lambda use: day - use[0].since_start <= days, reversed(self.uses))]
        return found[::-1] or self.uses[-1:]

    def amounts_at(self, load: Load | None) -> tuple[Fraction | int, Fraction | int]:
        """Return the least and the most of the amounts, each the upper end of its range, with which a load was done."""
        return self._highs[load]

    def in_place(self, place: int) -> "History":
        """Return it as if the working set in that place, from 0, were the only one; without those that have none."""
        alone = self._places.setdefault(place, History())
        for session, item in self.uses[self._in_places.get(place, 0) :]:
            if item.dose.count > place:
                alone.add((session, only(item, place)))
        self._in_places[place] = len(self.uses)
        return alone


def only(item: ResolvedItem, place: int) -> ResolvedItem:
    """Return an exercise as if the working set in that place, from 0, were its only one."""
    return replace(item, dose=replace(item.dose, sets=(item.dose.working[place],)))


class Trained:
    """All that was trained of an exercise, in order of date, by its place in a session."""

    def __init__(self, uses: Iterable[Use]) -> None:
        """Begin with what was trained before."""
        self._own: dict[tuple[str, Slot], History] = {}
        self._earlier = History()
        self._latest_day: list[Use] = []
        for use in uses:
            self.add(use)

    def add(self, use: Use) -> None:
        """Add what is trained next."""
        session, item = use
        self._own.setdefault((session.session, item.slot), History()).add(use)
        self._begin(session.since_start)
        self._latest_day.append(use)

    def comparable(self, use: Use) -> History:
        """Return what to compare the next use with: the same place, or where it is new there, any on a day before."""
        session, item = use
        self._begin(session.since_start)
        return self._own.get((session.session, item.slot), self._earlier)

    def _begin(self, day: int) -> None:
        if self._latest_day and self._latest_day[0][0].since_start < day:
            for use in self._latest_day:
                self._earlier.add(use)
            self._latest_day = []
