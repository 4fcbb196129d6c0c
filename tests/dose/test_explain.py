"""How a number came about: every step in words, each with the rule behind it."""

import re
from fractions import Fraction

import pytest

from setwright.dose.bands import choice_at
from setwright.dose.resolve import resolve
from setwright.dose.rules import COMMON, HOUSE, RULES, Rule
from setwright.model.programme import Programme
from setwright.model.units import plain_number
from setwright.wording.explain import derivation, history
from setwright.wording.language import ENGLISH
from setwright.wording.steps import Step
from support import make

DOUBLE = (
    "{reps: 8, load: 15 % bodyweight, progress: "
    "{reps: {add: 1, up_to: 9}, then: {load: {add: 2.5 % bodyweight, up_to: 20 % bodyweight}}}}"
)
PHASES = """[
  {name: Build, aim: To build., weeks: 4, sessions: {monday: only},
   lighter: {weeks: [4], sets: 60 %, reps: 75 %, load: 90 %}},
  {name: Taper, aim: To be fresh., weeks: 1, sessions: {monday: only}, taper: {sets: [50 %]}}]"""
CHANGED = "[{week: 2, session: only, exercise: lift, sets: 2, why: A short evening.}]"
LIMIT = "{sides: one at a time, limits: {load: 18 % bodyweight}}"


def steps(made: Programme, week: int, body_weight_kg: int | None = None) -> list[Step]:
    session = resolve(made)[0].weeks[week - 1].sessions[0]
    weight = Fraction(body_weight_kg) if body_weight_kg is not None else None
    return list(derivation(ENGLISH, made, session, next(session.items), weight))


def plan(written: str = DOUBLE, lift: str = "", block: str = "{kind: straight, sets: 3}") -> Programme:
    return make.one_exercise(written, block, PHASES, CHANGED, lift)


def test_whole_derivation_of_a_lighter_week() -> None:
    """First dose, progression, the week it stands in, what the lighter week leaves, kilograms, owned weight."""
    found = steps(plan(lift=LIMIT), week=4, body_weight_kg=68)

    assert found == [
        Step("First dose, as the coach wrote it: 3 sets of 8 reps each side, 15 % of body weight."),
        Step(
            "Reps: 1 more every trained week, up to 9; then the load rises by 2.5 % of body weight "
            "(to 20 % of body weight at most), and reps start again.",
            "double",
        ),
        Step(
            "This is a lighter week, so the progression stands where it was: "
            "3 sets of 8 reps each side, 17.5 % of body weight.",
            "trained-weeks",
        ),
        Step("Sets: 60 % of 3 is 1.8, so 2 sets.", "lighter-week"),
        Step("Amount: 75 % of 8 reps leaves 6 reps.", "lighter-week"),
        Step("Load: 90 % of 17.5 % of body weight leaves 15.75 % of body weight.", "lighter-week"),
        Step("The exercise works one at a time: 6 reps on each side.", "sides"),
        Step("15.75 % of 68 kg is 10.71 kg.", "body-weight-share"),
        Step("Nearest that the club owns (kettlebell): 10 kg and 12 kg; the limit is 12.24 kg.", "owned-weight"),
        Step("Take 10 kg, the nearest one (on a tie, the lighter).", "owned-weight"),
    ]


LISTED = "{reps: [12, 10, 8], load: [40 kg, 45 kg, 50 kg]}"
RISING = "{reps: [8, 10, 12], load: [50 kg, 45 kg, 40 kg]}"
TWO_OF_THREE = """[
  {name: First, aim: To begin., weeks: 2, sessions: {monday: only}, lighter: {weeks: [2], sets: 67 %, reps: 75 %}},
  {name: Taper, aim: To be fresh., weeks: 1, sessions: {monday: only}, taper: {sets: [67 %]}}]"""
LEFT_OUT = [
    # what is planned, the kind of block, the week, what is told of it
    (
        LISTED,
        "{kind: straight}",
        2,
        ["so 2 sets. The last set is left out.", "Amount: 75 % of 12, 10 reps leaves 9, 7 reps."],
    ),
    (LISTED, "{kind: straight}", 3, ["so 2 sets. The lightest set is left out."]),
    (RISING, "{kind: straight}", 3, ["so 2 sets. The last set is left out."]),  # which is the lightest
    (LISTED, "{kind: superset, rounds: 3}", 3, ["so 2 rounds. The lightest round is left out."]),
    ("{reps: 8, load: 40 kg}", "{kind: straight, sets: 3}", 3, ["so 2 sets."]),
]


@pytest.mark.parametrize(("written", "block", "week", "told"), LEFT_OUT)
def test_sets_that_are_left_out_are_told(written: str, block: str, week: int, told: list[str]) -> None:
    """Of sets that differ, it is said which ones go; what the others had stays, unless repetitions get fewer too."""
    made = make.one_exercise(written, block, TWO_OF_THREE)
    found = [step.says for step in steps(made, week) if step.rule in ("lighter-week", "taper")]

    assert [
        says.removeprefix("Sets: 67 % of 3 is 2.01, ").removeprefix("Rounds: 67 % of 3 is 2.01, ") for says in found
    ] == told


STEPS = [
    # what is explained, the week, the body weight, the rule and words that must be among the steps
    (plan(), 1, None, "trained-weeks", "Trained week 1 of this session gives 3 sets of 8 reps, 15 % of body weight."),
    (plan(), 2, None, "change", "The coach changed this week alone: one set fewer. A short evening."),
    (plan(), 5, None, "taper", "Sets: 50 % of 3 is 1.5, so 1 set."),
    (plan(), 5, None, "trained-weeks", "This is a taper week, so the progression stands where it was"),
    (plan(), 1, None, "body-weight-share", "the percentage of your body weight"),
    (plan(), 1, 120, "owned-weight", "No weight is offered: bands cover 40 to 110 kg of body weight."),
    (plan(lift=LIMIT), 3, 66, "owned-weight", "Take 10 kg: the physiotherapist's limit rules out the next one."),
    (plan(lift="limits: {load: 3 kg}"), 1, 66, "owned-weight", "Every kettlebell is above the physiotherapist's limit"),
    (plan("{reps: 5, load: 60 % bodyweight}"), 1, 66, "owned-weight", "Take 24 kg, lighter than planned"),
    (plan("{reps: 5, load: 5 % bodyweight}"), 1, 40, "owned-weight", "Every kettlebell is clearly heavier than this"),
    (plan("{reps: 5, load: 5 % bodyweight}", "kit: [mat]"), 1, 60, "owned-weight", "the club owns no weights for it"),
    (plan("{reps: 5, load: 11 kg}"), 1, None, "owned-weight", "Take 10 kg, the nearest one"),
    (plan("{reps: 5, load: 70 % 1RM}"), 1, None, "one-rep-max-share", "70 % of your own 1RM"),
    (plan("{reps: 5, load: RPE 7}"), 1, None, "effort", "the last set ends at effort 7 of 10"),
    (plan("{reps: 5, load: RPE 6.5}"), 1, None, "effort", "Effort below 7 is not counted in repetitions"),
    (plan("{reps: 5, load: 2 reps in reserve}"), 1, None, "effort", "the last set ends at 2 reps in reserve"),
    (plan("{reps: 5, load: light band}"), 1, None, "", "Take the light band."),
    (plan("{reps: 5}", "sides: alternating"), 1, None, "sides", "5 reps in all, half of them on each side"),
    (
        plan("{reps: 5, progress: {reps: {add: 1, every: 2 weeks, up_to: 8}}}"),
        1,
        None,
        "linear",
        "1 more every 2 trained",
    ),
    (plan("{reps: 5, progress: {reps: {weeks: [5, 6, 8]}}}"), 1, None, "listed", "Reps by trained week: 5, 6, 8"),
    (
        plan("{hold: 30 s, progress: {hold: {add: 5 s, up_to: 1 min}}}"),
        1,
        None,
        "linear",
        "Hold: 5 s more every trained",
    ),
    (plan("{reps: 5, progress: {tempo: {weeks: [3-0-1-0, 4-0-1-0]}}}"), 2, None, "listed", "3-0-1-0, 4-0-1-0, then it"),
    (
        plan("{reps: 5, rest: 90 s, progress: {rest: {take: 15 s, down_to: 1 min}}}"),
        2,
        None,
        "trained-weeks",
        "Rest: 1 min 15 s.",
    ),
    (
        plan("{reps: 5}", block="{kind: circuit, rounds: 1, progress: {rounds: {add: 1, up_to: 2}}}"),
        3,
        None,
        "trained-weeks",
        "2 rounds of 5 reps",
    ),
    (
        plan(
            "{reps: 5, load: 3 reps in reserve, progress: "
            "{reps: {add: 1, up_to: 6}, then: {load: {take: 1 rep in reserve, down_to: 1 rep in reserve}}}}"
        ),
        1,
        None,
        "double",
        "then the load falls by 1 rep in reserve (to 1 rep in reserve at least), and reps start again.",
    ),
]


@pytest.mark.parametrize(("made", "week", "body_weight_kg", "rule", "words"), STEPS)
def test_step_is_explained(made: Programme, week: int, body_weight_kg: int | None, rule: str, words: str) -> None:
    """Each kind of step is said, and names its rule."""
    said = [step.says for step in steps(made, week, body_weight_kg) if step.rule == rule]

    assert [words for one in said if words in one] == [words]


def test_block_progression_is_not_told_of_an_exercise_with_its_own_sets() -> None:
    """A block's sets do not grow an exercise that has its own, so its derivation does not speak of them."""
    block = "{kind: straight, sets: 2, progress: {sets: {add: 1, up_to: 3}}}"
    own = [step.rule for step in steps(plan("{sets: 4, reps: 5}", block=block), week=1)]

    assert own == [""]


def test_history_tells_every_week_and_why() -> None:
    """Trained, changed, skipped, lighter and taper weeks are told apart."""
    change = "{week: 2, session: only, exercise: lift, reps: 5, why: Tired.}"
    skip = "{week: 3, day: monday, skip: true, why: Away.}"
    made = make.one_exercise(
        "{reps: 8, progress: {reps: {add: 1, up_to: 20}}}", phases=PHASES, changes=f"[{change}, {skip}]"
    )
    whole = resolve(made)[0]
    session = whole.weeks[4].sessions[0]

    assert list(history(ENGLISH, made, whole, session, next(session.items))) == [
        (1, "3 sets of 8 reps (trained week 1)"),
        (2, "3 sets of 5 reps (trained week 2); changed for this week: Tired."),
        (3, "skipped (Away.): the progression does not count this week"),
        (4, "2 sets of 7 reps (lighter week: the progression waits)"),
        (5, "1 set of 9 reps (taper: the progression waits)"),
    ]


def test_history_shows_the_step_in_the_hand() -> None:
    """15, 16.5 and 18 % of 43 kg are 6.45, 7.095 and 7.74 kg: a 6 kg kettlebell, and then twice 8 kg, a third more."""
    written = "{reps: 8, load: 15 % bodyweight, progress: {load: {add: 1.5 % bodyweight, up_to: 18 % bodyweight}}}"
    made = make.one_exercise(written)
    whole = resolve(made)[0]
    session = whole.weeks[2].sessions[0]
    told = [said for _, said in history(ENGLISH, made, whole, session, next(session.items), Fraction(43))]

    assert [said.partition("; ")[2] for said in told] == [
        "6 kg in the hand",
        "8 kg in the hand, 33 % more",
        "8 kg in the hand",
    ]


@pytest.mark.parametrize("body_weight_kg", [None, 40, 68, 110])
def test_every_dose_of_the_example_is_explained_by_known_rules(example: Programme, body_weight_kg: int | None) -> None:
    """Each step of each derivation in the example names a rule that exists, or is what the coach wrote."""
    weight = Fraction(body_weight_kg) if body_weight_kg is not None else None
    found = {
        step.rule
        for whole in resolve(example)
        for session in whole.sessions
        for item in session.items
        for step in derivation(ENGLISH, example, session, item, weight)
    }

    assert found - {""} <= set(RULES)
    assert "trained-weeks" in found


def test_explained_weight_is_the_one_on_the_page(example: Programme) -> None:
    """For every load by body weight in the example, the derivation ends with the weight that the bands offer."""
    weight = Fraction(61)
    ends = [
        (derivation(ENGLISH, example, session, item, weight)[-1].says, choice_at(item.bands, weight))
        for whole in resolve(example)
        for session in whole.sessions
        for item in session.items
        if item.bands
    ]

    assert ends
    assert all(said.startswith(f"Take {plain_number(choice.weight_kg)} kg") for said, choice in ends)


@pytest.mark.parametrize("rule", RULES.values(), ids=RULES)
def test_rule_says_what_it_is_and_where_it_comes_from(rule: Rule) -> None:
    """Each rule has a title and a sentence, and names an author, arithmetic, common practice, or this tool."""
    published = re.search(r"\b[A-Z][a-z]+ [A-Z]{1,2}\b", rule.source) is not None

    assert rule.title
    assert rule.says.endswith(".")
    assert published or rule.source in (COMMON, HOUSE, "Arithmetic.")
