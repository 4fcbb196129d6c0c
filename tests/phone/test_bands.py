"""The member's own weight is the one that the printed table gives, to the last gram."""

from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.bands import Limit, LoadBand, load_bands
from setwright.dose.one_rep_max import estimate_range
from setwright.dose.resolve import resolve
from setwright.model.programme import Programme
from setwright.model.units import KG_PER_LB, plain_number
from setwright.phone import attributes as page_data

Run = Callable[..., Any]

CHOOSE = "m => given.map(([bands, over, under]) => m.choose(m.rows(bands), {over: BigInt(over), under: BigInt(under)}))"


def said(bands: tuple[LoadBand, ...], weight: Fraction) -> dict[str, str]:
    """Return what the phone must answer, from the bands themselves."""
    choice = next((band.choice for band in bands if band.holds(weight)), None)
    if choice is None:
        return {"outside": "below" if weight < bands[0].from_kg else "above"}
    taken = choice.weight_kg
    return {"take": page_data.EASIER if taken is None else f"{plain_number(taken)} kg"}


def ask(run: Run, bands: tuple[LoadBand, ...], weights: list[Fraction]) -> list[dict[str, str]]:
    """Let the browser choose for several body weights."""
    text = page_data.bands(bands, "kg")
    return run("bands", CHOOSE, [[text, str(w.numerator), str(w.denominator)] for w in weights])


def test_every_table_of_the_example_answers_the_same_in_the_browser(run: Run, example: Programme) -> None:
    """For each band table of the example, at every edge, beside it, and at each tenth of a kilogram between."""
    tables = {item.bands for plan in resolve(example) for s in plan.sessions for item in s.items if item.bands}
    a_little = Fraction(1, 10**6)
    for bands in tables:
        edges = [edge for band in bands for edge in (band.from_kg, band.to_kg)]
        weights = [w + d for w in edges for d in (-a_little, Fraction(0), a_little)]
        weights += [Fraction(tenths, 10) for tenths in range(380, 1130, 7)]

        assert ask(run, bands, weights) == [said(bands, weight) for weight in weights]


@given(
    percent=st.integers(2, 60).map(lambda halves: Fraction(halves, 2)),
    owned=st.lists(st.integers(1, 40), min_size=1, max_size=8, unique=True),
    limit=st.none() | st.integers(5, 30),
    weight=st.fractions(35, 130, max_denominator=64),
)
def test_any_table_answers_the_same_in_the_browser(
    run: Run, percent: Fraction, owned: list[int], limit: int | None, weight: Fraction
) -> None:
    """Whatever the share, the owned weights and the physiotherapist's limit."""
    kg = [Fraction(number) for number in sorted(owned)]
    bands = load_bands(percent, kg, Fraction(40), Fraction(110), Limit(percent=Fraction(limit)) if limit else None)
    edges = [band.to_kg for band in bands]

    assert ask(run, bands, [weight, *edges]) == [said(bands, one) for one in [weight, *edges]]


def test_a_pound_is_the_international_pound(run: Run) -> None:
    """0.45359237 kg (international yard and pound agreement, 1959), on the phone as in the arithmetic."""
    found = run("exact", "m => [String(m.KG_PER_LB.over), String(m.KG_PER_LB.under)]")

    assert Fraction(int(found[0]), int(found[1])) == KG_PER_LB == Fraction("0.45359237")


@pytest.mark.parametrize(
    ("number", "unit", "other"),
    [("68", "kg", "149.9 lb"), ("150", "lb", "68 kg"), ("100", "kg", "220.5 lb"), ("12,5", "kg", "27.6 lb")],
)
def test_a_weight_is_shown_in_the_other_unit_too(run: Run, number: str, unit: str, other: str) -> None:
    """To a tenth: 68 kg are 149.914 lb, 150 lb are 68.039 kg, by the definition above."""
    assert run("exact", "m => m.inOtherUnit(...given)", [number, unit]) == other


@pytest.mark.parametrize("text", ["", "abc", "-5", "1e3", "12.", "1/0", "7 0", "<b>", "99999999999999"])
def test_what_is_no_number_is_refused(run: Run, text: str) -> None:
    """Nothing odd that is typed becomes a weight."""
    assert run("exact", "m => m.exact(given) === undefined", text)


def test_the_phones_1rm_estimate_is_the_span_of_the_published_formulas(run: Run) -> None:
    """The page's multiples give the same span as the formulas do, rounded outwards to a tenth."""
    asked = [(weight, reps) for weight in (20, 32.5, 60, 117.5, 200) for reps in range(2, 11)]
    line = "m => given[1].map(([w, r]) => m.estimate(given[0], String(w), r))"
    found = run("settings", line, [page_data.multiples(), asked])
    for (weight, reps), span in zip(asked, found, strict=True):
        exact = estimate_range(weight, reps)

        assert exact.low_kg - 0.11 <= float(span["low"]) <= exact.low_kg
        assert exact.high_kg <= float(span["high"]) <= exact.high_kg + 0.11


def test_beyond_ten_repetitions_nothing_is_estimated(run: Run) -> None:
    """The formulas hold to ten repetitions (Reynolds JM et al., J Strength Cond Res 2006;20:584-592)."""
    line = "m => [11, 12, 20].every(r => m.estimate(given, '40', r) === undefined)"

    assert run("settings", line, page_data.multiples())


@pytest.mark.parametrize(
    ("take", "own", "found"),
    [
        ("10 kg", ["8", "12"], "8"),
        ("10 kg", ["10", "8"], "10"),
        ("10 kg", ["12"], None),
        ("26.5 lb", ["25", "26.5", "30"], "26.5"),
    ],
)
def test_at_home_nothing_heavier_than_planned_is_shown(run: Run, take: str, own: list[str], found: str | None) -> None:
    """Of a member's own weights, the heaviest that is not above the planned one."""
    assert run("bands", "m => m.ownWeight(...given) ?? null", [take, own]) == found
