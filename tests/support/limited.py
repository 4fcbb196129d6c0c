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
KIT: list[list[str]] = [["kettlebell"], ["dumbbell"], ["box", "dumbbell"], []]
KIT_OF_HOPS: list[list[str]] = [["box"], []]
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
    "contacts": [400, 600, 60],
    "weekly_sets": [20, 40, 6],
    "weekly_step": ["60 %"],
    "earliest_phase": [1, 1, 1, 2],
    "earliest_week": [1, 1, 1, 4],
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
    ("reps", [6], {"add": 1, "up_to": 8}),
    ("hold", ["20 s"], {"add": "10 s", "up_to": "30 s"}),
    ("work", ["20 s"], {"add": "10 s", "up_to": "30 s"}),
    ("distance", ["10 m"], {"add": "5 m", "up_to": "15 m"}),
]
_STEPS = {
    "10 % bodyweight": {"add": "1 % bodyweight", "up_to": "14 % bodyweight"},
    "8 kg": {"add": "2 kg", "up_to": "12 kg"},
    "12 kg of help": {"take": "2 kg of help", "down_to": "6 kg of help"},
    "bodyweight + 4 kg": {"add": "2 kg", "up_to": "bodyweight + 8 kg"},
    "RPE 7": {"add": "RPE 0.5", "up_to": "RPE 8"},
    "3 reps in reserve": {"take": "1 rep in reserve", "down_to": "1 rep in reserve"},
}
_ALLOWED: dict[str, list[str | None]] = {
    "none": [None],
    "20 % bodyweight": ["10 % bodyweight", "14 % bodyweight", "20 % bodyweight", "8 kg"],
    "12 kg": ["8 kg", "12 kg"],
    "8 kg per hand": ["4 kg per hand", "8 kg per hand"],
    "6 % bodyweight per hand": ["4 % bodyweight per hand", "6 % bodyweight per hand"],
    "8 kg of help": ["12 kg of help", "8 kg of help"],
    "bodyweight + 6 kg": ["bodyweight + 4 kg", "bodyweight + 6 kg"],
}
"""What may be written under each limit of the load: less, and just as much. The lightest member weighs 40 kg."""
_END = {8: 8, 12: 12, "30 s": 30, "1 min": 60, "60 s": 60, "15 m": 15, "30 m": 30}
"""Ends of climbs and limits of a set, as numbers to compare."""
Made = dict[str, dict[str, Any]]


@st.composite
def _limits(draw: st.DrawFn) -> dict[str, Any]:
    any_keys = st.lists(st.sampled_from(sorted(_LIMITS)), max_size=3, unique=True)
    keys = draw(
        st.one_of(
            any_keys,
            st.sampled_from([["load"], ["load", "top_effort"], ["weekly_sets"], ["reps"]]),
        )
    )
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
        "kit": draw(st.sampled_from(KIT)),
        "why": "Why.",
        "set_up": ["Stand."],
        "steps": ["Move."],
        "easier": draw(ways),
        "harder": draw(ways),
    }
    if draw(st.booleans()):
        written["tempo"] = draw(st.sampled_from(["3-1-1-0", "1-0-X-0", "2-0-2-10"]))
    if "dumbbell" in written["kit"] and draw(st.booleans()):
        written["figure"] = HELD
    if draw(st.booleans()):
        written["at_home"] = {
            "use": "a stair",
            "how": f"Do [another](exercise:{draw(st.sampled_from(others))}).",
        }
    if limits := draw(_limits()):
        written["limits"] = limits
    if "hand" not in limits.get("load", "hand"):
        written.pop("figure", None)  # what each hand holds wants a load of each
    if limits.get("load") == "none" or "contacts" in limits or ident == "hop":
        written["kit"] = draw(st.sampled_from(KIT_OF_HOPS))
        written.pop("figure", None)
    return written


@st.composite
def _entry(draw: st.DrawFn, made: Made) -> dict[str, Any]:
    """An exercise of a session, with other ways for members with a choice now and then."""
    written = draw(_prescription(made))
    if draw(st.integers(0, 2)) == 0:
        written["optional"] = "true"
    whom = draw(st.sampled_from([[], [], [["new"]], [["sore"], ["new"]], [["new", "sore"]]]))
    return written | ({"instead": [draw(_prescription(made)) | {"for": some} for some in whom]} if whom else {})


@st.composite
def _prescription(draw: st.DrawFn, made: Made) -> dict[str, Any]:
    """A dose that mostly keeps to its exercise's limits, often just so; one in forty takes no notice of them."""
    ident = draw(st.sampled_from(EXERCISES))
    exercise = made[ident]
    limits = exercise.get("limits", {})
    heeds = draw(st.integers(0, 39)) > 0
    bounds = [one.get("limits", {}) for one in made.values()]  # any may be done with this dose, as an easier way
    fits = [one for one in _MEASURES if all(_within(one, each) for each in bounds)]
    measure, starts, climb = draw(st.sampled_from(fits if heeds and fits else _MEASURES))
    written: dict[str, Any] = {"exercise": ident, measure: draw(st.sampled_from(starts))}
    written["sets"] = draw(st.integers(1, 3))
    load = draw(st.sampled_from(_loads_for(exercise) if heeds else _LOADS))
    if load is not None:
        written["load"] = load
    if load == "8 kg" and measure == "reps" and draw(st.booleans()):
        written["ramp"] = draw(st.sampled_from(["1", [{"reps": 6, "of_load": "60 %"}]]))
    if measure == "reps" and load not in ("RPE 7", "3 reps in reserve") and draw(st.integers(0, 3)) == 0:
        leave = draw(st.sampled_from(["3 reps", "4 reps"] if heeds else ["1 rep"]))
        written |= {"reps": "as many as possible", "leave": leave, "up_to": 6}
    elif draw(st.booleans()):
        written["progress"] = {measure: climb}
        step = _STEPS.get(load, {})
        if step.get("up_to", step.get("down_to", "no step")) in _loads_for(exercise):
            written["progress"]["load"] = step
    if measure in ("reps", "work") and not heeds:
        written["tempo"] = draw(st.sampled_from(["2-0-2-0", "5-1-3-0"]))
    if draw(st.booleans()) and load is not None:
        written["kit"] = draw(st.sampled_from([["kettlebell"], ["dumbbell"]]))
    if "height" in limits or not heeds:
        written["height"] = draw(st.sampled_from(["15 cm", "20 cm"]))
    return written


def _within(measure: tuple[str, list[Any], dict[str, Any]], limits: dict[str, Any]) -> bool:
    """Say whether a measure's climb ends at its own limit or below, and is not counted in another one."""
    name, _, climb = measure
    if name in limits:
        return _END[climb["up_to"]] <= _END[limits[name]]
    return not {"reps", "hold", "distance"} & limits.keys()


def _loads_for(exercise: dict[str, Any]) -> list[str | None]:
    """Return the loads that an exercise's limits allow, the limit itself among them."""
    limits = exercise.get("limits", {})
    if exercise["pattern"] == "jump" or "contacts" in limits:
        return [None]
    if "load" in limits:
        loads = _ALLOWED[limits["load"]]
        by_effort = "top_effort" in limits and limits["load"] not in ("none", "8 kg of help")
        return [*loads, "RPE 7"] if by_effort else loads
    if "figure" in exercise:
        return [None, "4 % bodyweight per hand", "4 kg per hand"]
    return [load for load in _LOADS if load not in ("RPE 7", "3 reps in reserve")] if limits else _LOADS


@st.composite
def _blocks(draw: st.DrawFn, made: Made, rounds: st.SearchStrategy[dict[str, Any]]) -> list[dict[str, Any]]:
    """A straight block, and now and then a circuit behind it, of a number of rounds or of as many as possible."""
    straight = {
        "kind": "straight",
        "exercises": [draw(_entry(made)), *draw(st.lists(_entry(made), max_size=1))],
    }
    straight["exercises"][0].pop("optional", None)  # something is left of a session
    if draw(st.integers(0, 2)):
        return [straight]
    entries: list[dict[str, Any]] = [draw(_entry(made)) for _ in range(2)]
    for one in (way for entry in entries for way in (entry, *entry.get("instead", []))):
        for key in ("sets", "ramp"):
            one.pop(key, None)
    return [straight, {"kind": "circuit", "exercises": entries} | draw(rounds)]


ROUNDS = st.sampled_from(
    [
        {"rounds": 2},
        {"rounds": 2, "every": "2 min"},
        {"rounds": "as many as possible", "for": "6 min", "up_to": 3},
        {"rounds": "as many as possible", "for": "6 min"},
    ]
)

_PLANS: list[dict[str, Any]] = [
    {"starts": "2027-03-01"},
    {},  # a member's own start
    {"starts": {"Early": "2027-03-01", "Late": "2027-03-08"}},
    {
        "starts": "2027-03-01",
        "breaks": [{"from": "2027-03-10", "to": "2027-03-20", "why": "Closed."}],
    },
    {
        "starts": "2027-03-01",
        "breaks": [
            {
                "from": "2027-03-08",
                "to": "2027-04-11",
                "why": "Closed.",
                "coming_back": {"sets": "60 %", "load": "80 %"},
            }
        ],
    },
]
_LIGHTER = [
    {},
    {"lighter": {"weeks": [2], "sets": "60 %", "load": "90 %"}},
    {"taper": {"sets": ["80 %", "50 %"]}},
]


@st.composite
def _plan(draw: st.DrawFn, sessions: Any) -> dict[str, Any]:
    """A plan of two phases: from a day, in groups, with a break, or whenever a member begins."""
    phases = [
        {"name": name, "aim": "Aim.", "weeks": 2, "sessions": sessions}
        | (draw(st.sampled_from(_LIGHTER)) if last else {})
        for name, last in (("First", False), ("Second", True))
    ]
    return {"name": "A plan", "for": "Members.", "phases": phases} | draw(st.sampled_from(_PLANS))


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
    made = {ident: draw(_exercise(ident)) for ident in EXERCISES}
    sessions = {
        f"sessions/{ident}": {
            "name": f"Session {ident}",
            "aim": "Aim.",
            "warm_up": ["warm"],
            "cool_down": ["cool"],
            "blocks": draw(_blocks(made, ROUNDS)),
        }
        for ident in ("s1", "s2")
    }
    held = {one["exercise"] for one in sessions["sessions/s1"]["blocks"][0]["exercises"]}
    other = draw(st.sampled_from(["s1", "s2"]))
    on_days: list[Any] = [
        {"monday": "s1", "thursday": other},
        {"monday": ["s1", other]},
        {"rotate": ["s1", "s2", "s2"], "days": ["monday", "thursday"]},
        ["s1", other],
    ]
    days = draw(st.sampled_from(on_days))
    own_days = isinstance(days, list) or "rotate" in days
    follows = {"plans/p2": draw(_plan({"monday": "s2"})) | {"follows": "p1"}} if draw(st.booleans()) else {}
    light = [ident for ident in EXERCISES if not set(made[ident]["kit"]) & {"kettlebell", "dumbbell"}]
    step = {"exercise": draw(st.sampled_from(light))} | draw(st.sampled_from([{"reps": 6}, {"work": "20 s"}]))
    routine = {"why": "Why.", "takes": "5 min", "rounds": draw(st.integers(1, 2))}
    return {
        "club": CLUB_OF_SIZES | {"units": draw(st.sampled_from(["kg", "lb"]))},
        "plans/p1": draw(_plan(days))
        | {"changes": [] if own_days else [one for one in draw(_changes()) if one.get("exercise") in (None, *held)]},
        **follows,
        **sessions,
        **{f"exercises/{ident}": exercise for ident, exercise in made.items()},
        "routines/warm": routine | {"name": "Warm", "kind": "warm-up", "exercises": [step]},
        "routines/cool": routine
        | {
            "name": "Cool",
            "kind": "cool-down",
            "exercises": [{"do": "Walk.", "work": "1 min"}],
        },
        "references": {"a-2001": REFERENCE | {"title": "A study"}},
    }


def programmes() -> st.SearchStrategy[Programme]:
    """A whole programme that the models accept."""
    return files().map(as_programme)
