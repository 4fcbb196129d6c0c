"""Jumps: where they stand, what comes before, how many there are. Sources stand on the checks' own pages."""

import pytest

from support import make

USUAL = {
    "exercises/hop": "{pattern: jump, regions: {main: [calf]}, kit: [mat]}",
    "exercises/lift": "kit: [mat]",
    "routines/warm": "{takes: 10 min, exercises: [{do: Walk., work: 10 min}]}",
}
HOPS = "{kind: straight, sets: 2, rest: 90 s, exercises: [{exercise: hop, reps: 5}]}"
SQUATS = "{kind: straight, sets: %s, exercises: [{exercise: lift, reps: 8}]}"
TRAINED = "experience: trained"


def rules(blocks: str, plan: str = TRAINED, **files: str) -> list[str]:
    """Return what is said of a session with jumps; that a session leaves an exercise out is no matter here."""
    laid = {
        f"{kind}/{ident}": text for kind, ident, text in ((*name.split("__"), text) for name, text in files.items())
    }
    made = make.programme({**USUAL, **laid, "sessions/only": f"blocks: [{blocks}]", "plans/plan": plan})
    return sorted({f.rule for f in make.verdict(made).findings} - {"unused-thing"})


PLACES = [
    # the blocks of a session, what is found
    (f"{HOPS}, {SQUATS % 4}", []),
    (HOPS, []),  # nothing else: they are last, and first
    (f"{SQUATS % 4}, {HOPS}", ["jumps-last"]),
    (f"{SQUATS % 3}, {HOPS}, {SQUATS % 1}", []),  # a few sets wake the legs up
    (f"{SQUATS % 4}, {HOPS}, {SQUATS % 1}", ["jumps-on-tired-legs"]),
    # strength and spring in turn is a coach's choice; a circuit of them is none
    ("{kind: superset, rounds: 4, rest: 2 min, exercises: [{exercise: lift, reps: 3}, {exercise: hop, reps: 3}]}", []),
    (
        "{kind: circuit, rounds: 4, rest: 2 min, exercises: [{exercise: lift, reps: 12}, {exercise: hop, reps: 3}]}",
        ["jumps-on-tired-legs"],
    ),
]


@pytest.mark.parametrize(("blocks", "found"), PLACES)
def test_jumps_come_before_what_tires(blocks: str, found: list[str]) -> None:
    """Fresh legs land best. Common practice, no source."""
    assert rules(blocks) == found


@pytest.mark.parametrize(("rest", "found"), [("60 s", []), ("59 s", ["no-rest-between-jumps"])])
def test_a_minute_between_sets(rest: str, found: list[str]) -> None:
    """A minute is enough for a few hops, less is not. Common practice, no source."""
    assert rules(HOPS.replace("90 s", rest)) == found


WARM_UPS = [
    # the warm-up before jumps, what is found
    ("{takes: 8 min, exercises: [{do: Walk., work: 8 min}]}", []),
    ("{takes: 7 min, exercises: [{do: Walk., work: 7 min}]}", ["jumps-hardly-warm"]),
    ("{takes: 9 min, exercises: [{do: Walk., work: 8 min}, {do: Stretch the calves., hold: 30 s}]}", []),
    (
        "{takes: 9 min, exercises: [{do: Walk., work: 8 min}, {do: Stretch the calves., hold: 45 s}]}",
        ["stretch-before-jumps"],
    ),
    ("{takes: 9 min, exercises: [{do: Walk., work: 8 min}, {do: Hold a plank., hold: 45 s}]}", []),
]


@pytest.mark.parametrize(("warm_up", "found"), WARM_UPS)
def test_warm_up_before_jumps(warm_up: str, found: list[str]) -> None:
    """Long enough, and without a long stretch; strength that is held is no stretch."""
    assert rules(HOPS, routines__warm=warm_up) == found


PLANS = [
    # the plan, what is found of hops on its Mondays
    ("experience: new", ["jumps-for-beginners"]),
    (TRAINED, []),
    ("other_training: [{day: tuesday, what: Race., hard: true}]\n" + TRAINED, ["jumps-before-key-session"]),
    ("other_training: [{day: monday, what: Race., hard: true}]\n" + TRAINED, ["jumps-before-key-session"]),
    ("other_training: [{day: wednesday, what: Race., hard: true}]\n" + TRAINED, []),
    ("other_training: [{day: tuesday, what: Easy run.}]\n" + TRAINED, []),
    ("event: {name: Race, date: 2027-03-23}\n" + TRAINED, ["jumps-before-key-session"]),
]


@pytest.mark.parametrize(("plan", "found"), PLANS)
def test_jumps_in_the_week(plan: str, found: list[str]) -> None:
    """Not for beginners in their first weeks, and not on the eve or the day of something hard."""
    assert rules(HOPS, plan) == found


def test_heavy_sets_on_the_eve_count_too() -> None:
    """Two heavy sets of pressing are no matter for the legs, and are one for the race next day."""
    heavy = "{kind: straight, sets: 2, rest: 3 min, exercises: [{exercise: lift, reps: 3, load: RPE 8}]}"
    eve = "other_training: [{day: tuesday, what: Race., hard: true}]"
    chest = "{pattern: push, regions: {main: [chest]}, kit: [mat]}"

    assert rules(heavy, eve, exercises__lift=chest) == ["jumps-before-key-session"]
    assert rules(heavy.replace("RPE 8", "RPE 6"), eve, exercises__lift=chest) == []


LANDINGS = [
    # sets and reps of a hop week by week, what is found
    ("2", "[20, 20, 30]", []),  # 40, then 60: half as many again
    ("2", "[20, 20, 31]", ["jump-contacts-step-too-large"]),
    ("1", "[5, 5, 50]", []),  # jumps may begin, with up to 60
    ("1", "[5, 5, 61]", ["jump-contacts-step-too-large"]),
    ("2", "[50, 50, 50]", []),
    ("2", "[51, 51, 51]", ["too-many-jump-contacts"]),
]


@pytest.mark.parametrize(("sets", "reps", "found"), LANDINGS)
def test_landings_of_a_session_and_from_week_to_week(sets: str, reps: str, found: list[str]) -> None:
    """A hundred in a session, and half as many again from one week to the next."""
    first = reps[1:].split(",")[0]
    hops = f"{{exercise: hop, reps: {first}, progress: {{reps: {{weeks: {reps}}}}}}}"

    assert rules(f"{{kind: straight, sets: {sets}, rest: 2 min, exercises: [{hops}]}}") == found
