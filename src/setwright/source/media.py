"""Photos of the club's own: read with the programme, checked for type and size, and never followed outside it."""

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Final

from setwright.model.exercise import Exercise
from setwright.source.finding import Finding, Position
from setwright.source.suggest import did_you_mean

FOLDER: Final = "media"
MOST_BYTES: Final = 600 * 1024
"""A photo may weigh this much: a phone shows it within seconds on a slow net."""

_BEGINS: Final = {"jpg": b"\xff\xd8\xff", "jpeg": b"\xff\xd8\xff", "png": b"\x89PNG\r\n\x1a\n", "webp": b"RIFF"}


def wanted(exercises: Mapping[str, Exercise]) -> Iterator[tuple[str, tuple[str, str, int, str]]]:
    """Yield every photo that an exercise names, with its place as file and path."""
    for ident, exercise in exercises.items():
        for index, medium in enumerate(exercise.media):
            if medium.photo is not None:
                yield medium.photo, (f"exercises/{ident}.yml", "media", index, "photo")


def read_photos(
    folder: Path, exercises: Mapping[str, Exercise], place: Callable[..., Position]
) -> tuple[dict[str, bytes], list[Finding]]:
    """Return the photos that exercises name, and a finding for each that is missing, too heavy or not what it says.

    Args:
        folder: the programme's folder.
        exercises: the exercises read.
        place: from file and path to a position.
    """
    found: dict[str, bytes] = {}
    findings: list[Finding] = []
    there = {path.name: path for path in sorted((folder / FOLDER).glob("*")) if path.is_file()}
    for name, where in wanted(exercises):
        path = there.get(name)
        if path is None or not path.resolve().is_relative_to(folder.resolve()):
            message = f"there is no {name} in {FOLDER}/"
            findings.append(Finding(place(*where), "photo-missing", message, did_you_mean(name, there)))
            continue
        with path.open("rb") as stream:
            raw = stream.read(MOST_BYTES + 1)
        if len(raw) > MOST_BYTES:
            message = f"{name} is larger than {MOST_BYTES // 1024} KB"
            findings.append(
                Finding(place(*where), "photo-too-large", message, "make it 1200 pixels wide and save it again")
            )
        elif not raw.startswith(_BEGINS[name.rsplit(".", 1)[-1]]):
            message = f"{name} is not what its ending says"
            findings.append(
                Finding(place(*where), "photo-not-a-photo", message, "save it again as a JPEG, PNG or WebP")
            )
        else:
            found[name] = raw
    return found, findings
