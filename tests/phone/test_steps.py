"""The guided session keeps the sheet's order and its time."""

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Page

from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedBlock, ResolvedSession
from setwright.dose.sequence import BETWEEN_BLOCKS_S
from setwright.dose.timing import set_time
from setwright.model.programme import Programme
from setwright.outline.addresses import folder_of, session_path

READ = """async ([root, addresses]) => {
  const page = await import(root + 'assets/js/elements/session-page.js');
  const logic = await import(root + 'assets/js/logic/steps.js');
  return Promise.all(addresses.map(async address => {
    const read = new DOMParser().parseFromString(await (await fetch(root + address)).text(), 'text/html');
    const between = Number(read.querySelector('sw-guide').dataset.between);
    return logic.stepsOf(page.blocksOf(read), {between, warmUp: false, coolDown: false});
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
    """Each set once, in order; sets and pauses together last as long as the quick end of the session's printed time."""
    sessions = [session for plan in resolve(example) for session in plan.sessions]
    phone.goto(f"{address}safety/")
    found = phone.evaluate(READ, [address, [folder_of(session_path(session)) for session in sessions]])
    for session, steps in zip(sessions, found, strict=True):
        sets = [(s["block"], s["item"], s["round"], s["side"]) for s in steps if s["kind"] == "set"]
        pauses = sum(step["seconds"] for step in steps)
        work = sum(set_time(item.dose, item.dose.first).low_s * item.dose.count for item in session.items)

        assert sets == expected(session)
        assert pauses + work == session.time.low_s


def test_from_block_to_block_the_page_says_how_long(phone: Page, address: str) -> None:
    """The time between blocks comes from the page, as every other number does."""
    phone.goto(f"{address}plans/relay/week-07/friday/")

    assert phone.locator("sw-guide").get_attribute("data-between") == str(BETWEEN_BLOCKS_S)


@pytest.mark.parametrize(
    ("passed", "phase", "rep", "left"),
    [
        (0, "Lower", 1, 3),
        (2.9, "Lower", 1, 1),
        (3, "Pause", 1, 1),
        (4, "Lift fast", 1, 1),
        (5, "Lower", 2, 3),
        (24, "Lift fast", 5, 1),
    ],
)
def test_the_beat_follows_the_tempo(run: Callable[..., Any], passed: float, phase: str, rep: int, left: int) -> None:
    """3-1-X-0: three seconds down, one below, up fast (counted as one), no pause on top: five seconds a repetition."""
    line = """m => {
      const phases = m.phasesOf('3 1 1! 0');
      const beat = m.beatAt(phases, given);
      return [phases[beat.index].name, beat.rep, beat.left];
    }"""

    assert run("beat", line, passed) == [phase, rep, left]
