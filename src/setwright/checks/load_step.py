"""A load that grows too fast.

Looks at each exercise in the weeks of a plan, whichever session it stands in. A step is judged in the hand: from the
owned weight that a member takes to the next one, for every body weight of the club, since a tenth on paper may be 4 kg
to 6 kg. The step to the next weight that the club owns, with nothing between, passes if the repetitions (or time, or
distance) have climbed at the weight before and start again below. Loads that meet no owned weight, and shares of 1RM,
are judged as written. A plan that `follows` another goes on from that one's last weeks.

What comes before is the heaviest load of the last four weeks in the same session, or in another one where the
exercise is new to this session. So neither a lighter week nor a taper nor a lighter week that the coach wrote into
the numbers makes the way back a step. A load that begins, or that cannot be compared with the one before, is no step.
From help to the body alone, and from there to a weight added to it, is one, for the lightest member.

Sets with loads of their own are compared one by one, each with the set in the same place, since a first set that jumps
to the weight of the last one is a step that the heaviest set does not show.

Why it matters: tissue adapts more slowly than willingness. Smaller steps, or more repetitions first, reach the same
load with less risk.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import ceil, floor
from typing import Final

from setwright.checks.example import Example
from setwright.checks.limit_crossing import dose_place
from setwright.checks.rule import Doubt, Subject
from setwright.checks.spacing import length_in_days
from setwright.checks.threshold import threshold
from setwright.checks.trained import History, Trained, Use, only
from setwright.dose.progression import with_magnitude
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.taken import TakenStep, is_taken, lifts_body, taken_steps
from setwright.model.load import HelpShare, HelpWeight, Load, demand, in_all, magnitude, same_kind
from setwright.model.session import Slot
from setwright.model.units import plain_number

ID = "load-step-too-large"
SEVERITY = "warning"
SOURCE = (
    "Ratamess NA et al., Med Sci Sports Exerc 2009;41:687-708: 2 to 10 %, once one or two repetitions more than "
    "planned are possible. That the next owned weight passes after a climb is common practice."
)
MOST: Final = threshold(ID, "most", "%", 10, (1, 50), "the largest step of a load in a week")
THRESHOLDS = (MOST,)
RECENT: Final = 28
"""How many days back the heaviest load counts. Common practice, no source."""

BAD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - exercise: goblet-squat
        reps: 8
        load: 15 % bodyweight                       # at 40 kg, 6 kg in the hand
        progress: {load: {add: 1.5 % bodyweight, up_to: 18 % bodyweight}}     # and then 8 kg
"""
}
GOOD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - exercise: goblet-squat
        reps: 6
        load: 15 % bodyweight
        progress:
          reps: {add: 1, up_to: 8}
          then: {load: {add: 1.5 % bodyweight, up_to: 16.5 % bodyweight}}
"""
}


@dataclass(frozen=True)
class Overstep:
    """A step that is larger than it may be; ``taken`` is None where it is judged as written.

    ``place`` is the set that takes it, from 1; None where the heaviest one does. Then ``before`` and ``now`` hold that
    set alone. ``earlier`` is the plan that the load before stands in, where this plan follows it.
    """

    plan: str
    session: ResolvedSession
    before: ResolvedItem
    now: ResolvedItem
    percent: Fraction
    taken: TakenStep | None = None
    place: int | None = None
    earlier: str | None = None

    def __str__(self) -> str:
        """Say the step as written, and in the hand where that is something else."""
        loads = self.before.dose.heaviest, self.now.dose.heaviest
        was, is_now = ("the body alone" if load is None else load for load in loads)
        which = "" if self.place is None else f"{'round' if self.now.rounds else 'set'} {self.place} from "
        when = f"in week {self.session.week} of {self.plan}"
        if self.earlier is not None:
            when = f"{when}, after {self.earlier},"
        more = f"{plain_number(self.percent, 1)} % more"
        if self.taken is None or (self.taken.body_weight_kg is None and _as_written(self.before, self.now, self.taken)):
            return f"{which}{was} to {is_now} {when} is {more}"
        whose = "" if self.taken.body_weight_kg is None else f" of a member of {self.taken.body_weight_kg} kg"
        if lifts_body(self.now.dose.heaviest):
            both = f"{plain_number(self.taken.before_kg)} kg to {plain_number(self.taken.now_kg)} kg"
            return f"{which}{was} to {is_now} {when}, of body and weight together{whose} {both}, is {more}"
        in_hand = f"{plain_number(self.taken.before_kg)} kg to {plain_number(self.taken.now_kg)} kg"
        return f"{which}{was} to {is_now} {when}, in the hand{whose} {in_hand}, is {more}"


def step_percent(before: Load | None, now: Load | None, lightest_kg: Fraction) -> Fraction | None:
    """Return how much heavier a load is, in percent of the one before; None where the two cannot be compared.

    Where the body is lifted with it, that is counted in, for the lightest member, whose step is the largest.
    """
    if _to_or_from_the_body(before, now):
        was, is_now = (_with_body(load, lightest_kg) for load in (before, now))
        return (is_now / was - 1) * 100
    if before is None or now is None or not before.weighed or type(before) is not type(now):
        return None
    if lifts_body(now):
        was, is_now = (_with_body(load, lightest_kg) for load in (before, now))
        return (is_now / was - 1) * 100
    return (in_all(now) / in_all(before) - 1) * 100


def _to_or_from_the_body(before: Load | None, now: Load | None) -> bool:
    """Say whether one of two is the body alone, and the other has help for it or a weight added."""
    return (before is None) != (now is None) and (lifts_body(before) or lifts_body(now))


def _with_body(load: Load | None, lightest_kg: Fraction) -> Fraction:
    """Return what is lifted of the lightest member: body and weight, or what help leaves of the body; 1 kg at least."""
    match load:
        case None:
            return lightest_kg
        case HelpShare(percent=percent):
            return max(Fraction(1), lightest_kg * (1 - percent / 100))
        case HelpWeight(kg=kg):
            return max(Fraction(1), lightest_kg - kg)
    return lightest_kg + magnitude(load)


def uses_in(plan: ResolvedPlan) -> dict[str, list[Use]]:
    """Return every use of every exercise in the normal weeks of a plan, in order of date."""
    found: dict[str, list[Use]] = {}
    for session in plan.sessions:
        if session.remains.kind == "normal":
            for item in session.all_items:
                found.setdefault(item.exercise, []).append((session, item))
    return found


def uses_before(plans: Sequence[ResolvedPlan], plan: ResolvedPlan) -> dict[str, list[Use]]:
    """Return every use in the plans that a plan follows, as if it began on the day after their last week."""
    found: dict[str, list[Use]] = {}
    earlier, days = plan, 0
    while (before := next((one for one in plans if one.ident == earlier.plan.follows), None)) is not None:
        days += length_in_days(before)
        for exercise, uses in uses_in(before).items():
            moved = [(replace(session, since_start=session.since_start - days), item) for session, item in uses]
            found[exercise] = [*moved, *found.get(exercise, [])]
        earlier = before
    return found


def oversteps(
    subject: Subject,
    plan: str,
    uses: Sequence[Use],
    most: Fraction,
    shares: bool = False,
    before: Sequence[Use] = (),
) -> Iterator[Overstep]:
    """Yield every step of an exercise's load that is more than so many percent, in order of date.

    Args:
        subject: the programme.
        plan: the plan's id.
        uses: the exercise in the plan's normal weeks, as ``uses_in`` returns them.
        most: the largest step in percent.
        shares: judge a share as written, too, whatever it comes to in the hand.
        before: the exercise in the plans that this one follows.
    """
    trained = Trained(before)
    for use in uses:
        comparable = trained.comparable(use)
        found = _of_heaviest(subject, plan, comparable, use, most, shares) or _of_one_set(
            subject, plan, comparable, use, most, shares
        )
        trained.add(use)
        if found is not None:
            yield found


def _of_heaviest(
    subject: Subject, plan: str, comparable: History, use: Use, most: Fraction, shares: bool
) -> Overstep | None:
    session, item = use
    recent = comparable.recent(session.since_start, RECENT)
    before = _heaviest([i for _, i in recent])
    if before is None or (item.dose.heaviest is None and not lifts_body(before.dose.heaviest)):
        return None
    found = _overstep(subject, plan, comparable, before, use, most, shares)
    whose = next(s.plan for s, i in recent if i is before)
    return replace(found, earlier=whose) if found is not None and whose != session.plan else found


def _of_one_set(
    subject: Subject, plan: str, comparable: History, use: Use, most: Fraction, shares: bool
) -> Overstep | None:
    """Return the largest step of a set from the one in the same place; None where all are as one."""
    session, item = use
    if len(item.dose.loads) < 2 and not comparable.several_loads:
        return None
    found = []
    for place in range(item.dose.count):
        alone = (session, only(item, place))
        step = _of_heaviest(subject, plan, comparable.in_place(place), alone, most, shares)
        if step is not None:
            found.append(replace(step, place=place + 1))
    return max(found, key=lambda step: step.percent, default=None)


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at its first step that is too large."""
    most = subject.value(MOST)
    seen: set[tuple[str, Slot]] = set()
    for plan in subject.plans:
        before = uses_before(subject.plans, plan)
        for exercise, uses in uses_in(plan).items():
            for found in oversteps(subject, plan.ident, uses, most, before=before.get(exercise, ())):
                where = (found.session.session, found.now.slot)
                if where in seen:
                    continue
                seen.add(where)
                yield Doubt(
                    dose_place(subject, plan, found.session, found.now, found.now.slot, "load"),
                    f"{exercise}: {found}",
                    _hint(found, most),
                    subject.accepted_at(*where),
                )


def _heaviest(history: Sequence[ResolvedItem]) -> ResolvedItem | None:
    """Return the latest of the heaviest; just the latest where the loads are not counted alike."""
    if not history:
        return None
    latest = history[-1]
    load = latest.dose.heaviest
    if load is None or not load.weighed:
        return latest
    alike = [i for i in history if i.dose.heaviest is not None and same_kind(load, i.dose.heaviest)]
    return max(reversed(alike), key=lambda i: demand(i.dose.heaviest) if i.dose.heaviest is not None else 0)


def _overstep(
    subject: Subject,
    plan: str,
    history: History,
    before: ResolvedItem,
    use: Use,
    most: Fraction,
    shares: bool,
) -> Overstep | None:
    session, now = use
    if before.dose.heaviest == now.dose.heaviest and before.kit == now.kit:
        return None
    percent = step_percent(before.dose.heaviest, now.dose.heaviest, subject.programme.club.body_weight.from_)
    written = None
    if percent is not None and percent > most:
        written = Overstep(plan, session, before, now, percent)
    if not (is_taken(before) and is_taken(now)):
        return written
    if shares and written is not None and now.dose.heaviest is not None and now.dose.heaviest.of is not None:
        return written
    climbed = _climbed(history, before, now)
    members, load = subject.programme.club.body_weight, now.dose.heaviest
    owned = subject.programme.club.weights_kg(now.kit, load.per_hand) if now.kit and load else ()
    too_large = [
        step
        for step in taken_steps(before, now, owned, (ceil(members.from_), floor(members.to)))
        if step.percent > most and not (climbed and step.between_kg is None)
    ]
    worst = max(too_large, key=lambda step: step.percent, default=None)
    return None if worst is None else Overstep(plan, session, before, now, worst.percent, worst)


def _climbed(history: History, before: ResolvedItem, now: ResolvedItem) -> bool:
    """Say whether the amount of a set climbed at the load before, and starts again below."""
    least, highest = history.amounts_at(before.dose.heaviest)
    same_measure = before.dose.measure == now.dose.measure
    return same_measure and highest > least and now.dose.amount.high < highest


def _hint(found: Overstep, most: Fraction) -> str:
    was = found.before.dose.heaviest
    first = f"{MOST.said(most)} a week is the most"
    if found.taken is None and (was is not None or lifts_body(found.now.dose.heaviest)):
        if was is None or lifts_body(was):
            return f"{first}, of body and weight together: take a smaller step, or more repetitions first"
        largest = with_magnitude(was, magnitude(was) * (1 + most / 100))
        return f"{first}: take a smaller step, or more repetitions first (up to {largest})"
    between_kg = found.taken.between_kg if found.taken is not None else None
    if between_kg is None:
        return (
            f"{first}, but the next weight that the club owns passes after a climb: let the repetitions climb first "
            "and start again below ('reps: {add: 1, up_to: 10}', 'then: {load: ...}')"
        )
    return f"{first}: the club owns {plain_number(between_kg)} kg in between: take that first, after a climb"


def _as_written(before: ResolvedItem, now: ResolvedItem, taken: TakenStep) -> bool:
    was, is_now = before.dose.heaviest, now.dose.heaviest
    return was is not None and is_now is not None and (in_all(was), in_all(is_now)) == (taken.before_kg, taken.now_kg)
