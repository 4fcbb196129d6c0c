"""Load bands: the choice of weight written down for every body weight."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.dose.bands import Limit, LoadBand, load_bands
from setwright.dose.loads import Choice, choose_weight, share_kg
from support import make
from support.amount import examples
from support.strategies import body_weights, limits, percents, racks, spans

Rack = tuple[Fraction, ...]
Span = tuple[Fraction, Fraction]
HAIR = Fraction(1, 10**9)


def direct(percent: Fraction, owned: Rack, limit: Limit, body_weight: Fraction) -> Choice:
    """Choose a weight for one member, without bands."""
    return choose_weight(share_kg(percent, body_weight), owned, limit.at(body_weight))


def holding(bands: tuple[LoadBand, ...], body_weight: Fraction) -> list[Choice]:
    return [band.choice for band in bands if band.holds(body_weight)]


@given(percents, racks(), limits, spans(), st.data())
def test_bands_agree_with_the_direct_choice(
    percent: Fraction, owned: Rack, limit: Limit, span: Span, data: st.DataObject
) -> None:
    """Any member of the range, whole kilograms or not, stands in exactly one band, and it says what a scale would."""
    bands = load_bands(percent, owned, *span, limit)
    member = data.draw(st.fractions(min_value=span[0], max_value=span[1]))

    assert holding(bands, member) == [direct(percent, owned, limit, member)]


@given(percents, racks(), limits, spans())
@settings(max_examples=examples(40))
def test_bands_agree_with_the_direct_choice_at_every_edge(
    percent: Fraction, owned: Rack, limit: Limit, span: Span
) -> None:
    """On each edge, and a hair to either side of it, the bands still say what the direct choice says."""
    bands = load_bands(percent, owned, *span, limit)
    edges = {edge for band in bands for edge in (band.from_kg, band.to_kg)}
    around = {edge + step for edge in edges for step in (-HAIR, 0, HAIR)}
    members = sorted(member for member in around if span[0] <= member <= span[1])

    assert [holding(bands, member) for member in members] == [
        [direct(percent, owned, limit, member)] for member in members
    ]


@given(percents, racks(), limits, spans())
def test_bands_cover_the_range_without_gap_or_overlap(percent: Fraction, owned: Rack, limit: Limit, span: Span) -> None:
    """Bands stand in order, begin and end with the range, and share each edge, which belongs to one of the two."""
    bands = load_bands(percent, owned, *span, limit)
    first, last = bands[0], bands[-1]
    joints = [(a.to_kg == b.from_kg, a.to_included != b.from_included) for a, b in pairwise(bands)]

    assert (first.from_kg, first.from_included) == (span[0], True)
    assert (last.to_kg, last.to_included) == (span[1], True)
    assert joints == [(True, True)] * (len(bands) - 1)
    assert all(band.from_kg <= band.to_kg for band in bands)


@given(percents, racks(), limits, spans())
def test_neighbouring_bands_differ(percent: Fraction, owned: Rack, limit: Limit, span: Span) -> None:
    """No band is longer than it need be: where one ends, the choice changes."""
    bands = load_bands(percent, owned, *span, limit)

    assert all(a.choice != b.choice for a, b in pairwise(bands))


@given(percents, racks(), limits, spans())
def test_every_whole_kilogram_is_printed_once(percent: Fraction, owned: Rack, limit: Limit, span: Span) -> None:
    """The printed list, in whole kilograms, names each of them once and in order."""
    bands = load_bands(percent, owned, *span, limit)
    printed = [kg for band in bands if band.whole_kg for kg in range(band.whole_kg[0], band.whole_kg[1] + 1)]

    assert printed == list(range(int(span[0]), int(span[1]) + 1))


@given(percents, racks(), limits, body_weights)
def test_no_band_goes_above_the_limit(percent: Fraction, owned: Rack, limit: Limit, member: Fraction) -> None:
    """No member is offered more than the physiotherapist allows at that body weight."""
    bands = load_bands(percent, owned, Fraction(25), Fraction(180), limit)
    weight, most = holding(bands, member)[0].weight_kg, limit.at(member)

    assert weight is None or most is None or weight <= most


@given(percents, racks(), limits, body_weights)
def test_no_band_offers_a_clearly_heavier_weight(
    percent: Fraction, owned: Rack, limit: Limit, member: Fraction
) -> None:
    """No member is offered a weight more than a quarter, and more than 1 kg, above the load. A rule of this tool."""
    bands = load_bands(percent, owned, Fraction(25), Fraction(180), limit)
    weight, load = holding(bands, member)[0].weight_kg, share_kg(percent, member)

    assert weight is None or weight <= max(load + 1, load * Fraction(5, 4))


@given(percents, racks(), limits, body_weights, body_weights)
def test_heavier_member_never_takes_a_lighter_weight(
    percent: Fraction, owned: Rack, limit: Limit, one: Fraction, other: Fraction
) -> None:
    """Weighing oneself in whole kilograms, rounded down, is therefore on the safe side."""
    bands = load_bands(percent, owned, Fraction(25), Fraction(180), limit)
    lighter, heavier = (holding(bands, member)[0].weight_kg or 0 for member in sorted((one, other)))

    assert lighter <= heavier


def as_printed(bands: tuple[LoadBand, ...]) -> list[tuple[int, int, int | None, str]]:
    return [
        (*band.whole_kg, None if band.choice.weight_kg is None else int(band.choice.weight_kg), band.choice.fit)
        for band in bands
        if band.whole_kg
    ]


def test_goblet_squat_with_steps_of_four() -> None:
    """15 % with kettlebells of 4 kg steps for 40 to 110 kg, worked by hand: 6, 10 and 14 kg are the ties.

    6 kg is 40 kg of body weight, 6.4 kg (a quarter below 8) 42.67 kg, 10 kg 66.67 kg, 14 kg 93.33 kg.
    """
    kettlebells = tuple(Fraction(kg) for kg in (4, 8, 12, 16))
    bands = load_bands(Fraction(15), kettlebells, Fraction(40), Fraction(110))

    assert as_printed(bands) == [
        (40, 42, 4, "lighter"),
        (43, 66, 8, "near"),
        (67, 93, 12, "near"),
        (94, 110, 16, "near"),
    ]


ALONE = [
    # the one weight of a rack; up to 40 kg of load, the loads at which it begins and ends to be near (by hand)
    (20, [("none-light-enough", 16), ("near", Fraction(80, 3)), ("lighter", 40)]),  # 20 : 1.25 and 20 : 0.75
    (2, [("none-light-enough", 1), ("near", 3), ("lighter", 40)]),  # a kilogram counts where a quarter is less
    (4, [("none-light-enough", 3), ("near", Fraction(16, 3)), ("lighter", 40)]),  # below by 1 kg, above by a quarter
]


@pytest.mark.parametrize(("weight", "stretches"), ALONE)
def test_one_weight_is_near_within_a_quarter_or_a_kilogram(weight: int, stretches: list[tuple[str, Fraction]]) -> None:
    """At 100 % the load is the body weight, so that each edge of a band is an edge of what counts as near."""
    bands = load_bands(Fraction(100), (Fraction(weight),), Fraction(1, 2), Fraction(40))

    assert [(band.choice.fit, band.to_kg) for band in bands] == stretches


def test_a_range_inside_two_weights_turns_half_way() -> None:
    """Of 4 and 8 kg, loads from 5 to 7 kg take 4 kg up to 6 kg, the tie, and 8 kg above, from 6.4 kg on as near."""
    bands = load_bands(Fraction(10), (Fraction(4), Fraction(8)), Fraction(50), Fraction(70))

    assert (bands[0].choice, bands[0].to_kg) == (Choice(Fraction(4), "near"), Fraction(160, 3))
    assert (bands[-1].choice, bands[-1].to_kg) == (Choice(Fraction(8), "near"), 70)
    assert holding(bands, Fraction(64) - HAIR) == [Choice(Fraction(4), "lighter")]
    assert holding(bands, Fraction(64)) == [Choice(Fraction(8), "near")]


def test_a_tie_at_the_lightest_member_holds_for_that_one_alone() -> None:
    """10 % of 140 kg is half way between 12 and 16 kg: the lighter one at 140 kg, the heavier one above."""
    bands = load_bands(Fraction(10), (Fraction(12), Fraction(16)), Fraction(140), Fraction(150))

    assert bands == (
        LoadBand(Fraction(140), Fraction(140), True, True, Choice(Fraction(12), "near")),
        LoadBand(Fraction(140), Fraction(150), False, True, Choice(Fraction(16), "near")),
    )


def test_a_band_between_two_kilograms_prints_none() -> None:
    """A choice that holds between 60.2 and 60.8 kg of body weight alone is on no printed line."""
    narrow, whole = (
        LoadBand(Fraction(first), Fraction(last), True, True, Choice(None, "over-limit"))
        for first, last in (("60.2", "60.8"), ("60.2", "61"))
    )

    assert (narrow.whole_kg, whole.whole_kg) == (None, (61, 61))


def test_limit_as_a_share_holds_the_lighter_weight_longer() -> None:
    """At 15 % with a limit of 16 %, 8 kg is allowed from 50 kg, 12 kg from 75 kg and 16 kg from 100 kg on."""
    kettlebells = tuple(Fraction(kg) for kg in (4, 8, 12, 16))
    bands = load_bands(Fraction(15), kettlebells, Fraction(40), Fraction(110), Limit(percent=Fraction(16)))

    assert [band.from_kg for band in bands if band.from_included][:3] == [40, Fraction(128, 3), 50]
    assert as_printed(bands) == [
        (40, 42, 4, "lighter"),
        (43, 49, 4, "limit"),
        (50, 66, 8, "near"),
        (67, 74, 8, "limit"),
        (75, 93, 12, "near"),
        (94, 99, 12, "limit"),
        (100, 110, 16, "near"),
    ]


def test_bands_of_a_share_of_1rm_run_over_1rm() -> None:
    """At 80 % of 1RM, kettlebells of 4 to 24 kg serve a 1RM of 5 to 30 kg; a limit in kg holds there too."""
    free, limited = (
        make.in_week(make.one_exercise("{reps: 8, load: 80 % 1RM}", lift=lift), 1).takes[0].shown
        for lift in ("", "limits: {load: 12 kg}")
    )

    assert (free[0].from_kg, free[-1].to_kg) == (5, 30)
    assert [band.choice.weight_kg for band in free] == [4, 6, 8, 10, 12, 16, 20, 24]
    assert [band.choice.weight_kg for band in limited] == [4, 6, 8, 10, 12, 12]
