"""More work than fits between two starts.

Looks at blocks in which a set starts every so often. At the slow end, both sides included, it must be over before the
next one starts.

Why it matters: whoever is late hurries, and hurried repetitions are the ones that look worst.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject, place_in_session
from setwright.dose.timing import set_time
from setwright.wording.language import ENGLISH
from setwright.wording.times import duration

ID = "work-beyond-clock"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    every: 30 s                                     # 10 reps take 30 to 50 s
    sets: 8
    exercises: [{exercise: goblet-squat, reps: 10}]
"""
}
GOOD: Example = {
    "sessions/legs": """
blocks:
  - kind: straight
    every: 1 min
    sets: 8
    exercises: [{exercise: goblet-squat, reps: 10}]
"""
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at the first week in which a set does not fit."""
    for (session, slot), uses in subject.slots.items():
        for plan, where, item in uses:
            clock = item.dose.clock
            if clock is None or clock.every_s is None:
                break
            longest_s = max(set_time(item.dose, one).high_s for one in item.dose.sets)
            if longest_s > clock.every_s:
                yield Doubt(
                    subject.at(*place_in_session(session, slot)),
                    f"{item.exercise}: a set takes up to {duration(ENGLISH, longest_s)}, and the next one starts after "
                    f"{duration(ENGLISH, clock.every_s)}, in week {where.week} of {plan.ident}",
                    "fewer reps or a quicker tempo, or a longer 'every'",
                    subject.accepted_at(session, slot),
                )
                break
