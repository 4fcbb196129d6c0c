"""Three sensible programmes pass every check, with nothing accepted: no alarm where nothing is wrong."""

from pathlib import Path

import pytest

from setwright.checks.registry import run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.source.read import read

SENSIBLE = Path(__file__).parent.parent / "programmes" / "sensible"


@pytest.mark.parametrize("club", ["beginners", "strong-club", "rehabilitation"])
def test_a_sensible_programme_passes(club: str) -> None:
    """A beginners' course, a strong club's winter and a way back to running raise no doubt, and none is accepted."""
    reading = read(SENSIBLE / club)

    assert reading.programme is not None, reading.findings
    verdict = run(Subject(reading.programme, resolve(reading.programme), reading.places))

    assert (*reading.findings, *verdict.findings) == ()
    assert verdict.accepted == ()


def test_they_hold_what_the_checks_look_at() -> None:
    """They would not pass for want of matter: there are heavy lifts, jumps, tapers, climbs and changes among them."""
    whole = "".join(path.read_text("utf-8") for path in SENSIBLE.rglob("*.yml"))

    for word in ("85 % 1RM", "pattern: jump", "taper:", "lighter:", "then:", "changes:", "hard: true", "weekly_step"):
        assert word in whole
