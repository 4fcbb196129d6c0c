"""Quantities as a coach writes them, against the definitions of their units."""

from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from setwright.model import units
from setwright.model.dates import parse_day
from setwright.model.reference import parse_doi, parse_year

# The SI Brochure, 9th edition (2019), table 8: 1 min = 60 s, 1 h = 60 min = 3600 s.
TIMES_S = [
    ("30 s", 30), ("30s", 30), ("90 s", 90), ("1 min", 60), ("1.5 min", 90), ("1 min 30 s", 90), ("1min30s", 90),
    ("0.5 h", 1800), ("1 h", 3600), ("1 h 15 min", 4500), ("1 h 1 min 1 s", 3661), ("0 s", 0), ("6 h", 21600),
]  # fmt: skip

# International yard and pound agreement (1959): 1 lb = 0.453 592 37 kg exactly.
MASSES_KG = [
    ("12 kg", Fraction(12)), ("12kg", Fraction(12)), ("1.25 kg", Fraction(5, 4)), ("0.01 kg", Fraction(1, 100)),
    ("1 lb", Fraction("0.45359237")),
    ("25 lb", Fraction("11.33980925")), ("100 lb", Fraction("45.359237")), ("1000 kg", Fraction(1000)),
]  # fmt: skip

# The SI Brochure, table 7: centi is 1/100, kilo is 1000.
LENGTHS_CM = [("40 cm", 40), ("2.5 cm", Fraction(5, 2)), ("20 m", 2000), ("1 km", 100_000), ("0.4 km", 40_000)]

DISTANCES_CM = [("20 m", 2000), ("0.01 m", 1), ("1 cm", 1), ("0.4 km", 40_000)]

PERCENTS = [("15 %", 15), ("15%", 15), ("2.5 %", Fraction(5, 2)), ("100 %", 100), ("0 %", 0), ("300 %", 300)]

WEEKS = [("1 week", 1), ("2 weeks", 2), ("104 weeks", 104), ("1 weeks", 1)]

COUNTS = [("1", 1), ("8", 8), ("010", 10), ("1000", 1000), (8, 8), (" 8 ", 8)]

READ: list[tuple[Any, Any, Any]] = [
    *((units.parse_duration_s, *row) for row in TIMES_S),
    *((units.parse_mass_kg, *row) for row in MASSES_KG),
    *((units.parse_length_cm, *row) for row in LENGTHS_CM),
    *((units.parse_distance_cm, *row) for row in DISTANCES_CM),
    *((units.parse_percent, *row) for row in PERCENTS),
    *((units.parse_weeks, *row) for row in WEEKS),
    *((units.parse_count, *row) for row in COUNTS),
    (units.parse_flag, "true", True),
    (units.parse_flag, "false", False),
    (parse_year, "2018", 2018),
    (parse_doi, "10.1000/182", "10.1000/182"),  # the DOI of the DOI Handbook itself, ISO 26324
]


@pytest.mark.parametrize(("parse", "written", "value"), READ)
def test_a_quantity_is_read_exactly(parse: Any, written: Any, value: Any) -> None:
    """Each quantity gives its number in the base unit: seconds, kilograms, centimetres; fractions stay exact."""
    assert value == parse(written)


REFUSED = [
    (units.parse_duration_s, "30", "30 of what? write '30 s' or '30 min'"),
    (units.parse_duration_s, "12:30", "write it as '12 min 30 s'"),
    (units.parse_duration_s, "1:05", "write it as '1 min 5 s'"),
    (units.parse_duration_s, "1,5 min", "write a point, not a comma: '1.5 min'"),
    (units.parse_duration_s, "30 sec", "write it with h, min or s, such as '30 s' or '1 min 30 s'"),
    (units.parse_duration_s, "30 s 1 min", "write it with h, min or s, such as '30 s' or '1 min 30 s'"),
    (units.parse_duration_s, "0.01 s", "round it to a second"),
    (units.parse_duration_s, "6 h 1 s", "check the unit"),
    (units.parse_duration_s, "-5 s", "write it with h, min or s, such as '30 s' or '1 min 30 s'"),
    (units.parse_duration_s, "", "write it with h, min or s, such as '30 s' or '1 min 30 s'"),
    (units.parse_duration_s, ["30 s"], "write it with h, min or s, such as '30 s' or '1 min 30 s'"),
    (units.parse_work_s, "0 s", "write how long, such as '30 s'"),
    (units.parse_mass_kg, "12", "12 of what? write '12 kg' or '12 lb'"),
    (units.parse_mass_kg, "2,5 kg", "write a point, not a comma: '2.5 kg'"),
    (units.parse_mass_kg, "12 KG", "write it with kg or lb, such as '12 kg' or '25 lb'"),
    (units.parse_mass_kg, "12 lbs", "write it with kg or lb, such as '12 kg' or '25 lb'"),
    (units.parse_mass_kg, "0 kg", "write more than 0 kg"),
    (units.parse_mass_kg, "1001 kg", "check the number and the unit"),
    (units.parse_mass_kg, "٣ kg", "write it with kg or lb, such as '12 kg' or '25 lb'"),
    (units.parse_length_cm, "20", "20 of what? write '20 cm' or '20 m'"),
    (units.parse_length_cm, "0 m", "check the number and the unit"),
    (units.parse_length_cm, "101 km", "check the number and the unit"),
    (units.parse_length_cm, "0.004 cm", "check the number and the unit"),  # pages show two places, and so 0 cm
    (units.parse_distance_cm, "0.001 m", "round it to a centimetre"),
    (units.parse_distance_cm, "20.005 m", "round it to a centimetre"),
    (units.parse_mass_kg, "0.001 kg", "check the number and the unit"),
    (units.parse_mass_kg, "0.004 lb", "check the number and the unit"),
    (units.parse_percent, "0.004 %", "check the number and the unit"),
    (units.parse_length_cm, "20 ft", "write it with cm, m or km, such as '40 cm' or '20 m'"),
    (units.parse_percent, "0.6", "write '60 %'"),
    (units.parse_percent, "60", "write '60 %'"),
    (units.parse_percent, "301 %", "check the number"),
    (units.parse_percent, "half", "write the sign too, such as '15 %'"),
    (units.parse_weeks, "2", "2 of what? write '2 weeks'"),
    (units.parse_weeks, "0 weeks", "write it as '1 week' or '2 weeks'"),
    (units.parse_weeks, "105 weeks", "write it as '1 week' or '2 weeks'"),
    (units.parse_weeks, "14 days", "write it as '1 week' or '2 weeks'"),
    (units.parse_count, "0", "write a whole number, such as 8"),
    (units.parse_count, "1001", "write a whole number, such as 8"),
    (units.parse_count, "8.0", "write a whole number, such as 8"),
    (units.parse_count, "1_000", "write a whole number, such as 8"),
    (units.parse_count, "٨", "write a whole number, such as 8"),
    (units.parse_count, "3 sets", "a bare number is enough: 3"),
    (units.parse_count, "3x", "a bare number is enough: 3"),
    (units.parse_count, True, "write a whole number, such as 8"),
    (units.parse_flag, "yes", "write true"),
    (units.parse_flag, "True", "write true"),
    (units.parse_flag, "off", "write false"),
    (units.parse_flag, "perhaps", "write true or false"),
    (units.parse_flag, {}, "write true or false"),
    (parse_day, "2027-02-29", "write year-month-day, such as 2027-07-05"),  # 2027 is no leap year
    (parse_day, "2027-7-5", "write year-month-day, such as 2027-07-05"),
    (parse_day, "05.07.2027", "write year-month-day, such as 2027-07-05"),
    (parse_day, "9999-12-31", "check the year"),
    (parse_year, "18", "write four digits, such as 2018"),
    (parse_year, "2999", "write four digits, such as 2018"),
    (parse_doi, "https://doi.org/10.1000/182", "write it as it is printed, such as 10.1000/182"),
]


@pytest.mark.parametrize(("parse", "written", "hint"), REFUSED)
def test_what_is_no_quantity_is_refused_with_the_likely_fix(parse: Any, written: Any, hint: str) -> None:
    """What a coach might type instead is refused, and the hint says what to write."""
    with pytest.raises(PydanticCustomError) as refused:
        parse(written)

    assert refused.value.context is not None
    assert hint == refused.value.context["hint"]


@pytest.mark.parametrize("written", ["2028-02-29", "2000-02-29"])
def test_leap_days_are_days(written: str) -> None:
    """Years that four divides have a 29 February, and 2000 too (ISO 8601, the Gregorian calendar)."""
    assert written == parse_day(written).isoformat()


@given(h=st.integers(0, 5), minutes=st.integers(0, 59), s=st.integers(0, 59))
def test_hours_minutes_and_seconds_add_up(h: int, minutes: int, s: int) -> None:
    """A time in three units is the sum of its parts, spaces or not."""
    assert h * 3600 + minutes * 60 + s == units.parse_duration_s(f"{h} h {minutes} min {s} s")
    assert h * 3600 + minutes * 60 + s == units.parse_duration_s(f"{h}h{minutes}min{s}s")


@given(hundredths=st.integers(1, 100_000))
def test_a_weight_is_read_back_as_it_is_written(hundredths: int) -> None:
    """Writing a weight for people and reading it again loses nothing, down to ten grams."""
    kg = Fraction(hundredths, 100)

    assert kg == units.parse_mass_kg(f"{units.plain_number(kg)} kg")


@pytest.mark.parametrize(
    ("number", "places", "text"),
    [
        (Fraction(12), 2, "12"),
        (Fraction(5, 2), 2, "2.5"),
        (Fraction(1, 3), 2, "0.33"),
        (Fraction(2, 3), 1, "0.7"),
        (Fraction(25, 10), 0, "2"),
        (Fraction(35, 10), 0, "4"),
        (100, 0, "100"),
    ],
)
def test_numbers_are_written_without_needless_zeros(number: Fraction | int, places: int, text: str) -> None:
    """No trailing zeros; a half goes to the even neighbour (IEEE 754-2019, round half to even)."""
    assert text == units.plain_number(number, places)


def test_a_long_text_is_shortened_in_messages() -> None:
    """Messages quote at most forty signs, on one line."""
    assert units.shown("a\n b") == "'a b'"
    assert units.shown("x" * 41) == f"'{'x' * 37}...'"


@pytest.mark.parametrize("text", ["1 h" + " " * 100_000 + "x", "9" * 100_000])
def test_an_endless_value_is_refused_before_it_is_read(text: str) -> None:
    """A row of spaces as long as a file would keep a pattern busy for minutes; it is no quantity anyway."""
    parsers = (
        units.parse_duration_s,
        units.parse_mass_kg,
        units.parse_length_cm,
        units.parse_percent,
        units.parse_count,
    )
    for parse in parsers:
        with pytest.raises(PydanticCustomError, match="is too long to be"):
            parse(text)
