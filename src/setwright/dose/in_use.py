"""The doses of an exercise in use: the lowest to the highest over all plans, with the weeks they stand in."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from setwright.dose.dose import Dose
from setwright.dose.resolved import ResolvedItem, ResolvedPlan
from setwright.model.load import Load, Reserve
from setwright.model.prescription import MEASURES, Measure
from setwright.model.programme import Programme
from setwright.model.span import Open
from setwright.model.tempo import Tempo


@dataclass
class Dosage:
    """Every dose of one exercise that some plan or routine asks for, put together.

    ``opens`` are its sets of as many as possible: what must be left, and where they end in any case, if anywhere.
    ``weeks`` are those of one plan, and only in ``by_plan``, which holds the same for each plan alone.
    """

    sets: set[int] = field(default_factory=set)
    weekly_sets: int = 0
    amounts: dict[Measure, set[Fraction]] = field(default_factory=dict)
    loads: set[Load] = field(default_factory=set)
    unloaded: bool = False
    opens: set[tuple[int, int | None]] = field(default_factory=set)
    tempos: set[Tempo] = field(default_factory=set)
    in_routines: dict[Measure, set[Fraction]] = field(default_factory=dict)
    weeks: list[int] = field(default_factory=list)
    by_plan: dict[str, "Dosage"] = field(default_factory=dict)

    @property
    def in_use(self) -> bool:
        """Whether anything asks for this exercise at all."""
        return bool(self.sets or self.in_routines)

    def add(self, dose: Dose) -> None:
        """Count one dose in."""
        self.sets.add(dose.count)
        for one in dose.working:
            self.amounts.setdefault(dose.measure, set()).update((Fraction(one.amount.low), Fraction(one.amount.high)))
            if one.load is None:
                self.unloaded = True
            else:
                self.loads.update(load for load in (one.load, one.feels) if load is not None)
            if isinstance(one.amount, Open):
                self.loads.add(Reserve(one.amount.leave))
                self.opens.add((one.amount.leave, one.amount.up_to))
            if one.tempo is not None:
                self.tempos.add(one.tempo)


def most_sets(item: ResolvedItem) -> dict[str, int]:
    """Return the most sets of each exercise that a member does in one place of a session, by whatever choice."""
    most: dict[str, int] = {}
    for way in item.ways:
        most[way.exercise] = max(most.get(way.exercise, 0), way.dose.count)
    return most


def dosages(programme: Programme, plans: Sequence[ResolvedPlan]) -> dict[str, Dosage]:
    """Return the doses in use of every exercise, by id."""
    found = {ident: Dosage() for ident in programme.exercises}
    for plan in plans:
        for week in plan.weeks:
            total: dict[str, int] = {}
            for session in week.sessions:
                for item in session.all_items:
                    whole = found[item.exercise]
                    whole.add(item.dose)
                    whole.by_plan.setdefault(plan.ident, Dosage()).add(item.dose)
                for item in session.items:
                    for ident, sets in most_sets(item).items():
                        total[ident] = total.get(ident, 0) + sets
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
