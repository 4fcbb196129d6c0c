"""Where each check begins to speak: the last programme that passes and the first that does not, and what is said then.

The lines themselves are common practice or from the source that each check names; here they are only held.
"""

import pytest

from setwright.checks.example import Example
from setwright.checks.trial import verdict_of


def said(rule: str, example: Example) -> list[str]:
    """Return what a check says of an example."""
    return [found.message for found in verdict_of(example).findings if found.rule == rule]


def legs(*exercises: str, block: str = "kind: straight, sets: 3") -> Example:
    """Return the session with other exercises in its one block."""
    return {"sessions/legs": f"blocks: [{{{block}, exercises: [{', '.join(exercises)}]}}]"}


def squat(written: str, block: str = "kind: straight, sets: 3") -> Example:
    """Return the session with the squat alone."""
    return legs(f"{{exercise: goblet-squat, {written}}}", block=block)


def days(sessions: str, weeks: int = 4, more: str = "") -> Example:
    """Return the plan with other days; it starts on Monday 1 March 2027."""
    phase = f"{{name: First, aim: To begin., weeks: {weeks}, sessions: {{{sessions}}}}}"
    return {"plans/spring": f"phases: [{phase}]\n{more}"}


PRESS: Example = {"exercises/press": "{pattern: push, regions: {main: [chest]}}"}
ARMS: Example = {
    **PRESS,
    "sessions/arms": "blocks: [{kind: straight, sets: 3, exercises: [{exercise: press, reps: 8}]}]",
}
TWO_SETS = squat("reps: 8, sets: 2")
ONE_A_DAY = days("monday: legs, tuesday: legs")

TOO_CLOSE = [
    (ONE_A_DAY, "legs and legs are 24 h apart in week 1 and both work quadriceps and glutes"),
    (days("monday: legs, wednesday: legs"), None),
    (days("sunday: legs, monday: legs"), "legs and legs are 24 h apart in week 2 and both work quadriceps and glutes"),
    ({**ONE_A_DAY, **TWO_SETS}, None),  # two sets leave the region fresh enough
    ({**ARMS, **days("monday: legs, tuesday: arms")}, None),  # other regions
    (
        {**ONE_A_DAY, **legs("{exercise: goblet-squat, reps: 8}", "{exercise: step-down, reps: 8, sets: 2}")},
        "legs and legs are 24 h apart in week 1 and both work quadriceps",
    ),
]


@pytest.mark.parametrize(("example", "doubt"), TOO_CLOSE)
def test_the_same_region_too_soon(example: Example, doubt: str | None) -> None:
    """Three sets of a region on two days in a row are told once, at the first week that has them."""
    assert said("regions-too-close", example) == ([doubt] if doubt else [])


def other(day: str, hard: str = "true") -> str:
    return f"other_training: [{{day: {day}, what: Hill intervals., hard: {hard}}}]"


def race(date: str) -> str:
    return f"event: {{name: Race, date: {date}}}"


HARD = [
    # the day of the legs, what else the plan holds, the doubt
    ("monday", other("tuesday"), "legs in week 1 is 24 h before the key session of tuesday"),
    ("monday", other("monday"), "legs in week 1 is on the same day as the key session of monday"),
    ("monday", other("wednesday"), None),
    ("monday", other("sunday"), None),  # the day before is behind
    ("sunday", other("monday"), "legs in week 1 is 24 h before the key session of monday"),
    ("monday", other("tuesday", "false"), None),
    ("monday", race("2027-03-23"), "legs in week 4 is 24 h before Race"),
    ("monday", race("2027-03-22"), "legs in week 4 is on the same day as Race"),
    ("monday", race("2027-03-24"), None),
    ("tuesday", race("2027-03-22"), None),  # what comes after the race spoils nothing
]


@pytest.mark.parametrize(("day", "more", "doubt"), HARD)
def test_heavy_legs_before_what_matters(day: str, more: str, doubt: str | None) -> None:
    """Legs on the day or on the day before are told once, with the first week that has them."""
    assert said("key-session-too-close", days(f"{day}: legs", more=more)) == ([doubt] if doubt else [])


def test_only_legs_and_only_enough_of_them_spoil_a_key_session() -> None:
    """Two sets of squats do not, and three of presses do not; two key sessions are two doubts."""
    both = "other_training: [{day: tuesday, what: Hills., hard: true}, {day: monday, what: Track., hard: true}]"
    rule = "key-session-too-close"

    assert said(rule, {**days("monday: legs", more=other("tuesday")), **TWO_SETS}) == []
    assert said(rule, {**ARMS, **days("monday: arms", more=other("tuesday"))}) == []
    assert len(said(rule, days("monday: legs", more=both))) == 2


REST = [
    # the load, the block, the doubt
    ("80 % 1RM", "rest: 107 s", "goblet-squat: 1 min 47 s between sets at 80 % 1RM, in week 1 of spring"),
    ("80 % 1RM", "rest: 108 s", None),  # a tenth less passes,
    ("79 % 1RM", "rest: 60 s", None),
    ("RPE 8", "rest: 60 s", "goblet-squat: 1 min between sets at RPE 8, in week 1 of spring"),
    ("RPE 7.5", "rest: 60 s", None),
    ("2 reps in reserve", "rest: 60 s", "goblet-squat: 1 min between sets at 2 reps in reserve, in week 1 of spring"),
    ("3 reps in reserve", "rest: 60 s", None),
    ("16 kg", "rest: 30 s", None),
]


@pytest.mark.parametrize(("load", "rest", "doubt"), REST)
def test_rest_after_heavy_sets(load: str, rest: str, doubt: str | None) -> None:
    """Heavy begins at 80 % of 1RM, effort 8 or two repetitions in reserve; two minutes but for a tenth are enough."""
    example = squat(f"reps: 5, load: {load}", f"kind: straight, sets: 3, {rest}")

    assert said("rest-too-short", example) == ([doubt] if doubt else [])


def test_the_other_exercise_of_a_superset_is_part_of_the_rest() -> None:
    """10 s to the other one, 30 s of it, and the rest of the round: 68 s make 1 min 48 s, 67 s do not (computed)."""
    heavy, light = "{exercise: goblet-squat, reps: 5, load: 85 % 1RM}", "{exercise: step-down, hold: 30 s}"
    found = [
        said("rest-too-short", legs(heavy, light, block=f"kind: superset, rounds: {rounds}, rest: {rest_s} s"))
        for rounds, rest_s in ((3, 68), (3, 67), (1, 30))
    ]

    assert [len(doubts) for doubts in found] == [0, 1, 0]


REPS = [
    ("reps: 10, load: 75 % 1RM", None),
    ("reps: 11, load: 75 % 1RM", "goblet-squat: 11 reps at 75 % 1RM in week 1 of spring"),
    (
        "reps: 10, load: 75 % 1RM, progress: {reps: {add: 1, up_to: 12}}",
        "goblet-squat: 11 reps at 75 % 1RM in week 2 of spring",
    ),
    ("hold: 30 s, load: 75 % 1RM", None),
    ("reps: 30, load: 60 % 1RM", None),  # below the end of the table nothing is said
    ("reps: 30, load: 16 kg", None),
]


@pytest.mark.parametrize(("written", "doubt"), REPS)
def test_repetitions_at_a_share_of_1rm(written: str, doubt: str | None) -> None:
    """The table of the source gives ten repetitions at 75 %; the first week with more is told."""
    assert said("reps-beyond-load", squat(written)) == ([doubt] if doubt else [])


def arms(push: int, pull: int, others: int = 1) -> Example:
    """Return a session with so many sets of a press and a row, and planks beside them."""
    parts = [f"{{exercise: press, reps: 8, sets: {push}}}"] * bool(push)
    parts += [f"{{exercise: row, reps: 8, sets: {pull}}}"] * bool(pull)
    parts += ["{exercise: plank, hold: 30 s}", "{exercise: hang, hold: 30 s}"][:others]
    patterns = {"press": "push", "row": "pull", "plank": "trunk", "hang": "trunk"}
    return {f"exercises/{ident}": f"pattern: {pattern}" for ident, pattern in patterns.items()} | legs(*parts)


BALANCE = [
    (arms(4, 2), None),
    (arms(5, 2), "20 sets of pushing and 8 of pulling in the phase First: 2.5 times as many"),
    (arms(2, 5), "20 sets of pulling and 8 of pushing in the phase First: 2.5 times as many"),
    (arms(3, 0, others=2), "12 sets of pushing and 0 of pulling in the phase First: none of the other"),
    (arms(3, 0), None),  # two exercises are an extra beside other training
    (arms(0, 0, others=2), None),
]


@pytest.mark.parametrize(("example", "doubt"), BALANCE)
def test_pushing_against_pulling(example: Example, doubt: str | None) -> None:
    """Twice as many sets pass; nothing at all of the other is told, where a plan holds three exercises or more."""
    assert said("push-pull-imbalance", example) == ([doubt] if doubt else [])


def knees(squats: int, lunges: int, hinges: int) -> Example:
    parts = (("goblet-squat", squats), ("step-down", lunges), ("bridge", hinges))
    written = (f"{{exercise: {ident}, reps: 8, sets: {sets}}}" for ident, sets in parts)
    return {"exercises/bridge": "pattern: hinge", **legs(*written)}


def test_knees_against_hips() -> None:
    """Squats and lunges together may be three times as many as hinges, and no more."""
    assert said("knee-hip-imbalance", knees(3, 3, 2)) == []
    assert said("knee-hip-imbalance", knees(4, 3, 2)) == [
        "28 sets of squats and lunges and 8 of hinges in the phase First: 3.5 times as many"
    ]


ROWS = [
    # weeks, what else the plan says, the doubt
    (6, "", None),
    (7, "", "weeks 1 to 7 run without a lighter one"),
    (12, "", "weeks 1 to 7 run without a lighter one"),
    (9, "changes: [{week: 2, day: monday, skip: true, why: Camp.}]", "weeks 3 to 9 run without a lighter one"),
    (8, "changes: [{week: 2, day: monday, skip: true, why: Camp.}]", None),
]


@pytest.mark.parametrize(("weeks", "more", "doubt"), ROWS)
def test_weeks_in_a_row(weeks: int, more: str, doubt: str | None) -> None:
    """Six weeks in a row pass; a week without training begins them anew; a row is told once."""
    assert said("no-lighter-week", days("monday: legs", weeks, more)) == ([doubt] if doubt else [])


EVENTS = [("2027-03-21", True), ("2027-03-22", False), ("2027-04-04", False), ("2027-04-05", True)]


@pytest.mark.parametrize(("date", "speaks"), EVENTS)
def test_event_and_last_week(date: str, speaks: bool) -> None:
    """The last week is 22 to 28 March 2027: an event belongs there or into the week after."""
    assert bool(said("event-outside-plan", days("monday: legs", more=race(date)))) is speaks


def test_home_option_names_what_is_missing_at_home() -> None:
    """A mat is in every home; a box and a kettlebell are not, and each is named."""
    rule = "missing-home-option"

    assert said(rule, {"exercises/step-down": "kit: [mat]"}) == []
    assert said(rule, {"exercises/step-down": "kit: [mat, box, kettlebell]"}) == [
        "step-down needs box and kettlebell, and says nothing for members at home"
    ]


NAMED = [
    # file, what is written, the sign
    ("club", 'name: "=A club"', "="),
    ("exercises/step-down", 'name: "+Step"', "+"),
    ("routines/warm-up", 'name: "-Warm"', "-"),
    ("sessions/legs", 'name: "@Legs"', "@"),
    (
        "sessions/legs",
        'blocks: [{kind: straight, name: "=B", sets: 3, exercises: [{exercise: goblet-squat, reps: 8}]}]',
        "=",
    ),
    ("plans/spring", 'name: "＝Spring"', "＝"),
    ("plans/spring", 'phases: [{name: "-First", aim: To begin., weeks: 4, sessions: {monday: legs}}]', "-"),
    ("plans/spring", 'event: {name: "+Race", date: 2027-03-28}', "+"),
]


@pytest.mark.parametrize(("file", "written", "sign"), NAMED)
def test_every_name_that_looks_like_a_formula_is_found(file: str, written: str, sign: str) -> None:
    """Names of the club, exercises, routines, sessions, blocks, plans, phases and events all reach spreadsheets."""
    found = [f for f in verdict_of({file: written}).findings if f.rule == "name-like-formula"]

    assert [(f.position.file, f.message) for f in found] == [
        (f"program/{file}.yml", f"a spreadsheet takes a name that begins with '{sign}' for a formula")
    ]


USED: list[tuple[Example, list[str]]] = [
    ({"exercises/hop": "name: Another", "exercises/step-down": "harder: [hop]"}, []),
    ({"exercises/hop": "name: Another", "routines/warm-up": "exercises: [{exercise: hop, reps: 8}]"}, []),
    ({"routines/cool": "kind: cool-down", "sessions/legs": "cool_down: [cool]"}, []),
    (
        {"exercises/hop": "easier: [leap]", "exercises/leap": "name: Another"},
        [f"'{ident}' stands in no session, no routine and no variation" for ident in ("hop", "leap")],
    ),
    (
        {"routines/cool": "kind: cool-down", "routines/walk": "name: Another"},
        [f"no session offers '{n}'" for n in ("cool", "walk")],
    ),
    (
        {**PRESS, "sessions/a": "name: Another", "sessions/b": "name: Yet another"},
        ["'press' stands", "no plan holds session 'a'", "no plan holds session 'b'"],
    ),
]


@pytest.mark.parametrize(("example", "doubts"), USED)
def test_what_no_plan_reaches(example: Example, doubts: list[str]) -> None:
    """A variation, a warm-up's exercise and a cool-down are reached; each file that is not is told."""
    found = sorted(said("unused-thing", example))

    assert len(found) == len(doubts)
    assert all(words.startswith(start) for words, start in zip(found, sorted(doubts), strict=True))


def test_a_session_of_arms_hides_no_session_of_legs() -> None:
    """Arms on Monday are no trouble, and legs on Tuesday still are, before a key session on Wednesday."""
    plan = days("monday: arms, tuesday: legs", more=other("wednesday"))

    assert said("key-session-too-close", {**ARMS, **plan}) == [
        "legs in week 1 is 24 h before the key session of wednesday"
    ]


def test_days_too_close_are_told_at_their_phase() -> None:
    """The second phase has legs on two days in a row: the doubt stands at its line, at the later day."""
    plan = (
        "phases:\n"
        "  - {name: First, aim: To begin., weeks: 2, sessions: {monday: legs}}\n"
        "  - {name: Second, aim: To go on., weeks: 2, sessions: {monday: legs, tuesday: legs}}\n"
    )
    (found,) = (f for f in verdict_of({"plans/spring": plan}).findings if f.rule == "regions-too-close")

    assert (found.position.line, found.position.column) == (3, plan.split("\n")[2].index("legs}") + 1)


def test_a_load_that_nothing_is_owned_for_is_told_once() -> None:
    """A climb beyond the heaviest kettlebell, 24 kg, is one doubt and not one a week."""
    climb = squat("reps: 8, load: 24 kg, progress: {load: {add: 16 kg, up_to: 88 kg}}")

    assert said("no-owned-weight-near", climb) == [
        "goblet-squat, week 2 of spring: no kettlebell near 40 kg",
    ]
