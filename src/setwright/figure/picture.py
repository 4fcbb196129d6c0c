"""The pictures of an exercise: still for paper, small for lists, moving for its page."""

import json
from dataclasses import dataclass
from functools import lru_cache
from typing import Final

from setwright.figure.beats import beats
from setwright.figure.drawing import Drawing, frames_json, whole_box, write
from setwright.figure.motion import Motion, solved
from setwright.figure.paint import Medium
from setwright.model.exercise import Exercise
from setwright.model.figure import Figure
from setwright.model.tempo import Tempo
from setwright.wording.language import ENGLISH, Language

SAME_HEIGHT_CM: Final = 5
"""How far the centre of mass of two like positions may differ. Arithmetic on the example's figures, no source."""


@dataclass(frozen=True)
class Animated:
    """A figure for a page. ``frames`` and ``beats`` are JSON for the browser; both are empty for a hold.

    ``frames`` holds for each part, for each frame: x, y (cm), turn (degrees clockwise), stretch along x and along y;
    null for a part that stays. ``beats`` lists second and frame of one repetition, which takes ``rep_s`` seconds.
    ``middle`` is how far the moving picture is shifted from the start's place to stand in the middle, in cm; ``shown``
    counts the positions that stand still beside each other; ``comes_back`` says whether it ends where it began.
    """

    svg: str
    frames: str
    beats: str
    rep_s: float
    width: int
    height: int
    middle: tuple[float, float]
    shown: int
    comes_back: bool = True

    @property
    def moves(self) -> bool:
        """Whether there is more than one position."""
        return bool(self.frames)


def described(exercise: Exercise, language: Language = ENGLISH) -> str:
    """Return what the picture shows, in words, for those who do not see it."""
    figure = exercise.figure
    if figure is None:
        return ""
    match min(len(solved(figure).shown), 3), figure.view:
        case 3, "side":
            shown = language.say("One position after the other, seen from the side.")
        case 3, "front":
            shown = language.say("One position after the other, seen from the front.")
        case 2, "side":
            shown = language.say("Start and end position, seen from the side.")
        case 2, "front":
            shown = language.say("Start and end position, seen from the front.")
        case _, "side":
            shown = language.say("The position to hold, seen from the side.")
        case _:
            shown = language.say("The position to hold, seen from the front.")
    if not ends_where_it_began(solved(figure)):
        shown = f"{shown} {language.say('The way back to the start is in the steps alone.')}"
    return f"{shown} {language.say('The steps say the same in words.')}"


def ends_where_it_began(motion: Motion) -> bool:
    """Say whether the next repetition can begin from the last position: not after a drop, which ends lower down."""
    return motion.figure.comes_back or abs(motion.heights_cm[-1] - motion.heights_cm[0]) < SAME_HEIGHT_CM


@lru_cache(maxsize=1024)
def _drawing(motion: Motion, mat: bool) -> Drawing:
    return Drawing(motion, mat)


def _drawn(exercise: Exercise) -> Drawing | None:
    figure: Figure | None = exercise.figure
    return _drawing(solved(figure), "mat" in exercise.kit) if figure is not None else None


def still(exercise: Exercise, medium: Medium = "paper", language: Language = ENGLISH) -> str | None:
    """Return start and end together as one SVG text, or None without a figure.

    ``paper`` gives greys and ``page`` colours with custom properties; both are plain attributes without style sheets.
    """
    drawing = _drawn(exercise)
    if drawing is None:
        return None
    return write(drawing, "still.svg.jinja", medium, title=exercise.name, description=described(exercise, language))


def thumbnail(exercise: Exercise, start: bool = False) -> str | None:
    """Return one position as an SVG file, its drawing in a group ``#f``: the most telling one, or the first."""
    drawing = _drawn(exercise)
    return None if drawing is None else _small(drawing, exercise.name, start)


@lru_cache(maxsize=2048)
def _small(drawing: Drawing, title: str, start: bool) -> str:
    place = drawing.motion.shown[0] if start else drawing.motion.telling
    return write(
        drawing,
        "thumbnail.svg.jinja",
        "page",
        title=title,
        frame=drawing.frames[place],
        box=drawing.close_box(place),
        arrow=[] if start else drawing.arrow_to(place),
    )


def thumbnail_box(exercise: Exercise, whole: bool = False) -> tuple[int, int, int, int] | None:
    """Return left, top, width and height of a thumbnail, in whole cm: around its one position, or around them all."""
    drawing = _drawn(exercise)
    return None if drawing is None else _box(drawing, whole)


@lru_cache(maxsize=2048)
def _box(drawing: Drawing, whole: bool) -> tuple[int, int, int, int]:
    return whole_box(drawing.box if whole else drawing.close_box(drawing.motion.telling))


def animated(exercise: Exercise, ident: str, language: Language = ENGLISH) -> Animated | None:
    """Return the moving picture of an exercise in its tempo, or None without a figure.

    Args:
        exercise: with its figure and tempo.
        ident: makes every id inside the picture unique on a page.
    """
    drawing = _drawn(exercise)
    if drawing is None:
        return None
    return _moving(drawing, ident, exercise.name, described(exercise, language), exercise.tempo)


@lru_cache(maxsize=1024)
def _moving(drawing: Drawing, ident: str, title: str, description: str, tempo: Tempo | None) -> Animated:
    svg = write(drawing, "moving.svg.jinja", "page", ident=f"fig-{ident}", title=title, description=description)
    _, _, width, height = drawing.whole_picture
    if not drawing.moves:
        return Animated(svg, "", "", 0.0, round(width), round(height), (0.0, 0.0), 1)
    moments, rep_s = beats(tempo, drawing.motion)
    across, down = drawing.apart
    middle = (len(drawing.motion.shown) - 1) / 2
    return Animated(
        svg=svg,
        frames=frames_json(drawing),
        beats=json.dumps(moments, separators=(",", ":")),
        rep_s=rep_s,
        width=round(width),
        height=round(height),
        middle=(round(across * middle, 1), round(down * middle, 1)),
        shown=len(drawing.motion.shown),
        comes_back=ends_where_it_began(drawing.motion),
    )
