"""Help and added weights as members read them: on page, sheet and phone, in changes, limits and explanations."""

from fractions import Fraction

import pytest

from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedItem
from setwright.model.load import parse_load
from setwright.model.programme import Programme
from setwright.outline.site import Site
from setwright.phone.session_data import data
from setwright.wording.changes import in_a_line
from setwright.wording.explain import derivation
from setwright.wording.items import item_words
from setwright.wording.language import ENGLISH
from setwright.wording.limits import bound, limits_set
from setwright.wording.loads import load
from support import make

STACK = "kit: {stack: {from: 5 kg, to: 40 kg, step: 5 kg}, band: [medium], mat: 2}"


def first(written: str, limits: str = "", kit: str = "[stack]") -> tuple[Programme, ResolvedItem]:
    """Return a programme of one exercise with a load, and the exercise in its first week."""
    made = make.programme(
        {
            "club": STACK,
            "exercises/lift": f"kit: {kit}" + (f"\nlimits: {{load: {limits}}}" if limits else ""),
            "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: "
            f"[{{exercise: lift, reps: 6, load: {written}}}]}}]",
        }
    )
    return made, next(resolve(made)[0].sessions).blocks[0].items[0]


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("15 kg of help", "15 kg of help"),
        ("20 % bodyweight of help", "20 % of body weight as help"),
        ("medium band of help", "medium band as help"),
        ("bodyweight + 5 kg", "5 kg added to your own weight"),
        ("bodyweight + 10 lb", "10 lb added to your own weight"),
    ],
)
def test_a_load_in_words(written: str, said: str) -> None:
    """What it does stands with the number, so that nobody takes help for a weight to lift."""
    assert load(ENGLISH, parse_load(written)) == said


def test_a_table_of_help_says_that_it_is_one() -> None:
    """Its title and its label speak of help; 20 % of 40 to 62 kg is nearest 10 kg, on a tie the heavier."""
    made, item = first("20 % bodyweight of help")
    words = item_words(ENGLISH, item, None, made.club.units).loads[0]

    assert words.bands is not None
    assert words.bands.title == "Your body weight, and how much help to set:"
    assert (words.bands.rows[0].span, words.bands.rows[0].take) == ("40–62", "10 kg")


@pytest.mark.parametrize(
    ("written", "limits", "kit", "said"),
    [
        ("13 kg of help", "", "[stack]", "Set 15 kg of help, the nearest that the club owns."),
        ("60 kg of help", "", "[stack]", "The club owns nothing that helps enough: do the easier option."),
        (
            "20 % bodyweight of help",
            "",
            "[mat]",
            "Multiply your body weight by 20 and divide by 100. Take no less help",
        ),
    ],
)
def test_what_to_set(written: str, limits: str, kit: str, said: str) -> None:
    """The nearest help, none that is too little, or a way to work it out where no kit comes in weights."""
    made, item = first(written, limits, kit)
    take = item_words(ENGLISH, item, None, made.club.units).loads[0].take

    assert "".join(piece.text for piece in take).startswith(said)


def test_a_limit_in_words() -> None:
    """A weight on a movement that lifts the body is said as added to it; a least help, as what to keep."""
    made, _ = first("20 kg of help", "15 kg of help")
    limits = made.exercises["lift"].limits
    plain = make.exercise("limits: {load: 20 kg, top_effort: RPE 8}").limits

    assert [row.said for row in limits_set(ENGLISH, limits)] == ["at least 15 kg of help"]
    assert bound(ENGLISH, limits, [parse_load("40 % bodyweight of help")]) == "Never with less than 15 kg of help."
    added = bound(ENGLISH, plain, [parse_load("bodyweight + 15 kg")])
    assert added == "Never more than 20 kg added to your own weight."
    assert bound(ENGLISH, plain, [parse_load("15 kg")]) is None


def test_less_help_is_called_so() -> None:
    """A step from 20 to 15 kg is 5 kg less help, not 5 kg lighter."""
    made = make.programme(
        {
            "club": STACK,
            "exercises/lift": "kit: [stack]",
            "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 6, "
            "load: 20 kg of help, "
            "progress: {load: {take: 5 kg of help, down_to: 10 kg of help}}}]}]",
        }
    )
    second = resolve(made)[0].weeks[1].sessions[0].blocks[0].items[0]

    assert in_a_line(ENGLISH, second.changes) == "5 kg less help"


@pytest.mark.parametrize("written", ["20 % bodyweight of help", "20 kg of help"])
def test_the_last_line_of_an_explanation_is_what_the_page_says(written: str) -> None:
    """For a member of 75 kg, 20 % are 15 kg: the stack has it; so it has 20 kg."""
    made, item = first(written)
    session = next(resolve(made)[0].sessions)
    last = derivation(ENGLISH, made, session, item, Fraction(75))[-1].says

    assert last.startswith("Set 15 kg" if "%" in written else "Set 20 kg")


def test_the_phone_knows_what_a_load_does() -> None:
    """Help and what is added are told apart from a weight in the hand by a code, and not by words."""
    ways = {}
    for written in ("20 kg of help", "bodyweight + 5 kg", "5 kg", "20 % bodyweight of help"):
        made, _ = first(written)
        site = Site(made, resolve(made))
        shown = data(site, site.plans[0], next(site.plans[0].sessions)).blocks[0].items[0].loads[0]
        ways[written] = shown.way

    assert list(ways.values()) == ["help", "added", None, "help"]
