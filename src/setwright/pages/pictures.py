"""Figures as pages show them: one moving on an exercise's page, small ones in lists, and what the hands carry."""

from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup

from setwright.figure import Animated, animated, thumbnail, thumbnail_box
from setwright.figure.support import SupportShare, equivalent_kg, share_of
from setwright.model.exercise import Exercise
from setwright.model.programme import Programme
from setwright.wording.language import Language

_FOLDER = "assets/figures"
_STEP_KG = 10


def picture(exercise: Exercise, ident: str, language: Language) -> Animated | None:
    """Return the moving picture of an exercise, for its own page."""
    return animated(exercise, ident, language)


def markup(svg: str) -> Markup:
    """Return SVG text as one line of markup that a Markdown reader leaves alone."""
    line = "".join(part.strip() if part.strip().startswith("<") else part for part in svg.splitlines())
    return Markup(line.replace("`", "&#96;").replace("~", "&#126;"))  # noqa: S704 - escaped by the figure's template


def path(ident: str, start: bool = False) -> str:
    """Return the address of a thumbnail, its drawing included."""
    return f"{_FOLDER}/{ident}{'-start' if start else ''}.svg#f"


def photo_path(name: str) -> str:
    """Return the address of a photo of the club's own."""
    return f"assets/media/{name}"


def view_box(exercise: Exercise, whole: bool = False) -> str | None:
    """Return the view box of an exercise's thumbnail, or of start and end alike; None where it has no figure."""
    box = thumbnail_box(exercise, whole)
    return " ".join(map(str, box)) if box else None


def moves(exercise: Exercise) -> bool:
    """Say whether an exercise's figure has a start and an end."""
    return exercise.figure is not None and len(exercise.figure.poses) > 1


def is_wide(exercise: Exercise) -> bool:
    """Say whether start and end stand below each other, as for someone lying."""
    box = thumbnail_box(exercise, whole=True)
    return box is not None and box[2] > 1.45 * box[3]


def files(programme: Programme) -> dict[str, str]:
    """Return every thumbnail of a programme by path."""
    found = {}
    for ident, exercise in sorted(programme.exercises.items()):
        end, begin = thumbnail(exercise), thumbnail(exercise, start=True)
        if end is not None:
            found[f"{_FOLDER}/{ident}.svg"] = end
        if begin is not None and moves(exercise):
            found[f"{_FOLDER}/{ident}-start.svg"] = begin
    return found


def support(exercise: Exercise) -> SupportShare | None:
    """Return which share of body weight the hands carry, or None where the model says nothing."""
    return share_of(exercise)


@dataclass(frozen=True)
class CarriedRow:
    """What the hands of one member carry, in whole kg."""

    body_weight_kg: int
    low_kg: int
    high_kg: int


def carried(share: SupportShare, lightest_kg: Fraction, heaviest_kg: Fraction) -> list[CarriedRow]:
    """Return the weight on the hands for every tenth kg of the club's range of body weights."""
    first = -(-lightest_kg // _STEP_KG) * _STEP_KG
    rows = range(int(first), int(heaviest_kg) + 1, _STEP_KG)
    return [CarriedRow(kg, *equivalent_kg(share, Fraction(kg))) for kg in rows]
