"""Something that nothing uses.

Looks for sessions that no plan holds, routines that no session offers, exercises that stand in no session, no routine
and no variation, and choices in club.yml for which no session has another way.

Why it matters: it is often a misspelt or forgotten id, and members never see it.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject

ID = "unused-thing"
SEVERITY = "warning"
SOURCE = COMMON

BAD: Example = {
    "exercises/heel-raise": """
name: Heel raise                    # but no session, routine or variation names it
"""
}
GOOD: Example = {
    "exercises/heel-raise": "name: Heel raise",
    "exercises/step-down": "easier: [heel-raise]",
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each file that is not reached from a plan."""
    programme = subject.programme
    sessions = {ident for plan in programme.plans.values() for ident in plan.session_ids}
    sessions |= {c.do_instead for plan in programme.plans.values() for c in plan.changes if c.do_instead}
    routines = {r for s in programme.sessions.values() for r in (*s.warm_up, *s.cool_down)}
    exercises = {
        e.exercise for s in programme.sessions.values() for block in s.blocks for _, e in block.prescriptions()
    }
    exercises |= {part.exercise for r in programme.routines.values() for part in r.exercises if part.exercise}
    waiting = list(exercises)
    while waiting:  # a variation of a variation counts too
        exercise = programme.exercises[waiting.pop()]
        new = {v.exercise for v in (*exercise.easier, *exercise.harder) if v.exercise} - exercises
        exercises |= new
        waiting.extend(new)
    for ident, session in programme.sessions.items():
        if ident not in sessions:
            yield Doubt(subject.at(f"sessions/{ident}.yml"), f"no plan holds session '{ident}'", _HINT, session.accept)
    for ident in programme.routines:
        if ident not in routines:
            yield Doubt(subject.at(f"routines/{ident}.yml"), f"no session offers '{ident}'", _HINT)
    for ident, exercise in programme.exercises.items():
        if ident not in exercises:
            message = f"'{ident}' stands in no session, no routine and no variation"
            yield Doubt(subject.at(f"exercises/{ident}.yml"), message, _HINT, exercise.accept)
    chosen = {choice for s in programme.sessions.values() for block in s.blocks for choice in block.choices}
    for choice in programme.club.choices:
        if choice not in chosen:
            message = f"no session has a way for the choice '{choice}'"
            yield Doubt(subject.at("club.yml", "choices", choice, key=True), message, "offer one, or delete the line")


_HINT = "use it, or delete the file"
