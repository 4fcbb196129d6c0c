"""A name that a spreadsheet takes for a formula.

Looks for names that begin with =, +, - or @.

Why it matters: members save their log as a table, and a spreadsheet runs a cell that begins so. The table has an
apostrophe before such a name, which then shows.
"""

from collections.abc import Iterator

from setwright.checks.example import Example
from setwright.checks.rule import Doubt, Subject
from setwright.model.acceptance import Acceptance

ID = "name-like-formula"
SEVERITY = "warning"
SOURCE = "OWASP, CSV Injection (the list of signs from memory)."

BAD: Example = {
    "exercises/goblet-squat": """
name: "+ Goblet squat"              # a sign first
"""
}
GOOD: Example = {
    "exercises/goblet-squat": """
name: Goblet squat + calf raise     # a sign within a name is fine
"""
}

_SIGNS = ("=", "+", "-", "@", "＝", "＋", "－", "＠")


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each name that begins with a sign."""
    for file, path, name, accept in _names(subject):
        if name and name.startswith(_SIGNS):
            message = f"a spreadsheet takes a name that begins with '{name[0]}' for a formula"
            yield Doubt(subject.at(file, *path), message, "begin it with a letter or a digit", accept)


def _names(
    subject: Subject,
) -> Iterator[tuple[str, tuple[str | int, ...], str | None, list[Acceptance]]]:
    programme = subject.programme
    yield "club.yml", ("name",), programme.club.name, []
    for ident, exercise in programme.exercises.items():
        yield f"exercises/{ident}.yml", ("name",), exercise.name, exercise.accept
    for ident, routine in programme.routines.items():
        yield f"routines/{ident}.yml", ("name",), routine.name, []
    for ident, session in programme.sessions.items():
        yield f"sessions/{ident}.yml", ("name",), session.name, session.accept
        for index, block in enumerate(session.blocks):
            yield f"sessions/{ident}.yml", ("blocks", index, "name"), block.name, session.accept
    for ident, plan in programme.plans.items():
        yield f"plans/{ident}.yml", ("name",), plan.name, plan.accept
        for index, phase in enumerate(plan.phases):
            yield f"plans/{ident}.yml", ("phases", index, "name"), phase.name, plan.accept
        if plan.event:
            yield f"plans/{ident}.yml", ("event", "name"), plan.event.name, plan.accept
