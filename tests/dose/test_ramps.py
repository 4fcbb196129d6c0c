"""Warm-up sets of one exercise: lighter, in owned weights, in the time and in no total."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.checks.load_step import uses_in
from setwright.dose.bands import choice_at, load_bands
from setwright.dose.exposure import exposure
from setwright.dose.ramping import below, ramp_takes, side_by_side
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedItem, Take
from setwright.dose.timing import seconds_until_again
from setwright.model.load import BodyWeightShare, magnitude
from setwright.model.ramp import TABLE
from setwright.wording.doses import dose_in_words
from setwright.wording.explain import derivation
from setwright.wording.language import ENGLISH
from setwright.wording.ramps import ramp_words
from support.make import in_week, one_exercise, programme, resolved, verdict
from support.strategies import racks

KETTLEBELLS = [Fraction(kg) for kg in (4, 6, 8, 10, 12, 16, 20, 24)]


def item(written: str, week: int = 1, **options: str) -> ResolvedItem:
    """Return the one exercise of a small programme in a week."""
    found = in_week(one_exercise(written, **options), week)
    assert found is not None
    return found


def blocks_of(written: str) -> str:
    """Return the blocks of a session of one exercise in straight sets."""
    return f"blocks: [{{kind: straight, sets: 2, exercises: [{{exercise: lift, {written}}}]}}]"


@pytest.mark.parametrize("count", list(TABLE))
def test_the_table_goes_up(count: int) -> None:
    """As many sets as asked for, each heavier than the one before and not longer, all below the working weight."""
    sets = TABLE[count]

    assert len(sets) == count
    assert [percent for _, percent in sets] == sorted({percent for _, percent in sets})
    assert [reps for reps, _ in sets] == sorted((reps for reps, _ in sets), reverse=True)
    assert all(percent < 100 for _, percent in sets)


@pytest.mark.parametrize(
    ("written", "taken"),
    [
        # 40, 60 and 80 % of 20 kg are 8, 12 and 16 kg (computed), which the club owns.
        ("{reps: 5, load: 20 kg, ramp: 3}", ["5 reps with 8 kg", "3 reps with 12 kg", "2 reps with 16 kg"]),
        # Of 4 kg, the lightest that is owned, nothing lighter can be taken.
        ("{reps: 5, load: 4 kg, ramp: 1}", ["5 reps with 4 kg"]),
        ("{reps: 5, load: 16 kg, ramp: [{reps: 8, of_load: 50 %}]}", ["8 reps with 8 kg"]),
        ("{reps: 5, load: 20 % bodyweight, ramp: 1}", ["5 reps with 60 % of that weight"]),
    ],
)
def test_in_owned_weights(written: str, taken: list[str]) -> None:
    """Each warm-up set names a weight that the club owns, or its share where members differ."""
    said = ramp_words(ENGLISH, item(written), "kg")

    assert said is not None
    assert [one.said for one in said.sets] == taken


def test_for_each_body_weight() -> None:
    """At 80 kg, 20 % are 16 kg, and the two sets before take 8 and 12 kg (50 and 75 % of it, computed)."""
    found = item("{reps: 5, load: 20 % bodyweight, ramp: 2}")

    row = next(row for row in side_by_side(found.ramp_takes) if row.first_kg <= 80 <= row.last_kg)
    assert [choice.weight_kg for choice in row.choices] == [8, 12]


@given(
    racks(),
    st.integers(2, 60),
    st.integers(1, 99),
    st.integers(40, 110),
)
def test_bands_of_a_warm_up_set_are_the_direct_choice(
    owned: tuple[Fraction, ...], percent: int, share: int, body_weight: int
) -> None:
    """At every body weight, the band says what the weights give directly, and never more than the working set takes."""
    load = BodyWeightShare(Fraction(percent))
    work = Take(load, load_bands(load.percent, owned, Fraction(40), Fraction(110)), None)
    leading = item(f"{{reps: 5, load: {percent} % bodyweight, ramp: [{{reps: 5, of_load: {share} %}}]}}").dose
    [take] = ramp_takes(leading, work, owned)
    at_work, now = (choice_at(bands, Fraction(body_weight)) for bands in (work.bands, take.bands))

    assert at_work is not None
    assert now == below(magnitude(take.load) * body_weight / 100, owned, at_work)
    if at_work.weight_kg is None:
        assert now is not None
        assert now.weight_kg is None
    else:
        assert now is not None
        assert now.weight_kg is not None
        assert now.weight_kg <= at_work.weight_kg


def test_they_are_in_the_time_and_in_no_total() -> None:
    """Two warm-up sets with their rests take longer; sets, repetitions and kilograms stay."""
    plain, ramped = (
        resolve(one_exercise(f"{{reps: 5, tempo: 2-0-2-0, load: 20 kg{ramp}}}"))[0].weeks[0].sessions[0]
        for ramp in ("", ", ramp: 2")
    )
    exercises = one_exercise("{reps: 5}").exercises

    assert exposure(plain.items, exercises) == exposure(ramped.items, exercises)
    # 5 + 3 repetitions of 4 s, and two rests of 60 s (computed).
    assert ramped.time.low_s - plain.time.low_s == 8 * 4 + 2 * 60


def test_rests_after_warm_up_sets_are_no_rest_between_sets() -> None:
    """The rest check looks at what lies between the working sets."""
    session = resolve(one_exercise("{reps: 3, load: 90 % 1RM, rest: 4 min, ramp: 3}"))[0].weeks[0].sessions[0]
    block = session.blocks[0]

    assert seconds_until_again(block.steps, [one.dose for one in block.items], 0) == 240


def test_a_lighter_week_lightens_them_too() -> None:
    """They follow the first working set: 50 % of 18 kg, which is 90 % of 20 kg."""
    lighter = "{weeks: [2], load: 90 %, sets: 60 %}"
    phases = f"[{{name: All, aim: To go on., weeks: 2, sessions: {{monday: only}}, lighter: {lighter}}}]"
    found = item("{reps: 5, load: 20 kg, ramp: 2}", 2, phases=phases)

    assert [str(one.load) for one in found.dose.sets] == ["9 kg", "13.5 kg", "18 kg", "18 kg"]


def test_a_taper_keeps_them_and_leaves_out_working_sets() -> None:
    """Half of three sets are one; the two warm-up sets stay."""
    phases = "[{name: All, aim: To go on., weeks: 1, sessions: {monday: only}, taper: {sets: [40 %]}}]"
    found = item("{reps: 5, load: 20 kg, ramp: 2}", phases=phases)

    assert [one.kind for one in found.dose.sets] == ["ramp", "ramp", "work"]


def test_they_are_said() -> None:
    """In the dose, and in how it came about."""
    made = one_exercise("{reps: 5, load: 20 kg, ramp: 2}")
    session = resolve(made)[0].weeks[0].sessions[0]
    found = next(session.items)
    steps = [step.says for step in derivation(ENGLISH, made, session, found)]

    assert dose_in_words(ENGLISH, found.dose) == "2 warm-up sets, then 3 sets of 5 reps, 20 kg"
    assert any("5 reps with 10 kg, 3 reps with 15 kg" in said for said in steps)
    assert not any("changed this week" in said for said in steps)


def test_a_limit_of_repetitions_holds_for_them() -> None:
    """Eight in a warm-up set are beyond a limit of six, whatever the working sets ask for."""
    limits = {"exercises/lift": "limits: {reps: 6}"}
    written = [blocks_of(f"reps: 5, load: 8 kg, ramp: {ramp}") for ramp in ("[{reps: 8, of_load: 50 %}]", "2")]
    found = [{one.rule for one in verdict(programme({**limits, "sessions/only": one})).findings} for one in written]

    assert ["dose-beyond-limit" in rules for rules in found] == [True, False]


def test_a_limit_of_the_load_holds_for_them() -> None:
    """The weight of the working set is kept at the limit, and no warm-up set goes above it."""
    made = programme(
        {
            "exercises/lift": "limits: {load: 10 kg}",
            "sessions/only": blocks_of("reps: 5, load: 20 % bodyweight, ramp: 4"),
        }
    )
    found = next(resolve(made)[0].weeks[0].sessions[0].items)
    taken = [choice.weight_kg for row in side_by_side(found.ramp_takes) for choice in row.choices]

    assert max(kg for kg in taken if kg is not None) <= 10


def test_the_load_step_does_not_look_at_them() -> None:
    """A heavier warm-up set is no step of the load."""
    plan = resolved({"sessions/only": blocks_of("reps: 5, load: 8 kg, ramp: 4")})
    [(_, first), *_] = uses_in(plan)["lift"]

    assert [str(load) for load in first.dose.loads] == ["8 kg"]


@given(
    st.sampled_from(["{0} kg", "{0} % bodyweight", "{0} % 1RM", "{0} kg per hand", "bodyweight + {0} kg"]),
    st.integers(2, 60),
    st.one_of(st.integers(1, 4).map(str), st.integers(1, 99).map(lambda share: f"[{{reps: 5, of_load: {share} %}}]")),
    st.integers(50, 100),
    st.integers(1, 3),
)
def test_no_warm_up_set_is_heavier_than_its_working_set(
    load: str, number: int, ramp: str, lighter: int, week: int
) -> None:
    """Whatever the load is a share of, for every body weight and 1RM, in a normal week and in a lighter one."""
    weeks = f"weeks: 3, sessions: {{monday: only}}, lighter: {{weeks: [2], load: {lighter} %, sets: 60 %}}"
    phases = f"[{{name: All, aim: To go on., {weeks}}}]"
    found = item(f"{{reps: 5, load: {load.format(number)}, ramp: {ramp}}}", week, phases=phases)
    work = found.take_of(found.dose.first.load)
    assert work is not None
    assert found.ramp_takes

    for take in found.ramp_takes:
        assert magnitude(take.load) <= magnitude(work.load)
        if take.choice is not None and take.choice.weight_kg is not None and work.choice is not None:
            assert work.choice.weight_kg is None or take.choice.weight_kg <= work.choice.weight_kg
        for band in (*take.bands, *work.bands):
            now, at_work = (choice_at(bands, band.to_kg) for bands in (take.bands, work.bands))
            if now is not None and now.weight_kg is not None and at_work is not None:
                assert at_work.weight_kg is not None
                assert now.weight_kg <= at_work.weight_kg
