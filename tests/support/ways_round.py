"""Ways round a physiotherapist's word, planted one at a time in a copy of the example: each has a rule that knows it.

For the table, run ``python -m support.ways_round`` from the folder tests.
"""

from typing import Final

from support.planted import Plant, one, table

_RELAY, _SPRING = "plans/relay.yml", "plans/spring.yml"
_FOUNDATION_A, _FOUNDATION_B = "sessions/foundation-a.yml", "sessions/foundation-b.yml"
_BUILD_A, _BUILD_B, _POWER_A = "sessions/build-a.yml", "sessions/build-b.yml", "sessions/power-a.yml"
_STARTER_B, _READY = "sessions/starter-b.yml", "routines/ready-to-jump.yml"
_SQUAT, _HOPS = "exercises/goblet-squat.yml", "exercises/line-hops.yml"
_CARRY = "exercises/suitcase-carry.yml"

_JUMP = "      - exercise: squat-jump\n        reps: 3\n"
_THEN = "          then:\n            load: {add: 2 % bodyweight, up_to: 22 % bodyweight}\n"
_DROP_NOTE = "The 15 cm box is high enough to learn on."
_DROP = "- exercise: drop-and-stick\n        reps: 3\n"
_LAST_MONTH = "The load of last month, and quicker. Speed is what is new."
_SLOW_SQUATS = "Squat slowly without weight, each one a little lower, and stand up a little quicker."
_SHORT_PLAN = """name: Quick to the hops
for: Members with a season of strength work behind them.
experience: trained
starts: 2027-10-04
other_training: [{day: sunday, what: Easy run.}]
phases:
  - {name: One evening, aim: To begin., weeks: 1, sessions: {tuesday: legs}}
  - {name: Hops, aim: To hop., weeks: 2, sessions: {tuesday: legs-and-hops}}
"""
_LEGS = """name: Legs
aim: Legs and hips.
warm_up: [ready-to-jump]
blocks:
%s  - kind: straight
    sets: 2
    exercises: [{exercise: sit-to-box, reps: 8}, {exercise: glute-bridge, reps: 8}]
"""
_HOP_BLOCK = "  - {kind: straight, sets: 2, rest: 2 min, exercises: [{exercise: line-hops, reps: 6}]}\n"

WAYS_ROUND: Final = (
    # Loads
    one(
        "a dumbbell in each hand of a jump",
        _POWER_A,
        _JUMP,
        f"{_JUMP}        load: 3 kg per hand\n        kit: [dumbbell]\n",
        "weight-on-a-jump",
        also=("too-little-kit",),  # one pair for everyone who comes
    ),
    one(
        "a dumbbell beside a jump, and no word how heavy",
        _POWER_A,
        _JUMP,
        f"{_JUMP}        kit: [dumbbell]\n",
        "weight-on-a-jump",
    ),
    one(
        "a weight where none is allowed",
        _SQUAT,
        "  load: 40 % bodyweight\n",
        "  load: none\n",
        "dose-beyond-limit",
        _FOUNDATION_A,
    ),
    Plant(
        "a squat whose load is left to the member",
        _FOUNDATION_A,
        (("        load: 20 % bodyweight\n", ""), (_THEN, "")),
        "load-escapes-limit",
        also=("lifted-step-too-large",),  # weeks without it lift little
    ),
    one("a first kettlebell of 16 kg", _STARTER_B, "load: 8 kg\n", "load: 16 kg\n", "first-load-heavy"),
    one(
        "a plan that begins at the limit of its load",
        _SQUAT,
        "  load: 40 % bodyweight\n",
        "  load: 22 % bodyweight\n",
        "first-load-heavy",
        _FOUNDATION_A,
    ),
    # Heights, distances, tempo, weeks
    one("a bench for a box", _BUILD_A, _DROP, f"{_DROP}        kit: [bench]\n", "height-not-stated"),
    one("the highest box, in words", _BUILD_A, _DROP_NOTE, "Take the highest box.", "height-not-stated"),
    one("a box in centimetres, in words", _BUILD_A, _DROP_NOTE, "From forty centimetres.", "words-beyond-dose"),
    one(
        "a longer carry than is allowed",
        _CARRY,
        "  distance: 40 m\n",
        "  distance: 25 m\n",
        "dose-beyond-limit",
        _FOUNDATION_B,
    ),
    one(
        "a repetition of twenty seconds",
        _FOUNDATION_A,
        "weeks: [3-0-1-0, 4-0-1-0, 5-0-1-0]",
        "weeks: [3-0-1-0, 4-0-1-0, 10-0-10-0]",
        "repetition-too-slow",
        also=("too-little-kit",),  # whoever waits for a box waits that long
    ),
    one(
        "hops before their week",
        _HOPS,
        "  earliest_phase: 2\n",
        "  earliest_phase: 2\n  earliest_week: 8\n",
        "dose-beyond-limit",
        _BUILD_B,
    ),
    Plant(
        "a first phase of a single evening",
        _SPRING,
        (("", _SHORT_PLAN),),
        "phase-too-short",
        elsewhere=(
            ("sessions/legs.yml", "", _LEGS % ""),
            ("sessions/legs-and-hops.yml", "", _LEGS.replace("Legs", "Legs and hops") % _HOP_BLOCK),
        ),
    ),
    Plant(
        "three times the hops, called balance",
        _BUILD_B,
        (("reps: {add: 2, up_to: 14}", "reps: {weeks: [10, 30]}"),),
        "jump-contacts-step-too-large",
        _RELAY,
        also=("dose-beyond-limit",),
        elsewhere=((_HOPS, "pattern: jump", "pattern: balance"),),
    ),
    # Words
    one("the 24 kg bell, to failure", _POWER_A, _LAST_MONTH, "The 24 kg bell, to failure.", "words-beyond-dose"),
    one("heavier than last week, in a note", _POWER_A, _LAST_MONTH, "Heavier than last week.", "words-beyond-dose"),
    one("other repetitions in a note", _POWER_A, _LAST_MONTH, "Do twenty repetitions today.", "words-beyond-dose"),
    one("half of what one weighs", _POWER_A, _LAST_MONTH, "Take half your body weight.", "words-beyond-dose"),
    one(
        "a heavy squat in the words of a warm-up",
        _READY,
        _SLOW_SQUATS,
        "Goblet squats with the 24 kg bell.",
        "words-beyond-dose",
    ),
    one("hops in the words of a warm-up", _READY, _SLOW_SQUATS, "Line hops, low and quick.", "words-beyond-dose"),
    one(
        "an easier way with a heavier kettlebell",
        _SQUAT,
        "Leave the kettlebell and stretch both arms out in front as a counterweight.",
        "Hold the 20 kg kettlebell with straight arms.",
        "words-beyond-dose",
    ),
    one(
        "a heavy reason for a change",
        _RELAY,
        "One repetition less on the high step.",
        "Take 14 kg in each hand on the box step-up instead.",
        "words-beyond-dose",
    ),
)
"""Every way, by kind."""


if __name__ == "__main__":
    print(table(WAYS_ROUND), end="")  # noqa: T201 - a script that prints
