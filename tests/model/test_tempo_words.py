"""Tempos as a coach writes them.

Four numbers, the seconds of lowering, pause, lifting, pause, with ``X`` for a lift as fast as possible: Wilk M,
Zajac A, Tufano JJ, Sports Med 2021;51:1629-1650.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from setwright.model.tempo import FAST_LIFT_S, Tempo, parse_tempo

TEMPOS = [
    ("3-0-1-0", Tempo(3, 0, 1, 0), 4),
    ("2-0-X-0", Tempo(2, 0, None, 0), 2 + FAST_LIFT_S),  # that X counts a second is a house rule, no source
    ("0-0-0-1", Tempo(0, 0, 0, 1), 1),
    ("10-2-10-2", Tempo(10, 2, 10, 2), 24),
]
FOUR = "write four numbers with hyphens: lowering-pause-lifting-pause, such as 3-0-1-0"


@pytest.mark.parametrize(("written", "tempo", "rep_s"), TEMPOS)
def test_a_tempo_is_read_and_written_alike(written: str, tempo: Tempo, rep_s: int) -> None:
    """The order is lowering, pause, lifting, pause; a repetition lasts the sum of the four."""
    assert tempo == parse_tempo(written)
    assert written == str(tempo)
    assert rep_s == tempo.rep_s


@pytest.mark.parametrize(
    ("written", "hint"),
    [
        ("3-1", FOUR),
        ("3010", FOUR),
        ("3/0/1/0", FOUR),
        ("3-0-1-0-0", FOUR),
        ("X-0-1-0", FOUR),
        ("3-0-1.5-0", FOUR),
        ("100-0-1-0", FOUR),
        ("٣-0-1-0", FOUR),
        ("0-0-0-0", FOUR),
        ("2-0-x-0", "write a capital X: 2-0-X-0"),
        (["3-0-1-0"], FOUR),
    ],
)
def test_what_is_no_tempo_is_refused_with_the_likely_fix(written: object, hint: str) -> None:
    """Notations of other houses are refused and not guessed at: their order may differ."""
    with pytest.raises(PydanticCustomError) as refused:
        parse_tempo(written)

    assert refused.value.context is not None
    assert hint == refused.value.context["hint"]


@given(st.tuples(*[st.integers(0, 99)] * 4).filter(any))
def test_any_four_numbers_are_a_tempo(numbers: tuple[int, int, int, int]) -> None:
    """All tempos of up to 99 seconds a phase come back as they were written."""
    written = "-".join(map(str, numbers))

    assert written == str(parse_tempo(written))
    assert sum(numbers) == parse_tempo(written).rep_s
