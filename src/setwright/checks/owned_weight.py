"""A load that the club owns no weight for.

Looks at every load in kg or as a share of body weight: is there kit that comes in weights, in pairs where the load is
per hand, and is an owned weight near it, for the lightest and the heaviest member?

Why it matters: a member who finds nothing near takes what is there.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject, place_in_session
from setwright.dose.resolved import ResolvedItem, Take
from setwright.model.limits import NoWeight
from setwright.model.load import BodyWeightShare, HelpShare, HelpWeight, Load, OneRepMaxShare, Weight
from setwright.model.units import plain_number

ID = "no-owned-weight-near"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 8, load: 1 kg}]
"""
}
GOOD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 8, load: 8 kg}]
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at the first week that has one."""
    for (session, slot), uses in subject.slots.items():
        looked_at: set[Load] = set()
        for plan, where, item in uses:
            limits = subject.programme.exercises[item.exercise].limits
            if limits is not None and isinstance(limits.load, NoWeight):
                break  # no weight is near one that is not allowed
            new = [take for take in item.takes if take.load not in looked_at]
            looked_at.update(take.load for take in new)
            trouble = next(filter(None, (_trouble(subject, item, take) for take in new)), None)
            if trouble is not None:
                message, hint = trouble
                yield Doubt(
                    subject.at(*place_in_session(session, slot), "load"),
                    f"{item.exercise}, week {where.week} of {plan.ident}: {message}",
                    hint,
                    subject.accepted_at(session, slot),
                )
                break


def _trouble(subject: Subject, item: ResolvedItem, take: Take) -> tuple[str, str] | None:
    load = take.load
    if not isinstance(load, BodyWeightShare | OneRepMaxShare | Weight | HelpShare | HelpWeight):
        return None
    if item.kit is None:
        return f"{load}, but none of its kit comes in weights", "write 'kit: [kettlebell]' here, or on the exercise"
    if not subject.programme.club.weights_kg(item.kit, load.per_hand):
        return (
            f"{load}, but no {item.kit} is owned in pairs",
            "write 'pairs: true' in club.yml, or leave out 'per hand'",
        )
    if take.choice is not None and take.choice.fit != "near":
        return f"no {item.kit} near {load}", "choose a weight that the club owns"
    for band in take.shown:
        if band.whole_kg is None:
            continue
        whose = "a 1RM" if isinstance(load, OneRepMaxShare) else "members"
        who = f"{whose} of {band.whole_kg[0]} to {band.whole_kg[1]} kg"
        if band.choice.weight_kg is None:
            enough = "heavy" if isinstance(load, HelpShare) else "light"
            return f"no {item.kit} is {enough} enough for {who} at {load}", "offer an easier variation, and say so here"
        if band.choice.fit == "lighter":
            taken = f"{plain_number(band.choice.weight_kg)} kg"
            return f"no {item.kit} is near {load} for {who}: they take {taken}", "buy one, or plan a lighter load"
    return None
