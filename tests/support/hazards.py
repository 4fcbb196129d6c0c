"""Hazardous edits, planted one at a time in a copy of the example: what a hurried coach might do to members.

Each is caught by the one rule that is about it. For the table of these and of the ways round a limit, run
``python -m support.hazards`` from the folder tests.
"""

from typing import Final

from support.planted import Plant, one, table
from support.ways_round import WAYS_ROUND

_RELAY, _STARTER = "plans/relay.yml", "plans/starter.yml"
_FOUNDATION_A, _FOUNDATION_B = "sessions/foundation-a.yml", "sessions/foundation-b.yml"
_BUILD_A, _BUILD_B = "sessions/build-a.yml", "sessions/build-b.yml"
_POWER_A, _POWER_B = "sessions/power-a.yml", "sessions/power-b.yml"
_STARTER_A, _SQUAT = "sessions/starter-a.yml", "exercises/goblet-squat.yml"
_READY, _WHOLE_BODY = "routines/ready-to-jump.yml", "routines/whole-body.yml"

_JUMPS = """  - kind: straight
    name: Jumps
    sets: 2
    rest: 2 min 30 s
    progress:
      sets: {weeks: [2, 3]}
    note: Use the whole rest. Walk about, and come back curious, not breathless.
    exercises:
      - exercise: squat-jump
        reps: 3
        progress:
          reps: {add: 1, up_to: 4}
"""
_QUICK_FEET = """  - kind: straight
    name: Quick feet
    sets: 2
    rest: 90 s
    note: Low and even. End the set when the beat breaks, even if the number is not reached.
    exercises:
      - exercise: line-hops
        reps: 10
        progress:
          reps: {add: 2, up_to: 14}
"""
_STEP_UP = "  - kind: superset\n    name: Step up and carry\n"
_STACK = "Put the box on the bench."
_HARDER = "        progress:\n          load: {add: RPE 0.5, up_to: RPE 7}\n"
_SIT = "  - kind: superset\n    name: Sit and row\n"
_HOPS_ALLOWED = ("exercises/line-hops.yml", "  earliest_phase: 2\n", "")
_HOP_WARM_UP = (_STARTER_A, "  - whole-body\n  - short-of-time\n", "  - ready-to-jump\n")
_HOPS_WAIT = """  - week: 5
    day: friday
    do_instead: foundation-a
    why: >-
      Landings began on Tuesday. The hops wait for a week, so that shins and tendons meet one new
      thing at a time.
"""
_TWO_CHANGES = """changes:
  - {week: 10, day: friday, do_instead: springs, why: The hall is let.}
  - {week: 10, day: friday, move_to: saturday, why: The hall is let.}
"""
_SPRINGS = """name: Springs
aim: A few hops on Saturday.
warm_up: [ready-to-jump]
blocks:
  - kind: straight
    sets: 2
    rest: 2 min
    exercises: [{exercise: line-hops, reps: 12}, {exercise: side-plank, hold: 20 s}]
"""
_HEAVY = _SPRINGS.replace("{exercise: line-hops, reps: 12}", "{exercise: push-up, reps: 4, load: RPE 8}").replace(
    "sets: 2", "sets: 2\n    change_over: 2 min"
)


_SPRING = """name: A short spring
for: Members with a season of strength work behind them.
experience: trained
starts: 2027-10-04
other_training: [{day: sunday, what: Easy run.}]
phases:
  - {name: Three weeks, aim: To try oneself., weeks: 3, sessions: {tuesday: all-out}}
"""
_ALL_OUT = """name: All out
aim: Arms and trunk.
warm_up: [whole-body]
blocks:
  - kind: straight
    sets: 3
    rest: 3 min
    exercises: [{exercise: push-up, reps: 8, load: RPE 10}, {exercise: side-plank, hold: 20 s}]
"""
_CALVES = """    rest: %s
    exercises:
      - exercise: single-leg-heel-raise
        reps: 6
        load: %s
"""


def _starter_hops(sets: int, reps: int) -> tuple[str, str, str]:
    block = f"  - {{kind: straight, sets: {sets}, rest: 2 min, exercises: [{{exercise: line-hops, reps: {reps}}}]}}\n"
    return (_STARTER_A, _SIT, f"{block}{_SIT}")


HAZARDS: Final = (
    # Loads
    one(
        "a tenth on paper that is a third in the hand",
        _FOUNDATION_A,
        "          reps: {add: 1, up_to: 10}\n          then:\n            load:",
        "          load:",
        "load-step-too-large",
        also=("dose-beyond-limit", "words-beyond-dose"),  # a note speaks of ten repetitions, which are no more
    ),
    Plant(
        "a climb that leaps over a kettlebell",
        "sessions/starter-b.yml",
        (
            (
                "reps: {add: 1, up_to: 12}",
                "reps: {add: 1, up_to: 10}\n          then: {load: {add: 4 kg, up_to: 12 kg}}",
            ),
        ),
        "load-step-too-large",
        elsewhere=(("exercises/kettlebell-deadlift.yml", "  weekly_step: 10 %\n", ""),),
    ),
    one(
        "a new phase with a heavier squat",
        _POWER_A,
        "load: 22 % bodyweight",
        "load: 29 % bodyweight",
        "load-step-too-large",
        also=("dose-beyond-limit",),
    ),
    # What is not meant
    one(
        "a list for more weeks than there are",
        _BUILD_A,
        "reps: {weeks: [3, 4]}",
        "reps: {weeks: [3, 4, 5, 6]}",
        "list-beyond-plan",
    ),
    # Weeks
    Plant(
        "loads where there were none, all in one phase",
        _BUILD_B,
        (("        load: RPE 6.5\n", "        load: 24 % bodyweight\n"), (_HARDER, "")),
        "lifted-step-too-large",
        _RELAY,
    ),
    Plant(
        "half as many calves again in a new phase",
        _BUILD_B,
        (
            ("- exercise: front-plank\n        hold: 40 s", "- exercise: walking-heel-raise\n        reps: 16"),
            ("- exercise: bird-dog", "- exercise: heel-raise"),
        ),
        "region-step-too-large",
        _RELAY,
    ),
    one(
        "a row that grows from 12 to 20",
        _FOUNDATION_A,
        "            weeks: [light band, light band, medium band]\n",
        "            weeks: [light band, light band, medium band]\n          reps: {weeks: [12, 12, 20]}\n",
        "exercise-step-too-large",
        _RELAY,
    ),
    Plant(
        "a phase without its deadlift",
        _BUILD_B,
        (
            ("- exercise: kettlebell-deadlift\n", "- exercise: band-side-walk\n"),
            ("load: RPE 6.5\n", "load: medium band\n"),
            (_HARDER, ""),
        ),
        "knee-hip-imbalance",
        _RELAY,
    ),
    one("a taper that begins with a full week", _RELAY, "[60 %, 50 %]", "[100 %, 50 %]", "taper-without-cut"),
    # Jumps
    Plant("jumps at the end of the session", _POWER_A, ((_JUMPS, ""), ("", _JUMPS)), "jumps-last"),
    Plant(
        "hops after squats and deadlifts",
        _BUILD_B,
        ((_QUICK_FEET, ""), (_STEP_UP, _QUICK_FEET + _STEP_UP)),
        "jumps-on-tired-legs",
    ),
    one(
        "twenty seconds between hops",
        _BUILD_B,
        "rest: 90 s\n    note: Low",
        "rest: 20 s\n    note: Low",
        "no-rest-between-jumps",
    ),
    one(
        "a slow stretch before the jumps",
        _READY,
        "  - exercise: ankle-rock\n    reps: 8\n",
        "  - exercise: calf-stretch\n    hold: 1 min\n",
        "stretch-before-jumps",
    ),
    one(
        "five minutes of warm-up before landings",
        _BUILD_A,
        "  - ready-to-jump\n",
        "  - short-of-time\n",
        "jumps-hardly-warm",
    ),
    Plant(
        "hops for beginners",
        _STARTER,
        (),
        "jumps-for-beginners",
        elsewhere=(_starter_hops(2, 8), _HOP_WARM_UP, _HOPS_ALLOWED),
    ),
    Plant(
        "hops on the eve of the long run",
        _RELAY,
        (("changes:\n", _TWO_CHANGES),),
        "jumps-before-key-session",
        elsewhere=(("sessions/springs.yml", "", _SPRINGS),),
    ),
    Plant(
        "heavy presses on the eve of the long run",
        _RELAY,
        (("changes:\n", _TWO_CHANGES),),
        "jumps-before-key-session",
        elsewhere=(("sessions/springs.yml", "", _HEAVY),),
    ),
    one("landings and hops in one week", _RELAY, _HOPS_WAIT, "", "jumps-begin-together"),
    Plant(
        "a hundred hops in an evening",
        _STARTER_A,
        (),
        "too-many-jump-contacts",
        also=("dose-beyond-limit",),
        elsewhere=(
            _starter_hops(3, 36),
            _HOP_WARM_UP,
            _HOPS_ALLOWED,
            (_STARTER_A, "time_budget: 45 min", "time_budget: 60 min"),
            (_STARTER, "other_training:", "experience: trained\nother_training:"),
        ),
    ),
    one(
        "three times the hops",
        _BUILD_B,
        "reps: {add: 2, up_to: 14}",
        "reps: {weeks: [10, 30]}",
        "jump-contacts-step-too-large",
        _RELAY,
        also=("dose-beyond-limit",),
    ),
    one(
        "a start every half minute, and a minute of work",
        _POWER_A,
        "every: 1 min",
        "every: 30 s",
        "work-beyond-clock",
    ),
    one(
        "ten seconds between jumps, in one week",
        _RELAY,
        "  - week: 12\n    session: power-a\n",
        "  - {week: 10, day: tuesday, rest: 10 s, why: The hut closes early.}\n  - week: 12\n    session: power-a\n",
        "no-rest-between-jumps",
    ),
    one("bare feet on hops", _BUILD_B, "note: Low and even.", "note: Barefoot.", "harmful-words"),
    one("a box on a bench", _BUILD_A, "The 15 cm box is high enough to learn on.", _STACK, "height-not-stated"),
    # Breaks and choices
    Plant(
        "a full week after a month without training",
        _RELAY,
        (
            ("phases:\n", "breaks: [{from: 2027-08-16, to: 2027-09-12, why: The hut is closed.}]\nphases:\n"),
            ("date: 2027-09-26", "date: 2027-10-24"),
        ),
        "no-way-back",
    ),
    one(
        "a press overhead for those whose arm hurts overhead",
        _FOUNDATION_A,
        "exercise: band-press-out\n            reps: 8\n            load: light band\n",
        "exercise: half-kneeling-press\n            reps: 8\n            load: 3 reps in reserve\n",
        "sore-way-no-easier",
    ),
    one(
        "the hardest set on the first evening",
        "sessions/starter-b.yml",
        "reps: 5\n        progress:\n          reps: {add: 1, every: 2 weeks, up_to: 7}",
        "reps: 5\n        load: RPE 10\n        progress:\n          reps: {add: 1, every: 2 weeks, up_to: 7}",
        "first-load-heavy",
        also=("rest-too-short",),
    ),
    Plant(
        "every set to the last repetition",
        "sessions/all-out.yml",
        (("", _ALL_OUT),),
        "most-sets-to-failure",
        elsewhere=(("plans/short-spring.yml", "", _SPRING),),
    ),
    one(
        "five seconds between hard sets",
        _POWER_A,
        _CALVES % ("60 s", "5 % bodyweight"),
        _CALVES % ("5 s", "RPE 7"),
        "rest-too-short",
        also=("load-escapes-limit",),  # an effort says no weight
    ),
    one(
        "a heavier squat for the first season",
        _FOUNDATION_A,
        "exercise: sit-to-box\n            reps: 8\n            progress:\n              reps: {add: 1, up_to: 12}\n",
        "exercise: goblet-squat\n            reps: 8\n            load: 24 % bodyweight\n",
        "beginners-way-heavier",
    ),
    one(
        "a plan for juniors of twelve",
        _STARTER,
        "Members who are new to strength work",
        "Juniors of 12 who are new to strength work",
        "minors-without-adults",
    ),
    # What is said, and what is not
    one("a stretch that bounces", _READY, "do: ", "do: Bounce a little at the end of each stretch. ", "harmful-words"),
    one(
        "pain that is fine",
        _FOUNDATION_A,
        "Stop while four more good ones would be left.",
        "Some pain in the shoulder is fine.",
        "harmful-words",
    ),
    one(
        "a warm-up that cannot be done in its time",
        _WHOLE_BODY,
        "takes: 10 min",
        "takes: 4 min",
        "takes-disagrees-with-steps",
    ),
    one(
        "no word about other training",
        _STARTER,
        "other_training:\n  - day: monday\n    what: Easy club run on paths, slow enough to talk.\n",
        "",
        "no-other-training",
    ),
    one(
        "a breath to hold", _SQUAT, "Breathe in on the way down.", "Hold your breath on the way down.", "harmful-words"
    ),
    one("a set until one drops", _BUILD_A, "A loud landing ends the set.", "Go on until you drop.", "harmful-words"),
    one(
        "a warm-up through the pain",
        _WHOLE_BODY,
        "Turn a little farther each time",
        "Work through the pain",
        "harmful-words",
    ),
)
"""Every hazardous edit, by kind."""


if __name__ == "__main__":
    print(table((*HAZARDS, *WAYS_ROUND)), end="")  # noqa: T201 - a script that prints
