"""Any valid programme: random names, texts, sessions, progressions and plans, as a coach might write them."""

from collections.abc import Collection
from datetime import date, timedelta
from typing import Any

from hypothesis import strategies as st
from pydantic_core import PydanticCustomError

from setwright.model.club import Club
from setwright.model.programme import Programme
from setwright.model.text import parse_prose
from setwright.model.vocabulary import WEEKDAYS
from setwright.source.read import FOLDERS, References

_AWKWARD = "abcXYZ 0189 äßñ€ '\"&#;:,.!?()/%=+-–_^~$@…"
names = st.text(_AWKWARD, min_size=1, max_size=40).filter(lambda t: t.strip())
_words = st.text(_AWKWARD + "*]{}`|\\", min_size=1, max_size=60).filter(lambda t: t.strip() and "](" not in t)
_entity_free = _words.map(lambda t: t.replace("&", "and "))
_marked = st.sampled_from(
    [
        "*slowly*",
        "**stop**",
        "[more](https://example.org/a?b=c&d=e)",
        "[that one](exercise:e1)",
        "{: onclick=x}",
        "1 < 2",
        "```",
        "{{ 7 }}",
    ]
)
prose = st.lists(_entity_free | _marked, min_size=1, max_size=4).map(" ".join).filter(lambda t: _is_accepted(t))
texts = st.lists(prose, min_size=1, max_size=3)


def _is_accepted(text: str) -> bool:
    """Say whether the language takes a text: a link inside emphasis, for one, is refused."""
    try:
        parse_prose(text)
    except PydanticCustomError:
        return False
    return True


EXERCISES = ["e1", "e2", "e3", "e4"]
LOADS = [
    None,
    "15 % bodyweight",
    "5 % bodyweight per hand",
    "12 kg",
    "RPE 7",
    "2 reps in reserve",
    "light band",
    "60 % 1RM",
]


@st.composite
def exercise(draw: st.DrawFn, ident: str) -> dict[str, Any]:
    """An exercise with all its parts, or only the necessary ones; its variations are other exercises."""
    others = st.sampled_from([other for other in EXERCISES if other != ident])
    written: dict[str, Any] = {
        "name": draw(names),
        "pattern": draw(st.sampled_from(["squat", "push", "trunk"])),
        "regions": {"main": ["hip stabilisers"], "also": draw(st.sampled_from([[], ["calf"]]))},
        "sides": draw(st.sampled_from(["both together", "one at a time", "alternating"])),
        "kit": draw(st.sampled_from([[], ["kettlebell"], ["dumbbell", "mat"]])),
        "why": draw(prose),
        "set_up": draw(texts),
        "steps": draw(texts),
    }
    if draw(st.booleans()):
        written |= {
            "tempo": draw(st.sampled_from(["3-1-X-0", "2-0-2-0"])),
            "breathing": draw(prose),
            "feel": draw(prose),
            "cues": draw(texts),
            "faults": [{"sign": draw(prose), "fix": draw(prose)}],
            "easier": [draw(others), {"how": draw(prose)}],
            "harder": [draw(others)],
            "at_home": {"use": draw(prose), "how": draw(prose)},
            "cautions": draw(texts),
            "stop_if": draw(texts),
            "limits": {"load": "40 % bodyweight", "top_effort": "RPE 10", "hold": "90 s"},
            "sources": ["a-2001"],
        }
    return written


@st.composite
def prescription(draw: st.DrawFn, rounds: int | None, weighed: Collection[str]) -> dict[str, Any]:
    """One exercise of a block, with a progression that fits it; straight sets have no rounds.

    Some are always weighed: with a weight in the hand and a limit of load, an exercise may not go without a load.
    """
    written: dict[str, Any] = {"exercise": draw(st.sampled_from(EXERCISES))}
    measure, start, climb = draw(
        st.sampled_from(
            [
                ("reps", 8, {"add": 1, "up_to": 12}),
                ("reps", "8 to 10", {"add": 1, "up_to": 12}),
                ("hold", "20 to 30 s", {"weeks": ["20 to 30 s", "30 to 40 s"], "again": "true"}),
                ("hold", "30 s", {"add": "5 s", "every": "2 weeks", "up_to": "45 s"}),
                ("work", "40 s", {"weeks": ["40 s", "45 s"]}),
                ("distance", "20 m", {"add": "5 m", "up_to": "30 m"}),
            ]
        )
    )
    written[measure] = start
    count = rounds or draw(st.integers(1, 4))
    if rounds is None:
        written["sets"] = count
    listed = measure == "reps" and count > 1 and draw(st.booleans())
    if listed:
        written["reps"] = [11 - number for number in range(count)]
    load = draw(st.sampled_from([load for load in LOADS if load or written["exercise"] not in weighed]))
    if load:
        written["load"] = load
    if load == "12 kg" and draw(st.booleans()):
        written["feels_like"] = "RPE 8"
    if load == "15 % bodyweight" and count > 1 and draw(st.booleans()):
        written["load"] = [f"{12 + number} % bodyweight" for number in range(count)]
    if draw(st.booleans()):
        written["progress"] = {measure: climb}
        if load == "15 % bodyweight" and "add" in climb:
            written["progress"]["then"] = {"load": {"add": "1.5 % bodyweight", "up_to": "20 % bodyweight"}}
    if draw(st.booleans()):
        written["note"] = draw(prose)
    return written


@st.composite
def entry(draw: st.DrawFn, rounds: int | None, weighed: Collection[str], sure: bool) -> dict[str, Any]:
    """An exercise of a session: with another way for members with a choice, or optional, now and then."""
    written = draw(prescription(rounds, weighed))
    if draw(st.booleans()):
        written["instead"] = [draw(prescription(rounds, weighed)) | {"for": ["new"]}]
    if not sure and draw(st.booleans()):
        written["optional"] = "true"
    return written


@st.composite
def session(draw: st.DrawFn, weighed: Collection[str]) -> dict[str, Any]:
    """A session of one to three blocks."""
    blocks = []
    for kind in draw(st.lists(st.sampled_from(["straight", "superset", "circuit"]), min_size=1, max_size=3)):
        rounds = None if kind == "straight" else draw(st.integers(1, 3))
        inside = st.lists(entry(rounds, weighed, sure=not blocks), min_size=1 if rounds is None else 2, max_size=4)
        block: dict[str, Any] = {"kind": kind, "exercises": draw(inside)}
        if rounds is not None:
            block["rounds"] = rounds
        if draw(st.booleans()):
            block["name"] = draw(names)
        blocks.append(block)
    return {"name": draw(names), "aim": draw(prose), "warm_up": ["warm"], "cool_down": ["cool"], "blocks": blocks}


@st.composite
def _changes(draw: st.DrawFn, days: list[str], sessions: dict[str, str]) -> list[dict[str, Any]]:
    """Up to two changes of one week: a day left out, moved or exchanged, and another number of sets or rest."""
    free = [day for day in WEEKDAYS if day not in days]
    of_a_day = st.sampled_from([{"skip": "true"}, {"move_to": free[0]}, {"do_instead": "s2"}])
    of_a_session = st.sampled_from([{"sets": 1}, {"rest": "45 s"}])
    changes = [{"day": days[0]} | draw(of_a_day), {"session": sessions[days[-1]]} | draw(of_a_session)]
    return draw(st.lists(st.sampled_from(changes), max_size=2, unique_by=str))


@st.composite
def plan(draw: st.DrawFn) -> dict[str, Any]:
    """A plan of one or two phases, with a lighter week, a taper and a skipped day now and then."""
    days = draw(st.lists(st.sampled_from(WEEKDAYS), min_size=1, max_size=3, unique=True))
    sessions = {day: draw(st.sampled_from(["s1", "s2"])) for day in days}
    another = draw(st.sampled_from([None, None, ["s1", "s2"], {"rotate": ["s1", "s2"], "days": days}]))
    phases: list[dict[str, Any]] = [
        {"name": draw(names), "aim": draw(prose), "weeks": 3, "sessions": sessions},
        {
            "name": draw(names),
            "aim": draw(prose),
            "weeks": 2,
            "sessions": another or sessions,
            "taper": {"sets": ["60 %", "45 %"]},
        },
    ]
    if draw(st.booleans()):
        phases[0]["lighter"] = {"weeks": [2], "sets": "60 %", "load": "90 %"}
    written: dict[str, Any] = {
        "name": draw(names),
        "for": draw(prose),
        "phases": phases[: draw(st.integers(1, 2))],
        "changes": [change | {"week": 3, "why": draw(prose)} for change in draw(_changes(days, sessions))],
        "other_training": [{"day": "sunday", "what": draw(prose), "hard": "true"}],
    }
    return written | draw(_when(days, prose))


@st.composite
def _when(draw: st.DrawFn, days: list[str], why: st.SearchStrategy[str]) -> dict[str, Any]:
    """When a plan runs: from a day, with a break now and then; in two groups; or whenever a member begins."""
    first = draw(st.dates(date(2000, 1, 1), date(2099, 11, 1)))
    way = draw(st.sampled_from(["one", "break", "groups", "none"]))
    if way == "none":
        return {"event": {"name": draw(names), "week": 3, "day": days[0]}}
    if way == "groups":
        return {"starts": {"Early": f"{first}", "Late": f"{first + timedelta(weeks=2)}"}}
    closed = {"from": f"{first + timedelta(weeks=1)}", "to": f"{first + timedelta(weeks=2)}", "why": draw(why)}
    back = {"coming_back": {"sets": "60 %"}} if draw(st.booleans()) else {}
    return {"starts": f"{first}"} | ({"breaks": [closed | back]} if way == "break" else {})


CLUB = {
    "name": "Any club",
    "body_weight": {"from": "40 kg", "to": "110 kg"},
    "kit": {
        "kettlebell": ["4 kg", "8 kg", "12 kg", "16 kg"],
        "dumbbell": {"from": "1 kg", "to": "10 kg", "step": "1 kg", "pairs": "true"},
        "band": ["light", "heavy"],
        "mat": 4,
    },
    "choices": {"new": "I am new", "sore": "My knee hurts"},
    "safety": {
        "contact": "Ask [the coach](mailto:coach@club.example).",
        "in_an_emergency": "Call the emergency number.",
        "before_you_start": ["You are ill."],
        "stop_if": ["It hurts."],
    },
}


REFERENCE = {"authors": "A and others", "year": 2001, "where": "A journal"}


@st.composite
def written(draw: st.DrawFn) -> dict[str, Any]:
    """A whole programme as a coach writes it: plain data by file, such as ``plans/p1``."""
    exercises = {ident: draw(exercise(ident)) for ident in EXERCISES}
    weighed = {ident for ident, one in exercises.items() if one["kit"] and "limits" in one}
    bare = [{"exercise": ident, "reps": 5} for ident in EXERCISES if ident not in weighed]
    routine = {
        "why": draw(prose),
        "takes": "5 min",
        "exercises": [*bare[:1], {"do": draw(prose), "work": "1 min"}],
    }
    return {
        "club": CLUB,
        "plans/p1": draw(plan()),
        **{f"sessions/{ident}": draw(session(weighed)) for ident in ("s1", "s2")},
        **{f"exercises/{ident}": one for ident, one in exercises.items()},
        "routines/warm": routine | {"name": draw(names), "kind": "warm-up"},
        "routines/cool": routine | {"name": draw(names), "kind": "cool-down"},
        "references": {"a-2001": REFERENCE | {"title": draw(prose)}},
    }


def as_programme(files: dict[str, Any]) -> Programme:
    """Return a programme that was written by file."""
    things: dict[str, dict[str, Any]] = {kind: {} for kind in FOLDERS}
    for name, data in files.items():
        kind, _, ident = name.partition("/")
        if ident:
            things[kind][ident] = FOLDERS[kind].model_validate(data)
    references = References.model_validate({"references": files["references"]})
    return Programme(Club.model_validate(files["club"]), **things, references=references.references)


def programmes() -> st.SearchStrategy[Programme]:
    """A whole programme that the models accept."""
    return written().map(as_programme)
