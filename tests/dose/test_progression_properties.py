"""What holds for every progression that the language allows."""

from fractions import Fraction
from itertools import pairwise
from math import ceil

from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.progression import amounts_at, double_at, loads_at, value_at
from setwright.model.load import Load, Weight, magnitude
from setwright.model.progress import Climb, LoadClimb
from setwright.model.span import Span
from support.strategies import count_climbs, count_descents, counts, load_climbs, quarters

Counted = tuple[int, Climb[int, int]]
Loaded = tuple[Load, LoadClimb]
weeks = st.integers(0, 104)


@given(count_climbs(), weeks)
def test_climb_stays_between_its_start_and_its_end(counted: Counted, trained: int) -> None:
    """No count ever leaves its 'up_to'."""
    start, climb = counted

    assert start <= value_at(start, climb, trained) <= climb.up_to


@given(count_descents(), weeks)
def test_descent_stays_between_its_start_and_its_end(counted: Counted, trained: int) -> None:
    """No count ever leaves its 'down_to'."""
    start, climb = counted

    assert climb.down_to <= value_at(start, climb, trained) <= start


@given(count_climbs(), weeks)
def test_climb_steps_by_its_step(counted: Counted, trained: int) -> None:
    """From one trained week to the next a count grows by its whole step, by what is left to the end, or not at all."""
    start, climb = counted
    before, now = value_at(start, climb, trained), value_at(start, climb, trained + 1)

    assert now - before in {0, climb.add, climb.up_to - before}


@given(count_climbs())
def test_climb_reaches_its_end(counted: Counted) -> None:
    """After as many steps as fit, the end is reached and kept."""
    start, climb = counted
    enough = climb.every * ceil(Fraction(climb.up_to - start, climb.add))

    assert {value_at(start, climb, enough + later) for later in range(5)} == {climb.up_to}


@given(load_climbs(), weeks)
def test_load_climb_stays_between_its_start_and_its_end(loaded: Loaded, trained: int) -> None:
    """No load ever leaves its 'up_to'."""
    start, climb = loaded

    assert magnitude(start) <= magnitude(loads_at((start,), climb, trained)[0]) <= magnitude(climb.up_to)


@given(st.lists(st.integers(1, 30), min_size=1, max_size=12), weeks)
def test_listed_weeks_are_what_is_listed(listed: list[int], trained: int) -> None:
    """A list gives its own entries in order, and its last one for ever."""
    climb = Climb[int, int](weeks=listed)

    assert value_at(listed[0], climb, trained) == [*listed, *[listed[-1]] * 105][trained]


@given(st.lists(st.integers(1, 30), min_size=2, max_size=12), weeks)
def test_a_wave_starts_over(listed: list[int], trained: int) -> None:
    """A list that starts again gives its own entries in order, over and over."""
    climb = Climb[int, int](weeks=listed, again=True)

    assert value_at(listed[0], climb, trained) == listed[trained % len(listed)]


ranges = st.tuples(counts, st.integers(0, 10)).map(lambda pair: Span(pair[0], pair[0] + pair[1]))


@given(st.lists(ranges, min_size=1, max_size=6), st.integers(1, 9), st.integers(0, 30), weeks)
def test_every_set_of_a_list_climbs_alike(listed: list[Span], step: int, room: int, trained: int) -> None:
    """A step is taken in each set, at both ends of a range, and the largest amount stops at 'up_to'."""
    start, end = tuple(listed), max(one.high for one in listed) + room
    now = amounts_at(start, Climb[int, int](add=step, up_to=end), trained)

    assert {(after.low - before.low, after.high - before.high) for before, after in zip(start, now, strict=True)} == {
        (min(step * trained, room),) * 2
    }


@given(st.lists(quarters(0.5, 60), min_size=1, max_size=6), quarters(0.25, 10), quarters(0, 30), weeks)
def test_every_load_of_a_list_climbs_alike(
    numbers: list[Fraction], step: Fraction, room: Fraction, trained: int
) -> None:
    """A step is taken in the load of each set, and the heaviest stops at 'up_to'."""
    climb = LoadClimb(add=Weight(step), up_to=Weight(max(numbers) + room))
    now = loads_at(tuple(map(Weight, numbers)), climb, trained)

    assert [magnitude(load) for load in now] == [number + min(step * trained, room) for number in numbers]


def course(counted: Counted, loaded: Loaded, length: int) -> list[tuple[int, Fraction]]:
    """Follow a double progression over many trained weeks."""
    start, climb = counted
    doses = (double_at((Span.of(start),), climb, (loaded[0],), loaded[1], trained) for trained in range(length))
    return [(amounts[0].high, magnitude(loads[0])) for amounts, loads in doses]


@given(count_climbs(), load_climbs())
def test_double_progression_keeps_both_ends(counted: Counted, loaded: Loaded) -> None:
    """Counts stay between start and 'up_to', loads never fall and never leave theirs."""
    (start, climb), (load, then) = counted, loaded
    counts, loads = zip(*course(counted, loaded, 120), strict=True)

    assert start <= min(counts) <= max(counts) <= climb.up_to
    assert list(loads) == sorted(loads)
    assert magnitude(load) <= loads[-1] <= magnitude(then.up_to)


@given(count_climbs(), load_climbs())
def test_double_progression_raises_the_load_only_after_the_count_was_full(counted: Counted, loaded: Loaded) -> None:
    """In the week before the load rises, the count was at its end, and it starts again with the heavier load."""
    start, climb = counted
    rises = [(before, now) for before, now in pairwise(course(counted, loaded, 120)) if now[1] > before[1]]

    assert [(before[0], now[0]) for before, now in rises] == [(climb.up_to, start)] * len(rises)


@given(count_climbs(), load_climbs())
def test_double_progression_settles(counted: Counted, loaded: Loaded) -> None:
    """Once both ends are reached, nothing moves any more."""
    (start, climb), (load, then) = counted, loaded
    weeks_a_round = climb.every * (ceil(Fraction(climb.up_to - start, climb.add)) + 1)
    rounds = ceil((magnitude(then.up_to) - magnitude(load)) / magnitude(then.add)) + 1
    settled = {
        double_at((Span.of(start),), climb, (load,), then, weeks_a_round * rounds + later)
        for later in range(2 * weeks_a_round)
    }

    assert settled == {((Span.of(climb.up_to),), (then.up_to,))}
