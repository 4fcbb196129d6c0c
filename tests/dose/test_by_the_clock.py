"""Blocks by the clock: a set on every full minute, as many rounds as possible in a time, and what is said of both."""

import pytest

from setwright.dose.exposure import week_exposure
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedBlock, ResolvedPlan
from setwright.dose.timing import TimeRange, seconds_until_again
from setwright.model.programme import Programme
from setwright.review.state import state_of
from setwright.review.written_state import from_json, to_json
from setwright.wording import blocks
from setwright.wording.changes import in_a_line
from setwright.wording.doses import dose_in_words
from setwright.wording.explain import derivation
from setwright.wording.language import ENGLISH
from setwright.wording.pieces import plainly
from support.make import programme, verdict

PLAN = "phases: [{name: First, aim: To begin., weeks: 3, sessions: {monday: only}, lighter: {weeks: [3], sets: 60 %}}]"
EVERY = "{kind: straight, every: 1 min, sets: 10, exercises: [{exercise: lift, reps: 5, tempo: 2-0-2-0, load: 8 kg}]}"
TURNS = (
    "{kind: circuit, every: 90 s, rounds: 3, exercises: "
    "[{exercise: lift, reps: 5, tempo: 2-0-2-0}, {exercise: lift, work: 40 s}]}"
)
ROUNDS = (
    "{kind: circuit, rounds: as many as possible, for: 12 min, change_over: 10 s, exercises: "
    "[{exercise: lift, reps: 5, tempo: 2-0-2-0, load: 8 kg}, {exercise: lift, work: 30 s}]}"
)
CAPPED = ROUNDS.replace("for: 12 min", "for: 12 min, up_to: 6")


def made(block: str, lift: str = "", changes: str = "[]") -> Programme:
    """Return a programme whose one session holds one block, with a lighter third week."""
    files = {"sessions/only": f"blocks: [{block}]", "plans/plan": f"{PLAN}\nchanges: {changes}"}
    return programme({**files, **({"exercises/lift": lift} if lift else {})})


def plan(block: str) -> ResolvedPlan:
    return resolve(made(block))[0]


def block(written: str, week: int = 1) -> ResolvedBlock:
    """Return the block in a week."""
    return plan(written).weeks[week - 1].sessions[0].blocks[0]


def test_a_set_starts_on_every_full_minute() -> None:
    """Five repetitions of 4 s leave 40 s of each minute; ten starts take nine minutes and the last set (computed)."""
    found = block(EVERY)

    assert {step.seconds for step in found.steps if step.kind == "rest"} == {40}
    assert [step.kind for step in found.steps].count("set") == 10
    assert found.time == TimeRange(9 * 60 + 20, 9 * 60 + 25)
    assert seconds_until_again(found.steps, [found.items[0].dose], 0) == 40


def test_the_exercises_of_a_circuit_take_turns() -> None:
    """Each start is the next exercise's: six starts in three rounds of two."""
    found = block(TURNS)

    assert [step.item for step in found.steps if step.kind == "set"] == [0, 1, 0, 1, 0, 1]
    assert [step.seconds for step in found.steps if step.kind == "rest"] == [70, 50, 70, 50, 70]
    assert found.time.low_s == 5 * 90 + 40


def test_as_many_rounds_as_fit() -> None:
    """A round takes 20 + 10 + 30 s, so that twelve minutes hold twelve (computed); the block lasts as it says."""
    found = block(ROUNDS)

    assert found.rounds == 12
    assert found.time == TimeRange(720, 720)
    assert [(step.kind, step.seconds) for step in found.guided()] == [("rounds", 720)]


def test_rounds_that_end_in_any_case() -> None:
    """Six rounds of a minute may be over after six minutes."""
    found = block(CAPPED)

    assert found.rounds == 6
    assert (found.time.low_s // 60, found.time.high_s) == (6, 720)


def test_a_rest_that_is_written_is_kept_between_rounds() -> None:
    """With a minute's rest after each, twelve minutes hold six rounds (computed)."""
    assert block(ROUNDS.replace("change_over: 10 s", "change_over: 10 s, rest: 60 s")).rounds == 6


@pytest.mark.parametrize(
    ("progress", "lasts_s"),
    [
        ("{for: {add: 2 min, up_to: 13 min}}", [720, 780, 780]),
        ("{for: {take: 2 min, every: 2 weeks, down_to: 8 min}}", [720, 720, 600]),
        ("{for: {weeks: [12 min, 15 min]}}", [720, 900, 900]),
    ],
)
def test_the_time_of_the_rounds_grows(progress: str, lasts_s: list[int]) -> None:
    """As many rounds as possible go on for longer week by week, never past their end, and the rounds follow."""
    written = ROUNDS.replace("for: 12 min", f"for: 12 min, progress: {progress}")
    made_of = programme(
        {"sessions/only": f"blocks: [{written}]", "plans/plan": PLAN.replace(", lighter: {weeks: [3], sets: 60 %}", "")}
    )
    weeks = [week.sessions[0] for week in resolve(made_of)[0].weeks]

    assert [week.blocks[0].clock.lasts_s for week in weeks if week.blocks[0].clock] == lasts_s
    assert [week.blocks[0].rounds for week in weeks] == [each_s // 60 for each_s in lasts_s]
    steps = [step.says for step in derivation(ENGLISH, made_of, weeks[1], weeks[1].blocks[0].items[0])]
    assert any(step.startswith("Time of the rounds") for step in steps)


def test_totals_follow_the_clock() -> None:
    """Ten sets of five with 8 kg are 400 kg, twelve rounds of them 480 kg (computed)."""
    weeks = [week_exposure(plan(written).weeks[0], made(written)) for written in (EVERY, ROUNDS)]

    assert [week.lifted.fixed_kg for week in weeks] == [400, 480]
    assert [week.sets for week in weeks] == [10, 24]


@pytest.mark.parametrize(
    ("written", "count", "lasts_s"),
    [(EVERY, 6, None), (TURNS, 2, None), (ROUNDS, 7, 7 * 60), (CAPPED, 6, 7 * 60)],
)
def test_a_lighter_week_by_the_clock(written: str, count: int, lasts_s: int | None) -> None:
    """60 % of ten sets are six, of twelve minutes seven: whole half minutes, rounded down."""
    found = block(written, 3)

    assert found.items[0].dose.count == count
    assert found.clock is not None
    assert found.clock.lasts_s == lasts_s


@pytest.mark.parametrize(
    ("written", "how", "said", "after"),
    [
        (
            EVERY,
            "10 sets: every 1 min the next one starts, and the rest is what is left.",
            "10 sets of 5 reps, one every 1 min, 8 kg, tempo 2-0-2-0",
            "A set starts every 1 min; rest for what is left",
        ),
        (
            TURNS,
            "3 rounds of 1 to 2 in order: every 1 min 30 s the next one starts, and the rest is what is left.",
            "3 rounds of 5 reps, a start every 1 min 30 s, tempo 2-0-2-0",
            "Then from 1 again, at the next start",
        ),
        (
            ROUNDS,
            "As many rounds of 1 to 2 as possible in 12 min. Count them.",
            "as many rounds as possible in 12 min: 5 reps, 8 kg, tempo 2-0-2-0",
            "From 1 again, until 12 min are over",
        ),
        (
            CAPPED,
            "As many rounds of 1 to 2 as possible in 12 min, 6 at most. Count them.",
            "as many rounds as possible in 12 min, 6 at most: 5 reps, 8 kg, tempo 2-0-2-0",
            "From 1 again, until 12 min are over",
        ),
    ],
)
def test_in_words(written: str, how: str, said: str, after: str) -> None:
    """The page says how the block goes, the dose says it in short."""
    found = block(written)
    item = found.items[0]
    rest = blocks.rest_after_round(ENGLISH, found) if found.rounds else blocks.rest_after_set(ENGLISH, item)

    assert plainly(blocks.how(ENGLISH, found)) == how
    assert dose_in_words(ENGLISH, item.dose, item.rounds) == said
    assert plainly(rest) == after


def test_work_and_change_over_are_said_together() -> None:
    """40 s of work and 20 s to change over are what a coach means by forty on, twenty off."""
    found = block(
        "{kind: circuit, rounds: 3, change_over: 20 s, exercises: "
        "[{exercise: lift, work: 40 s}, {exercise: lift, work: 40 s}]}"
    )

    assert "40 s of work, 20 s to change over" in plainly(blocks.how(ENGLISH, found))
    assert "40 s of work, 20 s to change over" in blocks.how_with_rest(ENGLISH, found)


@pytest.mark.parametrize("written", [EVERY, TURNS, ROUNDS, CAPPED])
@pytest.mark.parametrize("week", [1, 2, 3])
def test_how_a_dose_by_the_clock_came_about(written: str, week: int) -> None:
    """The clock has its step, and nothing is called a change of the coach that is none."""
    session = plan(written).weeks[week - 1].sessions[0]
    steps = [step.says for step in derivation(ENGLISH, made(written), session, next(session.items))]

    assert any("A set starts every" in said or "are counted as" in said for said in steps)
    assert not any("The coach changed" in said for said in steps)


def test_what_a_lighter_week_changes() -> None:
    """A shorter time is said for the whole block."""
    assert in_a_line(ENGLISH, block(ROUNDS, 3).changes) == "as many rounds as possible in 7 min instead of 12 min"
    assert in_a_line(ENGLISH, block(EVERY, 3).items[0].changes) == "four sets fewer"


def test_one_week_of_a_plan_may_end_the_rounds() -> None:
    """A number of sets for the whole session is where as many rounds as possible end that week."""
    changes = "[{week: 2, day: monday, sets: 3, why: A hot evening.}]"
    weeks = resolve(made(ROUNDS, changes=changes))[0].weeks

    assert [week.sessions[0].blocks[0].rounds for week in weeks] == [12, 3, 7]


@pytest.mark.parametrize(
    ("written", "lift", "crossed"),
    [
        (ROUNDS, "limits: {weekly_sets: 40}", True),
        (CAPPED, "limits: {weekly_sets: 40}", False),
        (CAPPED, "limits: {weekly_sets: 11}", True),
        (ROUNDS, "{pattern: jump, limits: {contacts: 900}}", True),
        (ROUNDS, "limits: {reps: 60}", False),
    ],
)
def test_a_limit_bounds_the_rounds(written: str, lift: str, crossed: bool) -> None:
    """Under a limit of sets or landings, as many as possible need an end, and that end is what is counted."""
    found = {one.rule for one in verdict(made(written, lift)).findings}

    assert ("dose-beyond-limit" in found) == crossed


@pytest.mark.parametrize(("every", "doubt"), [("15 s", True), ("24 s", True), ("25 s", False), ("1 min", False)])
def test_work_that_does_not_fit(every: str, doubt: bool) -> None:
    """Five repetitions of 4 s take 25 s at the slow end (a quarter more, computed)."""
    found = {one.rule for one in verdict(made(EVERY.replace("1 min", every))).findings}

    assert ("work-beyond-clock" in found) == doubt


@pytest.mark.parametrize("written", [EVERY, TURNS, CAPPED])
def test_a_state_keeps_the_clock(written: str) -> None:
    """Written down and read again, a dose by the clock is the same."""
    whole = made(written)
    state = state_of(whole, resolve(whole))

    assert from_json(to_json(state)) == state
