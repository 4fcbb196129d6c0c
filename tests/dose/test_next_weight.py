"""After the top of a range: the next owned weight, never beyond a limit, and the right way round for help."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from setwright.dose.bands import choice_at
from setwright.dose.next_weight import is_ranged, next_bands, next_fixed
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedItem
from setwright.model.programme import Programme
from setwright.outline.site import Site
from setwright.phone.session_data import data
from support import make

KETTLEBELLS = [4, 6, 8, 10, 12, 16, 20, 24]


def one(load: str, limits: str = "", reps: str = "8 to 12", more: str = "") -> tuple[Programme, ResolvedItem]:
    """Return a small programme of one exercise with a range, and that exercise in its first week."""
    made = make.programme(
        {
            "exercises/lift": f"limits: {limits}" if limits else "",
            "sessions/only": "blocks: [{kind: straight, sets: 3, exercises: "
            f"[{{exercise: lift, reps: {reps}, load: {load}{more}}}]}}]",
        }
    )
    return made, next(resolve(made)[0].sessions).blocks[0].items[0]


@pytest.mark.parametrize(
    ("load", "limits", "following"),
    [
        ("12 kg", "", 16),
        ("24 kg", "", None),  # the club owns nothing heavier
        ("12 kg", "{load: 14 kg}", None),
        ("12 kg", "{load: 16 kg}", 16),
        ("12 kg", "{load: 40 % bodyweight}", 16),  # of 40 kg: 16 kg
        ("12 kg", "{load: 39 % bodyweight}", None),
        ("12 kg", "{weekly_step: 10 %}", None),
        ("12 kg", "{weekly_step: 34 %}", 16),  # a third more
        ("bodyweight + 12 kg", "{weekly_step: 10 %}", 16),  # 56 kg after 52 kg, for a member of 40 kg
        ("12 kg of help", "", 10),
        ("12 kg of help", "{load: 11 kg of help}", None),
        ("4 kg of help", "", None),
    ],
)
def test_the_next_weight_of_a_fixed_load(load: str, limits: str, following: int | None) -> None:
    """One step on the rack of kettlebells, where the limit and its step allow it; of help, one down."""
    made, item = one(load, limits)

    assert next_fixed(made.club, made.exercises["lift"], item, item.takes[0]) == following


@given(
    st.integers(8, 40),
    st.none() | st.integers(8, 60),
    st.none() | st.sampled_from([10, 30, 60]),
    st.fractions(40, 110, max_denominator=6),
    st.booleans(),
)
def test_the_next_weight_of_a_share_keeps_to_every_limit(
    percent: int, most: int | None, step: int | None, member: Fraction, helps: bool
) -> None:
    """At any body weight, the table holds the weight beside the one taken, or none; no limit is passed."""
    kind = "bodyweight of help" if helps else "bodyweight"
    limits = ", ".join(part for part in (most and f"load: {most} % {kind}", step and f"weekly_step: {step} %") if part)
    made, item = one(f"{percent} % {kind}", f"{{{limits}}}" if limits else "")
    take = item.takes[0]
    now = choice_at(take.bands, member)
    following = choice_at(next_bands(made.club, made.exercises["lift"], item, take), member)

    assert now is not None
    assert following is not None
    if following.weight_kg is None or now.weight_kg is None:
        assert following.weight_kg is None
        return
    steps = sorted((int(now.weight_kg), int(following.weight_kg)))
    assert KETTLEBELLS.index(steps[1]) - KETTLEBELLS.index(steps[0]) == 1
    assert (following.weight_kg < now.weight_kg) is helps
    if most is not None:
        bound = most * member / 100
        assert following.weight_kg >= bound if helps else following.weight_kg <= bound
    if step is not None and not helps:
        assert (following.weight_kg / now.weight_kg - 1) * 100 <= step


def test_a_band_without_a_limit_has_its_next_weight_everywhere() -> None:
    """15 % of 60 kg is 9 kg, nearest 8 kg on a tie with 10: next time 10 kg."""
    made, item = one("15 % bodyweight")
    bands = next_bands(made.club, made.exercises["lift"], item, item.takes[0])
    before = choice_at(item.takes[0].bands, Fraction(60))
    after = choice_at(bands, Fraction(60))

    assert before is not None
    assert after is not None
    assert (before.weight_kg, after.weight_kg) == (8, 10)


@pytest.mark.parametrize(
    ("reps", "more", "offered"),
    [
        ("8 to 12", "", True),
        ("12", "", False),
        ("[12, 8 to 10, 8]", "", False),
        ("8 to 12", ", progress: {load: {add: 2 kg, up_to: 20 kg}}", False),
        ("8 to 10", ", progress: {reps: {add: 1, up_to: 12}}", True),
    ],
)
def test_the_phone_gets_a_next_weight_where_a_member_grows_inside_a_range(reps: str, more: str, offered: bool) -> None:
    """A range in every set, and a load that the coach's own progression leaves alone."""
    made, item = one("12 kg", reps=reps, more=more)
    site = Site(made, resolve(made))
    load = data(site, site.plans[0], next(site.plans[0].sessions)).blocks[0].items[0].loads[0]

    assert is_ranged(item) is ("to" in reps and "[" not in reps)
    assert load.next_weight == ("16 kg" if offered else None)
