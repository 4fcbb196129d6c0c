"""Problems planted in a copy of the example programme, one at a time, and what the tool says of each.

Run it from the folder tests for the table: ``python -m support.planted``.
"""

import shutil
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path
from typing import Final

from setwright.checks.registry import run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedPlan
from setwright.model.programme import Programme
from setwright.model.sign_off import SignOff
from setwright.review.parts import PARTS
from setwright.review.signed import signed
from setwright.review.status import reviews
from setwright.source.finding import Finding
from setwright.source.read import Cache, read
from support.reading import EXAMPLE, LABEL


@dataclass(frozen=True)
class Plant:
    """One problem: what a coach might do, in which file, by which replacements, and which rule should say so.

    ``file`` is where it is planted and ``found_in`` where it should be found, if that is another file. A sign-off is
    renewed after the plant, so that only the planted thing is found, unless ``stale`` says otherwise. ``also`` names
    rules that rightly speak too, ``elsewhere`` what else has to be edited for the problem to stand alone: file, old,
    new.
    """

    what: str
    file: str
    edits: tuple[tuple[str, str], ...]
    rule: str
    found_in: str = ""
    stale: bool = False
    also: tuple[str, ...] = ()
    elsewhere: tuple[tuple[str, str, str], ...] = ()

    @property
    def place(self) -> str:
        """The file that the finding should point into."""
        return f"{LABEL}/{self.found_in or self.file}"


def one(
    what: str,
    file: str,
    old: str,
    new: str,
    rule: str,
    found_in: str = "",
    stale: bool = False,
    also: tuple[str, ...] = (),
) -> Plant:
    """Return a plant of a single replacement; an empty old text appends, or makes a new file."""
    return Plant(what, file, ((old, new),), rule, found_in, stale, also)


_SQUAT, _HOPS = "exercises/goblet-squat.yml", "exercises/line-hops.yml"
_RELAY, _CLUB = "plans/relay.yml", "club.yml"
_FOUNDATION_A, _FOUNDATION_B = "sessions/foundation-a.yml", "sessions/foundation-b.yml"
_BUILD_A, _POWER_A, _STARTER_A = "sessions/build-a.yml", "sessions/power-a.yml", "sessions/starter-a.yml"
_LIGHTER = "    lighter:\n      weeks: [4]\n      sets: 60 %\n      load: 90 %\n  - name: Build"
_ONE_MORE = "    progress: {rounds: {weeks: [2, 2, 3]}}\n"
_HOPS_COPY = "exercises/side-hops.yml"

PLANTS: Final = (
    # Slips of the keyboard, found while reading
    one("a key misspelt", _FOUNDATION_A, "rounds: 3", "rounnds: 3", "unknown-key"),
    one("an exercise misspelt", _BUILD_A, "exercise: wall-sit", "exercise: wall-sits", "unknown-exercise"),
    one("kit that the club does not own", _SQUAT, "kit: [kettlebell]", "kit: [kettelbell]", "unknown-kit"),
    one("a source that is not listed", _SQUAT, "blagrove-2018", "blagrove-2081", "unknown-source"),
    one("a share of nothing", _POWER_A, "load: 22 % bodyweight", "load: 22 %", "not-a-load"),
    one("a key written twice", _SQUAT, "tempo: 3-1-1-0", "tempo: 3-1-1-0\ntempo: 2-0-2-0", "duplicate-key"),
    one(
        "a climb without an end",
        _FOUNDATION_A,
        "hold: {add: 5 s, up_to: 40 s}",
        "hold: {add: 5 s}",
        "progress-without-end",
    ),
    one(
        "sets in a superset",
        _FOUNDATION_A,
        "- exercise: goblet-squat",
        "- exercise: goblet-squat\n        sets: 3",
        "sets-in-rounds",
    ),
    one("a lighter week that the phase does not have", _RELAY, "weeks: [4]", "weeks: [9]", "no-such-week"),
    one(
        "a change on a day without a session",
        _RELAY,
        "week: 6\n    day: friday",
        "week: 6\n    day: monday",
        "change-misses",
    ),
    one("a day that is not in the calendar", _RELAY, "date: 2027-09-26", "date: 2027-09-31", "not-a-date"),
    one("a rest without its unit", _BUILD_A, "rest: 2 min\n", "rest: 120\n", "not-a-time"),
    one("both sides of a merge", _HOPS, "cues:\n", "<<<<<<< HEAD\ncues:\n", "conflict-markers"),
    one("HTML in a text", _SQUAT, "Strong thighs", "<b>Strong</b> thighs", "html-in-text"),
    one(
        "a reason left out",
        _RELAY,
        "    why: Two full days without strength work before the start on Sunday.\n",
        "",
        "missing-key",
    ),
    one("a file that nothing reads", "exercises/notes.txt", "", "Ask about the kettlebells.\n", "unused-file"),
    one(
        "an exercise that is its own harder way",
        "exercises/wall-sit.yml",
        "harder:\n",
        "harder:\n  - wall-sit\n",
        "own-variation",
    ),
    one(
        "an easier way that leads back",
        "exercises/wall-sit.yml",
        "easier:\n",
        "easier:\n  - goblet-squat\n",
        "easier-in-a-circle",
        "exercises/wall-sit.yml",
    ),
    # Weeks that are wrong although every file reads well
    # The physiotherapist's limit of 10 % a week for this exercise is crossed with it.
    Plant(
        "a load that jumps by a fifth",
        _FOUNDATION_A,
        (
            ("reps: {add: 1, up_to: 10}\n          then:\n            load:", "load:"),
            ("{add: 2 % bodyweight, up_to: 22", "{add: 4 % bodyweight, up_to: 24"),
        ),
        "load-step-too-large",
        also=("dose-beyond-limit", "words-beyond-dose"),  # a note speaks of ten repetitions, which are no more
    ),
    Plant(
        "a round more of nearly everything",
        _FOUNDATION_B,
        (
            ("    rounds: 2\n    rest: 2 min\n", f"    rounds: 2\n    rest: 2 min\n{_ONE_MORE}"),
            ("rounds: {weeks: [2, 2, 3]}", "rounds: {weeks: [2, 2, 4]}"),
            ("reps: {add: 1, up_to: 10}\n      - exercise: suit", "sets: {weeks: [3, 3, 4]}\n      - exercise: suit"),
            ("time_budget: 60 min", "time_budget: 75 min"),
        ),
        "volume-step-too-large",
        _RELAY,
        also=("exercise-step-too-large", "region-step-too-large"),  # what grows everywhere grows somewhere
    ),
    Plant(
        "too many repetitions for the load",
        _FOUNDATION_B,
        (
            ("load: RPE 6\n", "load: 77 % 1RM\n"),
            ("        progress:\n          load: {add: RPE 0.5, every: 2 weeks, up_to: RPE 6.5}\n", ""),
        ),
        "reps-beyond-load",
        # the deadlift's effort is limited, and that many reps leave none in reserve; nor is it a load to begin with
        also=("dose-beyond-limit", "first-load-heavy"),
    ),
    Plant(
        "a hard set with a short rest",
        _BUILD_A,
        (("load: 5 % bodyweight", "load: RPE 8"),),
        "rest-too-short",
        also=("load-escapes-limit",),  # the heel raise has a limit by body weight
    ),
    one(
        "the same legs two days running", _RELAY, "friday: foundation-b", "wednesday: foundation-b", "regions-too-close"
    ),
    one(
        "heavy legs before the long run",
        _RELAY,
        "friday: foundation-b",
        "saturday: foundation-b",
        "key-session-too-close",
    ),
    one("no lighter week", _RELAY, _LIGHTER, "  - name: Build", "no-lighter-week"),
    one("a taper that hardly tapers", _RELAY, "sets: [60 %, 50 %]", "sets: [80 %, 80 %]", "taper-outside-range"),
    one("the event moved, the plan not", _RELAY, "date: 2027-09-26", "date: 2027-10-26", "event-outside-plan"),
    one(
        "the only row of the starter plan gone",
        "exercises/band-row.yml",
        "pattern: pull",
        "pattern: carry",
        "push-pull-imbalance",
        "plans/starter.yml",
    ),
    one(
        "hinges that are squats",
        "exercises/kettlebell-deadlift.yml",
        "pattern: hinge",
        "pattern: squat",
        "knee-hip-imbalance",
        _RELAY,
    ),
    one(
        "a session that does not fit its evening",
        _BUILD_A,
        "time_budget: 60 min",
        "time_budget: 40 min",
        "over-time-budget",
    ),
    one(
        "a weight that nobody owns",
        "sessions/power-b.yml",
        "load: 11 % bodyweight\n        kit: [box, kettlebell]",
        "load: 3 % bodyweight\n        kit: [box, kettlebell]",
        "no-owned-weight-near",
    ),
    # What a member or a physiotherapist would miss
    one(
        "no easier way",
        _SQUAT,
        "easier:\n  - sit-to-box\n"
        "  - how: Leave the kettlebell and stretch both arms out in front as a counterweight.\n",
        "",
        "missing-easier-variation",
    ),
    one(
        "nothing for members at home",
        "exercises/single-leg-heel-raise.yml",
        "at_home:\n  use: the bottom stair and its rail\n"
        "  how: Hold the rail with fingertips. Wear shoes, if the edge hurts your foot.\n",
        "",
        "missing-home-option",
        also=("too-little-kit",),  # nor for those who wait for the club's own steps
    ),
    one(
        "no word about breathing",
        _HOPS,
        "breathing: Breathe lightly and steadily. Hum the beat, if you tend to hold your breath.\n",
        "",
        "missing-teaching-point",
    ),
    one("no source", _HOPS, "sources: [denadai-2017]\n", "", "missing-source"),
    one("an exercise in no session", _HOPS_COPY, "", "copy of line-hops", "unused-thing"),
    # The physiotherapist's limits and signature
    one(
        "fewer reps allowed than planned",
        _SQUAT,
        "  reps: 15\n",
        "  reps: 9\n",
        "dose-beyond-limit",
        _FOUNDATION_A,
        also=("words-beyond-dose",),  # a note speaks of ten
    ),
    one(
        "less load allowed than planned",
        _SQUAT,
        "  load: 40 % bodyweight\n",
        "  load: 17 % bodyweight\n",
        "dose-beyond-limit",
        _FOUNDATION_A,
    ),
    one(
        "a shorter hold allowed than planned",
        "exercises/front-plank.yml",
        "  hold: 60 s\n",
        "  hold: 35 s\n",
        "dose-beyond-limit",
        _FOUNDATION_A,
    ),
    one(
        "fewer sets a week allowed than planned",
        _SQUAT,
        "  weekly_sets: 12\n",
        "  weekly_sets: 2\n",
        "dose-beyond-limit",
        _RELAY,
    ),
    one(
        "a smaller step allowed than planned",
        _SQUAT,
        "  weekly_step: 10 %\n",
        "  weekly_step: 5 %\n",
        "dose-beyond-limit",
        _FOUNDATION_A,
    ),
    one(
        "hops before their phase",
        _HOPS,
        "  earliest_phase: 2\n",
        "  earliest_phase: 3\n",
        "dose-beyond-limit",
        "sessions/build-b.yml",
    ),
    one(
        "a warm-up beyond a limit",
        "exercises/ankle-rock.yml",
        "  reps: 20\n",
        "  reps: 8\n",
        "dose-beyond-limit",
        "routines/hips-and-ankles.yml",
    ),
    one("one week's change beyond a limit", _RELAY, "    reps: 5\n", "    reps: 13\n", "dose-beyond-limit"),
    one(
        "a cue edited after the review",
        _HOPS,
        "Low, light and quick",
        "Low, light and fast",
        "sign-off-due",
        stale=True,
    ),
    one(
        "a dose changed after the review",
        "sessions/build-b.yml",
        "exercise: line-hops\n        reps: 10",
        "exercise: line-hops\n        reps: 9",
        "sign-off-due",
        _HOPS,
        stale=True,
    ),
    one("a signature for a page that is gone", "sign-offs.yml", "", "copy of a line", "sign-off-astray", stale=True),
    # Standing by things
    one(
        "a warning accepted that nobody raises",
        _STARTER_A,
        "",
        "accept: [{rule: over-time-budget, why: We have the hut for longer.}]\n",
        "acceptance-without-warning",
    ),
    one(
        "a rule accepted that does not exist",
        _STARTER_A,
        "",
        "accept: [{rule: over-time-buget, why: We have the hut for longer.}]\n",
        "unknown-rule",
    ),
    one("a threshold in the wrong unit", _CLUB, "most: 5 weeks", "most: 5", "threshold-unclear"),
    one("a threshold of a rule that has none", _CLUB, "most: 5 weeks", "least: 5 weeks", "unknown-threshold"),
)
"""Every plant: of different kinds, or of one kind in different places."""


def replaced(file: str, text: str, old: str, new: str) -> str:
    """Return a file's text with one passage replaced; an empty old text appends.

    Raises:
        ValueError: where the old text is not there, so that the plant would be none.
    """
    if old not in text:
        raise ValueError(f"{file} does not hold {old!r}")
    return text.replace(old, new, 1) if old else text + new


class Garden:
    """A copy of the example in which one problem at a time is planted and taken out again."""

    def __init__(self, folder: Path) -> None:
        self.program = folder / LABEL
        shutil.copytree(EXAMPLE, self.program)
        self.cache: Cache = {}

    def clean(self) -> tuple[Finding, ...]:
        """Return what is found with nothing planted."""
        return self._found(renew=False)

    def with_plant(self, plant: Plant) -> tuple[Finding, ...]:
        """Return what is found with one problem planted."""
        files = dict.fromkeys((plant.file, *(file for file, _, _ in plant.elsewhere)))
        texts = {file: self._text(file) for file in files}
        try:
            self._write(plant.file, self._planted(plant, texts[plant.file] or ""))
            for file, old, new in plant.elsewhere:
                self._write(file, replaced(file, self._text(file) or "", old, new))
            return self._found(renew=not plant.stale)
        finally:
            for file, text in texts.items():
                self._write(file, text)

    def _text(self, file: str) -> str | None:
        path = self.program / file
        return path.read_text("utf-8") if path.exists() else None

    def _write(self, file: str, text: str | None) -> None:
        path = self.program / file
        if text is None:
            path.unlink(missing_ok=True)
        else:
            path.write_text(text, "utf-8")

    def _planted(self, plant: Plant, text: str) -> str:
        if plant.file == _HOPS_COPY:
            return (self.program / _HOPS).read_text("utf-8")
        if plant.rule == "sign-off-astray":
            line = next(row for row in text.split("\n") if row.startswith("- {exercise: line-hops,"))
            return text + line.replace("line-hops", "line-hop") + "\n"
        for old, new in plant.edits:
            text = replaced(plant.file, text, old, new)
        return text

    def _found(self, renew: bool) -> tuple[Finding, ...]:
        reading = read(self.program, LABEL, self.cache)
        if reading.programme is None:
            return reading.findings
        plans = resolve(reading.programme)
        programme = replace(reading.programme, sign_offs=tuple(_renewed(reading.programme, plans)))
        subject = Subject(programme if renew else reading.programme, plans, reading.places)
        return tuple(sorted((*reading.findings, *run(subject).findings)))


def _renewed(programme: Programme, plans: tuple[ResolvedPlan, ...]) -> Iterator[SignOff]:
    """Yield the sign-offs, those that the plant made out of date renewed; what is new in the copy is signed too."""
    accepted = {i for i, e in programme.exercises.items() if any(a.rule == "sign-off-due" for a in e.accept)}
    for ident, review in reviews(programme, plans).items():
        if ident not in accepted:
            who = {"exercise": ident, "who": "A reviewer", "role": "For this test.", "date": date(2027, 1, 1)}
            digests = {part: review.digests[part] for part in PARTS}
            yield SignOff.model_validate({**who, **digests, "doses": signed(review.dosage)})


def table(plants: Sequence[Plant] = PLANTS) -> str:
    """Return the table of plants and what was found, as Markdown."""
    with tempfile.TemporaryDirectory() as folder:
        garden = Garden(Path(folder))
        rows = ["| # | planted | found | where | else |", "| --- | --- | --- | --- | --- |"]
        for number, plant in enumerate(plants, 1):
            found = garden.with_plant(plant)
            right = [f for f in found if f.rule in (plant.rule, *plant.also)]
            where = right[0].position if right else "not found"
            rows.append(f"| {number} | {plant.what} | {plant.rule} | {where} | {len(found) - len(right)} |")
        rows.append(f"| | nothing | {len(garden.clean())} findings | | |")
    return "\n".join(rows) + "\n"


if __name__ == "__main__":
    print(table(), end="")  # noqa: T201 - a script that prints
