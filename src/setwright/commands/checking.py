"""Looking at a programme without writing pages: what is wrong in it, and what its editor needs to know."""

import sys
from collections.abc import Sized
from pathlib import Path

import click

from setwright import __version__, looking, printers
from setwright.checks.registry import RULES
from setwright.commands.findings import print_findings
from setwright.commands.options import CLEAN, FOUND, printed_as, program_folder
from setwright.model.programme import Programme
from setwright.printers import clean
from setwright.source.schemas import schemas as all_schemas


@click.command()
@program_folder
@printed_as("sarif")
def check(program: Path, form: str) -> None:
    """Read the programme and print everything that is wrong or doubtful. Publishes nothing."""
    looked = looking.look(program, str(program))
    if form == "sarif":
        about = [printers.AboutRule(r.ident, r.title, " ".join(r.paragraphs), r.source, r.severity) for r in RULES]
        accepted = [(one.finding, one.why) for one in looked.accepted]
        click.echo(printers.as_sarif(looked.findings, accepted, about, __version__))
    else:
        print_findings(looked.findings, looked.places, form)
    _finish(looked, form)


@click.command()
@program_folder
def schemas(program: Path) -> None:
    """Write the JSON Schema files that editors use, to the programme's folder 'schema'."""
    folder = program / "schema"
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in all_schemas().items():
        (folder / name).write_text(text, "utf-8")
    click.echo(clean(f"{folder}: {len(all_schemas())} files"))


def _finish(looked: looking.Looked, form: str) -> None:
    errors = sum(f.severity == "error" for f in looked.findings)
    warnings = len(looked.findings) - errors
    if form == "text" and looked.programme is not None:
        thing = looked.programme
        counts = ", ".join(_count(len(things), noun) for things, noun in _contents(thing))
        click.echo(f"Read {counts}. {_count(len(looked.accepted), 'accepted warning')}.", err=True)
    if form == "text":
        click.echo(f"{_count(errors, 'error')}, {_count(warnings, 'warning')}.", err=True)
    sys.exit(FOUND if looked.findings else CLEAN)


def _contents(thing: Programme) -> tuple[tuple[Sized, str], ...]:
    return (thing.plans, "plan"), (thing.sessions, "session"), (thing.exercises, "exercise")


def _count(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"
