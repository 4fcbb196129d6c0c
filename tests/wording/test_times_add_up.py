"""The times that are printed add up: whoever takes blocks, changes and warm-up together gets the session's time.

Arithmetic on what members read, no source.
"""

import html
import re

import pytest

from setwright.dose.resolve import resolve
from setwright.dose.timing import TimeRange, in_minutes
from setwright.handouts.session import session_data
from setwright.handouts.writing import Desk
from setwright.model.programme import Programme
from setwright.outline.addresses import session_path
from setwright.outline.site import Site
from setwright.pages import tree
from support import make

Minutes = tuple[int, int]


def minutes(said: str) -> Minutes:
    """Return a printed range: 28 to 35 min, or 30 min."""
    found = re.fullmatch(r"(\d+)(?: to (\d+))? min", said)
    assert found, said
    return int(found[1]), int(found[2] or found[1])


def total(parts: list[Minutes]) -> Minutes:
    return sum(low for low, _ in parts), sum(high for _, high in parts)


def parts_of(said: str) -> list[Minutes]:
    """Return the ranges of a line such as: 10 min of warm-up, 39 to 48 min of blocks, 6 to 7 min between blocks."""
    return [minutes(part) for part in re.findall(r"(\d+(?: to \d+)? min) (?:of|between)", said)]


def test_a_pages_blocks_changes_and_warm_up_are_its_session(example: Programme) -> None:
    """On each session's page: the time at each block, the changes between them and the warm-up make the whole."""
    plans = tuple(resolve(example))
    pages = tree.render(example, plans)
    sessions = [session for plan in plans for session in plan.sessions]

    assert len(sessions) == 47
    for session in sessions:
        page = html.unescape(pages[session_path(session)].decode())
        blocks = [minutes(said) for said in re.findall(r'</span> <span class="sw-muted">([^<]* min)</span></p>', page)]
        whole = re.search(r"<dt>Time</dt><dd>([^<]+) <span[^>]*>([^<]+)</span>", page)
        assert whole
        warm_up, in_blocks, between = parts_of(whole[2])

        assert len(blocks) == len(session.blocks)
        assert total(blocks) == in_blocks
        assert total([warm_up, in_blocks, between]) == minutes(whole[1])
        assert page.count("1 min 30 s to the next block") == len(blocks) - 1


def test_a_sheets_times_are_those_of_its_page(example: Programme) -> None:
    """On paper the same: the time of each block's line, and the line that says what the whole is made of."""
    desk = Desk(Site(example, tuple(resolve(example))))
    for plan in desk.site.plans:
        for session in plan.sessions:
            data = session_data(desk, plan, session)
            whole, _, made_of = data["facts"][0][1].partition(": ")
            warm_up, in_blocks, between = parts_of(made_of)

            assert total([minutes(block["time"]) for block in data["blocks"]]) == in_blocks
            assert total([warm_up, in_blocks, between]) == minutes(whole)


def test_a_session_of_one_block_has_no_change_and_perhaps_no_warm_up() -> None:
    """Then the whole is the block."""
    made = make.programme()
    plans = tuple(resolve(made))
    session = next(plans[0].sessions)
    data = session_data(Desk(Site(made, plans)), plans[0], session)
    whole, _, made_of = data["facts"][0][1].partition(": ")

    assert len(session.blocks) == 1
    assert "between" not in made_of
    assert total(parts_of(made_of)) == minutes(whole)


@pytest.mark.parametrize(
    ("low_s", "high_s", "printed"),
    [(10, 20, (60, 60)), (0, 200, (0, 180)), (89, 90, (60, 120)), (150, 209, (180, 180)), (600, 600, (600, 600))],
)
def test_a_part_is_printed_to_the_nearest_minute(low_s: int, high_s: int, printed: Minutes) -> None:
    """Half a minute goes up, and a short block is a minute, not none, unless it may be left out."""
    assert in_minutes(TimeRange(low_s, high_s)) == TimeRange(*printed)
