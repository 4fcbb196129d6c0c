"""A line of an earlier version, which says the doses as a sentence, stays valid as long as nothing changed."""

from dataclasses import replace
from datetime import date

import pytest

from setwright.dose.resolve import resolve
from setwright.model.programme import Programme
from setwright.model.sign_off import SignOff
from setwright.review.first_form import sentence
from setwright.review.parts import PARTS
from setwright.review.status import Review, reviews
from support import make


def standing(programme: Programme) -> Review:
    """Return how the one exercise of a programme stands."""
    return reviews(programme, resolve(programme))["lift"]


@pytest.mark.parametrize(
    ("now", "status", "changed"), [("{reps: 8}", "reviewed", ()), ("{reps: 9}", "changed", ("dosage",))]
)
def test_doses_that_were_signed_as_a_sentence(now: str, status: str, changed: tuple[str, ...]) -> None:
    """The same doses are the same, and others are told."""
    then = standing(make.one_exercise("{reps: 8}"))
    line = SignOff.model_validate(
        {part: then.digests[part] for part in PARTS}
        | {"exercise": "lift", "who": "A reviewer", "role": "Physio", "date": date(2027, 2, 1)}
        | {"dosage": sentence(then.dosage)}
    )
    review = standing(replace(make.one_exercise(now), sign_offs=(line,)))

    assert (review.status, review.changed) == (status, changed)
