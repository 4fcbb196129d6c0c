"""The example programme passes every check that it teaches."""

from pathlib import Path

from setwright.checks.registry import run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.source.read import read

EXAMPLE = Path(__file__).parent.parent.parent / "program"


def test_example_has_no_finding() -> None:
    """Reading and checking the example finds nothing, errors and warnings alike."""
    reading = read(EXAMPLE)

    assert reading.programme is not None, reading.findings
    verdict = run(Subject(reading.programme, resolve(reading.programme), reading.places))

    assert (*reading.findings, *verdict.findings) == ()
