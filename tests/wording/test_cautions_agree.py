"""Exercises that ask the same of a body warn of the same: whoever reads one of them misses nothing said at its sister.

Which words belong to which movement is common practice in physiotherapy, no source, put together from memory; a
physiotherapist has the last word on each exercise.
"""

import re
from collections.abc import Iterable

import pytest

from setwright.dose.resolve import resolve
from setwright.model.exercise import Exercise
from setwright.model.load import Band
from setwright.model.programme import Programme

STRAIN = ("high blood pressure", "glaucoma", "hernia", "pregnancy", "birth", "hold your breath")
"""Who asks before straining: the eye, the belly wall, the pelvic floor and the pressure in all of them."""


def cautions(exercise: Exercise) -> str:
    """Return who takes care, in small letters."""
    return " ".join(exercise.cautions).lower()


def stops(exercise: Exercise) -> str:
    """Return when to stop, in small letters."""
    return " ".join(exercise.stop_if).lower()


def of_pattern(example: Programme, *patterns: str) -> dict[str, Exercise]:
    found = {ident: one for ident, one in example.exercises.items() if one.pattern in patterns}
    assert len(found) > 1
    return found


def without(exercises: dict[str, Exercise], where: str, words: Iterable[str]) -> list[tuple[str, str]]:
    """Return which of some exercises lack which of some words."""
    said = cautions if where == "cautions" else stops
    return [(ident, word) for ident, one in exercises.items() for word in words if word not in said(one)]


def dosed(example: Programme) -> list[tuple[str, str, bool]]:
    """Return each exercise that a plan prescribes, with its measure, and whether a weight is lifted."""
    return [
        (item.exercise, item.dose.measure, any(not isinstance(load, Band) for load in item.dose.loads))
        for plan in resolve(example)
        for session in plan.sessions
        for item in session.items
    ]


def test_jumps_and_drops_are_for_the_same_people(example: Programme) -> None:
    """A landing is a landing: whom one of them is not for, the others are not for either, and all stop at the same."""
    jumps = of_pattern(example, "jump").values()
    shared = set.intersection(*(set(one.cautions) for one in jumps))

    assert len({tuple(one.limits.not_for) for one in jumps if one.limits}) == 1
    assert len({tuple(one.stop_if) for one in jumps}) == 1
    assert all(len(set(one.cautions) - shared) <= 1 for one in jumps)  # working on a box is a matter of its own
    assert all(one.limits and one.limits.not_for and one.limits.contacts for one in jumps)


def test_whoever_works_on_a_box_or_step_reads_of_epilepsy_and_of_a_highest_one(example: Programme) -> None:
    """A fall from a height is the hazard, and the higher the box, the farther."""
    raised = {
        ident: one
        for ident, one in of_pattern(example, "jump", "lunge", "calf").items()
        if {"box", "step"} & {*one.kit}
    }
    heights = {ident: one for ident, one in raised.items() if one.pattern != "calf"}

    assert len(raised) >= 5
    assert without(raised, "cautions", ["epilepsy"]) == []
    assert [ident for ident, one in heights.items() if one.limits is None or one.limits.height is None] == []


def test_no_text_and_no_figure_shows_a_higher_box_than_the_limit(example: Programme) -> None:
    """What set-up says, what is drawn and what is allowed are one height, all in cm."""
    higher = []
    for ident, one in example.exercises.items():
        if one.limits is None or one.limits.height is None:
            continue
        props = one.figure.props if one.figure else None
        drawn = [prop.height for prop in (props.box, props.step) if prop] if props else []
        said = [float(cm) for line in one.set_up for cm in re.findall(r"(\d+) cm", line)]
        higher += [(ident, cm) for cm in (*drawn, *said) if cm > one.limits.height]
        assert drawn
        assert said

    assert higher == []


def test_bands_name_latex_and_a_crack(example: Programme) -> None:
    """A band tears, and many are made of latex."""
    bands = {ident: one for ident, one in example.exercises.items() if "band" in one.kit}

    assert len(bands) >= 3
    assert without(bands, "cautions", ["latex"]) == []
    assert without(bands, "stops", ["crack"]) == []


def test_every_calf_exercise_names_a_clot_a_tendon_and_a_snap(example: Programme) -> None:
    """A swollen calf may be a clot, and a snap a torn tendon."""
    calves = {i: one for i, one in of_pattern(example, "calf").items() if "calf" in one.regions.main}

    assert len(calves) >= 4
    assert without(calves, "cautions", ["newly swollen", "achilles", "steroids"]) == []
    assert without(calves, "stops", ["snap"]) == []


def test_every_standing_hinge_names_the_back_and_its_nerves(example: Programme) -> None:
    """Bones that break, pain down a leg, and the numbness that cannot wait."""
    hinges = {i: one for i, one in example.exercises.items() if one.pattern == "hinge" and "bridge" not in i}
    hinges["bent-over-row"] = example.exercises["bent-over-row"]

    assert without(hinges, "cautions", ["osteoporosis", "down a leg"]) == []
    assert without(hinges, "stops", ["runs into a leg", "between the legs"]) == []


def test_whoever_bends_a_knee_under_load_stops_when_it_gives_way(example: Programme) -> None:
    """Squats and lunges alike, and they ask first after an injury or with an artificial joint."""
    knees = {i: one for i, one in of_pattern(example, "squat", "lunge").items() if "band" not in one.kit}

    assert without(knees, "cautions", ["artificial joint", "physiotherapist"]) == []
    assert without(knees, "stops", ["gives way"]) == []


def test_pushes_and_pulls_name_the_shoulder(example: Programme) -> None:
    """Both ways: the shoulder that was hurt asks first, and an arm that tingles stops."""
    assert without(of_pattern(example, "push", "pull"), "cautions", ["shoulder", "physiotherapist"]) == []
    assert without(of_pattern(example, "pull"), "stops", ["runs into an arm"]) == []
    assert without(of_pattern(example, "push"), "stops", ["as if it might slip"]) == []


def test_whatever_is_lifted_held_or_pushed_hard_names_who_must_not_strain(example: Programme) -> None:
    """Weights and holds as they are prescribed, and every push-up."""
    prescribed = dosed(example)
    strained = {ident for ident, measure, lifted in prescribed if lifted or measure == "hold"}
    strained |= {ident for ident in example.exercises if ident.endswith("push-up")}
    lifted = {ident: example.exercises[ident] for ident, _, weight in prescribed if weight}

    assert (len(strained), len(lifted)) >= (20, 10)
    assert without({i: example.exercises[i] for i in sorted(strained)}, "cautions", STRAIN) == []
    assert without(lifted, "cautions", ["osteoporosis"]) == []


def test_whoever_lies_on_the_back_reads_of_later_pregnancy(example: Programme) -> None:
    """The weight of the child on a great vein can make a mother faint."""
    lying = {
        ident: one for ident, one in example.exercises.items() if any("on your back" in line for line in one.set_up)
    }

    assert len(lying) >= 4
    assert without(lying, "cautions", ["later pregnancy"]) == []


def test_planks_of_a_kind_stop_at_the_same_and_ask_the_same(example: Programme) -> None:
    """From the knees or the toes: the back, the shoulder, and the belly after a birth."""
    for kind, asks in (("plank", "dome"), ("side-plank", "shoulder")):
        pair = {ident: example.exercises[ident] for ident in (f"kneeling-{kind}", "front-plank", "side-plank")}
        del pair["side-plank" if kind == "plank" else "front-plank"]

        assert len({tuple(one.stop_if) for one in pair.values()}) == 1
        assert without(pair, "cautions", [asks]) == []


def test_every_stretch_names_joints_that_go_too_far(example: Programme) -> None:
    """Whoever is very mobile gains nothing from the end of the range."""
    stretched = {i: one for i, one in of_pattern(example, "mobility").items() if i != "high-knee-march"}

    assert without(stretched, "cautions", ["hypermobility"]) == []


@pytest.mark.parametrize("bend", ["artificial hip"])
def test_stretches_of_the_hip_name_an_artificial_one(example: Programme, bend: str) -> None:
    """A new hip has directions that it must not go."""
    hips = ("figure-four-stretch", "half-kneeling-hip-stretch", "hamstring-stretch", "leg-swing", "high-knee-march",
            "kneeling-reach-back")  # fmt: skip

    assert without({ident: example.exercises[ident] for ident in hips}, "cautions", [bend]) == []


def test_an_easier_way_is_no_hold_for_who_cannot_sit_down(example: Programme) -> None:
    """Sitting down to a box gets easier with a higher seat or with help of the arms, not by holding still."""
    easier = example.exercises["sit-to-box"].easier

    assert [way.exercise for way in easier if way.exercise] == []
    assert len(easier) >= 2
