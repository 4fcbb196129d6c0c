"""The commands. No logic: each reads its options, calls one function and prints what came back."""

import errno
import sys
from collections.abc import Callable, Iterable, Sized
from datetime import date, datetime
from fractions import Fraction
from pathlib import Path
from typing import Any

import click

from setwright import __version__, printers, publish, reviewing
from setwright.checks.registry import RULES as CHECKS
from setwright.disk.files import stopped
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.rules import RULES
from setwright.errors import SetwrightError, StoppedError
from setwright.model.programme import Programme
from setwright.model.units import parse_mass_kg
from setwright.model.vocabulary import WEEKDAYS
from setwright.pages.comparison import as_html
from setwright.printers import clean
from setwright.review.before import SIGN_OFFS
from setwright.review.report import as_markdown, as_text
from setwright.review.status import WORDS, reviews
from setwright.review.written_state import schema, to_json
from setwright.source.finding import Finding
from setwright.source.read import Places
from setwright.source.schemas import schemas as all_schemas
from setwright.source.suggest import did_you_mean
from setwright.wording.explain import derivation, history
from setwright.wording.language import ENGLISH
from setwright.wording.reviews import PART_NAMES, STATUS_WORDS

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


def _printed_as(*forms: str) -> Callable[[Any], Any]:
    """Return the option for how findings are printed."""
    choice = click.Choice(["text", "plain", "json", "annotations", *forms])
    return click.option(
        "--format", "form", type=choice, default="text", show_default=True, help="How findings are printed."
    )


_format = _printed_as()


class _Commands(click.Group):
    """Suggests the command that was meant, and turns this package's errors into usage errors."""

    def resolve_command(self, ctx: click.Context, args: list[str]) -> Any:
        if args and args[0] not in self.commands and not args[0].startswith("-"):
            raise click.UsageError(f"No such command '{args[0]}': {did_you_mean(args[0], self.commands)}")
        return super().resolve_command(ctx, args)

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except StoppedError as error:
            raise click.ClickException(clean(str(error))) from error
        except SetwrightError as error:
            raise click.UsageError(clean(str(error))) from error
        except OSError as error:
            if error.errno == errno.EPIPE:  # the reader of the output has gone
                raise
            raise click.ClickException(clean(str(stopped(error)))) from error


@click.group(cls=_Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="setwright")
def main() -> None:
    """Publish a club's strength programme, written as YAML, as a site that members train from."""


@main.command()
@_program
@_printed_as("sarif")
def check(program: Path, form: str) -> None:
    """Read the programme and print everything that is wrong or doubtful. Writes nothing."""
    looked = publish.look(program, str(program))
    if form == "sarif":
        about = [printers.AboutRule(r.ident, r.title, " ".join(r.paragraphs), r.source, r.severity) for r in CHECKS]
        accepted = [(one.finding, one.why) for one in looked.accepted]
        click.echo(printers.as_sarif(looked.findings, accepted, about, __version__))
    else:
        _print_findings(looked.findings, looked.places, form)
    _finish(looked, form)


@main.command()
@_program
@click.option("--all", "everything", is_flag=True, help="List the exercises that are reviewed, too.")
def review(program: Path, everything: bool) -> None:
    """List what is due for review by the physiotherapist: what was never signed off, and what changed since."""
    looked = publish.look(program, _label(program))
    if looked.programme is None:
        _print_findings(looked.findings, looked.places, "text")
        sys.exit(FOUND)
    found = reviews(looked.programme, looked.plans)
    for ident, one in sorted(found.items(), key=lambda pair: (pair[1].status, pair[0])):
        if one.status == "reviewed" and one.words_seen and not everything:
            continue
        unseen = "" if one.words_seen or WORDS in one.changed else f"; {PART_NAMES[WORDS]} not seen yet"
        click.echo(f"{ident}: {STATUS_WORDS[one.status].lower()}{_signed(one.sign_off, one.changed)}{unseen}")
    due = sum(one.status != "reviewed" for one in found.values())
    click.echo(f"{due} of {len(found)} exercises are due for review.")


def _signed(sign_off: Any, changed: tuple[str, ...]) -> str:
    if sign_off is None:
        return ""
    parts = f", in {', '.join(PART_NAMES[part] for part in changed)}" if changed else ""
    return f"{parts} (signed by {sign_off.who} on {sign_off.date})"


@main.command()
@click.argument("exercises", nargs=-1)
@click.option("--all-due", is_flag=True, help="Sign every exercise that is due.")
@click.option("--who", required=True, help="The reviewer's name.")
@click.option("--role", required=True, help="In which role, such as 'physiotherapist of the club'.")
@click.option("--note", help="What readers should know.")
@click.option("--date", "on", type=click.DateTime(["%Y-%m-%d"]), help="The day of the review; today where not given.")
@_program
def sign(
    exercises: tuple[str, ...],
    all_due: bool,
    who: str,
    role: str,
    note: str | None,
    on: datetime | None,
    program: Path,
) -> None:
    """Sign exercises off as reviewed, as they are now: setwright sign goblet-squat --who ... --role ..."""
    looked = publish.look(program)
    found = reviews(looked.programme, looked.plans) if looked.programme is not None else {}
    for ident in exercises:
        if found:
            _known(ident, found, "exercise")
    due = [ident for ident, one in sorted(found.items()) if one.status != "reviewed"] if all_due else []
    chosen = list(dict.fromkeys((*exercises, *due)))
    if not chosen and not all_due:
        raise click.UsageError("which exercise? name it, or write --all-due")
    day = on.date() if on is not None else date.today()
    for line in reviewing.sign(program, chosen, who, role, day, note):
        click.echo(line)
    click.echo(clean(f"{len(chosen)} signed in {program / SIGN_OFFS}"), err=True)


@main.command()
@click.argument("old")
@click.argument("new", default="program")
@click.option("--format", "form", type=click.Choice(["text", "markdown", "html"]), default="text", show_default=True)
@_program
def compare(old: str, new: str, form: str, program: Path) -> None:
    """Print what changes for members between two states: folders, files of 'resolve', or git revisions."""
    change = reviewing.compared(old, new, program)
    match form:
        case "html":
            click.echo(as_html(change, old, new), nl=False)
        case "markdown":
            click.echo(as_markdown(change), nl=False)
        case _:
            click.echo(as_text(change), nl=False)


@main.command()
@_program
@click.option("--schema", "only_schema", is_flag=True, help="Print the JSON Schema of that file instead.")
def resolve(program: Path, only_schema: bool) -> None:
    """Print every text and every dose of the programme as one JSON file, to compare with later."""
    if only_schema:
        click.echo(schema(), nl=False)
        return
    click.echo(to_json(reviewing.state_at(str(program), program)), nl=False)


@main.command()
@_config
@_format
def build(config_file: Path, form: str) -> None:
    """Check, render, build the site and follow every link; then swap it in for the published one."""
    config, program = publish.project(config_file)
    built = publish.build(config, program, _label(program), _progress())
    _print_findings(built.looked.findings, built.looked.places, form)
    for line in built.written.remarks if built.written else ():
        click.echo(clean(line), err=True)
    for line in built.warnings:
        click.echo(clean(f"site engine: warning: {line}"), err=True)
    for line in built.broken:
        click.echo(clean(f"broken link: {line}"), err=True)
    if built.site is None:
        click.echo("Nothing was published; the site built before, if any, is as it was.", err=True)
        sys.exit(FOUND)
    click.echo(clean(f"Built {built.pages} pages. Open {built.site / 'index.html'}"))
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
    written = publish.render(looked, config)
    for line in written.remarks:
        click.echo(clean(line), err=True)
    counts = f"{written.changed} files written, {written.same} as they were, {written.deleted} deleted"
    click.echo(clean(f"{config.docs_dir}: {counts}"))


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
        for number, step in enumerate(derivation(ENGLISH, looked.programme, session, item, base_kg), 1):
            click.echo(f"{number:>3}. {step.says}")
            if step.rule:
                click.echo(f"     {RULES[step.rule].title}. {RULES[step.rule].source}")
        click.echo("Week by week:")
        for number, said in history(ENGLISH, looked.programme, resolved, session, item):
            click.echo(f"{number:>5}  {said}")


@main.command()
@_program
def schemas(program: Path) -> None:
    """Write the JSON Schema files that editors use, to the programme's folder 'schema'."""
    folder = program / "schema"
    folder.mkdir(parents=True, exist_ok=True)
    for name, text in all_schemas().items():
        (folder / name).write_text(text, "utf-8")
    click.echo(clean(f"{folder}: {len(all_schemas())} files"))


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
        counts = ", ".join(_count(len(things), noun) for things, noun in _contents(thing))
        click.echo(f"Read {counts}. {_count(len(looked.accepted), 'accepted warning')}.")
    if form == "text":
        click.echo(f"{_count(errors, 'error')}, {_count(warnings, 'warning')}.")
    sys.exit(FOUND if looked.findings else CLEAN)


def _contents(thing: Programme) -> tuple[tuple[Sized, str], ...]:
    return (thing.plans, "plan"), (thing.sessions, "session"), (thing.exercises, "exercise")


def _count(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"


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
