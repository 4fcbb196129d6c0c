"""Examples of checks: pieces of a programme, laid over a small sound one, that a check speaks or keeps silent on.

They are its documentation and its test at once, so that neither can be wrong alone.
"""

from collections.abc import Mapping
from typing import Final

Example = Mapping[str, str]
"""YAML by file, such as ``{"exercises/goblet-squat": "limits: {reps: 12}"}``; each key replaces the one of the base."""

BASE: Final[Example] = {
    "club": """
name: A club
body_weight: {from: 40 kg, to: 110 kg}
kit:
  kettlebell: [4 kg, 6 kg, 8 kg, 10 kg, 12 kg, 16 kg, 20 kg, 24 kg]
  dumbbell: {from: 1 kg, to: 20 kg, step: 1 kg, pairs: true}
  box: [20 cm]
safety:
  contact: Ask the coach.
  in_an_emergency: Call the emergency number.
  before_you_start: [You are ill.]
  stop_if: [It hurts.]
""",
    "references": """
a-study: {authors: Somebody and others, year: 2020, title: A study, where: A journal}
""",
    "exercises/goblet-squat": """
name: Goblet squat
pattern: squat
regions: {main: [quadriceps]}
kit: [kettlebell]
why: For strong legs.
set_up: [Stand.]
steps: [Sit down and stand up.]
breathing: Out on the way up.
feel: In the thighs.
cues: [Tall]
faults: [{sign: The heels rise., fix: Go less deep.}]
easier: [step-down]
at_home: {use: a rucksack}
cautions: [Ask a physiotherapist first if a knee hurts.]
sources: [a-study]
""",
    "exercises/step-down": """
name: Step-down
pattern: lunge
regions: {main: [glutes]}
why: For sure feet.
set_up: [Stand on one leg.]
steps: [Bend and straighten it.]
breathing: Out on the way up.
feel: In the hip.
cues: [Slowly]
faults: [{sign: The knee drops inward., fix: Go less deep.}]
easier: [{how: Hold a rail.}]
harder: [goblet-squat]
cautions: [Ask a physiotherapist first if a knee hurts.]
sources: [a-study]
""",
    "sessions/legs": """
name: Legs
aim: Strong legs.
warm_up: [warm-up]
blocks:
  - kind: straight
    sets: 3
    exercises:
      - {exercise: goblet-squat, reps: 8}
      - {exercise: step-down, reps: 8}
""",
    "plans/spring": """
name: Spring
for: Members.
starts: 2027-03-01
other_training: [{day: saturday, what: A long walk.}]
phases: [{name: First, aim: To begin., weeks: 4, sessions: {monday: legs}}]
""",
    "routines/warm-up": """
name: Warm-up
kind: warm-up
why: To get warm.
takes: 5 min
exercises: [{do: Walk., work: 5 min}]
""",
}
"""A small sound programme: no check speaks on it."""

USUAL: Final[Mapping[str, str]] = {
    "exercises": BASE["exercises/step-down"],
    "sessions": BASE["sessions/legs"],
    "plans": BASE["plans/spring"],
    "routines": BASE["routines/warm-up"],
}
"""What a file that an example adds holds besides what the example says."""

HOP: Final = "{name: Hop, pattern: jump, regions: {main: [calf]}}"

JUMPS: Final[Example] = {
    "exercises/hop": HOP,
    "routines/warm-up": "{takes: 10 min, exercises: [{do: Walk., work: 10 min}]}",
    "plans/spring": "experience: trained",
}
"""What examples about jumps stand on: a hop, a warm-up of ten minutes, members who know strength work."""
