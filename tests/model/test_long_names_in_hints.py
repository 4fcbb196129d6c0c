"""A hint that repeats what the coach wrote stays short enough to read."""

import pytest
from pydantic import ValidationError

from fuzz.faults import LONGEST_HINT
from support import make


def test_the_hint_about_days_repeats_no_more_than_the_message() -> None:
    """In place of a mapping of days stands one long word."""
    word = "s" * 900

    with pytest.raises(ValidationError) as refused:
        make.plan(f"phases: [{{name: All, aim: To go on., weeks: 4, sessions: {word}}}]")

    assert "on which day" in str(refused.value.errors()[0]["msg"])
    assert len(str(refused.value.errors()[0].get("ctx"))) < LONGEST_HINT
