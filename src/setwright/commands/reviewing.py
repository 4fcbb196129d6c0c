"""The physiotherapist's part: what is due, signing it, and what changes between two states of a programme."""

import sys
from datetime import date, datetime
from pathlib import Path

import click

from setwright import looking, reviewing
from setwright.commands.findings import print_findings
from setwright.commands.options import FOUND, known, label, program_folder
from setwright.model.sign_off import SignOff
from setwright.pages.comparison import as_html
from setwright.printers import clean
from setwright.review.before import SIGN_OFFS
from setwright.review.report import as_markdown, as_text
from setwright.review.status import WORDS, reviews
from setwright.review.written_state import schema, to_json
from setwright.wording.reviews import PART_NAMES, STATUS_WORDS


@click.command()
@program_folder
@click.option("--all", "everything", is_flag=True, help="List the exercises that are reviewed, too.")
def review(program: Path, everything: bool) -> None:
    """List what is due for review by the physiotherapist: what was never signed off, and what changed since."""
    looked = looking.look(program, label(program))
    if looked.programme is None:
        print_findings(looked.findings, looked.places, "text")
        sys.exit(FOUND)
    found = reviews(looked.programme, looked.plans)
    for ident, one in sorted(found.items(), key=lambda pair: (pair[1].status, pair[0])):
        if one.status == "reviewed" and one.words_seen and not everything:
            continue
        unseen = "" if one.words_seen or WORDS in one.changed else f"; {PART_NAMES[WORDS]} not seen yet"
        click.echo(f"{ident}: {STATUS_WORDS[one.status].lower()}{_signed(one.sign_off, one.changed)}{unseen}")
    due = sum(one.status != "reviewed" for one in found.values())
    click.echo(f"{due} of {len(found)} exercises are due for review.")


def _signed(sign_off: SignOff | None, changed: tuple[str, ...]) -> str:
    if sign_off is None:
        return ""
    parts = f", in {', '.join(PART_NAMES[part] for part in changed)}" if changed else ""
    return f"{parts} (signed by {sign_off.who} on {sign_off.date})"


@click.command()
@click.argument("exercises", nargs=-1)
@click.option("--all-due", is_flag=True, help="Sign every exercise that is due.")
@click.option("--who", required=True, help="The reviewer's name.")
@click.option("--role", required=True, help="In which role, such as 'physiotherapist of the club'.")
@click.option("--note", help="What readers should know.")
@click.option("--date", "on", type=click.DateTime(["%Y-%m-%d"]), help="The day of the review; today where not given.")
@program_folder
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
    looked = looking.look(program)
    found = reviews(looked.programme, looked.plans) if looked.programme is not None else {}
    for ident in exercises:
        if found:
            known(ident, found, "exercise")
    due = [ident for ident, one in sorted(found.items()) if one.status != "reviewed"] if all_due else []
    chosen = list(dict.fromkeys((*exercises, *due)))
    if not chosen and not all_due:
        raise click.UsageError("which exercise? name it, or write --all-due")
    day = on.date() if on is not None else date.today()
    if day > date.today():  # it would stand above every review that is still to come
        raise click.UsageError(f"--date: {day} is still to come")
    for line in reviewing.sign(program, chosen, who, role, day, note):
        click.echo(line)
    click.echo(clean(f"{len(chosen)} signed in {program / SIGN_OFFS}"), err=True)


@click.command()
@click.argument("old")
@click.argument("new", default="program")
@click.option("--format", "form", type=click.Choice(["text", "markdown", "html"]), default="text", show_default=True)
@program_folder
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


@click.command()
@program_folder
@click.option("--schema", "only_schema", is_flag=True, help="Print the JSON Schema of that file instead.")
def resolve(program: Path, only_schema: bool) -> None:
    """Print every text and every dose of the programme as one JSON file, to compare with later."""
    if only_schema:
        click.echo(schema(), nl=False)
        return
    click.echo(to_json(reviewing.state_at(str(program), program)), nl=False)
