"""Ids that lead nowhere, wherever they may be written: told at their place, with the name that is meant."""

import pytest

from setwright.source.finding import Position
from setwright.source.links import Parts, link_findings
from support import make

LIFT = "blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: lift, reps: 8, {}}}]}}]"
CLUB = "kit: {band: [light, heavy], mat: 8}"
NOWHERE = [
    # the file, what stands in it, where it is told, what is said, the hint
    (
        "session",
        LIFT.format("load: light band, progress: {load: {weeks: [light band, hevy band]}}"),
        "sessions/thing.yml blocks 0 exercises 0 progress load weeks 1",
        "the club owns no hevy band",
        "did you mean 'heavy'?",
    ),
    (
        "session",
        LIFT.format("load: lihgt band"),
        "sessions/thing.yml blocks 0 exercises 0 load",
        "the club owns no lihgt band",
        "did you mean 'light'?",
    ),
    (
        "session",
        LIFT.format("kit: [mat, matt]"),
        "sessions/thing.yml blocks 0 exercises 0 kit 1",
        "the club owns no 'matt'",
        "did you mean 'mat'?",
    ),
    (
        "session",
        LIFT.format("kit: [rope]"),
        "sessions/thing.yml blocks 0 exercises 0 kit 0",
        "the club owns no 'rope'",
        "add 'rope' to 'kit' in club.yml",
    ),
    (
        "session",
        "warm_up: [warm, wram]",
        "sessions/thing.yml warm_up 1",
        "unknown warm-up 'wram'",
        "did you mean 'warm'?",
    ),
    (
        "session",
        "cool_down: [warm]",
        "sessions/thing.yml cool_down 0",
        "'warm' is a warm-up, not a cool-down",
        "there is none yet",
    ),
    (
        "exercise",
        "{kit: [mat], easier: [{how: Slowly.}, lfit]}",
        "exercises/thing.yml easier 1",
        "unknown exercise 'lfit'",
        "did you mean 'lift'?",
    ),
    (
        "exercise",
        "{kit: [mat], easier: [lift], harder: [thing]}",
        "exercises/thing.yml harder 0",
        "this is its own harder way",
        "name another exercise, or write {how: ...}",
    ),
    (
        "exercise",
        "{kit: [mat], sources: [a-study, a-stduy]}",
        "exercises/thing.yml sources 1",
        "unknown source 'a-stduy'",
        "did you mean 'a-study'?",
    ),
    (
        "routine",
        "exercises: [{do: Walk., work: 1 min}, {exercise: lfit, reps: 8}]",
        "routines/thing.yml exercises 1 exercise",
        "unknown exercise 'lfit'",
        "did you mean 'lift'?",
    ),
    (
        "routine",
        "sources: [b-study-of-rest]",
        "routines/thing.yml sources 0",
        "unknown source 'b-study-of-rest'",
        "add it to references.yml",
    ),
    (
        "plan",
        "phases: [{name: One, aim: To begin., weeks: 1, sessions: {monday: only, friday: onyl}}]",
        "plans/thing.yml phases 0 sessions friday",
        "unknown session 'onyl'",
        "did you mean 'only'?",
    ),
]


def parts(kind: str, text: str, club: str | None = CLUB) -> Parts:
    """Return a small programme that holds one more thing."""
    thing = {"session": make.session, "exercise": make.exercise, "routine": make.routine, "plan": make.plan}[kind](text)
    ids = {"sessions": {"only"}, "exercises": {"lift"}, "routines": {"warm"}}
    return Parts(
        club=make.club(club) if club else None,
        references={"a-study"},
        ids=ids,
        **{"routines": {"warm": make.routine()}, f"{kind}s": {"thing": thing}}
        if kind != "routine"
        else {"routines": {"warm": make.routine(), "thing": thing}},
    )


def said(made: Parts) -> list[tuple[str, str, str]]:
    """Return place, message and hint of what is found; a position says the path as its file."""
    found = link_findings(made, lambda file, *path, **_: Position(" ".join(map(str, (file, *path)))))
    return [(one.position.file, one.message, one.hint) for one in found]


@pytest.mark.parametrize(("kind", "text", "place", "message", "hint"), NOWHERE)
def test_an_id_that_leads_nowhere(kind: str, text: str, place: str, message: str, hint: str) -> None:
    """One slip is one finding."""
    assert said(parts(kind, text)) == [(place, message, hint)]


def test_links_inside_texts_are_followed_too() -> None:
    """However deep a text stands, a link to an exercise that is not there is told at it."""
    fault = "{sign: The heels rise., fix: 'See [this](exercise:lfit).'}"
    text = f"{{kit: [mat], faults: [{fault}], cues: [Tall, '[it](exercise:lift)']}}"

    assert said(parts("exercise", text)) == [
        ("exercises/thing.yml faults 0 fix", "unknown exercise 'lfit'", "did you mean 'lift'?")
    ]


def test_where_the_other_file_cannot_be_read_nothing_is_said() -> None:
    """A club file, references or a folder that could not be read are one mistake already."""
    unread = parts("session", LIFT.format("load: pink band, kit: [rope]"), club=None)
    lost = parts("exercise", "{kit: [mat], sources: [z-study], easier: [nobody]}")
    lost.references = None
    lost.ids = {}

    assert said(unread) == []
    assert said(lost) == []
