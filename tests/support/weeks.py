"""A club whose plans have no start, or several, with breaks and sessions that take turns: the example's sessions."""

from pathlib import Path

from support.site import copy_project

OPEN = """
name: Six weeks at your own pace
for: Members who are new to strength work.
event: {name: First hill run, week: 6, day: sunday}
other_training: [{day: monday, what: Easy club run.}]
phases:
  - name: Learn
    aim: Learn the movements.
    weeks: 4
    sessions: [starter-a, starter-b]
    lighter: {weeks: [4], sets: 60 %}
  - name: Settle in
    aim: A little more of them.
    weeks: 2
    sessions: [starter-a, starter-b]
changes:
  - {week: 2, number: 2, skip: true, why: The first week with two sessions was enough.}
"""

GROUPS = """
name: Winter in two groups
for: Members who have done the starter plan.
follows: open
starts: {Monday group: 2027-11-29, Late group: 2027-12-06}
event: {name: Night relay, date: 2028-01-29}
other_training: [{day: saturday, what: Long run., hard: true}]
breaks:
  - {from: 2027-12-20, to: 2028-01-02, why: The hut is closed over the holidays.}
phases:
  - name: First
    aim: To begin.
    weeks: 3
    sessions: {rotate: [foundation-a, foundation-b, starter-a], days: [monday, wednesday]}
  - name: Second
    aim: To go on.
    weeks: 2
    sessions: {monday: [starter-a, starter-b], thursday: foundation-b}
    lighter: {weeks: [2], sets: 60 %, load: 90 %}
  - name: Taper
    aim: To be fresh.
    weeks: 1
    sessions: {monday: foundation-a, wednesday: foundation-b}
    taper: {sets: [50 %]}
"""

BREAK = """
name: Through the holidays
for: Members who have done the starter plan.
starts: 2027-11-30
event: {name: Night relay, week: 6, day: sunday}
other_training: [{day: saturday, what: Long run., hard: true}]
breaks:
  - from: 2027-12-21
    to: 2028-01-03
    why: The hut is closed over the holidays.
    coming_back: {sets: 60 %, load: 90 %}
phases:
  - {name: All, aim: To go on., weeks: 6, sessions: {tuesday: foundation-a, thursday: foundation-b}}
"""

EVENING = "at: 18:30\n"


def weeks_project(folder: Path) -> Path:
    """Copy the example and give it these plans instead of its own, a clock, and a session with a time of day."""
    copy_project(folder)
    program = folder / "program"
    for path in (program / "plans").glob("*.yml"):
        path.unlink()
    for name, text in (("open", OPEN), ("groups", GROUPS), ("break", BREAK)):
        (program / "plans" / f"{name}.yml").write_text(text.lstrip(), "utf-8")
    club = program / "club.yml"
    lines = [line for line in club.read_text("utf-8").splitlines() if not line.startswith("demonstration_day:")]
    clock = ["units: kg", "time_zone: Europe/Vienna"]
    club.write_text("\n".join(lines).replace(clock[0], "\n".join(clock)) + "\n", "utf-8")
    evening = program / "sessions" / "foundation-b.yml"
    evening.write_text(evening.read_text("utf-8") + EVENING, "utf-8")
    return folder
