"""Help takes weight off the body: less of it is harder. A weight may be added to the body instead."""

from fractions import Fraction
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.bands import Limit, choice_at, load_bands
from setwright.dose.exposure import lifted
from setwright.dose.loads import NEAR_KG, NEAR_SHARE, choose_help
from setwright.dose.resolve import resolve
from setwright.model.load import AddedWeight, HelpShare, HelpWeight, demand, magnitude, parse_load
from support import make

STACK = [Fraction(n) for n in (5, 10, 15, 20, 30, 40)]
loads = st.fractions(Fraction(1), Fraction(60), max_denominator=20)
stacks = st.lists(st.sampled_from(STACK), min_size=1, unique=True).map(sorted)


def test_each_form_is_read_and_written_alike() -> None:
    """A coach's form comes back as it was; an added weight is a weight of its own kind."""
    forms = ["15 kg of help", "33 lb of help", "20 % bodyweight of help", "bodyweight + 5 kg", "medium band of help"]

    assert [str(parse_load(form)) for form in forms] == forms
    assert parse_load("15 kg of help") == HelpWeight(Fraction(15))
    assert parse_load("20 % bodyweight of help") == HelpShare(Fraction(20))
    assert parse_load("bodyweight + 5 kg") == AddedWeight(Fraction(5)) != parse_load("5 kg")


def test_less_help_asks_for_more() -> None:
    """In order of demand: the most help first, as a physiotherapist would rank them."""
    helps = sorted(map(parse_load, ("10 kg of help", "30 kg of help", "20 kg of help")), key=demand)

    assert [magnitude(one) for one in helps] == [30, 20, 10]


def test_on_a_tie_the_member_gets_more_help() -> None:
    """12.5 kg lies between 10 and 15 kg: 15 kg helps more. 11 kg is nearer to 10 kg."""
    assert choose_help(Fraction(25, 2), STACK).weight_kg == 15
    assert choose_help(Fraction(11), STACK).weight_kg == 10
    assert choose_help(Fraction(11), STACK, least_kg=Fraction(11)).weight_kg == 15
    assert choose_help(Fraction(60), STACK).weight_kg is None
    assert choose_help(Fraction(35), STACK, least_kg=Fraction(50)).fit == "over-limit"


@given(loads, stacks, st.none() | loads)
def test_help_is_never_below_the_limit_nor_clearly_too_little(
    exact: Fraction, owned: list[Fraction], least: Fraction | None
) -> None:
    """Whatever is owned, a member gets at least the limit's help, and what is prescribed but for a near miss."""
    chosen = choose_help(exact, owned, least).weight_kg

    if chosen is None:
        enough = [w for w in owned if w >= exact - max(NEAR_KG, NEAR_SHARE * exact)]
        assert not enough or (least is not None and all(w < least for w in owned))
    else:
        assert chosen in owned
        assert least is None or chosen >= least
        assert chosen >= exact - max(NEAR_KG, NEAR_SHARE * exact)


@given(st.integers(5, 60), stacks, st.none() | st.integers(5, 60), st.fractions(40, 110, max_denominator=8))
def test_bands_of_help_are_the_direct_choice_at_every_body_weight(
    percent: int, owned: list[Fraction], least: int | None, body_weight: Fraction
) -> None:
    """The table says what rounding each member's help directly says, and help never falls as members get heavier."""
    limit = Limit(percent=None if least is None else Fraction(least))
    bands = load_bands(Fraction(percent), owned, Fraction(40), Fraction(110), limit, helps=True)
    direct = choose_help(percent * body_weight / 100, owned, limit.at(body_weight))

    assert choice_at(bands, body_weight) == direct
    helps = [band.choice.weight_kg for band in bands if band.choice.weight_kg is not None]
    assert all(lighter <= heavier for lighter, heavier in pairwise(helps))


def session_of(load: str, progress: str = "") -> dict[str, str]:
    """Return a session of one exercise with a load, on a stack of weights."""
    return {
        "club": "kit: {stack: {from: 5 kg, to: 60 kg, step: 5 kg}}",
        "exercises/lift": "kit: [stack]",
        "sessions/only": f"blocks: [{{kind: straight, sets: 3, exercises: [{{exercise: lift, reps: 6, load: {load}"
        f"{progress}}}]}}]",
    }


def test_a_lighter_week_never_takes_help_away() -> None:
    """At 80 % of the load, help stays as it is; a weight added to the body shrinks."""
    lighter = "phases: [{name: A, aim: B., weeks: 2, sessions: {monday: only}, lighter: {weeks: [2], load: 80 %}}]"
    helped = make.resolved(session_of("20 kg of help") | {"plans/plan": lighter})
    added = make.resolved(session_of("bodyweight + 10 kg") | {"plans/plan": lighter})

    assert [str(week.sessions[0].blocks[0].items[0].dose.heaviest) for week in helped.weeks] == ["20 kg of help"] * 2
    assert [magnitude(week.sessions[0].blocks[0].items[0].dose.loads[0]) for week in added.weeks] == [10, 8]


def test_a_taper_leaves_out_the_sets_with_most_help() -> None:
    """Its loads stay: of three sets, the hardest one is kept, which has the least help."""
    taper = "phases: [{name: A, aim: B., weeks: 1, sessions: {monday: only}, taper: {sets: [40 %]}}]"
    load = "[20 kg of help, 10 kg of help, 15 kg of help]"
    plan = make.resolved(session_of(load) | {"plans/plan": taper})

    assert [str(one) for one in plan.weeks[0].sessions[0].blocks[0].items[0].dose.loads] == ["10 kg of help"]


def test_help_is_not_lifted_and_what_is_added_is() -> None:
    """Eighteen repetitions with 10 kg added are 180 kg; help adds no kilograms to a week."""
    files = session_of("10 kg of help"), session_of("bodyweight + 10 kg")
    doses = [next(resolve(make.programme(one))[0].sessions).blocks[0].items[0].dose for one in files]

    assert [lifted(dose).fixed_kg for dose in doses] == [0, 180]


def test_a_step_of_an_added_weight_may_be_said_plainly() -> None:
    """'add: 5 kg' climbs from the body and 5 kg to the body and 15 kg."""
    step = ", progress: {load: {add: 5 kg, up_to: bodyweight + 15 kg}}"
    plan = make.resolved(session_of("bodyweight + 5 kg", step))
    said = [str(week.sessions[0].blocks[0].items[0].dose.heaviest) for week in plan.weeks]

    assert said == ["bodyweight + 5 kg", "bodyweight + 10 kg", "bodyweight + 15 kg", "bodyweight + 15 kg"]
