"""What a reviewer saw: the parts of an exercise as they were signed, found among the older versions of its file."""

from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Final

from pydantic import ValidationError

from setwright.model.exercise import Exercise
from setwright.model.sign_off import SignOff
from setwright.review.parts import PARTS, Line, lines_of
from setwright.review.status import Review, fits
from setwright.source.git import authors, versions
from setwright.source.tree import read_tree

SIGN_OFFS: Final = "sign-offs.yml"


def seen(folder: Path, reviews: Mapping[str, Review]) -> dict[str, dict[str, tuple[Line, ...]]]:
    """Return, by exercise, the parts that changed since a sign-off, as the reviewer saw them.

    Args:
        folder: the programme's folder; without a git repository around it, nothing is found.
        reviews: where each exercise stands.
    """
    return {
        ident: signed_parts(review.sign_off, review.changed, versions(folder, f"exercises/{ident}.yml"))
        for ident, review in reviews.items()
        if review.sign_off is not None and review.changed
    }


def committed(folder: Path, places: Sequence[int]) -> dict[int, str]:
    """Return who committed the line of each sign-off last, by its place among them, where git knows.

    Args:
        folder: the programme's folder.
        places: the line of each sign-off in its file, in order.
    """
    by_line = authors(folder, SIGN_OFFS) if places else {}
    return {index: by_line[line] for index, line in enumerate(places) if line in by_line}


def signed_parts(sign_off: SignOff, changed: Iterable[str], older: Iterable[bytes]) -> dict[str, tuple[Line, ...]]:
    """Return the changed parts as the reviewer saw them; those that no version fits are left out.

    Args:
        sign_off: the sign-off, with the digest of each part.
        changed: the parts to look for; the dosage, which a sign-off keeps in words, is none of them.
        older: contents that the exercise's file had, newest first.
    """
    wanted = {part for part in PARTS if part in set(changed)}
    found: dict[str, tuple[Line, ...]] = {}
    for raw in older:
        if not wanted:
            break
        exercise = _exercise(raw)
        if exercise is None:
            continue
        for part in [part for part in PARTS if part in wanted]:
            if fits(sign_off, exercise, part):
                found[part] = lines_of(exercise, part)
                wanted.remove(part)
    return found


def _exercise(raw: bytes) -> Exercise | None:
    """Return an exercise from an older version of its file, where today's language still reads it."""
    tree = read_tree("older", raw)
    if tree.root is None:
        return None
    try:
        return Exercise.model_validate(tree.root.data())
    except ValidationError:
        return None
