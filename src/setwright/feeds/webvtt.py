"""A film's chapters and a skeleton of its captions, for whoever edits it (W3C WebVTT).

A chapter lasts until the next one. The words of an exercise stand in captions of equal length from the moment at which
it begins, and wait to be moved to where they are spoken.
"""

from collections.abc import Iterator, Sequence
from typing import Final

from setwright.model.film import SessionFilm
from setwright.model.programme import Programme
from setwright.model.text import plain
from setwright.outline.site import Site
from setwright.wording.speaking import one_sentence

FOLDER: Final = "feeds/films"
LONGEST_MS: Final = 6000
"""A caption stays no longer. Common practice, no source."""

Cue = tuple[int, int, str]
"""From and to in milliseconds, and the words."""


def files(site: Site) -> Iterator[tuple[str, bytes]]:
    """Yield the chapters and the captions of each session's films."""
    for ident, session in site.programme.sessions.items():
        for number, film in enumerate(session.films, 1):
            stem = f"{FOLDER}/{ident}-{number}"
            yield f"{stem}-chapters.vtt", written(chapters(site.programme, film))
            yield f"{stem}-captions.vtt", written(captions(site.programme, film))


def chapters(programme: Programme, film: SessionFilm) -> list[Cue]:
    """Return a chapter for each part, named for its exercise."""
    ends = [*(part.at for part in film.parts[1:]), film.lasts]
    names = [_name(programme, part.exercise) for part in film.parts]
    return [(part.at * 1000, end * 1000, name) for part, end, name in zip(film.parts, ends, names, strict=True)]


def captions(programme: Programme, film: SessionFilm) -> list[Cue]:
    """Return what is said of each exercise, one sentence after the other, inside its chapter."""
    found: list[Cue] = []
    for part, (begins, ends, _) in zip(film.parts, chapters(programme, film), strict=True):
        exercise = programme.exercises.get(part.exercise)
        if exercise is None:
            continue
        said = [one_sentence(exercise.why), *exercise.set_up, *exercise.steps, *exercise.cues]
        each = min(LONGEST_MS, (ends - begins) // len(said))
        found += [(begins + place * each, begins + (place + 1) * each, plain(line)) for place, line in enumerate(said)]
    return found


def written(cues: Sequence[Cue]) -> bytes:
    """Return cues as a file: no sign of a text can end one or begin a tag."""
    blocks = [f"{_stamp(begins)} --> {_stamp(ends)}\n{_escaped(text)}" for begins, ends, text in cues]
    return ("\n\n".join(["WEBVTT", *blocks]) + "\n").encode()


def _escaped(text: str) -> str:
    return " ".join(text.split()).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def _stamp(count_ms: int) -> str:
    seconds, thousandths = divmod(count_ms, 1000)
    return f"{seconds // 3600:02}:{seconds // 60 % 60:02}:{seconds % 60:02}.{thousandths:03}"


def _name(programme: Programme, ident: str) -> str:
    exercise = programme.exercises.get(ident)
    return exercise.name if exercise is not None else ident
