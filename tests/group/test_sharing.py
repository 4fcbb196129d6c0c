"""Kit that goes round a group: nobody holds two things, nothing is held twice, and waits are those worked by hand."""

from collections import Counter
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.timing import TimeRange
from setwright.group.kit import Need, body_weights_kg
from setwright.group.orders import block_shared, counted, session_shared, turned
from setwright.group.sharing import Done, Turn, share
from setwright.looking import look
from setwright.model.programme import Programme
from setwright.outline.coaching import hour_of
from setwright.outline.training import warm_up_minutes, whole_time
from setwright.wording.language import ENGLISH
from setwright.wording.sharing import how_to_share, in_a_sentence
from setwright.wording.speaking import on_the_clock, one_sentence
from support.site import ROOT

BOX, BELL, MAT = ("box", Fraction(20)), ("kettlebell", Fraction(12)), ("mat", None)
OWNED = {BOX: 2, BELL: 1, MAT: 3}


@st.composite
def groups(draw: st.DrawFn) -> list[tuple[Turn, ...]]:
    """Return up to seven members with rounds of up to four exercises, each with some of three things."""
    items = draw(st.integers(1, 4))
    needs = [
        tuple(Need((thing,)) for thing in draw(st.sets(st.sampled_from([BOX, BELL, MAT]), max_size=2)))
        for _ in range(items)
    ]
    work = [draw(st.integers(1, 90)) for _ in range(items)]
    pause = [draw(st.integers(0, 90)) for _ in range(items)]
    rounds = draw(st.integers(1, 4))
    once = tuple(
        Turn(item, number, work[item], pause[item], needs[item])
        for number in range(1, rounds + 1)
        for item in range(items)
    )
    people = draw(st.integers(1, 7))
    return [turned(once, draw(st.integers(0, items - 1))) for _ in range(people)]


def of_each(done: tuple[Done, ...]) -> dict[int, list[Done]]:
    found: dict[int, list[Done]] = {}
    for one in done:
        found.setdefault(one.person, []).append(one)
    return found


@given(groups())
def test_everybody_does_every_set_in_order(group: list[tuple[Turn, ...]]) -> None:
    done = of_each(share(group, OWNED))
    assert [[one.turn for one in done[person]] for person in range(len(group))] == [list(own) for own in group]


@given(groups())
def test_nobody_does_two_sets_at_once_and_no_rest_is_shorter_than_written(group: list[tuple[Turn, ...]]) -> None:
    for own in of_each(share(group, OWNED)).values():
        for one, after in pairwise(own):
            assert after.begins_s >= one.ends_s + one.turn.pause_s


@given(groups())
def test_nobody_waits_less_than_no_time(group: list[tuple[Turn, ...]]) -> None:
    assert all(one.waits_s >= 0 for one in share(group, OWNED))


@given(groups())
def test_nothing_is_held_by_more_than_there_are(group: list[tuple[Turn, ...]]) -> None:
    done = share(group, OWNED)
    for moment in {one.begins_s for one in done}:
        held = Counter[object]()
        for one in done:
            if one.begins_s <= moment < one.ends_s:
                held.update(dict(one.held))
        assert all(count <= OWNED[thing] for thing, count in held.items())


@given(groups())
def test_who_begins_elsewhere_does_the_same_sets_and_each_exercise_from_its_first(
    group: list[tuple[Turn, ...]],
) -> None:
    for own in group:
        numbers: dict[int, list[int]] = {}
        for turn in own:
            numbers.setdefault(turn.item, []).append(turn.number)
        assert all(found == sorted(found) == list(range(1, len(found) + 1)) for found in numbers.values())
        items = [turn.item for turn in own]
        assert all(after == (before + 1) % (max(items) + 1) for before, after in pairwise(items))


THREE_ROUNDS = (
    Turn(0, 1, 40, 0, (Need((BOX,)),)),
    Turn(1, 1, 40, 40),
    Turn(0, 2, 40, 0, (Need((BOX,)),)),
    Turn(1, 2, 40, 40),
    Turn(0, 3, 40, 0, (Need((BOX,)),)),
    Turn(1, 3, 40, 0),
)


def test_six_people_with_two_boxes_for_three_rounds_all_together() -> None:
    """Worked by hand: 40 s on the box, 40 s of push-ups, 40 s of rest, so that a round takes 120 s.

    The first two take the boxes at 0, the next two at 40, the last two at 80: they waited 40 and 80 s. From then on
    two come back every 40 s, just as two boxes are free, and nobody waits again. The last pair is done after
    80 + 120 + 120 + 80 = 400 s, where one alone needs 320 s.
    """
    done = share([THREE_ROUNDS] * 6, OWNED)
    first = {one.person: one.waits_s for one in done if (one.turn.item, one.turn.number) == (0, 1)}
    assert first == {0: 0, 1: 0, 2: 40, 3: 40, 4: 80, 5: 80}
    assert all(one.waits_s == 0 for one in done if (one.turn.item, one.turn.number) != (0, 1))
    assert max(one.ends_s for one in done) == 400
    assert max(one.ends_s for one in share([THREE_ROUNDS], OWNED)) == 320


def test_six_people_with_two_boxes_for_three_rounds_in_halves() -> None:
    """By hand again: three begin with push-ups and rest 40 s after them, as after a round.

    At 0 two of the first half take the boxes and the third waits 40 s; at 80 that box and the other one are free, the
    second half comes, and one of three waits 40 s; at 120 two more come for one box that is left. So the longest wait
    is 40 s in place of 80.
    """
    second = turned(THREE_ROUNDS, 1)
    assert [(turn.item, turn.number) for turn in second] == [(1, 1), (0, 1), (1, 2), (0, 2), (1, 3), (0, 3)]
    done = share([THREE_ROUNDS, second] * 3, OWNED)
    assert next(one.waits_s for one in done if one.person == 4) == 40
    assert max(one.waits_s for one in done) == 40


def test_a_group_of_unknown_weight_lies_evenly_over_the_clubs_range(programme: Programme) -> None:
    """Ten people between 40 and 110 kg are 7 kg apart, the lightest half a step above the end: 43.5 kg."""
    weights = body_weights_kg(programme.club, 10)
    assert weights[0] == Fraction(87, 2)
    assert weights[-1] == Fraction(213, 2)
    assert {after - before for before, after in pairwise(weights)} == {Fraction(7)}


@pytest.fixture(scope="module")
def programme() -> Programme:
    found = look(ROOT / "program").programme
    assert found is not None
    return found


def test_one_alone_never_waits_and_never_needs_more_than_there_is(programme: Programme) -> None:
    club = programme.club
    for plan in look(ROOT / "program").plans:
        for session in plan.weeks[0].sessions:
            shared = session_shared(programme, session, 1)
            assert {(one.longest_wait_s, one.order, one.home) for one in shared} == {(0, "together", 0)}
            out = counted(programme, session, session_shared(programme, session, club.people or 1))
            assert all(count <= sum(club.owned(kit, one) for one in club.each(kit)) for kit, count in out.items())


def test_what_is_proposed_is_never_worse_than_all_together(programme: Programme) -> None:
    said = set()
    for plan in look(ROOT / "program").plans:
        for session in plan.weeks[1].sessions:
            for block in session.blocks:
                shared = block_shared(programme, session, block, 14)
                assert shared.longest_wait_s <= shared.together_s
                assert bool(in_a_sentence(ENGLISH, programme.club, shared)) == (shared.together_s > 60)
                said.add(how_to_share(ENGLISH, shared).partition(",")[0])
    assert {"halves in turn", "stations"} <= said


def test_parts_of_the_hour_add_up_to_the_sessions_time() -> None:
    looked = look(ROOT / "program")
    assert looked.programme is not None
    for plan in looked.plans:
        for session in plan.sessions:
            written, routines = looked.programme.sessions[session.session], looked.programme.routines
            hour = hour_of(session, warm_up_minutes(written, routines))
            assert hour.cool_down == whole_time(session, written, routines)
            begins = [*hour.blocks, hour.cool_down]
            assert all(one.low_s < after.low_s and one.high_s < after.high_s for one, after in pairwise(begins))


def test_a_sheet_says_the_first_sentence_and_the_clock() -> None:
    assert one_sentence("Strong legs. And more.") == "Strong legs."
    assert one_sentence("No end") == "No end"
    assert on_the_clock(ENGLISH, 18 * 3600 + 30 * 60, TimeRange(600, 900)) == "18:40 to 18:45"
    assert on_the_clock(ENGLISH, 23 * 3600 + 55 * 60, TimeRange(600, 600)) == "0:05"
