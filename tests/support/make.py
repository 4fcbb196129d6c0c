"""Small programmes from YAML snippets. What a test does not name is filled in with something unremarkable."""

from collections.abc import Iterable, Mapping
from typing import Any

from setwright.checks.registry import Verdict, run
from setwright.checks.rule import Subject
from setwright.dose.dose import Dose
from setwright.dose.prescribing import prescribed, rest_at
from setwright.dose.resolve import resolve
from setwright.dose.resolved import ResolvedItem, ResolvedPlan
from setwright.model.club import Club
from setwright.model.exercise import Exercise
from setwright.model.plan import Plan
from setwright.model.programme import Programme
from setwright.model.reference import Reference
from setwright.model.routine import Routine
from setwright.model.session import Block, Session
from setwright.outline.site import Site
from setwright.pages import tree
from setwright.source.finding import Position
from setwright.source.links import Parts, link_findings
from setwright.source.read import FOLDERS, Places, References
from setwright.source.tree import read_tree

CLUB = """
name: A club
body_weight: {from: 40 kg, to: 110 kg}
kit:
  kettlebell: [4 kg, 6 kg, 8 kg, 10 kg, 12 kg, 16 kg, 20 kg, 24 kg]
  dumbbell: {from: 1 kg, to: 20 kg, step: 1 kg, pairs: true}
  band: [light, medium, heavy]
  mat: 8
safety:
  contact: Ask the coach.
  in_an_emergency: Call the emergency number.
  before_you_start: [You are ill.]
  stop_if: [It hurts.]
"""
EXERCISE = """
name: A lift
pattern: squat
regions: {main: [quadriceps]}
kit: [kettlebell]
why: For strength.
set_up: [Stand.]
steps: [Move.]
breathing: Out on the way up.
feel: In the thighs.
cues: [Tall]
faults: [{sign: The heels rise., fix: Go less deep.}]
easier: [{how: Use a lower box.}]
at_home: {use: a rucksack}
cautions: [Ask first if the knee hurts.]
sources: [a-study]
"""
REFERENCES = """
a-study: {authors: Somebody and others, year: 2020, title: A study, where: A journal}
"""
SESSION = """
name: A session
aim: Strength.
warm_up: [warm]
blocks: [{kind: straight, sets: 3, exercises: [{exercise: lift, reps: 8}]}]
"""
PLAN = """
name: A plan
for: Members.
starts: 2027-03-01
other_training: [{day: saturday, what: A long walk.}]
phases: [{name: First, aim: To begin., weeks: 4, sessions: {monday: only}}]
"""
ROUTINE = """
name: A warm-up
kind: warm-up
why: To get warm.
takes: 5 min
exercises: [{do: Walk., work: 5 min}]
"""
USUAL = {
    "club": CLUB,
    "exercises/lift": EXERCISE,
    "sessions/only": SESSION,
    "plans/plan": PLAN,
    "routines/warm": ROUTINE,
}
_PATTERN = {"exercises": EXERCISE, "sessions": SESSION, "plans": PLAN, "routines": ROUTINE}


def yaml(snippet: str) -> Any:
    """Return plain data from YAML, read as the tool reads it: every value stays a text."""
    tree = read_tree("snippet.yml", snippet.encode())
    if tree.root is None or tree.findings:
        raise ValueError(f"not YAML: {tree.findings}")
    return tree.root.data()


def filled(usual: str, snippet: str, leave_out: Iterable[str] = ()) -> dict[str, Any]:
    """Return the data of a file: the usual keys, the snippet's keys instead, and some left out."""
    whole = {**yaml(usual), **(yaml(snippet) if snippet else {})}
    return {key: value for key, value in whole.items() if key not in leave_out}


def club(snippet: str = "") -> Club:
    return Club.model_validate(filled(CLUB, snippet))


def exercise(snippet: str = "") -> Exercise:
    return Exercise.model_validate(filled(EXERCISE, snippet))


def session(snippet: str = "") -> Session:
    return Session.model_validate(filled(SESSION, snippet))


def plan(snippet: str = "") -> Plan:
    return Plan.model_validate(filled(PLAN, snippet))


def programme(
    files: Mapping[str, str] | None = None, leave_out: Mapping[str, Iterable[str]] | None = None
) -> Programme:
    """Return a programme of one exercise, one session and one plan, with other files or keys laid over it.

    Args:
        files: snippets by file, such as ``{"plans/plan": "starts: 2027-03-03"}``; a new name makes a new file.
        leave_out: keys to leave out, by file.
    """
    files, leave_out = files or {}, leave_out or {}
    things: dict[str, dict[str, Any]] = {kind: {} for kind in FOLDERS}
    for name in {**USUAL, **files}:
        kind, _, ident = name.partition("/")
        if ident:
            usual = USUAL.get(name, _PATTERN[kind])
            data = filled(usual, files.get(name, ""), leave_out.get(name, ()))
            things[kind][ident] = FOLDERS[kind].model_validate(data)
    made = Programme(club(files.get("club", "")), **things, references=references())
    ids = {kind: set(found) for kind, found in things.items()}
    parts = Parts(made.club, **things, references=set(made.references), ids=ids)
    astray = list(link_findings(parts, lambda *_, **__: Position("x")))
    if astray:
        raise ValueError(f"the reader would refuse this: {astray}")
    return made


def references() -> dict[str, Reference]:
    """Return the one source that the usual exercise names."""
    return References.model_validate({"references": yaml(REFERENCES)}).references


def routine(snippet: str = "") -> Routine:
    return Routine.model_validate(filled(ROUTINE, snippet))


def resolved(files: Mapping[str, str] | None = None) -> ResolvedPlan:
    """Return the plan of a small programme, resolved."""
    return next(plan for plan in resolve(programme(files)) if plan.ident == "plan")


def verdict(made: Programme) -> Verdict:
    """Run every check over a programme."""
    return run(Subject(made, resolve(made), Places("program")))


def dose(written: str, exercise_snippet: str = "", block: str = "{kind: straight, sets: 3}") -> Dose:
    """Return the first dose of an exercise, such as ``dose("{reps: 8, tempo: 3-1-1-0}")``."""
    made = _block(written, block)
    return prescribed(made, made.exercises[0], exercise(exercise_snippet), rest_at(made, 0), 0)


def _block(written: str, block: str) -> Block:
    first = {"exercise": "lift", **yaml(written)}
    whole = yaml(block)
    others = [] if whole["kind"] == "straight" else [{"exercise": "lift", "reps": "1"}]
    return Block.model_validate({**whole, "exercises": [first, *others]})


def one_exercise(
    written: str,
    block: str = "{kind: straight, sets: 3}",
    phases: str = "[{name: All, aim: To go on., weeks: 40, sessions: {monday: only}}]",
    changes: str = "[]",
    lift: str = "",
) -> Programme:
    """Return a programme whose one session holds one exercise, over weeks as the snippets say."""
    blocks = [_block(written, block)]
    exercises = {"lift": exercise(lift)}
    only = session().model_copy(update={"blocks": blocks})
    whole = plan(f"{{phases: {phases}, changes: {changes}}}")
    return Programme(
        club(), plans={"plan": whole}, sessions={"only": only}, exercises=exercises, routines={"warm": routine()}
    )


def in_week(made: Programme, week: int) -> ResolvedItem | None:
    """Return the one exercise of such a programme in a week of its plan; None where its session is left out."""
    sessions = resolve(made)[0].weeks[week - 1].sessions
    return next(sessions[0].items) if sessions else None


def printed(site: Site) -> dict[str, str]:
    """Return the text of every page."""
    pages = tree.render(site.programme, site.plans)
    return {path: raw.decode() for path, raw in pages.items() if path.endswith(".md")}
