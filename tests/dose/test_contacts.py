"""Jump contacts: each landing counts once, on one foot or on both.

That foot contacts are the unit of jump training: Potach DH, Chu DA, in Essentials of Strength Training and
Conditioning, NSCA / Human Kinetics (from memory). Two landings a second and one a metre: common practice, no source.
"""

import pytest

from setwright.dose.contacts import contacts, routine_contacts
from support import make

DOSES = [
    # prescription, the exercise, landings of three sets
    ("{reps: 8}", "{pattern: jump}", 24),
    ("{reps: 8}", "{pattern: jump, sides: one at a time}", 48),
    ("{reps: 8}", "{pattern: jump, sides: alternating}", 24),
    ("{work: 20 s}", "{pattern: jump}", 120),
    ("{work: 20 s, tempo: 0-0-X-0}", "{pattern: jump}", 120),
    ("{work: 20 s, tempo: 1-0-X-2}", "{pattern: jump}", 18),  # 20 s hold 5.7 jumps of 3.5 s: six begin
    ("{work: 20 s, tempo: 1-0-1-2}", "{pattern: jump}", 15),
    ("{distance: 10 m}", "{pattern: jump}", 30),
    ("{hold: 3 s}", "{pattern: jump}", 3),
    ("{reps: 8}", "{pattern: squat}", 0),
    ("{work: 20 s}", "{pattern: calf}", 0),
    ("{reps: 8}", "{pattern: squat, limits: {contacts: 80}}", 24),  # whose landings are limited lands
    ("{reps: 8}", "{pattern: squat, limits: {reps: 12}}", 0),
]


@pytest.mark.parametrize(("written", "about", "landings"), DOSES)
def test_landings_of_three_sets(written: str, about: str, landings: int) -> None:
    """Repetitions are landings; timed and measured jumps are counted at their quickest; nothing else lands."""
    exercise = make.exercise(about)
    dose = make.dose(written, about)

    assert contacts(exercise, dose) == landings


def test_landings_of_a_warm_up() -> None:
    """A warm-up's landings are those of its jumps, in every round; its steps in words are not known."""
    hop = make.exercise("pattern: jump\nsides: one at a time")
    squat = make.exercise("pattern: squat")
    written = """
rounds: 2
exercises:
  - {exercise: hop, reps: 5}
  - {exercise: squat, reps: 8}
  - {do: Jog on the spot., work: 1 min}
"""

    assert routine_contacts(make.routine(written), {"hop": hop, "squat": squat}) == 20
