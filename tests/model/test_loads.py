"""Loads in all the ways in which a coach prescribes them."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from setwright.dose.week_kind import share_of_load
from setwright.model.load import (
    Band,
    BodyWeightShare,
    Effort,
    Load,
    OneRepMaxShare,
    Reserve,
    Weight,
    magnitude,
    parse_load,
)
from setwright.wording import loads as words
from setwright.wording.language import ENGLISH
from support.strategies import loads

# The pound: international yard and pound agreement (1959). The scale of effort from 0 to 10 with halves: Zourdos MC et
# al., J Strength Cond Res 2016;30:267-275 (from memory), whose scale ties effort to repetitions left in reserve.
LOADS: list[tuple[str, Load, str]] = [
    ("15 % bodyweight", BodyWeightShare(Fraction(15)), "15 % of body weight"),
    ("15% body weight", BodyWeightShare(Fraction(15)), "15 % of body weight"),
    ("2.5 % bodyweight per hand", BodyWeightShare(Fraction(5, 2), per_hand=True), "2.5 % of body weight in each hand"),
    ("70 % 1RM", OneRepMaxShare(Fraction(70)), "70 % of 1RM"),
    ("12 kg", Weight(Fraction(12)), "12 kg"),
    ("12 kg per hand", Weight(Fraction(12), per_hand=True), "12 kg in each hand"),
    ("25 lb", Weight(Fraction("11.33980925"), unit="lb"), "25 lb"),
    ("25 lb per hand", Weight(Fraction("11.33980925"), per_hand=True, unit="lb"), "25 lb in each hand"),
    ("RPE 7", Effort(Fraction(7)), "effort 7 of 10"),
    ("RPE 7.5", Effort(Fraction(15, 2)), "effort 7.5 of 10"),
    ("RPE 10", Effort(Fraction(10)), "effort 10 of 10"),
    ("1 rep in reserve", Reserve(1), "1 rep in reserve"),
    ("3 reps in reserve", Reserve(3), "3 reps in reserve"),
    ("light band", Band("light"), "light band"),
    ("extra light band", Band("extra light"), "extra light band"),
]


@pytest.mark.parametrize(("written", "load", "said"), LOADS)
def test_each_way_of_writing_a_load_is_read_and_said(written: str, load: Load, said: str) -> None:
    """What the coach writes is read as that kind of load, and pages say it in words."""
    assert load == parse_load(written)
    assert said == words.load(ENGLISH, load)


@pytest.mark.parametrize("load", [load for _, load, _ in LOADS], ids=str)
def test_the_written_form_of_a_load_is_read_as_that_load(load: Load) -> None:
    """A load's text is the coach's own form, so that files may keep it and read it again."""
    assert parse_load(str(load)) == load


@given(
    loads.filter(lambda load: load is not None), st.fractions(10, 100, max_denominator=16).map(lambda n: round(n, 4))
)
def test_what_a_lighter_week_leaves_is_written_exactly(load: Load, percent: Fraction) -> None:
    """However odd the share, the written form says the load to its last digit."""
    left = share_of_load(load, percent)
    assert left is not None

    assert parse_load(str(left)) == left


QUESTIONS = [
    # the load, what its number is a share of, whether it is a weight at all, and whether it is in each hand
    ("15 % bodyweight", "body weight", True, False),
    ("5 % bodyweight per hand", "body weight", True, True),
    ("70 % 1RM", "1RM", True, False),
    ("12 kg per hand", None, True, True),
    ("RPE 7", None, False, False),
    ("2 reps in reserve", None, False, False),
    ("light band", None, False, False),
]


@pytest.mark.parametrize(("written", "of", "weighed", "per_hand"), QUESTIONS)
def test_a_load_knows_its_own_questions(written: str, of: str | None, weighed: bool, per_hand: bool) -> None:
    """Nobody has to ask which kind of load it is to know these."""
    load = parse_load(written)

    assert (load.of, load.weighed, load.per_hand) == (of, weighed, per_hand)


EVERY_WAY = (
    "write '15 % bodyweight', '5 % bodyweight per hand', '70 % 1RM', '12 kg', '12 kg per hand', 'RPE 7', "
    "'3 reps in reserve', 'medium band', '15 kg of help' or 'bodyweight + 5 kg'"
)
REFUSED = [
    ("12", "12 of what? write '12 kg' or '12 % bodyweight'"),
    ("15 %", "write '15 % bodyweight' or '15 % 1RM'"),
    ("15 % per hand", "write '15 % bodyweight' or '15 % 1RM'"),
    ("70 % 1RM per hand", "write '70 % 1RM'"),
    ("0 % bodyweight", "write more than 0 %"),
    ("201 % bodyweight", "check the number"),
    ("2,5 kg", "write a point, not a comma: '2.5 kg'"),
    ("0 kg", "write more than 0 kg"),
    ("RPE 10.5", "write 'RPE 7' or 'RPE 7.5'"),
    ("RPE 7.3", "write 'RPE 7' or 'RPE 7.5'"),
    ("heavy", EVERY_WAY),
    ("12 kg each hand", EVERY_WAY),
    ("7 RPE", EVERY_WAY),
    ("band", EVERY_WAY),
    ("", EVERY_WAY),
    ([], EVERY_WAY),
]


@pytest.mark.parametrize(("written", "hint"), REFUSED)
def test_what_is_no_load_is_refused_with_the_likely_fix(written: object, hint: str) -> None:
    """A load that leaves open what it is of, or that no one can lift, is refused."""
    with pytest.raises(PydanticCustomError) as refused:
        parse_load(written)

    assert refused.value.context is not None
    assert hint == refused.value.context["hint"]


@given(tenths=st.integers(1, 2000), per_hand=st.booleans())
def test_shares_of_body_weight_are_exact(tenths: int, per_hand: bool) -> None:
    """A share to a tenth of a percent is kept as a fraction, so that sums and ties come out exactly."""
    written = f"{tenths / 10} % bodyweight{' per hand' if per_hand else ''}"

    assert BodyWeightShare(Fraction(tenths, 10), per_hand) == parse_load(written)
    assert Fraction(tenths, 10) == magnitude(parse_load(written))
