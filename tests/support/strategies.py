"""Strategies: the things that a coach, a club and a member may bring, at random."""

from collections.abc import Callable
from fractions import Fraction

from hypothesis import strategies as st

from setwright.dose.bands import Limit
from setwright.dose.dose import Dose, Set
from setwright.dose.week_kind import Remains
from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight
from setwright.model.progress import Climb, LoadClimb
from setwright.model.span import Span
from setwright.model.tempo import Tempo


def quarters(least: float, most: float) -> st.SearchStrategy[Fraction]:
    """Exact quarters, such as the masses of discs and the percentages that coaches write."""
    return st.integers(round(least * 4), round(most * 4)).map(lambda n: Fraction(n, 4))


def racks() -> st.SearchStrategy[tuple[Fraction, ...]]:
    """Owned weights, lightest first: any at all, or a few light ones, for which the kilogram of the rule matters."""
    any_at_all = st.sets(quarters(0.5, 50), min_size=1, max_size=12)
    a_few_light = st.sets(quarters(0.5, 5), min_size=1, max_size=3)
    return st.one_of(any_at_all, a_few_light).map(lambda found: tuple(sorted(found)))


body_weights = st.fractions(min_value=25, max_value=180, max_denominator=1000)
"""Any body weight, not only whole kilograms."""

percents = st.one_of(quarters(0.25, 120), quarters(0.25, 10))


@st.composite
def spans(draw: st.DrawFn) -> tuple[Fraction, Fraction]:
    """A range of body weights, lightest and heaviest."""
    lightest = draw(st.integers(25, 90))
    return Fraction(lightest), Fraction(draw(st.integers(lightest + 1, 180)))


limits = st.one_of(
    st.just(Limit()),
    st.builds(Limit, percent=quarters(0.25, 120)),
    st.builds(Limit, kg=quarters(0.5, 60)),
)

weights = st.builds(Weight, kg=quarters(0.5, 100), per_hand=st.booleans())

loads: st.SearchStrategy[Load | None] = st.one_of(
    st.none(),
    st.builds(BodyWeightShare, percent=percents, per_hand=st.booleans()),
    st.builds(OneRepMaxShare, percent=percents),
    weights,
    st.builds(Effort, rpe=st.integers(0, 20).map(lambda n: Fraction(n, 2))),
    st.builds(Reserve, reps=st.integers(0, 10)),
    st.builds(Band, name=st.sampled_from(["light", "medium", "heavy"])),
)

tempos = st.builds(
    Tempo,
    lowering_s=st.integers(1, 6),
    pause_low_s=st.integers(0, 3),
    lifting_s=st.one_of(st.none(), st.integers(0, 4)),
    pause_high_s=st.integers(0, 3),
)

amounts = st.tuples(st.integers(1, 60), st.integers(0, 60)).map(lambda two: Span(two[0], two[0] + two[1]))


@st.composite
def _doses(draw: st.DrawFn) -> Dose:
    """A dose of equal sets, or of sets that differ in amount, load and tempo; the rest is one for all of them."""
    rest_s = draw(st.integers(0, 300))
    each = st.builds(Set, amount=amounts, load=loads, tempo=st.one_of(st.none(), tempos), rest_s=st.just(rest_s))
    alike = st.tuples(st.integers(1, 8), each).map(lambda two: (two[1],) * two[0])
    sets = draw(st.one_of(alike, st.lists(each, min_size=1, max_size=6).map(tuple)))
    measure = draw(st.sampled_from(["reps", "hold", "work", "distance"]))
    return Dose(measure, draw(st.sampled_from(["both together", "one at a time", "alternating"])), sets)


doses = _doses()

shares = st.fractions(min_value=Fraction(1, 4), max_value=100, max_denominator=4)
"""A percentage that remains, up to all of it."""

remains = st.builds(Remains, kind=st.just("lighter"), sets=shares, reps=shares, load=shares)

counts = st.integers(1, 40)


@st.composite
def count_climbs(draw: st.DrawFn) -> tuple[int, Climb[int, int]]:
    """A first count and how it grows, each on its course as the language demands."""
    start = draw(counts)
    end = draw(st.integers(start, start + 30))
    every = f"{draw(st.integers(1, 4))} weeks"
    return start, Climb[int, int](add=draw(st.integers(1, 9)), every=every, up_to=end)


@st.composite
def count_descents(draw: st.DrawFn) -> tuple[int, Climb[int, int]]:
    """A first count and how it falls, as rest does."""
    start = draw(counts)
    end = draw(st.integers(1, start))
    every = f"{draw(st.integers(1, 4))} weeks"
    return start, Climb[int, int](take=draw(st.integers(1, 9)), every=every, down_to=end)


@st.composite
def load_climbs(draw: st.DrawFn, each: Callable[[Fraction], Load] = Weight) -> tuple[Load, LoadClimb]:
    """A first load and how it grows."""
    start = draw(quarters(0.5, 60))
    end = start + draw(quarters(0, 30))
    return each(start), LoadClimb(add=each(draw(quarters(0.25, 10))), up_to=each(end))
