"""The check of load steps costs a plan of a year four times what it costs a plan of a season, and no more."""

import sys
from typing import Any

import pytest

from setwright.checks import load_step
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.source.read import Places
from support import make


def calls_for(weeks: int, load: str) -> int:
    """Return how many functions the check calls for three sessions a week: work that no busy machine changes."""
    days = "{monday: only, wednesday: only, friday: only}"
    phases = f"[{{name: All, aim: To go on., weeks: {weeks}, sessions: {days}}}]"
    made = make.one_exercise(f"{{reps: 8, load: {load}}}", phases=phases)
    subject = Subject(made, resolve(made), Places("program"))
    calls = 0

    def count(frame: object, event: str, arg: Any) -> None:
        nonlocal calls
        calls += event == "call"

    list(load_step.check(subject))  # what is kept from one call to the next is kept now
    sys.setprofile(count)
    try:
        list(load_step.check(subject))
    finally:
        sys.setprofile(None)
    return calls


@pytest.mark.parametrize("load", ["8 kg", "[8 kg, 10 kg, 12 kg]"])
def test_four_times_the_weeks_are_four_times_the_work(load: str) -> None:
    """With one load for all sets, and with a load for each, where every set is compared with the one in its place."""
    assert calls_for(52, load) < 5 * calls_for(13, load)
