"""From the programme to what templates read. Every dose passes through the same words as on the pages."""

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from setwright.dose.resolved import ResolvedItem
from setwright.handouts.code import square_code
from setwright.model.load import BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight
from setwright.model.routine import RoutinePart
from setwright.model.text import exercise_target, spans
from setwright.model.units import plain_number
from setwright.outline import paper
from setwright.outline.addresses import SAFETY, exercise_path, folder_of
from setwright.outline.site import Site
from setwright.wording import words
from setwright.wording.changes import in_words
from setwright.wording.notice import NOTICE
from setwright.wording.words import mass, tempo_words


@dataclass(frozen=True)
class Desk:
    """What all sheets are made from: the site's content, and where it is published, if anywhere yet."""

    site: Site
    site_url: str | None = None

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

    def name(self, exercise: str) -> str:
        """Return an exercise's name."""
        return self.site.programme.exercises[exercise].name

    def mass(self, kg: Fraction) -> str:
        """Return a weight in the club's unit."""
        return mass(kg, self.site.programme.club.units)

    def frame(self, title: str, path: str) -> dict[str, Any]:
        """Return what stands round every sheet: title, club, safety, and the way back to the page."""
        club = self.site.programme.club
        address = self.address(path)
        return {
            "title": title,
            "club": club.name,
            "notice": NOTICE,
            "contact": self.prose(club.safety.contact),
            "emergency": self.prose(club.safety.in_an_emergency),
            "stop_if": self.all_prose(club.safety.stop_if),
            "address": address,
            "code": square_code(address) if address else None,
            "safety_address": self.address(SAFETY),
        }


def item_data(desk: Desk, item: ResolvedItem, rounds: bool) -> dict[str, Any]:
    """Return one exercise of a session: its dose in large and in words, and the weights to take."""
    dose, exercise = item.dose, desk.site.programme.exercises[item.exercise]
    return {
        "exercise": item.exercise,
        "name": exercise.name,
        "sets": dose.count,
        "amount": words.amount(dose),
        "sides": words.sides(dose),
        "load": _capital(words.load_in_words(dose.heaviest)) if dose.heaviest is not None else None,
        "kit": item.kit if item.bands or item.choice else None,
        "take": _take(desk, item),
        "bands": _bands(desk, item),
        "bands_of": _bands_of(dose.heaviest),
        "remarks": _remarks(item),
        "tempo": tempo_words(dose.first.tempo) if dose.first.tempo else None,
        "tempo_code": str(dose.first.tempo) if dose.first.tempo else None,
        "rest": words.seconds(dose.first.rest_s),
        "words": words.dose_in_words(dose, rounds),
        "changes": list(in_words(item.changes)),
        "reasons": desk.all_prose(item.reasons),
        "cues": desk.all_prose(exercise.cues[:3]),
        "easier": _easier(desk, item.exercise),
        "at_home": desk.prose(exercise.at_home.use) if exercise.at_home else None,
        "boxes": paper.boxes(dose, desk.site.programme.club.units),
    }


def part_data(desk: Desk, part: RoutinePart) -> dict[str, Any]:
    """Return one step of a warm-up or cool-down."""
    exercise = desk.site.programme.exercises[part.exercise] if part.exercise else None
    note = part.note or (exercise.cues[0] if exercise and exercise.cues else None)
    return {
        "exercise": part.exercise,
        "name": exercise.name if exercise else None,
        "do": desk.prose(part.do) if part.do else None,
        "amount": words.part_amount(part, exercise),
        "note": desk.prose(note) if note else None,
    }


def _bands(desk: Desk, item: ResolvedItem) -> list[list[str]]:
    rows = []
    for band in item.bands:
        if band.whole_kg is None:
            continue
        first, last = band.whole_kg
        span = f"{first}" if first == last else f"{first}–{last}"
        if band.choice.weight_kg is not None:
            rows.append([span, desk.mass(band.choice.weight_kg)])
        elif band.choice.fit == "none-light-enough":
            rows.append([span, "easier option"])
        else:
            rows.append([span, "limit: easier option"])
    return rows


def _take(desk: Desk, item: ResolvedItem) -> str | None:
    """Return what a member must know where the load alone does not say it, as the page does."""
    load, limits = item.dose.heaviest, desk.site.programme.exercises[item.exercise].limits
    if item.choice:
        if item.choice.weight_kg is None:
            why = "The physiotherapist's limit rules this out"
            lacking = "The club owns nothing light enough"
            return f"{why if item.choice.fit == 'over-limit' else lacking}: do the easier option."
        if isinstance(load, Weight) and item.choice.weight_kg != load.kg:
            return f"Take {desk.mass(item.choice.weight_kg)}, the nearest that the club owns."
    elif item.bands:
        return None
    elif limits and limits.load and isinstance(load, Effort | Reserve | OneRepMaxShare):
        return f"Never more than {words.load_in_words(limits.load)}."
    elif isinstance(load, BodyWeightShare):
        number = plain_number(load.percent)
        return f"Multiply your body weight by {number} and divide by 100. Take nothing heavier than that."
    return None


def _bands_of(load: Load | None) -> str:
    """Return what stands before a list of weights to take."""
    if isinstance(load, OneRepMaxShare):
        return "Your 1RM, kg"
    return "You weigh, kg: each hand" if isinstance(load, BodyWeightShare) and load.per_hand else "You weigh, kg"


def _remarks(item: ResolvedItem) -> list[str]:
    """Return what is to be said about some of the weights, as the page does."""
    fits = {band.choice.fit for band in item.bands}
    remarks = []
    if "lighter" in fits:
        remarks.append(f"For some members the nearest {item.kit} is lighter than planned. That is fine.")
    if "limit" in fits:
        remarks.append("The physiotherapist's limit keeps some weights lighter.")
    return remarks


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


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
