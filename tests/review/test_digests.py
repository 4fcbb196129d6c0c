"""A digest stands for what a reviewer reads: other words change it, other spaces do not."""

import hashlib
from pathlib import Path

import pytest

from setwright.model.exercise import Exercise
from setwright.review.first_form import first_digest_of
from setwright.review.parts import FIELDS, PARTS, digest_of, lines_of
from setwright.source.read import read
from setwright.source.tree import read_tree
from support import make

SQUAT = """
name: Goblet squat
pattern: squat
regions: {main: [quadriceps, glutes]}
kit: [kettlebell]
tempo: 3-0-1-0
why: For strong legs.
set_up: [Stand tall.]
steps: [Sit down., Stand up.]
breathing: Out on the way up.
faults: [{sign: The heels rise., fix: Go less deep.}]
cues: [Tall, Slow]
cautions: [Ask first if a knee hurts.]
stop_if: [The knee locks.]
limits: {load: 20 % bodyweight, reps: 12, weekly_step: 10 %}
"""

LIMITS = "limits: {load: 20 % bodyweight, reps: 12, weekly_step: 10 %}\n"


def exercise(text: str) -> Exercise:
    """Read an exercise from the text of its file."""
    tree = read_tree("exercise.yml", text.encode())
    if tree.root is None or tree.findings:
        raise ValueError(tree.findings)
    return Exercise.model_validate(tree.root.data())


def changed(text: str) -> set[str]:
    """Return the parts whose digests differ from those of the squat."""
    before, after = exercise(SQUAT), exercise(text)
    return {part for part in PARTS if digest_of(before, part) != digest_of(after, part)}


SAME = {
    "more spaces": SQUAT.replace("cues: [Tall, Slow]", "cues:   [Tall,     Slow]"),
    "one item a line": SQUAT.replace("cues: [Tall, Slow]", "cues:\n  - Tall\n  - Slow"),
    "a folded text": SQUAT.replace("why: For strong legs.", "why: >-\n  For strong\n  legs."),
    "quotes": SQUAT.replace("why: For strong legs.", 'why: "For strong legs."'),
    "a comment": SQUAT.replace("cues:", "# the club's own words\ncues:"),
    "windows line ends": SQUAT.replace("\n", "\r\n"),
    "keys in another order": "\n".join(reversed(SQUAT.strip().split("\n"))),
    "keys of a limit in another order": SQUAT.replace(
        "{load: 20 % bodyweight, reps: 12, weekly_step: 10 %}", "{weekly_step: 10%, reps: 12, load: 20% bodyweight}"
    ),
    "a default written down": SQUAT + "sides: both together\n",
    "an accepted warning": SQUAT + "accept: [{rule: missing-source, why: Common practice.}]\n",
}
OTHER = {
    # an edit, and the one part that it changes
    "a cue": (SQUAT.replace("Slow", "Slowly"), "cues"),
    "the order of cues": (SQUAT.replace("[Tall, Slow]", "[Slow, Tall]"), "cues"),
    "one cue less": (SQUAT.replace("[Tall, Slow]", "[Tall]"), "cues"),
    "two cues made one": (SQUAT.replace("[Tall, Slow]", '["Tall, Slow"]'), "cues"),
    "a step": (SQUAT.replace("Sit down.", "Sit deeper."), "text"),
    "a set-up line that becomes a step": (
        SQUAT.replace("set_up: [Stand tall.]", "set_up: [Feet wide.]").replace("[Sit down.", "[Stand tall., Sit down."),
        "text",
    ),
    "the tempo": (SQUAT.replace("3-0-1-0", "2-0-1-0"), "text"),
    "the sides": (SQUAT + "sides: one at a time\n", "text"),
    "a fault's fix": (SQUAT.replace("Go less deep.", "Go on."), "text"),
    "a source": (SQUAT + "sources: [a-study]\n", "text"),
    "a caution": (SQUAT.replace("a knee hurts", "a hip hurts"), "cautions"),
    "a sign to stop": (SQUAT.replace("locks", "clicks"), "cautions"),
    "a limit": (SQUAT.replace("20 % bodyweight", "21 % bodyweight"), "limits"),
    "a limit's footing": (SQUAT.replace("20 % bodyweight", "20 % bodyweight per hand"), "limits"),
    "no limits any more": (SQUAT.replace(LIMITS, ""), "limits"),
    "whom it is not for": (SQUAT.replace("reps: 12,", "reps: 12, not_for: [Anyone dizzy.],"), "limits"),
    "the earliest phase": (SQUAT.replace("reps: 12,", "reps: 12, earliest_phase: 2,"), "limits"),
    "a figure": (SQUAT + "figure: {poses: [{trunk: 30, knee: 110}]}\n", "figure"),
}


@pytest.mark.parametrize("text", SAME.values(), ids=SAME)
def test_what_a_reader_does_not_see_changes_nothing(text: str) -> None:
    """Spaces, line breaks, quotes, comments and the order of keys leave every digest as it is."""
    assert changed(text) == set()


@pytest.mark.parametrize(("text", "part"), OTHER.values(), ids=OTHER)
def test_an_edit_changes_its_own_part_alone(text: str, part: str) -> None:
    """One edit changes the digest of the part that it is in, and of no other."""
    assert changed(text) == {part}


def test_a_part_that_is_not_there_has_no_digest() -> None:
    """An exercise without a figure says so instead of hashing nothing."""
    assert digest_of(exercise(SQUAT), "figure") == "none"


def test_digests_stay_the_same_from_version_to_version() -> None:
    """These digests are written in clubs' files: a version that changes them makes every review look out of date."""
    assert {part: digest_of(exercise(SQUAT), part) for part in PARTS} == PINNED


FIGURE = "figure: {props: {box: {height: 50 cm}}, poses: [{trunk: 30, knee: {near: 110, far: 20}}]}"
LIMIT = "limits: {hold: 30 s, weekly_step: 12.5 %, weekly_sets: 9, not_for: [Anyone dizzy.]}"
LINES = [
    # place in the file, value in the coach's form, the place without numbers
    ("figure view", "side", "figure view"),
    ("figure props box height", "50.0", "figure props box height"),
    ("figure poses 1 trunk", "30", "figure poses trunk"),
    ("figure poses 1 knee near", "110", "figure poses knee near"),
    ("figure poses 1 knee far", "20", "figure poses knee far"),
    ("limits hold", "30 s", "limits hold"),
    ("limits weekly sets", "9", "limits weekly sets"),
    ("limits weekly step", "12.5 %", "limits weekly step"),
    ("limits not for 1", "Anyone dizzy.", "limits not for"),
]


def test_lines_that_a_digest_is_taken_over() -> None:
    """One value a line, with its unit; what is left out further inside, and stands at its default, has none."""
    made = make.exercise(f"{FIGURE}\n{LIMIT}")
    lines = (*lines_of(made, "figure"), *lines_of(made, "limits"))

    assert [(line.key, line.text, line.field) for line in lines] == LINES


def test_a_digest_is_the_sha_256_of_the_lines_as_json() -> None:
    """Computed here from FIPS 180-4 and RFC 8259: letters of any language count as they stand, in UTF-8."""
    text = '[["cues 1", "Größer"], ["cues 2", "naïve"]]'
    letters = hashlib.sha256(text.encode()).hexdigest()[:12].translate(str.maketrans("0123456789", "ghijklmnop"))

    assert digest_of(make.exercise("cues: [Größer, naïve]"), "cues") == letters


def test_digests_of_the_first_form_stay_the_same_for_ever() -> None:
    """Clubs signed these before loads had a written form of their own: such lines stay valid."""
    first = {part: first_digest_of(exercise(SQUAT), part) for part in PARTS}

    assert first == PINNED | {"limits": "hhhjonipckbh"}


PINNED = {
    "text": "bdngipkaolck",
    "cues": "dloapmhnkblc",
    "cautions": "dlifacleakad",
    "limits": "eccjhefgnbhh",
    "figure": "none",
}


def test_every_key_of_an_exercise_is_reviewed_but_acceptance(example_keys: set[str]) -> None:
    """No key of an exercise is forgotten: each belongs to one part, except the coach's own acceptances."""
    seen = {line.key.split()[0] for part in PARTS for line in lines_of(exercise(SQUAT), part)}
    assigned = [name for names in FIELDS.values() for name in names]

    assert seen <= {name.split("_")[0] for name in assigned}
    assert sorted(assigned) == sorted(example_keys - {"accept"})


@pytest.fixture
def example_keys() -> set[str]:
    """Every key that an exercise may have."""
    return set(Exercise.model_fields)


def test_the_example_has_no_two_exercises_alike() -> None:
    """Digests tell exercises apart."""
    programme = read(Path(__file__).parents[2] / "program").programme
    assert programme is not None
    digests = [digest_of(e, "text") for e in programme.exercises.values()]

    assert len(set(digests)) == len(digests)


def test_make_reads_as_the_tool_does() -> None:
    """The small exercise of other tests has a digest too, without limits."""
    assert digest_of(make.exercise(), "limits") == "none"
