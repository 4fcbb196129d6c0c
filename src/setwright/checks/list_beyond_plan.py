"""A list of weeks that is longer than any plan trains the session.

Compares each list of a progression with the most weeks in which some plan trains its session; lighter weeks, tapers and
skipped weeks do not count.

Why it matters: the last entries are never done, and the coach who wrote them means them to be.
"""

from collections.abc import Iterator
from typing import Any

from setwright.checks.example import Example
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.model.session import Session, path_in_block

ID = "list-beyond-plan"
SEVERITY = "warning"
SOURCE = COMMON

_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8, progress: {reps: {weeks: [%s]}}}
      - {exercise: step-down, reps: 8}
"""
BAD: Example = {"sessions/legs": _SESSION % "8, 9, 10, 10, 11, 12"}
GOOD: Example = {"sessions/legs": _SESSION % "8, 9, 10, 11"}

Path = tuple[str | int, ...]


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each list with entries that no plan reaches."""
    trained: dict[str, int] = {}
    for plan in subject.plans:
        for session in plan.sessions:
            trained[session.session] = max(trained.get(session.session, 0), session.trained + 1)
    for ident, most in trained.items():
        written = subject.programme.sessions[ident]
        for path, count in _lists(written):
            if count > most:
                never = count - most
                yield Doubt(
                    subject.at(f"sessions/{ident}.yml", *path),
                    f"this list has {count} weeks, and no plan trains {ident} in more than {most}: the last "
                    f"{'one is' if never == 1 else f'{never} are'} never done",
                    "shorten the list, or give the phase more weeks",
                    written.accept,
                )


def _lists(session: Session) -> Iterator[tuple[Path, int]]:
    """Yield every list of weeks of a session: where it stands, and how long it is."""
    for index, block in enumerate(session.blocks):
        yield from _of(block.progress, ("blocks", index, "progress"))
        for place, written in block.prescriptions():
            here: Path = ("blocks", index, *path_in_block(place), "progress")
            yield from _of(written.progress, here)
            if written.progress is not None:
                yield from _of(written.progress.then, (*here, "then"))


def _of(progress: Any, path: Path) -> Iterator[tuple[Path, int]]:
    for key in type(progress).model_fields if progress is not None else ():
        weeks = getattr(getattr(progress, key), "weeks", None)
        if weeks:
            yield (*path, key, "weeks"), len(weeks)
