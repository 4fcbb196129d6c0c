"""An exercise on paper: a card for members, and a sheet for the physiotherapist who signs it off."""

from collections.abc import Iterator
from typing import Any

from setwright.checks.registry import Accepted
from setwright.figure import still
from setwright.handouts.sheet import Sheet
from setwright.handouts.writing import Desk, variation
from setwright.model.exercise import Exercise
from setwright.model.reference import Reference
from setwright.outline import paper
from setwright.outline.addresses import exercise_path
from setwright.outline.training import appearances
from setwright.review.parts import Line
from setwright.review.status import Review
from setwright.wording.dosage import in_words
from setwright.wording.doses import dose_in_words, tempo_words
from setwright.wording.language import capital, small
from setwright.wording.limits import LimitWords, limits, limits_set
from setwright.wording.reviews import part_name, questions, said_what, said_where, standing
from setwright.wording.times import weeks_in_words
from setwright.wording.vocabulary import facts


def sheets(desk: Desk) -> Iterator[Sheet]:
    """Yield a card and a review sheet for each exercise, and all review sheets in one file."""
    reviews = desk.site.reviews
    every = []
    for ident in sorted(desk.site.programme.exercises):
        yield desk.sheet(paper.exercise_card(ident), "card", card_data(desk, ident))
        data = review_data(desk, ident, reviews[ident])
        every.append(data)
        yield desk.sheet(paper.review_sheet(ident), "review", {**data, "sheets": [data]})
    club = desk.site.programme.club
    elsewhere = [_accepted(desk, one) for one in desk.site.accepted if one.exercise is None]
    yield desk.sheet(
        paper.REVIEWS,
        "review",
        {
            "title": desk.language.say("Review sheets of %(club)s", club=club.name),
            "club": club.name,
            "sheets": every,
            "elsewhere": elsewhere,
        },
    )


def card_data(desk: Desk, ident: str) -> dict[str, Any]:
    """Return everything that a card shows."""
    exercise, review = desk.site.programme.exercises[ident], desk.site.reviews[ident]
    said = standing(desk.language, review.status, review.sign_off, review.changed)
    return {
        **desk.frame(exercise.name, exercise_path(ident)),
        "exercise": ident,
        "status": said,
        "status_inside": small(said),
        "figure": still(exercise, language=desk.language),
        "why": desk.prose(exercise.why),
        "facts": [list(fact) for fact in facts(desk.language, desk.site.programme.club, exercise)],
        "cues": desk.all_prose(exercise.cues),
        "set_up": desk.all_prose(exercise.set_up),
        "steps": desk.all_prose(exercise.steps),
        "points": _points(desk, ident),
        "faults": [{"sign": desk.prose(f.sign), "fix": desk.prose(f.fix)} for f in exercise.faults],
        "easier": [variation(desk, way.exercise, way.how) for way in exercise.easier],
        "harder": [variation(desk, way.exercise, way.how) for way in exercise.harder],
        "at_home": _at_home(desk, exercise),
        "cautions": desk.all_prose(exercise.cautions),
        "limits": [[row.label, row.said] for row in limits_set(desk.language, exercise.limits)],
        "not_for": desk.all_prose(exercise.limits.not_for if exercise.limits else []),
        "stop_here": desk.all_prose(exercise.stop_if),
    }


def review_data(desk: Desk, ident: str, review: Review) -> dict[str, Any]:
    """Return everything that a review sheet shows: the card, every dose in use, the limits and the boxes to tick."""
    exercise = desk.site.programme.exercises[ident]
    references = desk.site.programme.references
    return card_data(desk, ident) | {
        "heading": desk.language.say("%(exercise)s: for the physiotherapist", exercise=exercise.name),
        "digests": [
            [part_name(desk.language, part), digest] for part, digest in review.digests.items() if part != "dosage"
        ],
        "dosage": in_words(desk.language, review.dosage),
        "doses": [
            {
                "session": desk.site.programme.sessions[appearance.session].name,
                "plan": appearance.plan.plan.name,
                "stretches": [
                    [
                        capital(weeks_in_words(desk.language, stretch.weeks)),
                        dose_in_words(desk.language, stretch.dose, stretch.rounds),
                        _kind(desk, stretch.kind),
                    ]
                    for stretch in appearance.stretches
                ],
            }
            for appearance in appearances(desk.site, ident)
        ],
        "words": [_words(desk, line, review.words_seen) for line in desk.site.words_about.get(ident, ())],
        "accepted": [_accepted(desk, one) for one in desk.site.accepted if one.exercise == ident],
        "limits_form": [_limit(desk, row) for row in limits(desk.language, exercise.limits)],
        "sources": [_source(desk, references[source]) for source in exercise.sources],
        "questions": list(questions(desk.language)),
    }


def _points(desk: Desk, ident: str) -> list[dict[str, Any]]:
    exercise = desk.site.programme.exercises[ident]
    points: list[dict[str, Any]] = []
    if exercise.breathing:
        points.append({"name": desk.language.say("Breathing"), "says": desk.prose(exercise.breathing)})
    if exercise.tempo:
        said = f"{tempo_words(desk.language, exercise.tempo, desk.site.manner(ident))} ({exercise.tempo})"
        points.append({"name": desk.language.say("Tempo"), "says": [{"kind": "text", "text": said}]})
    if exercise.feel:
        points.append({"name": desk.language.say("Where to feel it"), "says": desk.prose(exercise.feel)})
    return points


def _at_home(desk: Desk, exercise: Exercise) -> list[dict[str, str]] | None:
    if exercise.at_home is None:
        return None
    runs = desk.prose(exercise.at_home.use)
    runs[0]["text"] = runs[0]["text"][:1].upper() + runs[0]["text"][1:]
    return [*runs, {"kind": "text", "text": ". "}, *desk.prose(exercise.at_home.how)] if exercise.at_home.how else runs


def _limit(desk: Desk, row: LimitWords) -> dict[str, Any]:
    """Return a limit with the words round it, for a value or for a line to write one on."""
    return {
        "key": row.key,
        "label": row.label,
        "value": row.value,
        "before": row.before,
        "after": row.after,
        "lines": desk.all_prose(row.lines),
    }


def _words(desk: Desk, line: Line, seen: bool) -> dict[str, Any]:
    """Return what a session, a routine or a plan says of the exercise; a signature covers it."""
    says = [*desk.prose(said_what(desk.language, line.text, line.field)), *([] if seen else [desk.mark])]
    return {"where": said_where(desk.language, line.key, line.field), "says": says}


def _accepted(desk: Desk, one: Accepted) -> dict[str, Any]:
    """Return a warning that the coach stands by: the rule, what it says, and why."""
    return {"rule": one.finding.rule, "message": one.finding.message, "why": desk.prose(one.why)}


def _kind(desk: Desk, kind: str) -> str:
    """Return what kind of weeks a dose stands in, where they are not usual ones."""
    if kind == "lighter":
        return desk.language.say("lighter week")
    return desk.language.say("taper week") if kind == "taper" else ""


def _source(desk: Desk, cited: Reference) -> list[dict[str, str]]:
    """Return a citation with what was studied, since a reviewer asks whether it holds here."""
    runs = desk.prose(f"{cited.authors}{_year(cited.year)}: {cited.title}.")
    if cited.studied:
        label = {"kind": "strong", "text": desk.language.say("Studied:")}
        runs = [*runs, {"kind": "text", "text": " "}, label, {"kind": "text", "text": " "}, *desk.prose(cited.studied)]
    return runs


def _year(year: int | None) -> str:
    return f" {year}" if year else ""
