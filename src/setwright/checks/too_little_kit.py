"""Kit that is too little for everyone who comes.

Needs `people` in `club.yml`, and how many there are of each kind of kit in `kit` and `kit_counts`. Goes through every
block with so many people, set by set, at the written pace: whoever finds the kit in use waits. Then it tries halves in
turn or stations, the next lighter weight, and the way at home for some of them, and speaks where somebody still waits
too long. Body weights of a group are unknown, so they lie evenly over the club's range. It looks at the week of each
session in which the wait is longest.

Why it matters: whoever waits gets cold, talks, or takes a weight that is too heavy since it is free.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.threshold import threshold
from setwright.dose.resolved import ResolvedPlan
from setwright.group.orders import WAIT_S, Shared, block_shared
from setwright.wording.language import ENGLISH
from setwright.wording.sharing import how_to_share, runs_short
from setwright.wording.times import duration

ID = "too-little-kit"
SEVERITY = "warning"
SOURCE = COMMON
LONGEST_WAIT = threshold(ID, "most", "time", WAIT_S, (0, 900), "The longest that somebody may wait for kit.")
THRESHOLDS = (LONGEST_WAIT,)

BAD: Example = {"club": "{people: 12, kit: {kettlebell: 12, wall: 1}}", "exercises/step-down": "kit: [wall]"}
GOOD: Example = {
    "club": "{people: 12, kit: {kettlebell: 12, wall: 1}, kit_counts: {wall: 12}}",
    "exercises/step-down": "kit: [wall]",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each block in which somebody waits too long, in the week in which that is worst."""
    club, most_s = subject.programme.club, int(subject.value(LONGEST_WAIT))
    if club.people is None:
        return
    worst: dict[tuple[str, int], tuple[Shared, int, ResolvedPlan]] = {}
    for plan in subject.plans:
        for session in plan.sessions:
            for block in session.blocks:
                shared = block_shared(subject.programme, session, block, club.people, most_s)
                before = worst.get((session.session, block.index))
                if shared.longest_wait_s > (before[0].longest_wait_s if before else most_s):
                    worst[session.session, block.index] = (shared, session.week, plan)
    for (session_id, index), (shared, week, plan) in worst.items():
        kit = ENGLISH.joined(runs_short(club, one) for one in shared.short[:3])
        wait = duration(ENGLISH, shared.longest_wait_s)
        way = how_to_share(ENGLISH, shared)
        yield Doubt(
            subject.at(f"sessions/{session_id}.yml", "blocks", index),
            f"{club.people} people have too little {kit}: somebody waits {wait} in week {week} of {plan.ident}"
            + (f", even with {way}" if way else ""),
            "split the block, add an exercise without kit, or accept the wait",
            subject.programme.sessions[session_id].accept,
        )
