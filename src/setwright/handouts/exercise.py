"""An exercise on paper: a card for members, and a sheet for the physiotherapist who signs it off."""

from collections.abc import Iterator
from typing import Any

from setwright.figure import still
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk, variation
from setwright.model.exercise import Exercise, Limits
from setwright.model.units import plain_number
from setwright.outline import paper
from setwright.outline.addresses import exercise_path
from setwright.outline.training import appearances
from setwright.review.parts import PART_NAMES
from setwright.review.status import STATUS_WORDS, Review
from setwright.wording import words
from setwright.wording.dosage import in_words
from setwright.wording.words import day_long, tempo_words

QUESTIONS = (
    "Set-up and steps describe this movement correctly and completely.",
    "Breathing and tempo suit it.",
    "Cues, and common faults with what to change, are right.",
    "The figure shows it correctly.",
    "Easier and harder ways lead where they say, and the way at home is sound.",
    "Cautions, and when to stop, are complete and right.",
    "Every dose below is acceptable, and so are the limits.",
    "The named sources support what is said.",
)
"""What a reviewer is asked to look at, one box each. Common practice, no source."""


def sheets(desk: Desk) -> Iterator[Sheet]:
    """Yield a card and a review sheet for each exercise, and all review sheets in one file."""
    standing = desk.site.reviews
    every = []
    for ident in sorted(desk.site.programme.exercises):
        yield Sheet(paper.exercise_card(ident), "card", card_data(desk, ident))
        data = review_data(desk, ident, standing[ident])
        every.append(data)
        yield Sheet(paper.review_sheet(ident), "review", {**data, "sheets": [data]})
    club = desk.site.programme.club
    yield Sheet(paper.REVIEWS, "review", {"title": f"Review sheets of {club.name}", "club": club.name, "sheets": every})


def card_data(desk: Desk, ident: str) -> dict[str, Any]:
    """Return everything that a card shows."""
    exercise = desk.site.programme.exercises[ident]
    return {
        **desk.frame(exercise.name, exercise_path(ident)),
        "exercise": ident,
        "status": _status(desk.site.reviews[ident]),
        "figure": still(exercise),
        "why": desk.prose(exercise.why),
        "facts": facts(exercise),
        "cues": desk.all_prose(exercise.cues),
        "set_up": desk.all_prose(exercise.set_up),
        "steps": desk.all_prose(exercise.steps),
        "points": _points(desk, exercise),
        "faults": [{"sign": desk.prose(f.sign), "fix": desk.prose(f.fix)} for f in exercise.faults],
        "easier": [variation(desk, way.exercise, way.how) for way in exercise.easier],
        "harder": [variation(desk, way.exercise, way.how) for way in exercise.harder],
        "at_home": _at_home(desk, exercise),
        "cautions": desk.all_prose(exercise.cautions),
        "stop_here": desk.all_prose(exercise.stop_if),
    }


def review_data(desk: Desk, ident: str, review: Review) -> dict[str, Any]:
    """Return everything that a review sheet shows: the card, every dose in use, the limits and the boxes to tick."""
    exercise = desk.site.programme.exercises[ident]
    references = desk.site.programme.references
    return card_data(desk, ident) | {
        "digests": [[PART_NAMES[part], digest] for part, digest in review.digests.items() if part != "dosage"],
        "dosage": in_words(review.dosage),
        "doses": [
            {
                "session": desk.site.programme.sessions[appearance.session].name,
                "plan": appearance.plan.plan.name,
                "stretches": [
                    [_weeks(stretch.first.week, stretch.last.week), stretch.dose, stretch.kind]
                    for stretch in appearance.stretches
                ],
            }
            for appearance in appearances(desk.site, ident)
        ],
        "limits": limits(exercise),
        "sources": [
            desk.prose(f"{references[source].authors}{_year(references[source].year)}: {references[source].title}")
            for source in exercise.sources
        ],
        "questions": list(QUESTIONS),
    }


def facts(exercise: Exercise) -> list[list[str]]:
    """Return the short facts of an exercise."""
    works = ", ".join(exercise.regions.main)
    if exercise.regions.also:
        works += f"; also {', '.join(exercise.regions.also)}"
    return [
        ["Pattern", exercise.pattern],
        ["Sides", exercise.sides],
        ["Kit", ", ".join(exercise.kit) or "none"],
        ["Works", works],
    ]


def limits(exercise: Exercise) -> list[list[str]]:
    """Return each limit with what the physiotherapist has set, empty where nothing is, and its unit."""
    now = exercise.limits or Limits()
    return [
        ["Load", words.load_in_words(now.load) if now.load else "", ""],
        ["Reps", str(now.reps or ""), "a set"],
        ["Hold", words.seconds(now.hold) if now.hold else "", ""],
        ["Sets", str(now.weekly_sets or ""), "a week"],
        ["Step of the load", plain_number(now.weekly_step) if now.weekly_step else "", "% a week"],
    ]


def _points(desk: Desk, exercise: Exercise) -> list[dict[str, Any]]:
    points: list[dict[str, Any]] = []
    if exercise.breathing:
        points.append({"name": "Breathing", "says": desk.prose(exercise.breathing)})
    if exercise.tempo:
        said = f"{tempo_words(exercise.tempo)} ({exercise.tempo})"
        points.append({"name": "Tempo", "says": [{"kind": "text", "text": said}]})
    if exercise.feel:
        points.append({"name": "Where to feel it", "says": desk.prose(exercise.feel)})
    return points


def _at_home(desk: Desk, exercise: Exercise) -> list[dict[str, str]] | None:
    if exercise.at_home is None:
        return None
    runs = desk.prose(exercise.at_home.use)
    runs[0]["text"] = runs[0]["text"][:1].upper() + runs[0]["text"][1:]
    return [*runs, {"kind": "text", "text": ". "}, *desk.prose(exercise.at_home.how)] if exercise.at_home.how else runs


def _status(review: Review) -> str:
    said = STATUS_WORDS[review.status]
    if review.sign_off is None:
        return said
    by = f"{said}: {review.sign_off.who}, {review.sign_off.role}, {day_long(review.sign_off.date)}"
    changed = ", ".join(PART_NAMES[part] for part in review.changed)
    return f"{by}. Not as it was then: {changed}" if changed else by


def _weeks(first: int, last: int) -> str:
    return f"Week {first}" if first == last else f"Weeks {first} to {last}"


def _year(year: int | None) -> str:
    return f" {year}" if year else ""
