"""Nothing that is published passes a limit: read back from pages, from what the phone gets, and from the sheets.

The oracle knows the limits and what stands on a page, and nothing of the checks: whatever they let through must keep to
every limit, for any member, in any week, by any way that leads to a dose.
"""

import html
import json
import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from hypothesis import HealthCheck, assume, event, given, settings

from setwright.dose.resolve import resolve
from setwright.handouts import session as session_sheets
from setwright.handouts.writing import Desk
from setwright.model.club import Barbell, Names, WeightList, WeightSteps
from setwright.model.exercise import Exercise
from setwright.model.limits import Limits, NoWeight
from setwright.model.load import BodyWeightShare, HelpWeight, Weight
from setwright.model.programme import Programme
from setwright.model.session import Block
from setwright.outline import paper
from setwright.outline.addresses import routine_path, session_path
from setwright.outline.site import Site
from setwright.pages import routine as routine_pages
from setwright.pages import session as session_pages
from setwright.pages.renderer import Renderer
from support import limited, make
from support.amount import examples

LB = Fraction(45359237, 100000000)  # the international pound in kg (agreement of 1959)
SHORTEST_FREE_REP_S = 3  # a quarter off the usual four seconds
HOP_S = Fraction(1, 2)
ROUNDED_LB = Fraction(1, 20)
NO_END = 10**6


@dataclass(frozen=True)
class Shown:
    """One exercise of a session as the page shows it, what the phone gets of it, and its lines on the sheet."""

    page: str
    phone: dict[str, Any]
    sheet: dict[str, Any]

    @property
    def leads_to(self) -> set[str]:
        """The exercises that may be done in its place: links of the easier way and of the way at home."""
        parts = re.findall(r'data-part="(?:easier|home)">(.*?)</dd>', self.page, re.S)
        return {ident for part in parts for ident in re.findall(r'href="[^"]*exercises/([a-z]+)/"', part)}

    @property
    def pace(self) -> list[int | None] | None:
        """The four numbers of the tempo on the page; None for a fast lift."""
        found = re.search(r'class="sw-code">([\dX-]+)<', self.page)
        return [None if n == "X" else int(n) for n in found[1].split("-")] if found else None


Pace = list[int | None] | None


def shown_in(page: str, sheet: dict[str, Any]) -> Iterator[list[Shown]]:
    """Yield every place of a session's page: its exercise, and what may be done instead by members with a choice."""
    block = re.search(r'<script type="application/json" id="session">(.*?)</script>', page, re.S)
    assert block is not None
    phone = json.loads(block[1])
    items = re.split(r'<li class="sw-item" id="[^"]*" data-item="', page)[1:]
    on_phone = [
        [item, *(way["item"] for way in ways)]
        for block in phone["blocks"]
        for item, ways in zip(block["items"], block.get("ways") or [[]] * len(block["items"]), strict=True)
    ]
    on_sheet = [[item, *item["instead"]] for block in sheet["blocks"] for item in block["items"]]
    assert len(items) == len(on_phone) == len(on_sheet)
    for text, each, lines in zip(items, on_phone, on_sheet, strict=True):
        parts = text.split('<details class="sw-instead"')
        yield [Shown(html.unescape(part), *both) for part, *both in zip(parts, each, lines, strict=True)]


def seconds(pace: Pace, fast: Fraction, free: int) -> Fraction:
    """One repetition at a pace, a fast lift counted as given; without a pace, so many seconds."""
    return Fraction(sum(fast if n is None else n for n in pace)) if pace else Fraction(free)


def usual(exercise: Exercise) -> Pace:
    """The pace of the exercise's own page, for holds and walks, which show none."""
    tempo = exercise.tempo
    return [tempo.lowering_s, tempo.pause_low_s, tempo.lifting_s, tempo.pause_high_s] if tempo else None


def jumps(exercise: Exercise) -> bool:
    """Whether it lands: by its pattern, or since somebody limited its landings."""
    return exercise.pattern == "jump" or bool(exercise.limits and exercise.limits.contacts)


def in_all_reps(exercise: Exercise, measure: str, amount: Fraction, pace: Pace) -> Fraction:
    """Repetitions of a set, on one side, at the quickest pace that the page allows."""
    if measure == "reps":
        return amount
    if jumps(exercise) and measure == "distance":
        return amount / 100
    if jumps(exercise) and measure == "work":
        return amount / (seconds(pace, HOP_S, 0) or HOP_S)
    whole = amount / 100 if measure == "distance" else amount
    return Fraction(int(whole / seconds(pace, Fraction(1), SHORTEST_FREE_REP_S)))


def amount_passes(limits: Limits, exercise: Exercise, one: Shown, pace: Pace) -> list[str]:
    """Return the limits of reps and hold that an amount on the phone passes."""
    measure, high = one.phone["measure"], Fraction(str(max(s.get("up_to", s["high"]) for s in one.phone["sets"])))
    passed = []
    if any("leave" in s and "up_to" not in s for s in one.phone["sets"]) and (limits.reps or limits.hold):
        passed.append("as many as possible, without an end")
    own = {"hold": limits.hold, "distance": limits.distance}.get(measure)
    bound_reps = limits.reps if own is None else None
    if limits.distance:
        far = high if measure == "distance" else Fraction(0)
        if measure in ("work", "reps") and limits.reps is None and limits.hold is None:
            far = 100 * high * (seconds(pace, Fraction(1), 4) if measure == "reps" else 1)  # a metre a second
        if far > limits.distance:
            passed.append("distance")
    if bound_reps and in_all_reps(exercise, measure, high, pace) > bound_reps:
        passed.append("reps")
    if limits.hold:
        if measure in ("hold", "work") and high > limits.hold:
            passed.append("hold")
        if measure == "reps" and limits.reps is None and high * seconds(pace, Fraction(1), 4) > limits.hold:
            passed.append("hold of reps")
        if measure == "reps" and pace and max(pace[1] or 0, pace[3] or 0) > limits.hold:
            passed.append("hold in a rep")
    return passed


def most_kg(limit: BodyWeightShare | Weight, body_weight: Fraction, per_hand: bool) -> Fraction:
    """The limit in kilograms, for one hand where the load is for one; a limit of one hand is never doubled."""
    kg = limit.percent * body_weight / 100 if isinstance(limit, BodyWeightShare) else limit.kg
    return kg / 2 if per_hand and not limit.per_hand else kg


def kilograms(text: str) -> Fraction:
    """The weight of a text such as '12 kg' or '26.5 lb', at the light end of its rounding."""
    number, unit = text.split()
    return Fraction(number) if unit == "kg" else (Fraction(number) - ROUNDED_LB) * LB


def free_to_choose(made: Programme, kit: list[str]) -> bool:
    """Whether some of the kit comes in weights or in bands, which a member chooses from where nothing is written."""
    return any(isinstance(made.club.kit[name], Barbell | Names | WeightList | WeightSteps) for name in kit)


def load_passes(limits: Limits, one: Shown, each_hand: bool) -> list[str]:
    """Return how a load on the phone, the page or the sheet passes the limit of the load or of the effort."""
    limit, passed = limits.load, []
    for load in one.phone.get("loads", []):
        if (
            isinstance(limit, NoWeight)
            and "effort" not in load["text"].lower()
            and "reserve" not in load["text"].lower()
        ):
            passed.append(f"{load['text']} where no weight is allowed")
        if load.get("way") == "help":
            continue  # it takes weight off: what is lifted is less than the body
        hand = load.get("per_hand", False)
        text, bands = load["text"].lower(), load.get("bands", "")
        bounded = "Never more than" in one.page and "Never more than" in (one.sheet["bound"] or "")
        open_load = "effort" in text or "reserve" in text or "1rm" in text or "band" in text
        if isinstance(limit, BodyWeightShare | Weight):
            if open_load and not (bounded and (limits.top_effort or limits.least_reserve)):
                passed.append(f"{text} is bounded by nothing")
            if each_hand and not hand and not open_load:
                passed.append(f"{text} may be taken twice")
            for edge, take in re.findall(r"[\[(]([\d/]+), [\d/]+[\])] (\d[^;]*)", bands):
                base = Fraction(edge) if load.get("of") == "body weight" else None
                if base is None and isinstance(limit, BodyWeightShare):
                    continue  # a share of 1RM: the limit stands beside it, as was seen above
                if kilograms(take) > most_kg(limit, base or Fraction(0), hand):
                    passed.append(f"{take} from {edge} kg")
            if (fixed := load.get("weight")) and kilograms(fixed) > most_kg(limit, Fraction(40), hand):
                passed.append(f"{fixed} for everyone")
            if not bands and (share := re.match(r"([\d.]+) % of body weight", text)):
                percent = Fraction(share[1])
                members = [Fraction(40), Fraction(110)]
                passed += [f"{text} at {kg} kg" for kg in members if percent * kg / 100 > most_kg(limit, kg, hand)]
        for effort, left in re.findall(r"effort ([\d.]+)|(\d+) reps? in reserve", text):
            asked = Fraction(effort) if effort else 10 - Fraction(left)
            tops = [limits.top_effort.rpe] if limits.top_effort else []  # type: ignore[union-attr]
            tops += [10 - limits.least_reserve.reps] if limits.least_reserve else []  # type: ignore[union-attr]
            if any(asked > top for top in tops):
                passed.append(f"effort of {text}")
    return passed


def open_sets_pass(limits: Limits, one: Shown) -> list[str]:
    """Return the open-ended sets that leave less than the limits of effort ask for."""
    tops = [limits.top_effort.rpe] if limits.top_effort else []  # type: ignore[union-attr]
    tops += [10 - limits.least_reserve.reps] if limits.least_reserve else []  # type: ignore[union-attr]
    asked = [10 - s["leave"] for s in one.phone["sets"] if "leave" in s]
    return [f"an open-ended set of effort {effort}" for effort in asked if any(effort > top for top in tops)]


def help_passes(limits: Limits, one: Shown) -> list[str]:
    """Return how an exercise is done with less help than the least, on the phone or on the page."""
    least, passed = limits.load, []
    if not isinstance(least, HelpWeight):
        return []
    passed += ["a set without help" for done in one.phone["sets"] if "load" not in done and not done.get("ramp")]
    for load in one.phone.get("loads", []):
        text, bands = load["text"].lower(), load.get("bands", "")
        if "effort" in text or "reserve" in text or "1rm" in text or "band" in text:
            bounded = "Never with less than" in one.page and "Never with less than" in (one.sheet["bound"] or "")
            passed += (
                [] if bounded and (limits.top_effort or limits.least_reserve) else [f"{text} is bounded by nothing"]
            )
        elif load.get("way") != "help":
            passed.append(f"{text} helps nobody")
        else:
            set_to = re.findall(r"[\])] (\d[^;]*)", bands) or ([load["weight"]] if load.get("weight") else [])
            share = re.match(r"([\d.]+) % of body weight as help", text)
            if not set_to and share:
                set_to = [f"{float(share[1]) * 40 / 100} kg"]
            passed += [f"{kg} of help" for kg in set_to if kilograms(kg) + 2 * ROUNDED_LB * LB < least.kg]
    return passed


def heights_pass(limits: Limits, one: Shown) -> list[str]:
    """Return the heights on page and sheet that pass the limit; where there is a limit, there is a height."""
    if limits.height is None:
        return []
    said = [one.sheet["height"] or "", *re.findall(r'data-part="height">(.*?)</p>', one.page)]
    found = [Fraction(number) for text in said for number in re.findall(r"([\d.]+) cm", text)]
    return [] if found and max(found) <= limits.height else [f"height {found}"]


def working(one: Shown, block: Block) -> int:
    """Return the sets that count: all but those that warm up; of as many rounds as possible, those that may come."""
    if block.rounds == "as many as possible":
        return block.up_to or NO_END
    return sum(1 for done in one.phone["sets"] if not done.get("ramp"))


def landings(exercises: dict[str, Exercise], one: Shown, ident: str, block: Block) -> int:
    """Return the landings of one exercise of a session, or of another with its dose."""
    exercise = exercises[ident]
    if not jumps(exercise):
        return 0
    sides, total = 2 if exercise.sides == "one at a time" else 1, Fraction(0)
    for done in one.phone["sets"]:
        high = Fraction(str(done.get("up_to", done["high"])))
        each = in_all_reps(exercise, one.phone["measure"], high, one.pace)
        total += -(-each // 1) if one.phone["measure"] != "hold" else 1
    if block.rounds == "as many as possible":
        total *= Fraction(working(one, block), len(one.phone["sets"]))
    return int(total) * sides


@settings(suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow], max_examples=examples(10))
@given(limited.programmes())
def test_nothing_published_passes_a_limit(made: Programme) -> None:
    """By progression, a change, an easier way, one at home, own kit, pounds, or a warm-up: no limit is passed."""
    found = make.verdict(made).findings
    assume(not any(one.severity == "error" for one in found))
    event("published")
    for written in made.plans.values():
        event("groups" if len(written.groups) > 1 else "one start" if written.groups else "own start")
        event("a break" if written.breaks else "no break")
        event("follows" if written.follows else "follows nothing")
    site = Site(made, resolve(made))
    renderer = Renderer(site)
    pages = {one.path: renderer.render(one) for one in (*session_pages.pages(site), *routine_pages.pages(site))}
    sheets = {sheet.path: sheet.data for sheet in session_sheets.sheets(Desk(site))}
    passed: list[str] = []
    warm_page = html.unescape(pages[routine_path("warm-up", "warm")])
    warmed = re.findall(r'sw-item-name"><a href="[^"]*exercises/([a-z]+)/"', warm_page)
    rounds = made.routines["warm"].rounds
    for plan in site.plans:
        for week in plan.weeks:
            sets: dict[str, int] = defaultdict(int)
            for session in week.sessions:
                shown = list(shown_in(pages[session_path(session)], sheets[paper.session_sheet(session)]))
                seen = set(warmed)
                most: dict[int, dict[str, int]] = defaultdict(lambda: defaultdict(int))
                landed: dict[int, int] = defaultdict(int)
                items = [(place, way) for place, item in enumerate(session.items) for way in (item, *item.instead)]
                all_shown = [one for ways in shown for one in ways]
                for (place, item), one in zip(items, all_shown, strict=True):
                    wrote = made.sessions[session.session].written(item.slot)
                    block = made.sessions[session.session].blocks[item.slot[0]]
                    ident = one.phone["exercise"]
                    exercise = made.exercises[ident]
                    limits = exercise.limits or Limits()
                    held = exercise.figure is not None and {load["kit"] for load in one.sheet["loads"]} <= {
                        None,
                        "dumbbell",
                    }
                    passed += amount_passes(limits, exercise, one, one.pace or usual(exercise))
                    passed += load_passes(limits, one, held) + open_sets_pass(limits, one)
                    if limits.load and not one.phone.get("loads") and free_to_choose(made, wrote.kit or exercise.kit):
                        passed.append("a load that nobody wrote")
                    passed += help_passes(limits, one)
                    passed += heights_pass(limits, one)
                    lands = max(landings(made.exercises, one, way, block) for way in {ident, *one.leads_to})
                    landed[place] = max(landed[place], lands)
                    for way in {ident, *one.leads_to}:
                        seen.add(way)
                        most[place][way] = max(most[place][way], working(one, block))
                        other = made.exercises[way]
                        passed += amount_passes(other.limits or Limits(), other, one, one.pace or usual(other))
                landings_all = sum(landed.values())
                for here in most.values():
                    for way, count in here.items():
                        sets[way] += count
                for ident in warmed:
                    sets[ident] += rounds
                    step = made.routines["warm"].exercises[0]
                    if jumps(made.exercises[ident]) and step.reps:
                        landings_all += (
                            step.reps * rounds * (2 if made.exercises[ident].sides == "one at a time" else 1)
                        )
                for ident in seen:
                    limits = made.exercises[ident].limits or Limits()
                    if limits.earliest_phase and week.phase + 1 < limits.earliest_phase:
                        passed.append(f"{ident} too early")
                    if limits.earliest_week and week.number < limits.earliest_week:
                        passed.append(f"{ident} in too early a week")
                    if limits.contacts and landings_all > limits.contacts:
                        passed.append(f"{landings_all} landings")
            for ident, count in sets.items():
                limits = made.exercises[ident].limits or Limits()
                if limits.weekly_sets and count > limits.weekly_sets:
                    passed.append(f"{count} sets of {ident}")

    assert passed == []
