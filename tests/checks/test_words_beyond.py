"""Words that ask for more than the dose: in notes, aims, warm-ups, changes, and beside easier and harder ways."""

import pytest

from support import make

RULE = "words-beyond-dose"
PHASES = "phases: [{name: All, aim: To go on., weeks: 2, sessions: {monday: only}}]"
SESSION = "blocks: [{kind: straight, sets: 3%s, exercises: [{exercise: lift, reps: 8, load: 10 kg%s}]}]\n%s"
LIMITS = "limits: {load: 14 kg, top_effort: RPE 8, reps: 12, weekly_sets: 6, hold: 50 s, distance: 20 m, height: 30 cm}"


def said(files: dict[str, str]) -> list[tuple[str, str, str]]:
    """Return what the check says of a small programme: severity, file and message."""
    found = [f for f in make.verdict(make.programme({"plans/plan": PHASES, **files})).findings if f.rule == RULE]
    return [(f.severity, f.position.file.removeprefix("program/"), f.message) for f in found]


def session(note: str = "", block: str = "", whole: str = "") -> dict[str, str]:
    """Return a session of a limited lift of 10 kg, with words for the exercise, the block or the whole of it."""
    words = (f', note: "{block}"' if block else "", f', note: "{note}"' if note else "", whole)
    return {"exercises/lift": LIMITS, "sessions/only": SESSION % words}


NOTES = [
    # a note, how grave, what is said
    ("The 10 kg bell.", None, ""),
    ("The 8 kg bell, if 10 kg is too much.", None, ""),
    ("The 12 kg bell.", "warning", "'12 kg' is more than the dose beside it, 10 kg"),
    ("The 16 kg bell.", "error", "'16 kg' is beyond the limit of 14 kg"),
    ("Ten reps, if you like.", "warning", "'Ten reps' is more than the dose beside it, 8 reps"),
    ("Fifteen reps.", "error", "'Fifteen reps' is beyond the limit of 12 reps"),
    ("Four sets.", "warning", "'Four sets' is more than the dose beside it, 3 sets"),
    ("Seven sets.", "error", "'Seven sets' is beyond the limit of 6 sets"),
    ("RPE 9.", "error", "'RPE 9' is beyond the limit of RPE 8"),
    ("To failure.", "error", "'To failure' is beyond the limit of RPE 8"),
    ("Heavier than last week.", "warning", "'Heavier than last week' asks for a step of the load"),
    ("Stay down for half a minute.", None, ""),
    ("Stay down for a minute.", "error", "'a minute' is beyond the limit of 50 s"),
    ("Stay down for 60 s.", "error", "'60 s' is beyond the limit of 50 s"),
    ("Rest 3 min.", None, ""),
    ("From the 40 cm box.", "error", "'40 cm' is beyond the limit of 30 cm"),
    ("Walk it 25 m.", "error", "'25 m' is beyond the limit of 20 m"),
]


@pytest.mark.parametrize(("note", "severity", "message"), NOTES)
def test_a_note_beside_its_dose(note: str, severity: str | None, message: str) -> None:
    """Less passes, more than the dose is a doubt, more than the limit an error."""
    found = said(session(note))

    assert [one[:2] for one in found] == ([(severity, "sessions/only.yml")] if severity else [])
    assert all(one[2].startswith(f"lift: {message}") for one in found)


def test_a_doubt_in_a_note_hides_no_limit_behind_it() -> None:
    """Accepting what is said first would let the rest through: what stops publishing is told before it."""
    assert [one[0] for one in said(session("The 12 kg bell. Then the 16 kg bell."))] == ["error"]
    assert [one[0] for one in said(session("Heavier than last week. Fifteen reps."))] == ["error"]


def test_words_of_a_block_and_of_a_session_are_read_too() -> None:
    """Wherever a note stands, it is about the exercises under it; an aim, about those that it names."""
    assert [one[0] for one in said(session(block="The 16 kg bell."))] == ["error"]
    assert [one[0] for one in said(session(whole="note: The 16 kg bell."))] == ["error"]
    assert [one[0] for one in said(session(whole="aim: A lift of 16 kg."))] == ["error"]
    assert said(session(whole="aim: Carry 16 kg home.")) == []


def test_a_sentence_is_about_what_it_names() -> None:
    """A weight of another exercise in the same note is none of this one."""
    other = {"exercises/row": "name: A row\npattern: pull"}

    assert said({**session("Keep the 16 kg of the row at hand."), **other}) == [
        ("error", "sessions/only.yml", "lift: '16 kg' is beyond the limit of 14 kg")
    ]
    assert said({**session("Keep the 16 kg for a row at hand."), **other}) == []


def test_a_reason_for_a_change_is_read() -> None:
    """Members read why a week differs, and act on it."""
    changes = "changes: [{week: 2, session: only, exercise: lift, reps: 6, why: Take 16 kg instead.}]"

    assert said({**session(), "plans/plan": f"{PHASES}\n{changes}"}) == [
        ("error", "plans/plan.yml", "lift: '16 kg' is beyond the limit of 14 kg")
    ]


WAYS = [
    "easier: [{how: Use the 16 kg bell.}]",
    "harder: [{how: Use the 16 kg bell.}]",
    "at_home: {use: a bag of 16 kg}",
    "at_home: {use: a bag, how: Fill it up to 16 kg.}",
]


@pytest.mark.parametrize("way", WAYS)
def test_words_of_other_ways_keep_to_the_limit(way: str) -> None:
    """An easier way, a harder one and one at home are done without a dose beside them: the limit alone holds."""
    file = "exercises/lift"

    assert said({**session(), file: f"{LIMITS}\n{way}"}) == [
        ("error", "exercises/lift.yml", "lift: '16 kg' is beyond the limit of 14 kg")
    ]
    assert said({**session(), file: f"{LIMITS}\n{way.replace('16', '12')}"}) == []


def test_words_beside_another_exercise_keep_to_its_limit() -> None:
    """How to do the harder exercise is about that one."""
    lift = f"{LIMITS}\nharder: [{{exercise: row, how: With 16 kg.}}]"
    row = "name: Row\npattern: pull\nlimits: {load: %s kg}"

    assert said({**session(), "exercises/lift": lift, "exercises/row": row % 20}) == []
    assert [one[2] for one in said({**session(), "exercises/lift": lift, "exercises/row": row % 15})] == [
        "row: '16 kg' is beyond the limit of 15 kg"
    ]


def test_what_only_warns_may_say_any_number() -> None:
    """A caution names the weight from which someone should ask."""
    file = "exercises/lift"

    assert said({**session(), file: f"{LIMITS}\ncautions: [Ask a clinician before you lift 30 kg.]"}) == []


STEPS = [
    # a step of a warm-up in words, how grave, what is said
    ("{do: Walk., reps: 8}", None, ""),
    ("{do: Squat slowly., reps: 40}", None, ""),
    ("{do: A lift with 16 kg., reps: 8}", "error", "'16 kg' is beyond the limit of 14 kg"),
    ("{do: A lift or two., reps: 20}", "error", "20 reps of it in words are beyond the limit of 12"),
    ("{do: A lift or two., reps: 2}", "warning", "a step in words speaks of it, and its limits do not count that"),
]


@pytest.mark.parametrize(("step", "severity", "message"), STEPS)
def test_a_step_in_words_that_speaks_of_a_limited_exercise(step: str, severity: str | None, message: str) -> None:
    """It is written as the exercise, so that everything counts it; beyond a limit it is an error at once."""
    found = said({**session(), "routines/warm": f"exercises: [{{do: Walk., work: 5 min}}, {step}]"})

    assert found == ([(severity, "routines/warm.yml", f"lift: {message}")] if severity else [])


def test_a_jump_has_no_weight_in_its_words() -> None:
    """Where nobody limited the load of a jump, a note about kilograms is one of a weight on a jump."""
    hop = "name: Hop\npattern: jump\nkit: [mat]"
    blocks = "blocks: [{kind: straight, sets: 2, exercises: [{exercise: hop, reps: 5, note: Hold 4 kg.}]}]"

    assert [one[0] for one in said({"exercises/hop": hop, "sessions/only": blocks})] == ["error"]


def test_a_doubt_can_be_accepted_and_a_limit_cannot() -> None:
    """A coach may stand by a number above the dose, and not by one above the limit."""
    accept = "accept: [{rule: words-beyond-dose, why: A test.}]"
    verdicts = {
        kg: make.verdict(make.programme({"plans/plan": PHASES, **session(f"The {kg} kg bell.", whole=accept)}))
        for kg in (12, 16)
    }

    assert [one.finding.rule for one in verdicts[12].accepted] == [RULE]
    assert verdicts[16].accepted == ()
    assert RULE in {f.rule for f in verdicts[16].findings if f.severity == "error"}
