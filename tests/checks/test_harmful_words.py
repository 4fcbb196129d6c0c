"""Texts that ask for something harmful, and those that warn of it. Common practice, no source."""

import pytest

from setwright.checks.harmful_words import harmful_phrase
from setwright.checks.texts import instructions
from support import make

HARMFUL = [
    ("Hold your breath and lift.", "Hold your breath"),
    ("Take air, then keep holding your breath until the top.", "holding your breath"),
    ("Lift without breathing.", "without breathing"),
    ("Go on until you drop.", "until you drop"),
    ("Squeeze until your legs give out.", "until your legs give out"),
    ("Repeat to exhaustion.", "to exhaustion"),
    ("Work through the pain.", "through the pain"),
    ("Ignore any pain in the shin.", "Ignore any pain"),
    ("Pull until it hurts.", "until it hurts"),
    ("No pain, no gain.", "No pain, no gain"),
    ("Some pain in the knee is fine.", "Some pain in the knee is fine"),
    ("Keep going even if it hurts.", "Keep going even if it hurts"),
    ("Bounce a little at the end of each stretch.", "Bounce a little at the end of each stretch"),
    ("Do not breathe until you stand.", "Do not breathe until"),
    ("Lower the bar behind your neck.", "Lower the bar behind your neck"),
    ("Do not hurry. Hold your breath.", "Hold your breath"),  # what warns stands in another sentence
]
HARMLESS = [
    "Breathe lightly and steadily. Hum the beat, if you tend to hold your breath.",
    "Count aloud, and you cannot hold your breath.",
    "Never go on until you drop.",
    "Stop before you work through the pain.",
    "Hold the kettlebell close to your chest.",
    "Walk through the hall until you are warm.",
    "Drop the heel slowly.",
    "Take a fresh breath at the top.",
    "Hold the pole with one hand behind your neck.",
    "Pain is a sign to stop.",
]


@pytest.mark.parametrize(("text", "phrase"), HARMFUL)
def test_a_text_that_asks_for_something_harmful(text: str, phrase: str) -> None:
    """The phrase is named, so that the coach finds it."""
    assert harmful_phrase(text) == phrase


@pytest.mark.parametrize("text", HARMLESS)
def test_a_text_that_warns_or_says_something_else(text: str) -> None:
    """A warning may use the same words."""
    assert harmful_phrase(text) is None


def test_a_fault_may_be_described() -> None:
    """What goes wrong is told in its own words; what to do about it is an instruction."""
    fault = "faults: [{sign: %s, fix: %s}]"
    held, fine = "You hold your breath.", "Count aloud."
    signs, fixes = (
        [f.rule for f in make.verdict(make.programme({"exercises/lift": fault % pair})).findings]
        for pair in ((held, fine), (fine, held))
    )

    assert (signs, fixes) == ([], ["harmful-words"])


def test_every_kind_of_text_is_read() -> None:
    """Exercises, sessions, routines and plans, down to a note and the reason for a change."""
    files = {
        "exercises/lift": "{harder: [{how: Hold your breath A.}], at_home: {use: a bag, how: Hold your breath B.}}",
        "sessions/only": "{note: Hold your breath C., blocks: [{kind: straight, sets: 3, note: Hold your breath D., "
        "exercises: [{exercise: lift, reps: 8, note: Hold your breath E.}]}]}",
        "routines/warm": "{when: Hold your breath F., exercises: [{do: Hold your breath G., work: 5 min}]}",
        "plans/plan": "{aim: Hold your breath H., "
        "changes: [{week: 2, day: monday, skip: true, why: Hold your breath I.}]}",
    }
    found = [text[-2] for _, _, text, _ in instructions(make.programme(files)) if "Hold your breath" in text]

    assert sorted(found) == list("ABCDEFGHI")


@pytest.mark.parametrize(
    ("note", "found"),
    [
        ("Barefoot, please.", ["harmful-words"]),
        ("With your eyes closed.", ["harmful-words"]),
        ("Never barefoot.", []),
        ("In shoes, eyes ahead.", []),
    ],
)
def test_bare_feet_and_closed_eyes_do_not_go_with_jumps(note: str, found: list[str]) -> None:
    """A landing in the dark is a fall; what stands on both feet may close its eyes."""
    session = "blocks: [{kind: straight, sets: 3, rest: 2 min, exercises: [{exercise: lift, reps: 5, note: '%s'}]}]"

    def of(pattern: str) -> list[str]:
        files = {"exercises/lift": f"pattern: {pattern}", "sessions/only": session % note}
        return [f.rule for f in make.verdict(make.programme(files)).findings if f.rule == "harmful-words"]

    assert of("jump") == found
    assert of("squat") == []
