"""What the documents say is true of the code."""

import re
from pathlib import Path

import click
import yaml

from setwright.checks.registry import RULES as CHECKS
from setwright.cli import main
from setwright.dose.bands import load_bands
from setwright.dose.prescribing import prescribed
from setwright.dose.rules import RULES
from setwright.model.exercise import Exercise
from setwright.model.load import BodyWeightShare
from setwright.model.programme import Programme
from setwright.model.session import Block

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def test_the_readme_lists_every_command() -> None:
    """The README's table of commands and the program agree, and each command has a help text."""
    listed = set(re.findall(r"^\| `setwright ([a-z-]+)` \|", README, re.MULTILINE))

    assert listed == set(main.list_commands(click.Context(main)))
    assert all(main.get_command(click.Context(main), name).help for name in listed)


def test_the_map_lists_every_room() -> None:
    """DEVELOPERS.md names each room and each module at the top of the package."""
    package = ROOT / "src" / "setwright"
    rooms = {f"{p.name}/" for p in package.iterdir() if p.is_dir() and not p.name.startswith("__")}
    rooms |= {p.name for p in package.glob("*.py") if p.name != "__init__.py"}
    listed = set(re.findall(r"^\| `([a-z_]+(?:/|\.py))` \|", DEVELOPERS, re.MULTILINE))

    assert listed == rooms


def test_every_rule_of_the_arithmetic_names_a_source() -> None:
    """No rule goes without a source, be it a paper, arithmetic, this tool, or common practice."""
    assert [ident for ident, rule in RULES.items() if not rule.source.strip()] == []


def test_every_check_has_its_page_and_a_source() -> None:
    """Each check's docstring says what it looks for and why it matters, and names a source."""
    lacking = [c.ident for c in CHECKS if not c.source.strip() or "why it matters" not in c.about.lower()]

    assert lacking == []


def test_the_picture_in_the_readme_is_true(example: Programme) -> None:
    """The snippet in the README gives a member of 68 kg, in its fourth trained week, what the README says."""
    snippet = re.search(r"^    - exercise: goblet-squat\n(?:      .*\n)+", README, re.MULTILINE)
    assert snippet
    written = yaml.load(snippet[0], yaml.BaseLoader)  # noqa: S506 - a loader that makes strings alone
    block = Block.model_validate({"kind": "straight", "sets": 3, "exercises": written})
    squat: Exercise = example.exercises["goblet-squat"]
    dose = prescribed(block, block.exercises[0], squat, (60,), 3)
    assert isinstance(dose.heaviest, BodyWeightShare)
    club = example.club
    members = club.body_weight
    bands = load_bands(dose.heaviest.percent, club.weights_kg("kettlebell"), members.from_, members.to)
    taken = next(band.choice.weight_kg for band in bands if band.holds(68))  # type: ignore[arg-type]
    said = README[snippet.end() : snippet.end() + 400]

    assert f"**{dose.first.amount.high} reps**" in said
    assert f"*{float(dose.heaviest.percent):g} % of body weight*" in said
    assert f"**{taken} kg**" in said
