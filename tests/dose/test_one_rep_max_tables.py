"""Tables over 1RM: as long as a club's members need them, once on a sheet, and known below their first row."""

from fractions import Fraction

from setwright.dose.bands import choice_at
from setwright.dose.resolve import resolve
from setwright.dose.resolved import Take
from setwright.handouts.session import session_data
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from setwright.pages.settings import lifts
from support import make

BAR = (
    "kit: {barbell: {bar: 20 kg, pairs: [1.25 kg, 2.5 kg, 5 kg, 10 kg, 15 kg, 20 kg, 25 kg, 25 kg]}, "
    "kettlebell: [4 kg, 8 kg]}"
)
SESSION = (
    "blocks: [{kind: straight, sets: 3, rest: 2 min, exercises: [{exercise: lift, reps: 5, load: 70 % 1RM}, "
    "{exercise: press, reps: 5, load: 70 % 1RM}, {exercise: swing, reps: 8, load: 8 kg}]}]"
)
FILES = {
    "club": BAR,
    "exercises/lift": "{name: Deadlift, kit: [barbell]}",
    "exercises/press": "{name: Press, kit: [barbell]}",
    "exercises/swing": "{name: Swing, kit: [kettlebell]}",
    "sessions/only": SESSION,
}


def take(**club: str) -> Take:
    """Return what to take for 70 % of 1RM."""
    made = make.programme(FILES | {"club": "\n".join((BAR, *(f"{key}: {value}" for key, value in club.items())))})
    return next(resolve(made)[0].sessions).blocks[0].items[0].takes[0]


def test_a_table_ends_where_the_club_says_or_at_200_kg() -> None:
    """The bar and all discs are 227.5 kg, 70 % of 325 kg, which nobody of the club lifts. 200 kg: common practice."""
    assert take().shown[-1].to_kg == 200
    assert take(one_rep_max="{to: 120 kg}").shown[-1].to_kg == 120


def test_a_table_begins_with_the_lightest_weight_or_where_the_club_says() -> None:
    """70 % of 28.6 kg is the bar alone; a club of stronger members begins at 50 kg."""
    assert take().shown[0].from_kg == Fraction(20) * 100 / 70
    assert take(one_rep_max="{from: 50 kg, to: 120 kg}").shown[0].from_kg == 50


def test_below_its_first_row_the_rule_still_gives_a_weight() -> None:
    """Of a 1RM of 25 kg, 70 % is 17.5 kg: the bar of 20 kg is within a quarter. Of 20 kg, it is clearly too heavy."""
    bands = take().bands

    assert choice_at(bands, Fraction(25)).weight_kg == 20  # type: ignore[union-attr]
    assert choice_at(bands, Fraction(20)).weight_kg is None  # type: ignore[union-attr]


def test_best_lifts_are_asked_for_where_a_load_is_a_share_of_1rm() -> None:
    """Two lifts of three are; the swing has a weight for everyone."""
    made = make.programme(FILES)

    assert lifts(Site(made, resolve(made))) == [("lift", "Deadlift"), ("press", "Press")]


def test_a_table_stands_once_on_a_sheet() -> None:
    """The press is loaded like the deadlift: its line points at the table that stands there."""
    made = make.programme(FILES)
    site = Site(made, resolve(made))
    session = next(site.plans[0].sessions)
    first, second, _ = session_data(Desk(site), site.plans[0], session)["blocks"][0]["items"]

    assert first["loads"][0]["bands"]
    assert second["loads"][0]["bands"] == []
    assert second["loads"][0]["take"] == "Your 1RM, and what to take: the table at Deadlift."
