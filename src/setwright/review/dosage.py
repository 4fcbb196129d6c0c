"""The doses of an exercise in use: the lowest to the highest over all plans, with the weeks they stand in."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedPlan
from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight, magnitude
from setwright.model.prescription import MEASURES, Measure
from setwright.model.programme import Programme
from setwright.model.units import plain_number
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration


@dataclass
class Dosage:
    """Every dose of one exercise that some plan or routine asks for, put together.

    ``weeks`` are those of one plan, and only in ``by_plan``, which holds the same for each plan alone.
    """

    sets: set[int] = field(default_factory=set)
    weekly_sets: int = 0
    amounts: dict[Measure, set[Fraction]] = field(default_factory=dict)
    loads: set[Load] = field(default_factory=set)
    unloaded: bool = False
    tempos: set[str] = field(default_factory=set)
    in_routines: dict[Measure, set[Fraction]] = field(default_factory=dict)
    weeks: list[int] = field(default_factory=list)
    by_plan: dict[str, "Dosage"] = field(default_factory=dict)

    @property
    def in_use(self) -> bool:
        """Whether anything asks for this exercise at all."""
        return bool(self.sets or self.in_routines)

    def add(self, dose: Dose) -> None:
        """Count one dose in."""
        self.sets.add(dose.sets)
        self.amounts.setdefault(dose.measure, set()).add(Fraction(dose.amount))
        if dose.load is None:
            self.unloaded = True
        else:
            self.loads.add(dose.load)
        if dose.tempo is not None:
            self.tempos.add(str(dose.tempo))

    @property
    def routine_words(self) -> str:
        """What warm-ups and cool-downs ask for, in one line."""
        return " or ".join(amount_range(m, self.in_routines[m]) for m in MEASURES if m in self.in_routines)

    @property
    def words(self) -> str:
        """The whole range in one line, always the same for the same doses; 'not in use' where there is none."""
        parts = []
        if self.sets:
            amounts = " or ".join(amount_range(m, self.amounts[m]) for m in MEASURES if m in self.amounts)
            parts.append(f"{_range(self.sets)} {'set' if self.sets == {1} else 'sets'} of {amounts}")
            parts.extend(load_ranges(self.loads))
            if self.loads and self.unloaded:
                parts.append("also without weight")
            if self.tempos:
                parts.append(f"tempo {' or '.join(sorted(self.tempos))}")
            parts.append(f"at most {self.weekly_sets} sets a week")
        if self.in_routines:
            parts.append(f"in warm-ups and cool-downs {self.routine_words}")
        return "; ".join(parts) or "not in use"


def dosages(programme: Programme, plans: Sequence[ResolvedPlan]) -> dict[str, Dosage]:
    """Return the doses in use of every exercise, by id."""
    found = {ident: Dosage() for ident in programme.exercises}
    for plan in plans:
        for week in plan.weeks:
            total: dict[str, int] = {}
            for session in week.sessions:
                for item in session.items:
                    whole = found[item.exercise]
                    whole.add(item.dose)
                    whole.by_plan.setdefault(plan.ident, Dosage()).add(item.dose)
                    total[item.exercise] = total.get(item.exercise, 0) + item.dose.sets
            for ident, sets in total.items():
                for counted in (found[ident], found[ident].by_plan[plan.ident]):
                    counted.weekly_sets = max(counted.weekly_sets, sets)
                found[ident].by_plan[plan.ident].weeks.append(week.number)
    for routine in programme.routines.values():
        for part in routine.exercises:
            if part.exercise is None:
                continue
            for measure in MEASURES:
                amount = getattr(part, measure)
                if amount is not None:
                    found[part.exercise].in_routines.setdefault(measure, set()).add(Fraction(amount))
    return found


def amount_range(measure: Measure, amounts: Iterable[Fraction]) -> str:
    """Return amounts of one measure from least to most: 6 to 10 reps, 30 s to 1 min hold, 20 to 30 m."""
    low, high = min(amounts), max(amounts)
    match measure:
        case "reps":
            return f"{_range((low, high))} reps"
        case "distance":
            return f"{_range((low / 100, high / 100))} m"
        case _:
            least, most = duration(ENGLISH, int(low)), duration(ENGLISH, int(high))
            if high < 60:
                least = str(int(low)) if low != high else least
            return f"{least if low == high else f'{least} to {most}'} {measure}"


def load_ranges(loads: Iterable[Load]) -> list[str]:
    """Return loads from lightest to heaviest, one range for each kind of load."""
    kinds: dict[tuple[str, bool], list[Load]] = {}
    for load in loads:
        kinds.setdefault((type(load).__name__, getattr(load, "per_hand", False)), []).append(load)
    return [_load_range(kinds[kind]) for kind in sorted(kinds)]


def _load_range(loads: list[Load]) -> str:
    if any(isinstance(load, Band) for load in loads):
        return " or ".join(sorted(str(load) for load in loads))
    low, high = min(loads, key=magnitude), max(loads, key=magnitude)
    if low == high:
        return str(low)
    match low:
        case BodyWeightShare() | OneRepMaxShare() | Weight() | Effort():
            number = _first_number(str(low))
            return str(high).replace(_first_number(str(high)), f"{number} to {_first_number(str(high))}", 1)
        case Reserve():
            return f"{low.reps} to {high}"
        case _:
            return f"{low} to {high}"


def _first_number(text: str) -> str:
    return next(word for word in text.split() if word[0].isdigit())


def _range(numbers: Iterable[int | Fraction]) -> str:
    low, high = min(numbers), max(numbers)
    return plain_number(low) if low == high else f"{plain_number(low)} to {plain_number(high)}"
