"""Red flags: the tool's own list stands in every programme, and a club only adds to it.

What belongs on the list is common practice in sport, first aid and physiotherapy, no source, put together from memory;
a clinician has the last word on it.
"""

import html
import json
import re

import pytest

from setwright.dose.resolve import resolve
from setwright.handouts import tree as paper_tree
from setwright.handouts.writing import Desk
from setwright.model.programme import Programme
from setwright.model.text import plain
from setwright.outline import paper
from setwright.outline.addresses import SAFETY
from setwright.outline.site import Site
from setwright.pages import tree
from setwright.wording.language import ENGLISH
from setwright.wording.red_flags import ASK, CALL, CARE, SHORT, STOP, red_flags
from support import make

ASKS = "safety: {contact: Ask the coach., in_an_emergency: Call 112.%s}"
CLUBS = {
    "says nothing of its own": ASKS % "",
    "writes empty lists": ASKS % ", call_for_help_if: [], stop_if: [], before_you_start: [], take_care: []",
    "says that all is well": ASKS % ", stop_if: [Never stop.], before_you_start: [Nobody needs to ask.]",
    "adds to every list": ASKS
    % ", call_for_help_if: [A call.], stop_if: [A stop.], before_you_start: [A question.], take_care: [A care.]",
}
clubs = pytest.mark.parametrize("club", CLUBS.values(), ids=CLUBS)
WANTED = {
    # what a physiotherapist looks for, and a word of it on the list
    "loss of bladder control": "bladder",
    "loss of bowel control": "bowel",
    "saddle numbness": "between the legs",
    "sudden weakness": "suddenly goes weak",
    "headache": "severe headache",
    "speech": "speech",
    "vision": "sight",
    "head injury": "blow to the head",
    "fever": "fever",
    "infection": "infection",
    "chest pain": "in the chest",
    "fainting": "faint",
    "a swollen calf": "one calf",
    "diabetes": "diabetes",
    "numb feet": "numb feet",
    "epilepsy": "epilepsy",
    "hypermobility": "hypermobility",
    "brittle bones": "brittle bones",
    "recent surgery": "surgery",
    "pregnancy": "pregnan",
    "after birth": "gave birth",
    "high blood pressure": "high blood pressure",
    "holding the breath": "never hold your breath",
    "under age": "under 18",
    "a severe allergic reaction": "severe allergy",
    "low blood sugar": "low blood sugar",
    "an asthma attack": "asthma attack",
    "heat illness": "in the heat: confusion",
    "muscles that break down": "dark as tea or cola",
    "blood thinners after a blow": "blood thinners",
    "cancer and its treatment": "cancer and its treatment",
    "steroids for long": "steroids for long",
    "glaucoma": "keep your head low",
    "a hernia": "hernia",
    "a joint replacement": "artificial joint",
}
GRADED: tuple[tuple[str, tuple[str, ...], tuple[str, ...]], ...] = (
    # how grave it is, the lines of that grade, and a word of each sign that belongs there
    ("call for help", CALL,
     ("severe allergy", "asthma attack", "low blood sugar", "In the heat", "as tea or cola", "In pregnancy: bleeding",
      "After any blow to the head, if you take blood thinners")),
    ("stop for the day", STOP, ("A doctor looks at it before you train again", "chills in the heat", "A wheeze")),
    ("ask first", ASK, ("cancer", "steroids for long", "glaucoma", "hernia", "artificial joint", "asthma", "heat")),
    ("take care", CARE, ("Cancer", "steroids for long", "Glaucoma", "hernia", "artificial joint", "Asthma", "Heat")),
)  # fmt: skip
SHORTLY = (
    # each sign to stop at, in the order of CALL and STOP, and what says it in the short form
    ("chest pain", "fainting", "breath that does not settle", "throat that swells", "trouble with speech or sight",
     "severe headache", "bladder or bowel", "take blood thinners", "seizure", "with diabetes", "collapse, in the heat",
     "dark as cola", "in pregnancy, bleeding"),
    ("stop for today, even if you feel well", "one calf", "fever", "shaky and sweaty", "chills in the heat", "wheeze",
     "dizziness", "Sharp pain", "gives way", "pins and needles"),
)  # fmt: skip


def _made(club: str) -> tuple[Programme, dict[str, str]]:
    """Return a programme and the words of its pages, without their markup."""
    made = make.programme({"club": club})
    pages = tree.render(made, tuple(resolve(made)))
    return made, {name: _words(raw.decode()) for name, raw in pages.items() if name.endswith(".md")}


def _words(page: str) -> str:
    return " ".join(html.unescape(re.sub(r"<[^>]+>", "", page)).split())


def test_the_list_knows_what_a_physiotherapist_looks_for() -> None:
    """Nerve roots, stroke, head, heart, clots, and the conditions that need a question first."""
    whole = " ".join((*CALL, *STOP, *ASK, *CARE)).lower()

    assert [sign for sign, word in WANTED.items() if word not in whole] == []


@pytest.mark.parametrize(("grade", "lines", "words"), GRADED, ids=[grade for grade, _, _ in GRADED])
def test_each_sign_is_as_grave_as_public_guidance_takes_it(
    grade: str, lines: tuple[str, ...], words: tuple[str, ...]
) -> None:
    """Bleeding in pregnancy is a call, and a blow to the head ends the day and wants a doctor.

    Sources, from memory: ACOG Committee Opinion 804 (2020) for pregnancy; Patricios JS et al., Br J Sports Med
    2023;57:695-711, and NICE NG232 for the head; public first-aid guidance for the rest.
    """
    assert [word for word in words if word not in " ".join(lines)] == [], grade


def test_the_short_form_leaves_no_sign_out() -> None:
    """Every sign to stop at is in the short form, but for those after a birth, which stand with their exercises."""
    said = plain(" ".join(SHORT))

    assert (len(SHORTLY[0]), len(SHORTLY[1])) == (len(CALL), len(STOP) - 1)
    assert [word for words in SHORTLY for word in words if word not in said] == []


@clubs
def test_the_safety_page_holds_the_whole_list(club: str) -> None:
    """Whatever club.yml says, every line of the tool's own list is there, and what the club adds."""
    made, pages = _made(club)
    added = made.club.safety
    lines = (*CALL, *STOP, *ASK, *CARE, *added.call_for_help_if, *added.stop_if)
    lines = (*lines, *added.before_you_start, *added.take_care)

    assert [line for line in lines if line not in pages[SAFETY]] == []


@clubs
def test_sessions_and_exercises_hold_the_short_form(club: str) -> None:
    """A member in a session reads the signs without looking for the safety page."""
    _, pages = _made(club)
    training = [page for name, page in pages.items() if name.startswith("exercises/lift/") or "/monday" in name]

    assert len(training) == 9  # the exercise, and a session of four weeks for members and for their coach
    assert [line for line in SHORT for page in training if plain(line) not in page] == []


@clubs
def test_every_sheet_holds_the_short_form_and_the_booklet_the_whole(club: str) -> None:
    """On paper too: the session, its coach's sheet, the week, the card and the booklet."""
    made = make.programme({"club": club})
    desk = Desk(Site(made, tuple(resolve(made))))
    sheets = {sheet.path: sheet.data for sheet in paper_tree.sheets(desk)}
    members = {path: data for path, data in sheets.items() if "review" not in path}
    short = [desk.prose(line) for line in SHORT]
    booklet = json.dumps(sheets[paper.booklet("plan")])

    assert len(members) == 4 + 4 + 4 + 1 + 1
    assert [path for path, data in members.items() if data["stop_if"][: len(short)] != short] == []
    assert [line for line in (*CALL, *STOP, *ASK, *CARE) if line not in booklet] == []


@clubs
def test_a_club_adds_behind_the_tools_own_lines(club: str) -> None:
    """The club's lines come last in each group; the tool's own come first, whole and in order."""
    safety = make.club(club).safety
    flags = red_flags(ENGLISH, safety)

    assert flags.call == (*CALL, *safety.call_for_help_if)
    assert flags.stop == (*STOP, *safety.stop_if)
    assert flags.ask == (*ASK, *safety.before_you_start)
    assert flags.care == (*CARE, *safety.take_care)
    calls = (f"Call for help now: {sign}" for sign in safety.call_for_help_if)
    assert flags.short == (*SHORT, *calls, *safety.stop_if)


def _cautions(example: Programme, ident: str) -> str:
    return " ".join(example.exercises[ident].cautions).lower()


def test_what_is_lifted_names_blood_pressure(example: Programme) -> None:
    """Every exercise that a plan prescribes with a weight warns of high blood pressure and of holding the breath."""
    lifted = {
        item.exercise
        for plan in resolve(example)
        for session in plan.sessions
        for item in session.items
        if item.dose.heaviest is not None and item.kit is not None
    }

    assert len(lifted) >= 10
    assert [i for i in sorted(lifted) if "high blood pressure" not in _cautions(example, i)] == []
    assert [i for i in sorted(lifted) if "hold your breath" not in _cautions(example, i)] == []


def test_what_is_held_for_long_names_blood_pressure(example: Programme) -> None:
    """The same for what a plan asks to hold, such as planks: holding raises blood pressure while it lasts."""
    held = {
        item.exercise
        for plan in resolve(example)
        for session in plan.sessions
        for item in session.items
        if item.dose.measure == "hold"
    }

    assert len(held) >= 5
    assert [i for i in sorted(held) if "high blood pressure" not in _cautions(example, i)] == []
    assert [i for i in sorted(held) if "hold your breath" not in _cautions(example, i)] == []


def test_jumps_name_brittle_bones_birth_and_head_injury(example: Programme) -> None:
    """Landing is hard on bones, on the pelvic floor, and on a head that was hurt."""
    jumps = [ident for ident, exercise in example.exercises.items() if exercise.pattern == "jump"]

    assert jumps
    for word in ("brittle bones", "birth", "head injury"):
        assert [ident for ident in jumps if word not in _cautions(example, ident)] == [], word


def test_bare_feet_name_numb_feet(example: Programme) -> None:
    """Whoever is told to take the shoes off reads who keeps them on."""
    barefoot = []
    for ident, exercise in example.exercises.items():
        texts = (*exercise.set_up, *exercise.steps, exercise.at_home.how or "" if exercise.at_home else "")
        if re.search(r"barefoot|shoes off", " ".join(texts).lower()):
            barefoot.append(ident)

    assert len(barefoot) >= 4
    assert [ident for ident in barefoot if "numb feet" not in _cautions(example, ident)] == []


def test_weights_overhead_name_epilepsy(example: Programme) -> None:
    """A weight over the head is no place for a seizure."""
    assert "epilepsy" in _cautions(example, "half-kneeling-press")
