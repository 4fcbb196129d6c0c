"""The trade's fixed words as members read them: patterns, regions, sides, kinds of routines."""

from collections.abc import Iterable, Mapping
from typing import Final

from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.vocabulary import Pattern, Sides
from setwright.wording.language import Language, later

_PATTERNS: Final[Mapping[Pattern, str]] = {
    "squat": later("squat"),
    "hinge": later("hinge"),
    "lunge": later("lunge"),
    "push": later("push"),
    "pull": later("pull"),
    "carry": later("carry"),
    "trunk": later("trunk"),
    "calf": later("calf"),
    "balance": later("balance"),
    "jump": later("jump"),
    "throw": later("throw"),
    "mobility": later("mobility"),
}
_MEANS: Final[Mapping[Pattern, str]] = {
    "squat": later("bending hips and knees together, feet level"),
    "hinge": later("bending at the hips with a long back"),
    "lunge": later("one leg ahead of the other, or one leg at a time"),
    "push": later("pressing away with the arms"),
    "pull": later("drawing in with the arms"),
    "carry": later("holding a load and walking or standing tall"),
    "trunk": later("keeping the trunk steady against a pull"),
    "calf": later("raising and lowering the heel"),
    "balance": later("standing steady on a small base"),
    "jump": later("leaving the ground and landing well"),
    "throw": later("letting a ball or another weight fly"),
    "mobility": later("moving a joint through its range"),
}
_REGIONS: Final[Mapping[str, str]] = {
    "quadriceps": later("quadriceps"),
    "hamstrings": later("hamstrings"),
    "glutes": later("glutes"),
    "hip flexors": later("hip flexors"),
    "hip stabilisers": later("hip stabilisers"),
    "inner thigh": later("inner thigh"),
    "calf": later("calf"),
    "shin": later("shin"),
    "foot": later("foot"),
    "abdominals": later("abdominals"),
    "side trunk": later("side trunk"),
    "lower back": later("lower back"),
    "upper back": later("upper back"),
    "lats": later("lats"),
    "chest": later("chest"),
    "shoulders": later("shoulders"),
    "rotator cuff": later("rotator cuff"),
    "arms": later("arms"),
    "biceps": later("biceps"),
    "triceps": later("triceps"),
    "forearms": later("forearms"),
    "grip": later("grip"),
    "neck": later("neck"),
}
_SIDES: Final[Mapping[Sides, str]] = {
    "both together": later("both together"),
    "one at a time": later("one at a time"),
    "alternating": later("alternating"),
}
_ROUTINES: Final[Mapping[str, str]] = {"warm-up": later("Warm-up"), "cool-down": later("Cool-down")}


def pattern(language: Language, name: Pattern) -> str:
    """Return a movement pattern's name."""
    return language.say(_PATTERNS[name])


def pattern_means(language: Language, name: Pattern) -> str:
    """Return what a movement pattern is."""
    return language.say(_MEANS[name])


def region(language: Language, name: str) -> str:
    """Return a region of the body; one that the club added, in its own word."""
    return language.say(_REGIONS[name]) if name in _REGIONS else name.replace("-", " ")


def regions(language: Language, names: Iterable[str]) -> str:
    """Return regions of the body as a list."""
    return language.listed(region(language, name) for name in names)


def sides(language: Language, name: Sides) -> str:
    """Return how the sides of the body share the work."""
    return language.say(_SIDES[name])


def routine_kind(language: Language, kind: str) -> str:
    """Return whether a routine is a warm-up or a cool-down."""
    return language.say(_ROUTINES[kind])


def kit(language: Language, club: Club, idents: Iterable[str]) -> str:
    """Return kit as a list, by the club's own names for it; 'none' where nothing is needed."""
    return language.listed(map(club.kit_name, idents)) or language.say("none")


def facts(language: Language, club: Club, exercise: Exercise) -> tuple[tuple[str, str], ...]:
    """Return the short facts of an exercise, as label and words."""
    works = regions(language, exercise.regions.main)
    if exercise.regions.also:
        helping = regions(language, exercise.regions.also)
        works = language.say("%(main)s; also %(helping)s", main=works, helping=helping)
    return (
        (language.say("Pattern"), pattern(language, exercise.pattern)),
        (language.say("Sides"), sides(language, exercise.sides)),
        (language.say("Kit"), kit(language, club, exercise.kit)),
        (language.say("Works"), works),
    )
