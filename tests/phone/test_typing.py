"""What members type into their settings, and what is made of it: a comma, another unit, a slip."""

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from .test_settings import with_lifts


@pytest.mark.parametrize(
    ("line", "weights"),
    [
        ("7,5 12,5", ["7.5", "12.5"]),
        ("7,5, 12,5", ["7.5", "12.5"]),
        ("7,5; 12,5", ["7.5", "12.5"]),
        ("8, 12 kg and 16", ["8", "12", "16"]),
        ("8,12,16", ["8", "12", "16"]),
        ("8,12", ["8", "12"]),
        ("8 kg, 8 kg", ["8"]),
        ("1.25 2.5", ["1.25", "2.5"]),
        ("1,25kg 2,5kg", ["1.25", "2.5"]),
        ("", []),
        ("none", []),
    ],
)
def test_weights_at_home_are_read_with_either_comma(run: Callable[..., Any], line: str, weights: list[str]) -> None:
    """A comma is a decimal sign in much of Europe (ISO 80000-1 allows both), and a list's elsewhere."""
    assert run("typed", "m => m.weightsIn(given)", line) == weights


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("68", "68"),
        ("68,5", "68.5"),
        (" 68.25 ", "68.25"),
        ("99,999", None),
        ("1.234", None),
        ("-5", None),
        ("6e1", None),
    ],
)
def test_three_decimals_are_a_slip(run: Callable[..., Any], text: str, number: str | None) -> None:
    """99,999 is neither 99.999 kg nor a hundred thousand: nobody weighs a member to the gram."""
    assert run("typed", "m => m.weightTyped(given) ?? null", text) == number


@pytest.fixture
def form(phone: Page, address: str) -> Page:
    """My settings in a small window."""
    phone.set_viewport_size({"width": 360, "height": 740})
    phone.route("**/settings/", with_lifts)
    phone.goto(f"{address}settings/")
    return phone


def weigh(page: Page, number: str) -> None:
    """Type a body weight and leave the field."""
    page.get_by_label("Weight", exact=True).fill(number)
    page.get_by_label("Weight", exact=True).press("Tab")


@pytest.mark.parametrize(("number", "unit", "meant"), [("68", "lb", "kg"), ("150", "kg", "lb")])
def test_a_number_that_fits_the_other_unit_is_asked_about(form: Page, number: str, unit: str, meant: str) -> None:
    """68 lb are 30.8 kg and 150 kg are above the tables of 40 to 110 kg: one touch says what was meant."""
    form.get_by_label(unit, exact=True).check()
    weigh(form, number)
    ask = form.locator(".sw-meant")
    expect(ask).to_contain_text(f"{number} {unit} is outside the club's tables.")
    ask.get_by_role("button", name=f"It is {number} {meant}").click()
    expect(ask).to_have_count(0)
    form.reload()
    expect(form.get_by_label(meant, exact=True)).to_be_checked()
    expect(form.get_by_label("Weight", exact=True)).to_have_value(number)


def test_a_weight_inside_the_tables_is_not_questioned(form: Page) -> None:
    """68 kg are 68 kg."""
    weigh(form, "68")
    form.get_by_text("Saved on this device.").wait_for()
    expect(form.locator(".sw-meant")).to_have_count(0)


@pytest.mark.parametrize("number", ["99,999", "99999", "700", "0"])
def test_a_lift_that_nobody_lifts_is_refused(form: Page, number: str) -> None:
    """Whatever a slip of the thumb says, no table of loads is entered with it."""
    form.get_by_label("Weight, kg").fill(number)
    form.get_by_role("button", name="Keep this lift").click()
    expect(form.locator("sw-settings .sw-status")).to_contain_text("up to 600 kg, please. Nothing was changed.")
    expect(form.locator(".sw-lift-list li")).to_have_count(0)


def test_the_error_speaks_the_members_unit(form: Page) -> None:
    """20 to 300 kg are 44.1 to 661.4 lb (0.45359237 kg, 1959), and a member in pounds reads pounds."""
    form.get_by_label("lb", exact=True).check()
    weigh(form, "900")
    expect(form.locator("sw-settings .sw-status")).to_contain_text("from 45 to 661 lb, please")


def test_weights_at_home_come_back_as_they_were_meant(form: Page) -> None:
    """The field says what was understood."""
    form.get_by_label("At home").check()
    form.get_by_label("Kettlebell").check()
    field = form.locator("#sw-weights-kettlebell")
    field.fill("7,5 12,5")
    field.press("Tab")
    expect(field).to_have_value("7.5, 12.5")
