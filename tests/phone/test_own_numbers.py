"""What a member reads of limits, weights and ways out is said for that member, in the page and in the guide."""

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from .test_guide import Training
from .test_settings import weigh

WEEK = "plans/relay/week-07/friday/"
Run = Callable[..., Any]


@pytest.mark.parametrize(
    ("share", "weight", "unit", "most"),
    # A limit of 17.5 % at 68 kg is 11.9 kg; of a third at 70 kg, 23.33 kg, which is never said as 23.4. Arithmetic.
    [
        ("7/40", "68", "kg", "11.9"),
        ("1/3", "70", "kg", "23.3"),
        ("3/5", "80", "kg", "48"),
        ("3/5", "150", "lb", "40.8"),
    ],
)
def test_a_limit_is_never_rounded_up(run: Run, share: str, weight: str, unit: str, most: str) -> None:
    """In tenths of a kilogram, exactly; 150 lb are 68.04 kg."""
    line = "m => m.tenthsBelow(m.times(m.exact(given.share), m.kilograms(given.weight, given.unit)))"

    assert run("exact", line, {"share": share, "weight": weight, "unit": unit}) == most


def test_limits_are_said_in_the_members_own_weight(phone: Page, address: str) -> None:
    """At 68 kg, 60 % of body weight is 40.8 kg; without a body weight only the share is said."""
    phone.goto(address + WEEK)
    lift = phone.locator("[data-item]").filter(has=phone.get_by_role("heading", name="Kettlebell deadlift"))
    expect(lift.locator("[data-part='bound']")).to_contain_text("Never more than 60 % of body weight.")
    expect(lift.locator("[data-part='bound']")).not_to_contain_text("For you")
    weigh(phone, address, "68")
    phone.goto(address + WEEK)

    expect(lift.locator("[data-part='bound']")).to_contain_text("For you that is 40.8 kg at most.")
    press = phone.locator("[data-item]").filter(has=phone.get_by_role("heading", name="Half-kneeling press overhead"))
    expect(press.locator("[data-part='limits']")).to_contain_text("For you that is 13.6 kg at most.")


def test_at_home_the_easier_option_has_a_name(phone: Page, address: str) -> None:
    """Where all weights at home are too heavy, and where kit without a home option is missing."""
    weigh(phone, address, "68")
    phone.get_by_label("At home").check()
    phone.get_by_label("Kettlebell").check()
    phone.locator("#sw-weights-kettlebell").fill("24 kg")
    phone.locator("#sw-weights-kettlebell").press("Tab")
    phone.goto(address + WEEK)
    squat = phone.locator("[data-item]").filter(has=phone.get_by_role("heading", name="Goblet squat"))
    plank = phone.locator("[data-item]").filter(has=phone.get_by_role("heading", name="Front plank on forearms"))

    expect(squat.locator(".sw-you-line")).to_have_text("You: the easier option (Sit to box)")
    expect(plank.locator(".sw-home-first")).to_contain_text("Do the easier one (Front plank from the knees)")


def test_the_guide_has_the_table_where_no_weight_is_set(phone: Page, address: str) -> None:
    """Nobody leaves the guide to learn which kettlebell to take."""
    training = Training(phone, address)
    training.go_to("Box step-down", "First side")
    expect(phone.locator(".sw-session .sw-bands")).to_contain_text("8 kg")


def test_the_emergency_number_leads_the_stop_box(phone: Page, address: str) -> None:
    """Whoever opens it in need reads the number first."""
    training = Training(phone, address)
    training.press()
    phone.get_by_role("button", name="Stop").click()
    box = phone.get_by_role("dialog", name="Stop at once if")

    assert box.inner_text().lstrip().startswith("In an emergency: Call 112")


def test_the_signs_to_stop_come_before_the_work(phone: Page, address: str) -> None:
    """On a session's page they stand above the warm-up and every block."""
    phone.goto(address + WEEK)
    heads = phone.locator("article h2[id]").evaluate_all("all => all.map((one) => one.id)")

    assert heads.index("stop-if") < heads.index("warm-up") < heads.index("block-1")


def test_what_goes_fast_is_not_counted(run: Run) -> None:
    """As fast as control allows has no second in its words; what is slow keeps its own."""
    line = "m => given.map((phase) => m.paceOf(phase))"
    phases = [{"kind": "lower", "seconds": 2}, {"kind": "lift", "seconds": 1, "fast": True}]

    assert run("beat", line, phases) == ["Lower 2 s", "Lift fast, with control"]
