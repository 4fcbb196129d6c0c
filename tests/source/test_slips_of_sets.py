"""A slip in sets, rounds, lists and progressions: one error, with the likely fix."""

from typing import Any

import pytest
from pydantic import ValidationError

from setwright.source.tree import read_tree
from support import make


def refused(session: str) -> tuple[tuple[Any, ...], str, str]:
    """Return where in its block a session is refused, what is said and the hint: of one error, or fail."""
    with pytest.raises(ValidationError) as error:
        make.session(f"blocks: [{session}]")
    (one,) = error.value.errors()
    said = one["ctx"]
    return (*one["loc"][2:], *said["at"]), said["message"], said["hint"]


def straight(written: str, block: str = "") -> str:
    """Return a block of straight sets with one exercise."""
    return f"{{kind: straight, {block} exercises: [{{exercise: lift, {written}}}]}}"


def superset(written: str, block: str = "rounds: 3,") -> str:
    """Return a superset of this exercise and another one."""
    return f"{{kind: superset, {block} exercises: [{{exercise: lift, {written}}}, {{exercise: pull, reps: 8}}]}}"


LENGTHS = [
    (
        superset("reps: [12, 10, 8]", "rounds: 3, progress: {rounds: {weeks: [3, 4]}},"),
        ("progress", "rounds"),
        "the rounds grow, and a list of each of them does not",
        "let the rounds stay, or write no list",
    ),
    (
        straight("reps: [12, 10, 8]", "progress: {sets: {weeks: [3, 4]}},"),
        ("progress", "sets"),
        "the sets grow, and a list of each of them does not",
        "let the sets stay, or write no list",
    ),
    (
        superset("reps: [12, 10, 8, 8]"),
        ("exercises", 0, "reps"),
        "this list has 4 entries, the superset has 3 rounds",
        "write 3 entries, or 'rounds: 4'",
    ),
    (
        straight("reps: [12, 10]", "sets: 3,"),
        ("exercises", 0, "reps"),
        "this list has 2 entries, the block's 'sets' says 3",
        "write 3 entries, or 'sets: 2' beside the list",
    ),
    (
        straight("sets: 4, reps: [12, 10]"),
        ("exercises", 0, "reps"),
        "this list has 2 entries, 'sets' says 4",
        "leave 'sets' out, and the list says how many; or write 4 entries",
    ),
    (
        straight("reps: [12, 10, 8], load: [8 kg, 10 kg]"),
        ("exercises", 0, "load"),
        "this list has 2 entries, the list of 'reps' has 3",
        "one entry for each set: write 3",
    ),
]


@pytest.mark.parametrize(("session", "where", "said", "hint"), LENGTHS)
def test_a_list_of_another_length_names_the_other_number(
    session: str, where: tuple[Any, ...], said: str, hint: str
) -> None:
    """Whatever else says how many sets there are is named with its number, and what would make the two agree."""
    assert refused(session) == (where, said, hint)


@pytest.mark.parametrize(
    ("load", "key", "written", "step"),
    [
        ("40 kg", "add", "5 %", "2 kg"),
        ("10 kg per hand", "add", "5 %", "0.5 kg per hand"),
        ("50 lb", "add", "10%", "5 lb"),
        ("[40 kg, 50 kg]", "add", "5 %", "2 kg"),
        ("15 % bodyweight", "add", "5 %", "5 % bodyweight"),
        ("5 % bodyweight per hand", "add", "1 %", "1 % bodyweight per hand"),
        ("60 % 1RM", "add", "2.5 %", "2.5 % 1RM"),
        ("RPE 6", "add", "5 %", "RPE 0.5"),
    ],
)
def test_a_step_in_percent_is_told_in_the_unit_of_the_load(load: str, key: str, written: str, step: str) -> None:
    """5 % of 40 kg are 2 kg (computed); beside a share of something, the same is named again."""
    where, said, hint = refused(
        straight(f"reps: 8, load: {load}, progress: {{load: {{{key}: {written}, up_to: 80 kg}}}}", "sets: 2,")
    )

    assert where == ("exercises", 0, "progress", "load", key)
    assert said.endswith(f"this is '{written}' of nothing named")
    assert hint == f"write it in the load's own unit, such as '{step}'"


def test_the_step_after_then_likewise() -> None:
    """The load that rises when another climb has reached its end is of the load's unit too."""
    progress = "progress: {reps: {add: 1, up_to: 10}, then: {load: {add: 5 %, up_to: 60 kg}}}"
    where, _, hint = refused(straight(f"reps: 8, load: 40 kg, {progress}", "sets: 2,"))

    assert where == ("exercises", 0, "progress", "then", "load", "add")
    assert hint.endswith("such as '2 kg'")


def test_a_list_of_weeks_that_is_a_list_of_sets() -> None:
    """The loads of the sets, written once for all weeks, are no loads of weeks."""
    where, said, hint = refused(straight("reps: 8, load: [40 kg, 45 kg], progress: {load: {weeks: [40 kg, 45 kg]}}"))

    assert where == ("exercises", 0, "progress", "load", "weeks")
    assert said == "the dose beside it is a list of sets, and this is one list for all weeks"
    assert hint == "write a list for each week: '[[40 kg, 45 kg], [...]]'"


@pytest.mark.parametrize(
    ("written", "where", "said"),
    [
        (
            "reps: 8 to 12, progress: {reps: {add: 1, up_to: 12}}",
            ("reps", "up_to"),
            "the start already reaches 'up_to'",
        ),
        (
            "reps: 8, load: 10 kg, progress: {load: {add: 1 kg, up_to: 10 kg}}",
            ("load", "up_to"),
            "the start already reaches 'up_to'",
        ),
        (
            "reps: 8, rest: 60 s, progress: {rest: {take: 5 s, down_to: 60 s}}",
            ("rest", "down_to"),
            "the start already reaches 'down_to'",
        ),
        (
            "reps: 8, load: 3 kg, progress: {load: {weeks: [3 kg], again: true}}",
            ("load", "again"),
            "a list of one week has nothing to start over",
        ),
    ],
)
def test_a_progression_that_never_moves(written: str, where: tuple[str, ...], said: str) -> None:
    """What begins at its end is a slip, and so is a wave of one week."""
    found = refused(straight(written, "sets: 3,"))

    assert found[:2] == (("exercises", 0, "progress", *where), said)
    assert found[2]


def test_a_progression_one_step_long() -> None:
    """From 11 to 12 there is one step, and of two weeks one to start over."""
    assert make.session(f"blocks: [{straight('reps: 8 to 11, progress: {reps: {add: 1, up_to: 12}}', 'sets: 3,')}]")
    assert make.session(f"blocks: [{straight('reps: 8, progress: {reps: {weeks: [8, 9], again: true}}', 'sets: 3,')}]")


@pytest.mark.parametrize(
    ("phase", "where", "hint"),
    [
        ("weeks: 2, taper: {sets: 50 %}", ("taper", "sets"), "write a percentage for each week: '[50 %, 50 %]'"),
        (
            "weeks: 2, taper: {sets: '60 %, 40 %'}",
            ("taper", "sets"),
            "write a percentage for each week: '[60 %, 40 %]'",
        ),
        (
            "weeks: 4, lighter: {weeks: 4, sets: 60 %}",
            ("lighter", "weeks"),
            "write the numbers of the weeks as a list: '[4]'",
        ),
        (
            "weeks: 8, lighter: {weeks: 4 and 8, sets: 60 %}",
            ("lighter", "weeks"),
            "write the numbers of the weeks as a list: '[4, 8]'",
        ),
        ("weeks: 4, lighter: {weeks: [1 week], sets: 60 %}", ("lighter", "weeks", 0), "a bare number is enough: 1"),
    ],
)
def test_weeks_of_a_phase_are_listed(phase: str, where: tuple[Any, ...], hint: str) -> None:
    """A taper lists what remains week by week, a lighter phase which weeks: the hint writes the list."""
    with pytest.raises(ValidationError) as error:
        make.plan(f"phases: [{{name: One, aim: To go on., sessions: {{monday: only}}, {phase}}}]")
    (one,) = error.value.errors()

    assert (*one["loc"][2:], *one["ctx"]["at"]) == where
    assert one["ctx"]["hint"] == hint


@pytest.mark.parametrize(
    ("line", "column", "said", "hint"),
    [
        ("{reps: 8, 8, 6}", 8, "8, 8, 6", "write '[8, 8, 6]', or put it in quotes if it is one text"),
        ("{reps: 8, 8, 8, load: 10 kg}", 8, "8, 8, 8", "write '[8, 8, 8]', or put it in quotes if it is one text"),
        ("{load: RPE 7, RPE 8}", 8, "RPE 7, RPE 8", "write '[RPE 7, RPE 8]', or put it in quotes if it is one text"),
        (
            "{load: light band, medium band}",
            8,
            "light band, medium band",
            "write '[light band, medium band]', or put it in quotes if it is one text",
        ),
        ("{load: 8,5 kg}", 8, "8,5 kg", "write a point, not a comma: '8.5 kg'; or a list: '[8, 5 kg]'"),
        ("[{reps: 8 }, {reps: 9, 7 }]", 21, "9, 7", "write '[9, 7]', or put it in quotes if it is one text"),
    ],
)
def test_a_list_without_brackets(line: str, column: int, said: str, hint: str) -> None:
    """Inside braces a comma ends a value: one error for all that spilled over, not one for each entry."""
    (one,) = read_tree("a.yml", f"a: 1\nb: {line}\n".encode()).findings

    assert (one.position.line, one.position.column, one.rule) == (2, column + 3, "list-without-brackets")
    assert (one.message, one.hint) == (f"a comma inside braces ends a value: '{said}'", hint)


def test_other_slips_of_the_line_are_told_too() -> None:
    """A key left empty before or after such a list, or in the line below, is a slip of its own."""
    text = "a: {one: , reps: 8, 6, two: }\nb: {three: }\n"
    found = sorted(read_tree("a.yml", text.encode()).findings)

    assert [(one.position.line, one.position.column, one.rule) for one in found] == [
        (1, 5, "no-value"),
        (1, 18, "list-without-brackets"),
        (1, 24, "no-value"),
        (2, 5, "no-value"),
    ]
