"""The commands. No logic: each reads its options, calls one function and prints what came back."""

import sys
from collections.abc import Callable, Iterable
from fractions import Fraction
from pathlib import Path
from typing import Any

import click

from setwright import __version__, printers, publish
from setwright.dose.explain import derivation, history
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.rules import RULES
from setwright.errors import SetwrightError
from setwright.model.units import parse_mass_kg
from setwright.model.vocabulary import WEEKDAYS
from setwright.source.finding import Finding
from setwright.source.read import Places
from setwright.source.schemas import schemas as all_schemas
from setwright.source.suggest import did_you_mean

CLEAN, FOUND = 0, 1

_program = click.option(
    "--program",
    default="program",
    show_default=True,
    type=click.Path(path_type=Path),
    help="The folder with the programme.",
)
_config = click.option(
    "-f",
    "--config-file",
    default="mkdocs.yml",
    show_default=True,
    type=click.Path(path_type=Path),
    help="The site's settings.",
)
_format = click.option(
    "--format",
    "form",
    type=click.Choice(["text", "plain", "json", "annotations"]),
    default="text",
    show_default=True,
    help="How findings are printed.",
)


class _Commands(click.Group):
    """Suggests the command that was meant, and turns this package's errors into usage errors."""

    def resolve_command(self, ctx: click.Context, args: list[str]) -> Any:
        if args and args[0] not in self.commands and not args[0].startswith("-"):
            raise click.UsageError(f"No such command '{args[0]}': {did_you_mean(args[0], self.commands)}")
        return super().resolve_command(ctx, args)

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except SetwrightError as error:
            raise click.UsageError(str(error)) from error


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="setwright")
def main() -> None:
    """Publish a club's strength programme, written as YAML, as a site that members train from."""


@main.command()
@_program
@_format
def check(program: Path, form: str) -> None:
    """Read the programme and print everything that is wrong or doubtful. Writes nothing."""
    looked = publish.look(program, str(program))
    _print_findings(looked.findings, looked.places, form)
    _finish(looked, form)


@main.command()
@_config
@_format
def build(config_file: Path, form: str) -> None:
    """Check, render, build the site and follow every link; then swap it in for the published one."""
    config, program = publish.project(config_file)
    built = publish.build(config, program, _label(program), _progress())
    _print_findings(built.looked.findings, built.looked.places, form)
    for line in built.warnings:
        click.echo(f"site engine: warning: {line}", err=True)
    for line in built.broken:
        click.echo(f"broken link: {line}", err=True)
    if built.site is None:
        click.echo("Nothing was published; the site built before, if any, is as it was.", err=True)
        sys.exit(FOUND)
    click.echo(f"Built {built.pages} pages. Open {built.site / 'index.html'}")
    click.echo("or run 'setwright preview' and look at http://127.0.0.1:8000/")


@main.command()
@_config
@_format
def render(config_file: Path, form: str) -> None:
    """Check, and write the Markdown tree alone, for any engine that reads mkdocs.yml."""
    config, program = publish.project(config_file)
    looked = publish.look(program, _label(program))
    _print_findings(looked.findings, looked.places, form)
    if not looked.publishable:
        sys.exit(FOUND)
    written = publish.render(looked, Path(config.docs_dir))
    click.echo(
        f"{config.docs_dir}: {written.changed} files written, {written.same} as they were, {written.deleted} deleted"
    )


@main.command()
@_config
@click.option("--address", default="127.0.0.1:8000", show_default=True, help="Where to serve, as host:port.")
def preview(config_file: Path, address: str) -> None:
    """Serve the site on this machine and rebuild it whenever a file of the programme changes."""
    from mkdocs.commands.serve import serve  # here: the other commands do not wait for it

    publish.project(config_file)
    serve(config_file=str(config_file), livereload=True, dev_addr=address)


@main.command()
@click.argument("plan")
@click.argument("where", nargs=-1, required=True, metavar="week N DAY EXERCISE")
@click.option("--body-weight", help="In kg, or with a unit: 68, '150 lb'.")
@_program
def explain(plan: str, where: tuple[str, ...], body_weight: str | None, program: Path) -> None:
    """Print how a dose came about: explain relay week 7 friday goblet-squat --body-weight 68."""
    week, day, exercise = _where(where)
    base_kg = _body_weight(body_weight)
    looked = publish.look(program, str(program))
    if looked.programme is None:
        _print_findings(looked.findings, looked.places, "text")
        sys.exit(FOUND)
    resolved = _known(plan, {p.ident: p for p in looked.plans}, "plan")
    session = _session_on(resolved, week, day)
    for item in _items_of(session, exercise):
        name = looked.programme.exercises[exercise].name
        click.secho(f"{name}, {resolved.plan.name}, week {week}, {day}", bold=True)
        for number, step in enumerate(derivation(looked.programme, session, item, base_kg), 1):
            click.echo(f"{number:>3}. {step.says}")
            if step.rule:
                click.echo(f"     {RULES[step.rule].title}. {RULES[step.rule].source}")
        click.echo("Week by week:")
        for number, said in history(looked.programme, resolved, session, item):
            click.echo(f"{number:>5}  {said}")


@main.command()
@_program
def schemas(program: Path) -> None:
    """Write the JSON Schema files that editors use, to the programme's folder 'schema'."""
    folder = program / "schema"
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in all_schemas().items():
        (folder / name).write_text(text, "utf-8")
    click.echo(f"{folder}: {len(all_schemas())} files")


def _print_findings(findings: Iterable[Finding], places: Places, form: str) -> None:
    if form == "json":
        click.echo(printers.as_json(findings))
        return
    for finding in findings:
        match form:
            case "annotations":
                click.echo(printers.annotation(finding))
            case "plain":
                click.echo(printers.plain(finding), err=True)
            case _:
                click.echo(printers.terminal(finding, places.line(finding.position), _colour), err=True)


def _finish(looked: publish.Looked, form: str) -> None:
    errors = sum(f.severity == "error" for f in looked.findings)
    warnings = len(looked.findings) - errors
    if form == "text" and looked.programme is not None:
        thing = looked.programme
        counts = f"{len(thing.plans)} plans, {len(thing.sessions)} sessions, {len(thing.exercises)} exercises"
        click.echo(f"Read {counts}. {len(looked.accepted)} accepted warnings.")
    if form == "text":
        click.echo(f"{errors} errors, {warnings} warnings.")
    sys.exit(FOUND if looked.findings else CLEAN)


def _colour(name: str, text: str) -> str:
    return click.style(text, bold=True) if name == "bold" else click.style(text, fg=name, bold=True)


def _progress() -> Callable[[str], None]:
    """Return what shows progress: a line on a terminal, nothing elsewhere."""
    if sys.stderr.isatty():
        return lambda step: click.echo(f"… {step}", err=True)
    return lambda _: None


def _label(program: Path) -> str:
    """Return how messages name the programme's folder: as seen from here, where it lies below."""
    try:
        return program.resolve().relative_to(Path.cwd()).as_posix()
    except ValueError:
        return str(program)


def _where(words: tuple[str, ...]) -> tuple[int, str, str]:
    rest = [word for word in words if word.lower() != "week"]
    if len(rest) != 3 or not rest[0].isdecimal():
        raise click.UsageError("say where, such as: explain relay week 7 friday push-up")
    day = rest[1].lower()
    if day not in WEEKDAYS:
        raise click.UsageError(f"'{rest[1]}' is not a day: {did_you_mean(day, WEEKDAYS)}")
    return int(rest[0]), day, rest[2]


def _body_weight(written: str | None) -> Fraction | None:
    if written is None:
        return None
    text = written if any(unit in written for unit in ("kg", "lb")) else f"{written} kg"
    try:
        return parse_mass_kg(text)
    except ValueError as error:
        raise click.UsageError(f"--body-weight: {error}") from error


def _known(ident: str, things: dict[str, Any], kind: str) -> Any:
    if ident not in things:
        raise click.UsageError(f"unknown {kind} '{ident}': {did_you_mean(ident, things)}")
    return things[ident]


def _session_on(plan: ResolvedPlan, week: int, day: str) -> ResolvedSession:
    if not 1 <= week <= len(plan.weeks):
        raise click.UsageError(f"{plan.ident} has weeks 1 to {len(plan.weeks)}")
    days: dict[str, ResolvedSession] = {session.day: session for session in plan.weeks[week - 1].sessions}
    found: ResolvedSession = _known(day, days, "day")
    return found


def _items_of(session: ResolvedSession, exercise: str) -> list[ResolvedItem]:
    inside = {item.exercise: item for item in session.items}
    _known(exercise, inside, "exercise of that session")
    return [item for item in session.items if item.exercise == exercise]
