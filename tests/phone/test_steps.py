"""The guided session keeps the sheet's order and its time."""

import json
import re
from collections.abc import Callable, Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from playwright.sync_api import Page
from pydantic import ValidationError

from setwright.dose.phases import Manner, phases
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedBlock, ResolvedSession
from setwright.dose.timing import block_time, session_time, set_time
from setwright.model.programme import Programme
from setwright.model.tempo import parse_tempo
from setwright.outline.addresses import folder_of, session_path
from setwright.outline.site import Site
from setwright.phone.session_data import data, markup, schema
from setwright.wording.doses import tempo_words
from setwright.wording.language import ENGLISH
from support import make

READ = """async ([root, addresses]) => {
  const logic = await import(root + 'assets/js/logic/steps.js');
  return Promise.all(addresses.map(async address => {
    const read = new DOMParser().parseFromString(await (await fetch(root + address)).text(), 'text/html');
    return logic.sessionFrom(read.querySelector('script#session').textContent);
  }));
}"""


def sets_in_order(block: ResolvedBlock) -> Iterator[tuple[int, int]]:
    """Yield item and round as the sheet has them: one exercise after the other, or round by round."""
    places = range(len(block.items))
    rounds = range(1, max(item.dose.count for item in block.items) + 1)
    if block.kind == "straight":
        yield from ((place, n) for place in places for n in rounds if n <= block.items[place].dose.count)
    else:
        yield from ((place, n) for n in rounds for place in places if n <= block.items[place].dose.count)


def expected(session: ResolvedSession) -> list[tuple[int, int, int, int]]:
    """Return block, item, round and side of every set of a session."""
    return [
        (index, place, n, side)
        for index, block in enumerate(session.blocks)
        for place, n in sets_in_order(block)
        for side in ((1, 2) if block.items[place].dose.side_count == 2 else (0,))
    ]


def test_every_session_of_the_example_is_stepped_through_in_order_and_time(
    phone: Page, address: str, example: Programme
) -> None:
    """Each set once, in order; sets and pauses together last as long as the quick end of the session's blocks.

    That is the quick end of the printed time, but for what may be left out.
    """
    sessions = [session for plan in resolve(example) for session in plan.sessions]
    phone.goto(f"{address}safety/")
    found = phone.evaluate(READ, [address, [folder_of(session_path(session)) for session in sessions]])
    for session, read in zip(sessions, found, strict=True):
        steps = read["steps"]
        sets = [(s["block"], s["item"], s["round"], s["side"]) for s in steps if s["kind"] == "set"]
        pauses = sum(step["seconds"] for step in steps)
        work = sum(set_time(item.dose, one).low_s for item in session.items for one in item.dose.sets)

        assert sets == expected(session)
        whole = [block_time(block.steps, [item.dose for item in block.items]) for block in session.blocks]
        sure = not any(
            block.optional or item.optional or item.instead for block in session.blocks for item in block.items
        )
        assert pauses + work == session_time(whole).low_s
        assert session_time(whole).low_s == session.time.low_s or not sure
        assert steps[-1]["kind"] == "finish"


@pytest.mark.parametrize(
    ("manner", "passed", "phase", "rep", "left"),
    [
        ("lowers first", 0, "Lower", 1, 3),
        ("lowers first", 2.9, "Lower", 1, 1),
        ("lowers first", 3, "Pause", 1, 1),
        ("lowers first", 4, "Lift fast, with control", 1, 1),
        ("lowers first", 5, "Lower", 2, 3),
        ("lowers first", 24, "Lift fast, with control", 5, 1),
        ("lifts first", 0, "Lift fast, with control", 1, 1),
        ("lifts first", 1, "Lower", 1, 3),
        ("lifts first", 4.5, "Pause", 1, 1),
    ],
)
def test_the_beat_follows_the_tempo(
    run: Callable[..., Any], manner: Manner, passed: float, phase: str, rep: int, left: int
) -> None:
    """3-1-X-0: three seconds down, one below, up fast (counted as one), no hold on top; a row begins with the lift."""
    line = """m => {
      const [phases, passed] = given;
      const beat = m.beatAt(phases, passed);
      return [m.nameOf(phases[beat.index]), beat.rep, beat.left];
    }"""
    done = [asdict(one) for one in phases(parse_tempo("3-1-X-0"), manner)]

    assert run("beat", line, [done, passed]) == [phase, rep, left]


def test_nobody_holds_at_the_top_of_a_jump(run: Callable[..., Any]) -> None:
    """1-0-X-2 is a dip, a jump, and two seconds to settle on the ground: in the guide as in words."""
    done = [asdict(one) for one in phases(parse_tempo("1-0-X-2"), "jumps")]

    assert run("beat", "m => m.nameOf(given)", done[-1]) == "Settle"
    assert tempo_words(ENGLISH, parse_tempo("1-0-X-2"), "jumps") == "lower 1 s, lift fast, with control, settle for 2 s"


def test_every_page_of_the_example_carries_its_session(site: Path) -> None:
    """The block of each session's page fits the schema, as read from the built page."""
    pages = sorted(site.glob("plans/*/week-*/*/index.html"))
    check = Draft202012Validator(schema())
    for page in pages:
        block = re.search(r'<script type="application/json" id="session">(.*?)</script>', page.read_text("utf-8"))
        assert block is not None, page
        assert [error.message for error in check.iter_errors(json.loads(block[1]))] == []

    assert len(pages) > 30


def test_the_example_beats_as_its_figures_move(example: Programme) -> None:
    """Rows, heel raises, presses, bridges and deadlifts lift first; squats, lunges and push-ups lower first."""
    site = Site(example, resolve(example))
    first = {}
    for plan in site.plans:
        for session in plan.sessions:
            for block in data(site, plan, session).blocks:
                first |= {item.exercise: item.tempos[0][0].kind for item in block.items if item.tempos}

    lifts = {ident for ident, kind in first.items() if kind in ("lift", "hold")}
    assert {"bent-over-row", "heel-raise", "half-kneeling-press", "single-leg-bridge", "kettlebell-deadlift"} <= lifts
    assert {"box-step-up", "band-row", "one-arm-row"} <= lifts
    assert not {"goblet-squat", "split-squat", "reverse-lunge", "box-step-down", "single-leg-deadlift"} & lifts


def test_a_distance_reaches_the_phone_as_a_number() -> None:
    """1.55 m is 155 cm there, and not a fraction that a browser cannot count with."""
    made = make.one_exercise("{distance: 1.55 m}")
    site = Site(made, resolve(made))
    plan = site.plans[0]
    block = json.loads(markup(data(site, plan, next(plan.sessions))))

    assert block["blocks"][0]["items"][0]["sets"][0] == {"low": 155, "high": 155}


@pytest.mark.parametrize("written", ["1.555 m", "155.5 cm"])
def test_a_distance_between_two_centimetres_is_refused(written: str) -> None:
    """No phone is handed half a centimetre, which it would have to read as a fraction."""
    with pytest.raises(ValidationError, match="is not a whole number of centimetres"):
        make.one_exercise(f"{{distance: {written}}}")


def test_no_text_of_the_coach_ends_the_block() -> None:
    """A name with markup in it stays data: the element that holds the block cannot be closed from inside."""
    made = make.one_exercise("{reps: 8}", lift="name: A lift ~ & more")
    site = Site(made, resolve(made))
    text = markup(data(site, site.plans[0], next(site.plans[0].sessions)))

    assert not set("<>&`~") & set(text)
    assert json.loads(text)["blocks"][0]["items"][0]["name"] == "A lift ~ & more"
