"""From the programme to what templates read. Every dose passes through the same words as on the pages."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from setwright.dose.resolved import ResolvedItem
from setwright.handouts.code import square_code
from setwright.handouts.labels import labels
from setwright.handouts.sheet import Data, Sheet
from setwright.model.routine import RoutinePart
from setwright.model.text import exercise_target, spans
from setwright.outline.addresses import SAFETY, exercise_path, folder_of
from setwright.outline.site import Site
from setwright.review.words import Where
from setwright.wording import blocks
from setwright.wording.changes import in_a_line
from setwright.wording.doses import boxes, dose_in_words, part_amount
from setwright.wording.items import item_words
from setwright.wording.language import Language
from setwright.wording.limits import limits_set
from setwright.wording.notice import notice
from setwright.wording.pieces import plainly
from setwright.wording.ramps import RampWords
from setwright.wording.red_flags import RedFlags, red_flags


@dataclass(frozen=True)
class Desk:
    """What all sheets are made from: the site's content, and where it is published, if anywhere yet."""

    site: Site
    site_url: str | None = None

    @property
    def language(self) -> Language:
        """What members read."""
        return self.site.language

    def sheet(self, path: str, template: str, data: Data) -> Sheet:
        """Return a sheet with the words that its template needs."""
        return Sheet(path, template, {**data, "language": self.language.code, "labels": self.labels})

    @cached_property
    def labels(self) -> dict[str, str]:
        """The fixed words of all sheets."""
        return labels(self.language)

    @cached_property
    def red_flags(self) -> RedFlags:
        """The signs and conditions to heed, the tool's own and the club's."""
        return red_flags(self.language, self.site.programme.club.safety)

    def address(self, path: str) -> str | None:
        """Return a page's full address, or nothing where the site has none."""
        return f"{self.site_url.rstrip('/')}/{folder_of(path)}" if self.site_url else None

    def prose(self, text: str) -> list[dict[str, str]]:
        """Return prose as runs: their kind, their words, and for a link the exercise or the address it leads to."""
        runs = []
        for span in spans(text):
            run = {"kind": span.kind, "text": span.text}
            if ident := exercise_target(span.target) if span.kind == "link" else None:
                run |= {"exercise": ident}
                if address := self.address(exercise_path(ident)):
                    run |= {"target": address}
            elif span.kind == "link":
                run |= {"target": span.target}
            runs.append(run)
        return runs

    def all_prose(self, texts: Iterable[str]) -> list[list[dict[str, str]]]:
        """Return several texts as runs."""
        return [self.prose(text) for text in texts]

    def noted(self, text: str, where: Where) -> list[dict[str, str]]:
        """Return a note as runs, marked where it speaks of an exercise under limits and no reviewer has seen it."""
        return [*self.prose(text), *([self.mark] if where in self.site.not_reviewed else [])]

    def reasoned(self, said: str, why: str) -> list[dict[str, str]]:
        """Return the reason of a change as runs, marked likewise; ``said`` is what is printed of it."""
        return [*self.prose(said), *([self.mark] if why in self.site.reasons_not_reviewed else [])]

    @property
    def mark(self) -> dict[str, str]:
        """What stands after words that no reviewer has seen."""
        return {"kind": "strong", "text": " " + self.language.say("(not reviewed)")}

    def name(self, exercise: str) -> str:
        """Return an exercise's name."""
        return self.site.programme.exercises[exercise].name

    def frame(self, title: str, path: str) -> dict[str, Any]:
        """Return what stands round every sheet: title, club, safety, and the way back to the page."""
        club = self.site.programme.club
        address = self.address(path)
        return {
            "title": title,
            "club": club.name,
            "notice": notice(self.language),
            "contact": self.prose(club.safety.contact),
            "emergency": self.prose(club.safety.in_an_emergency),
            "stop_if": self.all_prose(self.red_flags.short),
            "address": address,
            "code": square_code(address) if address else None,
            "safety_address": self.address(SAFETY),
        }


def item_data(desk: Desk, item: ResolvedItem, rounds: bool) -> dict[str, Any]:
    """Return one exercise of a session: its dose in large and in words, and the weights to take."""
    language, unit = desk.language, desk.site.programme.club.units
    dose, exercise = item.dose, desk.site.programme.exercises[item.exercise]
    said = item_words(
        language,
        item,
        exercise.limits,
        unit,
        desk.site.manner(item.exercise),
    )
    return {
        "exercise": item.exercise,
        "name": exercise.name,
        "sets": dose.most_count,
        "sets_of": plainly(blocks.sets_of(language, item)),
        "amount": said.amount,
        "sides": said.sides,
        "loads": [
            {
                "sets": load.sets,
                "load": load.load,
                "kit": load.kit,
                "take": plainly(load.take) or None,
                "bands": [[row.span, row.take] for row in load.bands.rows] if load.bands else [],
                "bands_of": load.bands.short if load.bands else "",
                "of_max": load.of.load.of == "1RM",
                "remark": load.remark,
                "held_back": load.held_back,
            }
            for load in said.loads
        ],
        "ramp": _ramp(said.ramp),
        "feels": said.feels,
        "bound": said.bound,
        "height": said.height,
        **care_data(desk, item.exercise),
        "tempo": said.tempo,
        "tempo_code": said.tempo_code,
        "rest": desk.language.say("rest %(time)s", time=said.rest),
        "rest_after": plainly(blocks.rest_after_set(language, item)),
        "words": dose_in_words(language, dose, rounds),
        "changes": in_a_line(language, item.changes),
        "reasons": [desk.reasoned(why, why) for why in item.reasons],
        "cues": desk.all_prose(exercise.cues[:3]),
        "easier": _easier(desk, item.exercise),
        "at_home": desk.prose(exercise.at_home.use) if exercise.at_home else None,
        "boxes": boxes(language, dose, unit),
    }


def _ramp(said: RampWords | None) -> dict[str, Any] | None:
    """Return the warm-up sets in a line, with a table of weights over body weight; one over 1RM would be too long."""
    if said is None:
        return None
    of_max = said.sets[0].of.load.of == "1RM"
    return {"line": said.line, "bands": [] if of_max else [list(row) for row in said.rows], "bands_of": said.short}


def care_data(desk: Desk, ident: str | None) -> dict[str, Any]:
    """Return what a physiotherapist says of one exercise, to stand beside its dose; nothing for a step in words."""
    if ident is None:
        return {"grave": None, "not_for": [], "stop_here": [], "cautions": [], "limits": []}
    exercise, grave = desk.site.programme.exercises[ident], None
    if desk.site.reviews[ident].grave:
        grave = desk.language.say(
            "Limits or cautions of this exercise are not as the physiotherapist saw them. Ask before you do it."
        )
    return {
        "grave": grave,
        "not_for": desk.all_prose(exercise.limits.not_for if exercise.limits else []),
        "stop_here": desk.all_prose(exercise.stop_if),
        "cautions": desk.all_prose(exercise.cautions),
        "limits": [[row.label, row.said] for row in limits_set(desk.language, exercise.limits)],
    }


def part_data(desk: Desk, part: RoutinePart, routine: str, index: int) -> dict[str, Any]:
    """Return one step of a warm-up or cool-down, the one at an index, from 0."""
    exercise = desk.site.programme.exercises[part.exercise] if part.exercise else None
    note = part.note or (exercise.cues[0] if exercise and exercise.cues else None)
    return {
        "exercise": part.exercise,
        "name": exercise.name if exercise else None,
        "do": desk.noted(part.do, ("routine", routine, index, "do")) if part.do else None,
        "amount": part_amount(desk.language, part, exercise),
        "note": desk.noted(note, ("routine", routine, index, "note")) if note else None,
        **care_data(desk, part.exercise),
    }


def _easier(desk: Desk, exercise: str) -> list[dict[str, str]]:
    ways = desk.site.programme.exercises[exercise].easier
    return variation(desk, ways[0].exercise, ways[0].how) if ways else []


def variation(desk: Desk, exercise: str | None, how: str | None) -> list[dict[str, str]]:
    """Return an easier or harder way as runs of prose."""
    if exercise is None:
        return desk.prose(how or "")
    link = {"kind": "link", "text": desk.name(exercise), "exercise": exercise}
    if address := desk.address(exercise_path(exercise)):
        link |= {"target": address}
    return [link, {"kind": "text", "text": ": "}, *desk.prose(how)] if how else [link]
