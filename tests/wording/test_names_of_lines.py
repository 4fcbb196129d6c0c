"""A reviewer reads what changed under names in the site's language, whichever part of an exercise it is."""

import pytest

from setwright.model.limits import Limits
from setwright.model.programme import Programme
from setwright.review.parts import PARTS, lines_of
from setwright.wording.keys import line_name
from setwright.wording.language import ENGLISH
from support import make
from support.pseudo import outside, pseudo


def test_every_line_of_every_exercise_has_a_name(example: Programme) -> None:
    """In a language of brackets nothing stands outside of them, but for a figure's own keys, which are the coach's."""
    language = pseudo()
    strange = {
        line.key
        for exercise in example.exercises.values()
        for part in PARTS
        for line in lines_of(exercise, part)
        if outside(line_name(language, line.key, line.field)) and not line.key.startswith("figure ")
    }

    assert strange == set()


def test_every_limit_has_a_name() -> None:
    """Each key that a physiotherapist may set, whether the example sets it or not."""
    exercise = make.programme(
        {
            "exercises/lift": "limits: {load: 20 kg, top_effort: RPE 8, least_reserve: 2 reps in reserve, reps: 12, "
            "hold: 45 s, rep_time: 10 s, distance: 40 m, height: 30 cm, contacts: 80, weekly_sets: 12, "
            "weekly_step: 10 %, earliest_phase: 1, earliest_week: 5, not_for: [Nobody.]}"
        }
    ).exercises["lift"]
    lines = lines_of(exercise, "limits")

    assert {line.field.removeprefix("limits ").replace(" ", "_") for line in lines} == {*Limits.model_fields}
    assert [line.key for line in lines if outside(line_name(pseudo(), line.key, line.field))] == []


@pytest.mark.parametrize(
    ("key", "field", "name"),
    [
        ("cautions 1", "cautions", "Caution 1"),
        ("faults 2 fix", "faults fix", "What to change 2"),
        ("limits not for 1", "limits not for", "Not for 1"),
        ("at home use", "at home use", "At home"),
        ("figure poses 1 trunk", "figure poses trunk", "as written: poses 1 trunk"),
    ],
)
def test_a_line_is_called_by_what_it_is(key: str, field: str, name: str) -> None:
    """A number tells lines of one name apart; a figure's angles keep the words of the file."""
    assert line_name(ENGLISH, key, field) == name
