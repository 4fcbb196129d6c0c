"""What coaches write out of habit for amounts, loads and efforts: the hint says how the same is written here."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest
from pydantic_core import PydanticCustomError

from setwright.model.amounts import parse_distances_cm, parse_loads, parse_reps, parse_times_s
from setwright.model.load import Effort, Reserve, parse_effort


def hint_for(parse: Callable[[Any], Any], written: Any) -> str:
    """Return the hint with which a value is refused."""
    with pytest.raises(PydanticCustomError) as refused:
        parse(written)
    assert refused.value.context is not None
    return str(refused.value.context["hint"])


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("8-12", "8 to 12"),
        ("8 – 12", "8 to 12"),
        ("8to12", "8 to 12"),
        ("8-to-12", "8 to 12"),
        ("8 To 12", "8 to 12"),
        ("8..12", "8 to 12"),
        ("8 or 12", "8 to 12"),
        ("8 to 12 reps", "8 to 12"),
        ("8 reps to 12 reps", "8 to 12"),
        ("12-8", "8 to 12"),
    ],
)
def test_a_range_in_another_form(written: str, meant: str) -> None:
    """From the smaller to the larger, with 'to' between, and no unit for a count."""
    assert hint_for(parse_reps, written) == f"write it as '{meant}'"


@pytest.mark.parametrize(
    ("parse", "written", "meant"),
    [
        (parse_times_s, "30-45 s", "30 to 45 s"),
        (parse_times_s, "30 s - 1 min", "30 s to 1 min"),
        (parse_distances_cm, "20..30 m", "20 to 30 m"),
    ],
)
def test_a_range_keeps_its_unit(parse: Callable[[Any], Any], written: str, meant: str) -> None:
    """A time and a distance keep the unit that was written, on both ends where they differ."""
    assert hint_for(parse, written) == f"write it as '{meant}'"


@pytest.mark.parametrize(
    ("parse", "written", "example"),
    [
        (parse_reps, "8 to", "8 to 12"),
        (parse_reps, "to 12", "8 to 12"),
        (parse_reps, "up to 12", "8 to 12"),
        (parse_times_s, "up to 45 s", "30 to 45 s"),
        (parse_distances_cm, "20 m to", "20 to 30 m"),
    ],
)
def test_a_range_that_lacks_an_end(parse: Callable[[Any], Any], written: str, example: str) -> None:
    """Both ends are written."""
    assert hint_for(parse, written) == f"write both ends, such as '{example}'"


@pytest.mark.parametrize(
    ("parse", "written", "row"),
    [
        (parse_reps, "8, 8, 6", "8, 8, 6"),
        (parse_reps, "12/10/8", "12, 10, 8"),
        (parse_reps, "12-10-8", "12, 10, 8"),
        (parse_reps, "12 10 8", "12, 10, 8"),
        (parse_reps, "12 reps, 10 reps", "12, 10"),
        (parse_times_s, "45 s, 30 s", "45 s, 30 s"),
        (parse_times_s, "45, 30 s", "45 s, 30 s"),
        (parse_distances_cm, "30 m 20 m", "30 m, 20 m"),
        (parse_loads, "40 kg, 45 kg, 50 kg", "40 kg, 45 kg, 50 kg"),
        (parse_loads, "60 % 1RM, 70 % 1RM", "60 % 1RM, 70 % 1RM"),
        (parse_loads, "RPE 7, RPE 8", "RPE 7, RPE 8"),
        (parse_loads, "light band / medium band", "light band, medium band"),
    ],
)
def test_several_sets_in_one_text(parse: Callable[[Any], Any], written: str, row: str) -> None:
    """One for each set is a list, in brackets and with the unit on each."""
    assert hint_for(parse, written) == f"one for each set is a list: '[{row}]'"


@pytest.mark.parametrize(
    ("parse", "written", "row"),
    [
        (parse_reps, ["8 12 10"], "8, 12, 10"),
        (parse_reps, ["10; 8; 6"], "10, 8, 6"),
        (parse_reps, ["12", "10 8"], "12, 10, 8"),
        (parse_times_s, ["20 s 30 s"], "20 s, 30 s"),
        (parse_loads, ["40 kg 45 kg 50 kg"], "40 kg, 45 kg, 50 kg"),
    ],
)
def test_a_list_without_commas(parse: Callable[[Any], Any], written: list[str], row: str) -> None:
    """Commas stand between the entries of a list."""
    assert hint_for(parse, written) == f"commas between: '[{row}]'"


@pytest.mark.parametrize(
    ("parse", "written", "meant"),
    [
        (parse_loads, ["8", "5 kg per hand", "10 kg per hand"], "8.5 kg per hand"),
        (parse_times_s, ["1", "5 min"], "1.5 min"),
    ],
)
def test_a_comma_for_a_point_inside_a_list(parse: Callable[[Any], Any], written: list[str], meant: str) -> None:
    """A comma ends an entry, so that a number without a unit before another one may be half of a decimal."""
    assert hint_for(parse, written).startswith(f"a decimal has a point, not a comma: '{meant}'")


def test_counts_are_no_halves_of_a_decimal() -> None:
    """Two whole numbers in a list of repetitions are two sets, whatever is wrong with one of them."""
    assert hint_for(parse_reps, ["0", "8"]) == "write a whole number, such as 8"


@pytest.mark.parametrize(
    ("parse", "written", "sets", "each"),
    [(parse_reps, "3x8", 3, "8"), (parse_reps, "3 × 8", 3, "8"), (parse_times_s, "3 x 30 s", 3, "30 s")],
)
def test_sets_times_what_is_done(parse: Callable[[Any], Any], written: str, sets: int, each: str) -> None:
    """Sets stand in a key of their own; in a superset or circuit they are rounds, of the whole block."""
    hint = f"write '{each}' here, and 'sets: {sets}', or 'rounds: {sets}' on a superset or circuit"
    assert hint_for(parse, written) == hint


@pytest.mark.parametrize(
    ("parse", "written", "example"),
    [
        (parse_times_s, "max", "30 to 45 s"),
        (parse_times_s, "30 s+", "30 to 45 s"),
        (parse_distances_cm, "max", "20 to 30 m"),
    ],
)
def test_a_set_without_an_end(parse: Callable[[Any], Any], written: str, example: str) -> None:
    """A time or a distance that ends where nothing is left does not exist here: a range does, with how hard it is."""
    hint = hint_for(parse, written)

    assert f"write a range, such as '{example}'" in hint
    assert "'load: RPE 8'" in hint
    assert "'feels_like: RPE 8' beside a load" in hint


@pytest.mark.parametrize("written", ["AMRAP", "max", "max reps", "12+", "to failure", "as many as you can"])
def test_repetitions_without_an_end(written: str) -> None:
    """They are written in one way, with what must be left beside them."""
    hint = hint_for(parse_reps, written)

    assert "'as many as possible'" in hint
    assert "'leave: 2 reps'" in hint


@pytest.mark.parametrize("written", ["40-50 kg", "60 to 70 % 1RM", "60-70% 1RM", "10 kg to 12 kg per hand"])
def test_a_range_of_loads(written: str) -> None:
    """A load is one for every set, or listed; a span of it is told by the effort."""
    assert hint_for(parse_loads, written).startswith("loads have no ranges: write a list")


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("rpe 8", "RPE 8"),
        ("8 RPE", "RPE 8"),
        ("@8", "RPE 8"),
        ("2 RIR", "2 reps in reserve"),
        ("1 rep left", "1 rep in reserve"),
    ],
)
def test_an_effort_in_other_words(written: str, meant: str) -> None:
    """An effort as a load, and as what a load should feel like, is meant alike."""
    assert hint_for(parse_loads, written) == f"write '{meant}'"
    assert hint_for(parse_effort, written) == f"write '{meant}'"


@pytest.mark.parametrize(
    ("written", "hint"),
    [
        ("8", "write 'RPE 8'"),
        ("8/10", "write 'RPE 8'"),
        ("hard", "write 'RPE 8' or '2 reps in reserve'"),
        ("12 kg", "write 'RPE 8' or '2 reps in reserve'"),
        ("11", "write 'RPE 8' or '2 reps in reserve'"),
        ("RPE 7-8", "efforts have no ranges: write the hardest that it may feel, such as 'RPE 8'"),
        ("RPE 7 to 8", "efforts have no ranges: write the hardest that it may feel, such as 'RPE 8'"),
        (["RPE 7", "RPE 8"], "write the hardest, such as 'RPE 8'"),
    ],
)
def test_what_a_set_cannot_feel_like(written: Any, hint: str) -> None:
    """How a set feels is one effort, or one number of repetitions left."""
    assert hint_for(parse_effort, written) == hint


def test_how_a_set_feels() -> None:
    """Both ways of saying it are read, and what is read already stays."""
    assert parse_effort("RPE 8") == Effort(Fraction(8))
    assert parse_effort("2 reps in reserve") == Reserve(2)
    assert parse_effort(Reserve(2)) == Reserve(2)
