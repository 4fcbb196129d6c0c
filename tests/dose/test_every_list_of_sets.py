"""Properties of any list of sets: lighter weeks, tapers, owned weights, limits, and how a dose came about."""

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.bands import choice_at
from setwright.dose.dose import Dose
from setwright.dose.loads import choose_weight, share_kg
from setwright.dose.open_ended import most_in
from setwright.dose.prescribing import lightened
from setwright.dose.resolve import resolve
from setwright.dose.week_kind import Remains
from setwright.model.load import BodyWeightShare, magnitude
from setwright.wording.doses import dose_in_words
from setwright.wording.explain import history
from setwright.wording.language import ENGLISH
from support.make import dose, one_exercise, programme, verdict

KETTLEBELLS = [Fraction(kg) for kg in (4, 6, 8, 10, 12, 16, 20, 24)]
REPS = st.one_of(
    st.integers(1, 15).map(str),
    st.tuples(st.integers(1, 8), st.integers(9, 15)).map(lambda ends: f"{ends[0]} to {ends[1]}"),
    st.just("as many as possible"),
)
KINDS = {"bodyweight": st.integers(5, 30), "1RM": st.integers(40, 95), "kg": st.integers(4, 24)}


@st.composite
def lists_of_sets(draw: st.DrawFn) -> str:
    """Draw what a coach may write for sets that differ: amounts, loads of one kind, warm-up sets and rests."""
    count = draw(st.integers(2, 5))
    reps = draw(st.lists(REPS, min_size=count, max_size=count))
    kind = draw(st.sampled_from(sorted(KINDS)))
    unit = "kg" if kind == "kg" else f"% {kind}"
    loads = draw(st.lists(KINDS[kind], min_size=count, max_size=count))
    parts = [f"reps: [{', '.join(reps)}]", f"load: [{', '.join(f'{load} {unit}' for load in loads)}]"]
    if "as many as possible" in reps:
        parts.append(f"leave: {draw(st.integers(2, 4))} reps")
        if draw(st.booleans()):
            parts.append(f"up_to: {draw(st.integers(1, 20))}")
    if draw(st.booleans()):
        parts.append(f"ramp: {draw(st.integers(1, 4))}")
    if count > 2 and draw(st.booleans()):
        rests = draw(st.lists(st.integers(3, 12), min_size=count - 1, max_size=count - 1))
        parts.append(f"rest: [{', '.join(f'{rest * 10} s' for rest in rests)}]")
    return f"{{{', '.join(parts)}}}"


SHARES = st.integers(10, 100).map(Fraction)


def read(written: str) -> Dose:
    return dose(written, block="{kind: straight}")


@given(lists_of_sets(), SHARES, SHARES, SHARES)
def test_a_lighter_week_makes_no_set_heavier_and_none_longer(
    written: str, sets: Fraction, reps: Fraction, load: Fraction
) -> None:
    """Each set that stays is the one that stood in its place, with no more weight and no more repetitions."""
    whole = read(written)
    left = lightened(whole, Remains("lighter", sets, reps, load))

    assert 1 <= left.count <= whole.count
    for was, now in zip(whole.working, left.working, strict=False):
        assert was.load is not None
        assert now.load is not None
        assert magnitude(now.load) <= magnitude(was.load)
        assert now.amount.high <= was.amount.high
        assert now.amount.low <= was.amount.low
        assert (most_in(now.amount) or now.amount.high) <= (most_in(was.amount) or was.amount.high)
        assert now.rest_s == was.rest_s


@given(lists_of_sets(), SHARES)
def test_a_taper_raises_nothing(written: str, sets: Fraction) -> None:
    """Fewer sets, one at least, each as it was and in its order, and none that is left out is heavier than all kept."""
    whole = read(written)
    left = lightened(whole, Remains("taper", sets=sets))
    heaviest = [max(magnitude(one.load) for one in part.working if one.load) for part in (whole, left)]

    assert 1 <= left.count <= whole.count
    assert heaviest[0] == heaviest[1]
    places = iter(whole.working)
    assert all(any(one == kept for one in places) for kept in left.working)


@given(st.lists(st.integers(2, 40), min_size=2, max_size=5), st.integers(40, 110))
def test_the_bands_of_every_set_are_the_direct_choice(percents: list[int], body_weight: int) -> None:
    """At every body weight, each set of a list takes what its own share would take alone."""
    loads = ", ".join(f"{percent} % bodyweight" for percent in percents)
    item = next(
        resolve(one_exercise(f"{{reps: 5, load: [{loads}]}}", "{kind: straight}"))[0].weeks[0].sessions[0].items
    )

    for one in item.dose.working:
        take = item.take_of(one.load)
        assert take is not None
        assert isinstance(one.load, BodyWeightShare)
        direct = choose_weight(share_kg(one.load.percent, Fraction(body_weight)), KETTLEBELLS)
        assert choice_at(take.bands, Fraction(body_weight)) == direct


@given(lists_of_sets(), st.integers(1, 15), st.integers(4, 24))
def test_nothing_in_a_list_passes_a_limit(written: str, most_reps: int, most_kg: int) -> None:
    """Either the dose is refused, or no set, range end, warm-up set or open end passes the limit."""
    limits = f"limits: {{reps: {most_reps}, load: {most_kg} kg, top_effort: RPE 9}}"
    made = programme(
        {
            "exercises/lift": limits,
            "sessions/only": f"blocks: [{{kind: straight, exercises: [{{exercise: lift, {written[1:-1]}}}]}}]",
        }
    )
    if any(one.rule == "dose-beyond-limit" for one in verdict(made).findings):
        return
    item = next(resolve(made)[0].weeks[0].sessions[0].items)
    assert all((most_in(one.amount) or 10**6) <= most_reps for one in item.dose.sets)
    for take in (*item.takes, *item.ramp_takes):
        choices = [take.choice] if take.choice else [band.choice for band in take.bands]
        assert all(choice.weight_kg is None or choice.weight_kg <= most_kg for choice in choices)


@given(lists_of_sets(), st.integers(1, 4))
def test_the_last_line_of_an_explanation_is_what_the_page_says(written: str, week: int) -> None:
    """Week by week up to now, the history ends with the dose as the page has it."""
    phases = (
        "[{name: All, aim: To go on., weeks: 4, sessions: {monday: only}, "
        "lighter: {weeks: [3], sets: 60 %, reps: 80 %, load: 90 %}}]"
    )
    made = one_exercise(written, "{kind: straight}", phases)
    plan = resolve(made)[0]
    session = plan.weeks[week - 1].sessions[0]
    item = next(session.items)
    *_, (number, said) = history(ENGLISH, made, plan, session, item)

    assert number == week
    assert said.startswith(dose_in_words(ENGLISH, item.dose, item.rounds))
