"""Every text of a programme that tells a member what to do, and where it stands."""

from collections.abc import Iterator, Sequence

from setwright.model.acceptance import Acceptance
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.model.session import path_in_block

Path = tuple[str | int, ...]
Instruction = tuple[str, Path, str, Sequence[Acceptance]]
"""File, path in it, the text, and what its thing accepts."""


def instructions(programme: Programme) -> Iterator[Instruction]:
    """Yield every instruction: all but names, reasons of acceptance, and the signs of faults."""
    for ident, exercise in programme.exercises.items():
        for path, text in _of_exercise(exercise):
            yield f"exercises/{ident}.yml", path, text, exercise.accept
    yield from _of_sessions(programme)
    for ident, routine in programme.routines.items():
        texts: list[tuple[Path, str | None]] = [(("why",), routine.why), (("when",), routine.when)]
        texts += [(("cautions", index), text) for index, text in enumerate(routine.cautions)]
        for index, part in enumerate(routine.exercises):
            texts += [(("exercises", index, "do"), part.do), (("exercises", index, "note"), part.note)]
        yield from ((f"routines/{ident}.yml", path, text, ()) for path, text in texts if text)
    for ident, plan in programme.plans.items():
        texts = [(("for",), plan.for_), (("aim",), plan.aim)]
        texts += [(("phases", index, "aim"), phase.aim) for index, phase in enumerate(plan.phases)]
        texts += [(("changes", index, "why"), change.why) for index, change in enumerate(plan.changes)]
        texts += [(("other_training", index, "what"), other.what) for index, other in enumerate(plan.other_training)]
        yield from ((f"plans/{ident}.yml", path, text, plan.accept) for path, text in texts if text)


def _of_exercise(exercise: Exercise) -> Iterator[tuple[Path, str]]:
    for key in ("why", "breathing", "feel"):
        text: str | None = getattr(exercise, key)
        if text:
            yield (key,), text
    for key in ("set_up", "steps", "cues", "cautions", "stop_if"):
        texts: list[str] = getattr(exercise, key)
        yield from (((key, index), text) for index, text in enumerate(texts))
    yield from ((("faults", index, "fix"), fault.fix) for index, fault in enumerate(exercise.faults))
    for key in ("easier", "harder"):
        for index, way in enumerate(getattr(exercise, key)):
            if way.how:
                yield (key, index, "how"), way.how
    if exercise.at_home:
        yield ("at_home", "use"), exercise.at_home.use
        if exercise.at_home.how:
            yield ("at_home", "how"), exercise.at_home.how


def _of_sessions(programme: Programme) -> Iterator[Instruction]:
    for ident, session in programme.sessions.items():
        texts: list[tuple[Path, str | None]] = [(("aim",), session.aim), (("note",), session.note)]
        for b, block in enumerate(session.blocks):
            texts.append((("blocks", b, "note"), block.note))
            texts += [(("blocks", b, *path_in_block(e), "note"), one.note) for e, one in block.prescriptions()]
        yield from ((f"sessions/{ident}.yml", path, text, session.accept) for path, text in texts if text)
