"""Words that ask for more than the dose.

Reads the numbers in notes, aims, reasons of changes, steps of warm-ups in words, and in the words of easier, harder and
at-home ways: weights, efforts, repetitions, sets, times, distances and heights that stand near an exercise under
limits, in digits or in words. More than the limit stops publishing and cannot be accepted; more than the dose beside it
is a doubt. So are "to failure" and "heavier than last week", and so is a step of a warm-up that names an exercise under
limits and does not write it as an exercise, so that nothing counts it. A weight stands for every member there, and is
held against the lightest one. Where a sentence names exercises, it is about those; where several might be meant, the
one to which it fits best. What is less than the dose passes, and so does what a text warns of.

Why it matters: a note is read after the dose, and followed. A weight in it is a weight that nobody worked out.
"""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from setwright.checks.example import Example
from setwright.checks.limit_crossing import limit_place
from setwright.checks.limit_doses import amounts
from setwright.checks.quantities import Kind, Quantity, quantities
from setwright.checks.rule import COMMON, Doubt, Subject
from setwright.checks.spoken import Sentence, doses_beside, spoken
from setwright.checks.texts import Path
from setwright.dose.bounding import MOST_EFFORT, effort_of
from setwright.dose.contacts import is_jump
from setwright.dose.resolved import ResolvedItem
from setwright.dose.taken import least_kg
from setwright.dose.taking import limit_of
from setwright.model.exercise import Exercise
from setwright.model.limits import Limits, NoWeight
from setwright.model.load import BodyWeightShare, OneRepMaxShare
from setwright.model.prescription import MEASURES, Measure
from setwright.model.units import plain_number

ID = "words-beyond-dose"
SEVERITY = "warning"
SOURCE = COMMON

_SQUAT = "limits: {load: 40 % bodyweight, top_effort: RPE 8}"
_SESSION = """
blocks:
  - kind: straight
    sets: 3
    exercises: [{exercise: goblet-squat, reps: 8, load: 15 %% bodyweight, note: %s}]
"""
BAD: Example = {"exercises/goblet-squat": _SQUAT, "sessions/legs": _SESSION % "The 12 kg kettlebell."}
GOOD: Example = {"exercises/goblet-squat": _SQUAT, "sessions/legs": _SESSION % "The 4 kg one if you are new."}

_LIMIT_KEYS: Final[dict[Kind, str]] = {
    "kg": "load",
    "% bodyweight": "load",
    "% 1RM": "load",
    "effort": "top_effort",
    "reps": "reps",
    "sets": "weekly_sets",
    "seconds": "hold",
    "height_cm": "height",
    "distance_cm": "distance",
}
_COUNTED: Final[dict[Kind, tuple[Measure, ...]]] = {
    "reps": ("reps",),
    "seconds": ("hold", "work"),
    "distance_cm": ("distance",),
}


def check(subject: Subject) -> Iterator[Doubt]:
    """Yield one doubt for each text, at the number that goes farthest; and one for each step that names an exercise."""
    found: dict[tuple[str, Path], list[Doubt]] = {}
    for sentence in spoken(subject):
        names = [subject.programme.exercises[ident].name for ident in sentence.about]
        doubts = [_beyond(subject, sentence, quantity) for quantity in quantities(sentence.text, names)]
        of_text = found.setdefault((sentence.file, sentence.path), [])
        of_text += [*filter(None, doubts), *_unwritten(subject, sentence)]
    for of_text in found.values():
        # What stops publishing first: a milder one before it, which may be accepted, must not hide it.
        yield from sorted(of_text, key=lambda doubt: doubt.severity != "error")[:1]


def _beyond(subject: Subject, sentence: Sentence, quantity: Quantity) -> Doubt | None:
    """Return the doubt about a number, by the exercise to which it fits best; None where it fits one of them."""
    place = subject.at(sentence.file, *sentence.path)
    mildest: Doubt | None = None
    for ident in sentence.about:
        exercise = subject.programme.exercises[ident]
        limit = _limit(subject, exercise, quantity)
        items = doses_beside(subject, sentence, ident)
        dose = _dose(subject, items, quantity.kind)
        above = limit is not None and quantity.number > limit
        if limit is None and dose is None and quantity.kind != "heavier":
            continue  # nothing to hold it against
        if above and limit is not None:
            where = limit_place(subject, ident, _LIMIT_KEYS[quantity.kind])
            said = f"{ident}: '{quantity.said}' is beyond the limit of {_number(quantity.kind, limit)}"
            hint = f"the limit is in {where}; take the number out, or ask the physiotherapist"
            mildest = mildest or Doubt(place, said, hint, (), "error")
        elif quantity.kind == "heavier" and any(item.dose.loads for item in items):
            said = f"{ident}: '{quantity.said}' asks for a step of the load that no progression writes"
            mildest = Doubt(place, said, "write the step as 'progress', and leave it out of the words", sentence.accept)
        elif dose is not None and quantity.number > dose:
            said = f"{ident}: '{quantity.said}' is more than the dose beside it, {_number(quantity.kind, dose)}"
            hint = "write it as the dose, or leave the number out of the words"
            mildest = Doubt(place, said, hint, sentence.accept)
        else:
            return None
    return mildest


def _number(kind: Kind, number: Fraction) -> str:
    match kind:
        case "effort":
            return f"RPE {plain_number(number)}"
        case "seconds":
            return f"{plain_number(number)} s"
        case "height_cm":
            return f"{plain_number(number)} cm"
        case "distance_cm":
            return f"{plain_number(number / 100)} m"
        case _:
            return f"{plain_number(number, 1)} {kind}"


def _limit(subject: Subject, exercise: Exercise, quantity: Quantity) -> Fraction | None:
    """Return the limit that a number is held against; None where there is none."""
    limits = exercise.limits or Limits()
    bare = isinstance(limits.load, NoWeight) or (limits.load is None and is_jump(exercise))
    lightest = subject.programme.club.body_weight.from_
    match quantity.kind:
        case "kg":
            return Fraction(0) if bare else limit_of(exercise, quantity.per_hand).at(lightest)
        case "% bodyweight" | "% 1RM" if bare:
            return Fraction(0)
        case "% bodyweight":
            return limit_of(exercise, quantity.per_hand).percent
        case "effort":
            most = [effort_of(one) for one in (limits.top_effort, limits.least_reserve) if one is not None]
            return min((effort for effort in most if effort is not None), default=None)
        case "reps" | "sets" | "seconds" | "height_cm" | "distance_cm":
            limit: int | Fraction | None = getattr(limits, _LIMIT_KEYS[quantity.kind])
            return None if limit is None else Fraction(limit)
        case _:
            return None


def _dose(subject: Subject, items: Sequence[ResolvedItem], kind: Kind) -> Fraction | None:
    """Return the most that the doses beside a text ask for, of the same kind; None where they count something else."""
    return max(filter(None, (_of_item(subject, item, kind) for item in items)), default=None)


def _of_item(subject: Subject, item: ResolvedItem, kind: Kind) -> Fraction | None:
    dose = item.dose
    match kind:
        case "kg":
            return least_kg(item, subject.programme.club.body_weight.from_)
        case "% bodyweight":
            return max((load.percent for load in dose.loads if isinstance(load, BodyWeightShare)), default=None)
        case "% 1RM":
            return max((load.percent for load in dose.loads if isinstance(load, OneRepMaxShare)), default=None)
        case "effort":
            said = (effort_of(load) for load in (*dose.loads, *([dose.feels] if dose.feels is not None else [])))
            return max((effort for effort in said if effort is not None), default=MOST_EFFORT - 1)
        case "sets":
            return Fraction(dose.count)
        case "height_cm":
            heights = item.heights
            return heights.asked_cm if heights is not None else None
        case "reps" | "seconds" | "distance_cm" if dose.measure in _COUNTED[kind]:
            return Fraction(dose.amount.high)
        case _:
            return None


def _unwritten(subject: Subject, sentence: Sentence) -> Iterator[Doubt]:
    """Yield a doubt about a step of a warm-up in words that names an exercise under limits, or passes one of them."""
    if sentence.folder != "routines" or sentence.path[-1] != "do":
        return
    ident = sentence.name
    part = subject.programme.routines[ident].exercises[int(sentence.path[1])]
    measure = next(key for key in MEASURES if getattr(part, key) is not None)
    limited = [one for one in sentence.about if subject.programme.exercises[one].limits is not None]
    for exercise in limited:
        for crossing in amounts(subject.programme.exercises[exercise], measure, getattr(part, measure)):
            yield Doubt(
                subject.at(sentence.file, *sentence.path[:2], measure),
                f"{exercise}: {crossing.actual} of it in words are beyond the limit of {crossing.limit}",
                f"the limit is in {limit_place(subject, exercise, crossing.key)}; lower it, or ask the physiotherapist",
                (),
                "error",
            )
    if limited:
        offering = [one for one in subject.programme.sessions.values() if ident in (*one.warm_up, *one.cool_down)]
        yield Doubt(
            subject.at(sentence.file, *sentence.path),
            f"{limited[0]}: a step in words speaks of it, and its limits do not count that",
            f"write the step as 'exercise: {limited[0]}'",
            [accepted for one in offering for accepted in one.accept],
        )
