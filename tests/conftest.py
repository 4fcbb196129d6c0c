"""Settings and fixtures that all tests share."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

from setwright.model.programme import Programme
from setwright.source.read import read
from support.amount import TIMES, examples

pytest_plugins = ["support.browsing"]

settings.register_profile(
    "steady",
    derandomize=TIMES == 1,
    deadline=None,
    max_examples=examples(),
    suppress_health_check=[HealthCheck.too_slow],  # a busy machine is no finding
)
settings.load_profile("steady")

EXAMPLE = Path(__file__).parent.parent / "program"


@pytest.fixture(scope="session")
def example() -> Programme:
    """The example programme in program/, as read."""
    reading = read(EXAMPLE)
    if reading.programme is None:
        pytest.fail(f"the example programme cannot be read: {reading.errors}")
    return reading.programme
