"""Any programme with limits in it: doses near them, and every way round a dose that the language knows."""

from typing import Any

from hypothesis import strategies as st

from setwright.model.programme import Programme
from support.any_programme import CLUB, REFERENCE, as_programme

EXERCISES = ["push", "hop", "lift"]
CLUB_OF_SIZES = CLUB | {
    "kit": CLUB["kit"] | {"box": ["15 cm", "30 cm", "45 cm"]},
    "choices": {"new": "This is my first season", "sore": "My knee hurts"},
}
HELD = {"holds": {"dumbbell": "each hand"}, "poses": [{"trunk": "2"}]}

_LIMITS = {
    "load": [
        "none",
        "20 % bodyweight",
        "12 kg",
        "8 kg per hand",
        "6 % bodyweight per hand",
        "8 kg of help",
        "bodyweight + 6 kg",
    ],
    "top_effort": ["RPE 7", "RPE 8"],
    "least_reserve": ["2 reps in reserve", "4 reps in reserve"],
    "reps": [8, 12],
    "hold": ["30 s", "60 s"],
    "distance": ["15 m", "30 m"],
    "height": ["20 cm", "45 cm"],
    "contacts": [60, 200],
    "weekly_sets": [6, 20],
    "weekly_step": ["10 %", "60 %"],
    "earliest_phase": [1, 2],
    "earliest_week": [1, 2, 4],
}
_LOADS = [
    None, "10 % bodyweight", "20 % bodyweight", "4 % bodyweight per hand", "8 kg", "14 kg", "4 kg per hand", "RPE 7",
    "3 reps in reserve", "70 % 1RM", "light band", "12 kg of help", "6 kg of help", "30 % bodyweight of help",
    "bodyweight + 4 kg", "bodyweight + 8 kg",
]  # fmt: skip
_MEASURES = [
    ("reps", [6, 8, 10], {"add": 1, "up_to": 12}),
    ("hold", ["20 s", "40 s"], {"add": "10 s", "up_to": "1 min"}),
    ("work", ["20 s", "40 s"], {"add": "10 s", "up_to": "1 min"}),
    ("distance", ["10 m", "20 m"], {"add": "5 m", "up_to": "30 m"}),
]
_STEPS = {
    "10 % bodyweight": {"add": "1 % bodyweight", "up_to": "14 % bodyweight"},
    "8 kg": {"add": "2 kg", "up_to": "12 kg"},
    "12 kg of help": {"take": "2 kg of help", "down_to": "6 kg of help"},
    "bodyweight + 4 kg": {"add": "2 kg", "up_to": "bodyweight + 8 kg"},
    "RPE 7": {"add": "RPE 0.5", "up_to": "RPE 8"},
    "3 reps in reserve": {"take": "1 rep in reserve", "down_to": "1 rep in reserve"},
}


@st.composite
def _limits(draw: st.DrawFn) -> dict[str, Any]:
    any_keys = st.lists(st.sampled_from(sorted(_LIMITS)), max_size=3, unique=True)
    keys = draw(st.one_of(any_keys, st.sampled_from([["load"], ["load", "top_effort"], ["weekly_sets"], ["reps"]])))
    return {key: draw(st.sampled_from(_LIMITS[key])) for key in keys}


@st.composite
def _exercise(draw: st.DrawFn, ident: str) -> dict[str, Any]:
    others = [other for other in EXERCISES if other != ident]
    ways = st.lists(st.sampled_from(others), max_size=1)
    written: dict[str, Any] = {
        "name": f"The {ident}",
        "pattern": "jump" if ident == "hop" else "squat",
        "regions": {"main": ["quadriceps"]},
        "sides": draw(st.sampled_from(["both together", "one at a time", "alternating"])),
        "kit": draw(st.sampled_from([["kettlebell"], ["dumbbell"], ["box", "dumbbell"], []])),
        "why": "Why.",
        "set_up": ["Stand."],
        "steps": ["Move."],
        "easier": draw(ways),
        "harder": draw(ways),
    }
    if draw(st.booleans()):
        written["tempo"] = draw(st.sampled_from(["3-1-1-0", "1-0-X-0", "2-0-2-40"]))
    if "dumbbell" in written["kit"] and draw(st.booleans()):
        written["figure"] = HELD
    if draw(st.booleans()):
        written["at_home"] = {"use": "a stair", "how": f"Do [another](exercise:{draw(st.sampled_from(others))})."}
    if limits := draw(_limits()):
        written["limits"] = limits
    return written


@st.composite
def _entry(draw: st.DrawFn) -> dict[str, Any]:
    """An exercise of a session, with other ways for members with a choice now and then."""
    written = draw(_prescription())
    whom = draw(st.sampled_from([[], [], [["new"]], [["sore"], ["new"]], [["new", "sore"]]]))
    return written | ({"instead": [draw(_prescription()) | {"for": some} for some in whom]} if whom else {})


@st.composite
def _prescription(draw: st.DrawFn) -> dict[str, Any]:
    measure, starts, climb = draw(st.sampled_from([_MEASURES[0], *_MEASURES]))
    start, load = draw(st.sampled_from(starts)), draw(st.sampled_from(_LOADS))
    written: dict[str, Any] = {"exercise": draw(st.sampled_from(EXERCISES)), measure: start}
    written["sets"] = draw(st.integers(1, 3))
    if load is not None:
        written["load"] = load
    if draw(st.booleans()):
        written["progress"] = {measure: climb}
        if load in _STEPS:
            written["progress"]["load"] = _STEPS[load]
    if draw(st.booleans()):
        written["kit"] = draw(st.sampled_from([["kettlebell"], ["dumbbell"], ["box"]]))
    if draw(st.booleans()):
        written["height"] = draw(st.sampled_from(["15 cm", "30 cm"]))
    return written


@st.composite
def _changes(draw: st.DrawFn) -> list[dict[str, Any]]:
    numbers = [{"sets": 5}, {"load": "RPE 9"}, {"load": "14 kg"}, {"rest": "30 s"}]
    one = {"session": "s1", "exercise": draw(st.sampled_from(EXERCISES))} | draw(st.sampled_from(numbers))
    other = {"day": "monday", "do_instead": "s2"}
    return [
        change | {"week": draw(st.integers(1, 4)), "why": "A reason."}
        for change in draw(st.lists(st.sampled_from([one, other]), max_size=1))
    ]


@st.composite
def files(draw: st.DrawFn) -> dict[str, Any]:
    """A programme as a coach writes it, with changes only of exercises that the session holds."""
    sessions = {
        f"sessions/{ident}": {
            "name": f"Session {ident}",
            "aim": "Aim.",
            "warm_up": ["warm"],
            "cool_down": ["cool"],
            "blocks": [{"kind": "straight", "exercises": draw(st.lists(_entry(), min_size=1, max_size=2))}],
        }
        for ident in ("s1", "s2")
    }
    held = {one["exercise"] for one in sessions["sessions/s1"]["blocks"][0]["exercises"]}
    days = {"monday": "s1", "thursday": draw(st.sampled_from(["s1", "s2"]))}
    step = {"exercise": draw(st.sampled_from(EXERCISES))} | draw(st.sampled_from([{"reps": 6}, {"work": "20 s"}]))
    routine = {"why": "Why.", "takes": "5 min", "rounds": draw(st.integers(1, 2))}
    return {
        "club": CLUB_OF_SIZES | {"units": draw(st.sampled_from(["kg", "lb"]))},
        "plans/p1": {
            "name": "A plan",
            "for": "Members.",
            "starts": "2027-03-01",
            "phases": [{"name": name, "aim": "Aim.", "weeks": 2, "sessions": days} for name in ("First", "Second")],
            "changes": [one for one in draw(_changes()) if one.get("exercise") in (None, *held)],
        },
        **sessions,
        **{f"exercises/{ident}": draw(_exercise(ident)) for ident in EXERCISES},
        "routines/warm": routine | {"name": "Warm", "kind": "warm-up", "exercises": [step]},
        "routines/cool": routine
        | {"name": "Cool", "kind": "cool-down", "exercises": [{"do": "Walk.", "work": "1 min"}]},
        "references": {"a-2001": REFERENCE | {"title": "A study"}},
    }


def programmes() -> st.SearchStrategy[Programme]:
    """A whole programme that the models accept."""
    return files().map(as_programme)
