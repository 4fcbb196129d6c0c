"""A repetition that takes very long.

Looks at the tempo of every dose in repetitions: how long does one of them take, pauses included?

Why it matters: a repetition of half a minute is a hold with a movement in it. It tires in another way than the load and
the count on the page suggest, breath is held more easily, and nobody has studied it with such loads.
"""

from collections.abc import Iterator
from typing import Final

from setwright.checks.example import Example
from setwright.checks.limit_crossing import dose_place
from setwright.checks.rule import Doubt, Subject
from setwright.checks.threshold import threshold

ID = "repetition-too-slow"
SEVERITY = "warning"
SOURCE = (
    "Schoenfeld BJ et al., Sports Med 2015;45:577-585, from memory: repetitions of half a second to 8 s serve alike, "
    "and those of more than 10 s serve less. The longest here leaves room for a pause: common practice."
)
MOST: Final = threshold(ID, "most", "time", 15, (4, 60), "the longest that one repetition takes")
THRESHOLDS = (MOST,)

_SQUAT = """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 4, tempo: %s}]
"""
BAD: Example = {"sessions/legs": _SQUAT % "10-5-10-0"}
GOOD: Example = {"sessions/legs": _SQUAT % "4-2-4-0"}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each exercise of a session, at the first week with such a tempo."""
    most_s = subject.value(MOST)
    for (session, slot), uses in subject.slots.items():
        for plan, where, item in uses:
            tempos = [one.tempo for one in item.dose.working if one.tempo is not None and one.tempo.rep_s > most_s]
            if tempos:
                slowest = max(tempos, key=lambda tempo: tempo.rep_s)
                yield Doubt(
                    dose_place(subject, plan, where, item, slot, "tempo"),
                    f"{item.exercise}: a repetition at {slowest} takes {slowest.rep_s} s, in week {where.week} of "
                    f"{plan.ident}",
                    f"{MOST.said(most_s)} is the most: take a quicker tempo, or write a 'hold'",
                    subject.accepted_at(session, slot),
                )
                break
