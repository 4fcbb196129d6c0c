"""The physiotherapist's errands that touch files: signing, and reading the two states of a comparison."""

import tempfile
from collections.abc import Sequence
from datetime import date
from pathlib import Path

from pydantic import ValidationError

from setwright import looking
from setwright.disk import lock
from setwright.disk.files import replace
from setwright.errors import ProjectError
from setwright.model.sign_off import SignOff
from setwright.printers import plain
from setwright.review.before import SIGN_OFFS
from setwright.review.compare import Comparison, compare
from setwright.review.parts import PARTS
from setwright.review.signing import HEAD, line_of, with_line
from setwright.review.state import State, state_of
from setwright.review.status import Review, reviews
from setwright.review.written_state import from_json
from setwright.source.git import unpack


def sign(program: Path, idents: Sequence[str], who: str, role: str, on: date, note: str | None) -> list[str]:
    """Add a sign-off for each exercise to the programme's file, and return the lines.

    Raises:
        ProjectError: for a programme that cannot be read, or a name or role that the language does not allow.
    """
    looked = looking.look(program)
    if looked.programme is None:
        raise ProjectError("the programme has mistakes; 'setwright check' lists them")
    now = reviews(looked.programme, looked.plans)
    lines = [line_of(ident, who, role, on, note, now[ident].digests) for ident in idents]
    _refuse_unreadable(who, role, on, note, now[idents[0]] if idents else None)
    if lines:
        with lock.held(program):
            _add(program / SIGN_OFFS, lines)
    return lines


def _add(target: Path, lines: Sequence[str]) -> None:
    """Add lines to the file of sign-offs, which keeps its line endings."""
    text = target.read_bytes().decode() if target.exists() else HEAD
    ends = "\r\n" if "\r\n" in text else "\n"
    text = text.replace("\r\n", "\n")
    for line in lines:
        text = with_line(text, line)
    replace(target, text.replace("\n", ends).encode(), lasting=True)


def _refuse_unreadable(who: str, role: str, on: date, note: str | None, review: Review | None) -> None:
    if review is None:
        return
    data: dict[str, object] = {part: review.digests[part] for part in PARTS}
    data |= {"exercise": review.exercise, "who": who, "role": role, "date": on, "doses": {}}
    try:
        SignOff.model_validate({**data, "note": note} if note else data)
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        raise ProjectError(f"{first['loc'][0]}: {first['msg']}") from error


def compared(old: str, new: str, program: Path) -> Comparison:
    """Return what changed between two states, each a folder, a file of 'setwright resolve' or a git revision.

    Raises:
        ProjectError: for a state that has mistakes in it, so that its doses are not known.
    """
    return compare(state_at(old, program), state_at(new, program))


def state_at(where: str, program: Path) -> State:
    """Return the state of a programme at a place: a folder, a resolved file, or a revision of its repository."""
    path = Path(where)
    if path.is_dir():
        return _state_in(path if (path / "club.yml").exists() else path / program.name, where)
    if path.is_file():
        return from_json(path.read_text("utf-8", "replace"))
    with tempfile.TemporaryDirectory(prefix="setwright-") as folder:
        return _state_in(unpack(program, where, Path(folder) / program.name), where)


def _state_in(program: Path, where: str) -> State:
    looked = looking.look(program, where)
    if looked.programme is None:
        first = next(f for f in looked.findings if f.severity == "error")
        raise ProjectError(f"'{where}' cannot be resolved: {plain(first)}")
    return state_of(looked.programme, looked.plans)
