"""A programme in a file: numbers with their units, and read again exactly as it was."""

import json
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given

from setwright.dose.dose import Dose, Set
from setwright.dose.timing import TimeRange
from setwright.model.load import Band, BodyWeightShare, Effort, Load, OneRepMaxShare, Reserve, Weight
from setwright.model.span import Span
from setwright.model.tempo import Tempo
from setwright.review.parts import Line
from setwright.review.state import DayState, DoseState, State
from setwright.review.written_state import StateError, from_json, to_json
from support.strategies import doses

ONE = Dose(
    "reps",
    "one at a time",
    (
        Set(Span.of(5), rest_s=30, kind="ramp"),
        Set(Span(8, 10), Weight(Fraction(12), per_hand=True), Tempo(3, 1, None, 0), 90),
    ),
)


def state(*several: Dose, rounds: bool = False) -> State:
    """Return a state that holds these doses in one session."""
    day = DayState("legs", "2027-03-01", TimeRange(600, 900), [DoseState("lift", rounds, dose) for dose in several])
    return State(
        exercises={"lift": {"cues": [Line("cues 1", "Tall", "cues")]}},
        names={"lift": "A lift"},
        plans={"plan": "A plan"},
        days={"plan": {1: {"monday": day}}},
        texts={"club": [Line("kit mat", "8", "kit mat")]},
    )


def in_the_file(dose: Dose) -> list[dict[str, Any]]:
    """Return the sets of a dose as the file has them."""
    day = json.loads(to_json(state(dose)))["plans"]["plan"]["weeks"]["1"]["monday"]
    return list(day["doses"][0]["sets"])


def test_a_whole_file() -> None:
    """Every number stands with its unit, and nothing is said in a sentence."""
    assert json.loads(to_json(state(ONE, rounds=True))) == {
        "format": "setwright resolved programme",
        "version": 3,
        "exercises": {
            "lift": {"name": "A lift", "parts": {"cues": [{"key": "cues 1", "field": "cues", "value": "Tall"}]}}
        },
        "plans": {
            "plan": {
                "name": "A plan",
                "weeks": {
                    "1": {
                        "monday": {
                            "session": "legs",
                            "date": "2027-03-01",
                            "time": {"low_s": 600, "high_s": 900},
                            "doses": [
                                {
                                    "exercise": "lift",
                                    "rounds": True,
                                    "measure": "reps",
                                    "sides": "one at a time",
                                    "choices": [],
                                    "optional": False,
                                    "sets": [
                                        {
                                            "kind": "ramp",
                                            "amount": {
                                                "low": 5,
                                                "high": 5,
                                                "unit": "reps",
                                                "leave": None,
                                                "up_to": None,
                                            },
                                            "load": None,
                                            "tempo": None,
                                            "rest_s": 30,
                                            "feels": None,
                                        },
                                        {
                                            "kind": "work",
                                            "amount": {
                                                "low": 8,
                                                "high": 10,
                                                "unit": "reps",
                                                "leave": None,
                                                "up_to": None,
                                            },
                                            "load": {
                                                "written": "12 kg per hand",
                                                "unit": "kg",
                                                "number": 12,
                                                "per_hand": True,
                                                "band": None,
                                            },
                                            "tempo": {
                                                "lowering_s": 3,
                                                "pause_low_s": 1,
                                                "lifting_s": None,
                                                "pause_high_s": 0,
                                            },
                                            "rest_s": 90,
                                            "feels": None,
                                        },
                                    ],
                                    "clock": None,
                                }
                            ],
                        }
                    }
                },
            }
        },
        "texts": {"club": [{"key": "kit mat", "field": "kit mat", "value": "8"}]},
    }


def test_each_value_stands_on_its_own_line() -> None:
    """So that a version control shows what changed, line by line, a level in for each level."""
    lines = to_json(state(ONE)).split("\n")

    assert lines[:3] == ["{", ' "format": "setwright resolved programme",', ' "version": 3,']
    assert lines[-2:] == ["}", ""]


LOADS: list[tuple[Load, str, str, float | None, str | None]] = [
    # the load, its written form, its unit, its number, the band
    (BodyWeightShare(Fraction("12.5")), "12.5 % bodyweight", "% bodyweight", 12.5, None),
    (OneRepMaxShare(Fraction(80)), "80 % 1RM", "% 1RM", 80, None),
    (Weight(Fraction("2.5")), "2.5 kg", "kg", 2.5, None),
    (Effort(Fraction("7.5")), "RPE 7.5", "RPE", 7.5, None),
    (Reserve(2), "2 reps in reserve", "reps in reserve", 2, None),
    (Band("light"), "light band", "band", None, "light"),
]


@pytest.mark.parametrize(("load", "written", "unit", "number", "band"), LOADS)
def test_each_kind_of_load(load: Load, written: str, unit: str, number: float | None, band: str | None) -> None:
    """A load stands as the coach writes it, and as a number with its unit; a band has a name and no number."""
    (one,) = in_the_file(Dose("reps", "both together", (Set(Span.of(8), load),)))

    assert one["load"] == {"written": written, "unit": unit, "number": number, "per_hand": False, "band": band}


@pytest.mark.parametrize(("measure", "unit"), [("reps", "reps"), ("hold", "s"), ("work", "s"), ("distance", "cm")])
def test_each_kind_of_amount(measure: Any, unit: str) -> None:
    """Repetitions are counted, holds and work are seconds, distances are centimetres, halves of them too."""
    (one,) = in_the_file(Dose(measure, "both together", (Set(Span(40, Fraction("155.5"))),)))

    assert one["amount"] == {"low": 40, "high": 155.5, "unit": unit, "leave": None, "up_to": None}


@given(doses)
def test_any_dose_comes_back(dose: Dose) -> None:
    """Whatever a plan asks for, the file gives the same dose again."""
    assert from_json(to_json(state(dose))) == state(dose)


SLIPS = [
    # a place in the file, what stands there instead, and what is said
    ('"version": 3', '"version": 1', "version 3"),
    ('"format": "setwright resolved programme"', '"format": "another"', "no resolved programme"),
    ('"low": 5,', '"low": true,', "no resolved programme"),
    ('"low": 5,', '"low": "5",', "no resolved programme"),
    ('"rest_s": 30', '"rest_s": 30, "more": 1', "no resolved programme"),
    ('"12 kg per hand"', '"a lot"', "no resolved programme"),
]


@pytest.mark.parametrize(("old", "new", "said"), SLIPS)
def test_a_file_that_was_changed_by_hand_is_refused(old: str, new: str, said: str) -> None:
    """Another version says so; a number that is none, a key that is none and an unknown load are no state."""
    text = to_json(state(ONE))

    assert old in text
    with pytest.raises(StateError, match=said):
        from_json(text.replace(old, new))


def test_a_state_without_a_set_is_refused() -> None:
    """An exercise that is done not even once is no exercise of a session."""
    text = json.loads(to_json(state(ONE)))
    text["plans"]["plan"]["weeks"]["1"]["monday"]["doses"][0]["sets"] = []

    with pytest.raises(StateError):
        from_json(json.dumps(text))
