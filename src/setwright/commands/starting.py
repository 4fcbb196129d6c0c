"""Starting: a new club's project, and movements to take into a programme."""

import sys
from datetime import date, datetime
from pathlib import Path

import click

from setwright.commands.findings import print_findings
from setwright.commands.options import CLEAN, FOUND, known, label, program_folder
from setwright.errors import ProjectError
from setwright.printers import clean
from setwright.source.read import read
from setwright.source.suggest import did_you_mean
from setwright.starting.importing import imported
from setwright.starting.library import found, library
from setwright.starting.lines import as_id
from setwright.starting.new import next_monday, start
from setwright.starting.table import read_table
from setwright.starting.taking import take as taken_from


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--name", prompt="What is your club called", help="The club's name; asked for where it is missing.")
@click.option(
    "--starts",
    type=click.DateTime(["%Y-%m-%d"]),
    help="The first day of the first plan; without it, each member begins when they like.",
)
def new(folder: Path, name: str, starts: datetime | None) -> None:
    """Start a club's own project in FOLDER: a small programme that builds, to make your own."""
    files = start(folder, name.strip(), starts.date() if starts else None, library())
    click.echo(clean(f"{folder}: {len(files)} files. Next: cd there, 'setwright build', and read README.md."))


@click.command()
@click.argument("words", nargs=-1)
@click.option("--region", help="A muscle region, such as calf.")
@click.option("--pattern", help="A movement pattern, such as squat.")
@click.option("--kit", help="A kit, such as kettlebell.")
def exercises(words: tuple[str, ...], region: str | None, pattern: str | None, kit: str | None) -> None:
    """List the movements that came with the tool, with those WORDS in name or text."""
    programme = library().programme
    asked = {"region": region, "pattern": pattern, "kit": kit}
    everything = list(programme.exercises.values())
    there: dict[str, set[str]] = {
        "region": {one for ex in everything for one in (*ex.regions.main, *ex.regions.also)},
        "pattern": {str(ex.pattern) for ex in everything},
        "kit": {one for ex in everything for one in ex.kit},
    }
    for key, value in asked.items():
        if value is not None and value not in there[key]:
            raise click.UsageError(f"no movement has the {key} '{value}': {did_you_mean(value, there[key])}")
    rows = list(found(programme, words, **asked))
    widest = max((len(ident) for ident, _ in rows), default=0)
    for ident, exercise in rows:
        kits = f"; {', '.join(exercise.kit)}" if exercise.kit else ""
        click.echo(f"{ident:<{widest}}  {exercise.name}: {exercise.pattern}; {', '.join(exercise.regions.main)}{kits}")
    click.echo(f"{len(rows)} of {len(programme.exercises)} movements.", err=True)
    sys.exit(CLEAN if rows else FOUND)


@click.command()
@click.argument("idents", nargs=-1, required=True, metavar="ID...")
@program_folder
def take(idents: tuple[str, ...], program: Path) -> None:
    """Copy movements into the programme, unsigned, with what they lead to and their sources. Overwrites nothing."""
    movements = library()
    for ident in idents:
        known(ident, movements.programme.exercises, "movement")
    if not (program / "club.yml").is_file():
        raise ProjectError(f"there is no programme in {program}: run this where it stands, or name it with --program")
    taken = taken_from(movements, program, idents)
    for ident, by in taken.written.items():
        click.echo(clean(f"{program}/exercises/{ident}.yml{f' ({by} leads to it)' if by else ''}"))
    for ident in (one for one in taken.left if one in idents):
        click.echo(clean(f"{program}/exercises/{ident}.yml was there already and is as it was"))
    if taken.references:
        click.echo(clean(f"{program}/references.yml: {', '.join(taken.references)} added"))
    reading = read(program, label(program))
    ours = {f"{label(program)}/exercises/{ident}.yml" for ident in taken.written}
    left_to_do = tuple(finding for finding in reading.findings if finding.position.file in ours)
    print_findings(left_to_do, reading.places, "text")
    sys.exit(FOUND if left_to_do else CLEAN)


@click.command("import")
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@program_folder
@click.option("--plan", help="The new plan's id.  [default: from the file's name]")
@click.option("--sheet", help="The sheet of a workbook.  [default: the first]")
@click.option("--starts", type=click.DateTime(["%Y-%m-%d"]), help="The plan's first day.  [default: next Monday]")
@click.option("--write", is_flag=True, help="Write the files. Without it, nothing is written.")
def import_table(
    file: Path, program: Path, plan: str | None, sheet: str | None, starts: datetime | None, write: bool
) -> None:
    """Read a plan from a table, FILE (.csv or .xlsx): show what was understood and, with --write, write it."""
    movements = library()
    reading = read(program, label(program))
    if reading.programme is None:
        print_findings(reading.errors, reading.places, "text")
        raise ProjectError(f"the programme in {program} has to be read first")
    ident = plan or as_id(file.stem)
    first = starts.date() if starts else next_monday(date.today())
    found = imported(read_table(file, sheet), ident, first, reading.programme.exercises, movements.programme.exercises)
    for said, lines in (("Understood", found.understood), ("Assumed", found.assumed)):
        for line in lines:
            click.echo(clean(f"{said}: {line}"))
    for one in found.unread:
        click.echo(clean(f"Not read: {one.cell} '{one.text}': {one.why}"))
    if found.movements:
        click.echo(clean(f"From the library: {', '.join(found.movements)}"))
    if not write:
        for path, text in found.files.items():
            click.echo(clean(f"\n--- {path}\n{text}", keep="\n"), nl=False)
        click.echo("\nNothing was written: say --write.", err=True)
        sys.exit(FOUND if found.unread else CLEAN)
    there = [path for path in found.files if (program / path).exists()]
    if there:
        raise ProjectError(f"{there[0]} is there already: name another plan with --plan")
    taken_from(movements, program, found.movements)
    for path, text in found.files.items():
        target = program / path
        target.parent.mkdir(exist_ok=True)
        with target.open("x", encoding="utf-8") as stream:
            stream.write(text)
        click.echo(clean(f"{program}/{path}"))
    reading = read(program, label(program))
    print_findings(reading.errors, reading.places, "text")
    sys.exit(FOUND if found.unread or reading.errors else CLEAN)
