"""The physiotherapist's part: what is due, signing it, and what changes between two states of a programme."""

import sys
from collections.abc import Mapping
from datetime import date, datetime
from pathlib import Path

import click

from setwright import looking, reviewing
from setwright.checks import sign_off_due
from setwright.commands.findings import print_findings
from setwright.commands.options import FOUND, known, label, program_folder
from setwright.model.sign_off import SignOff
from setwright.pages.comparison import as_html
from setwright.printers import clean
from setwright.review.before import SIGN_OFFS
from setwright.review.report import as_markdown, as_text
from setwright.review.signing import seen_code
from setwright.review.status import WORDS, Review, reviews
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
    for one in sorted(found.values(), key=lambda one: (one.status, one.exercise)):
        if one.status != "reviewed" or not one.words_seen or everything:
            click.echo(_line(one))
    due = [one for one in found.values() if one.status != "reviewed"]
    click.echo(f"{len(due)} of {len(found)} exercises are due for review.")
    if due:
        click.echo(
            f"Once each is read, this signs them all: setwright sign --all-due --seen {seen_code(due)} --who ..."
        )


def _line(one: Review) -> str:
    unseen = "" if one.words_seen or WORDS in one.changed else f"; {PART_NAMES[WORDS]} not seen yet"
    return f"{one.exercise}: {STATUS_WORDS[one.status].lower()}{_signed(one.sign_off, one.changed)}{unseen}"


def _signed(sign_off: SignOff | None, changed: tuple[str, ...]) -> str:
    if sign_off is None:
        return ""
    parts = f", in {', '.join(PART_NAMES[part] for part in changed)}" if changed else ""
    return f"{parts} (signed by {sign_off.who} on {sign_off.date})"


@click.command()
@click.argument("exercises", nargs=-1)
@click.option("--all-due", is_flag=True, help="Sign every exercise that is due; wants --seen.")
@click.option("--seen", help="What 'setwright review' printed beside its list, such as 12-abcd: that list was read.")
@click.option("--who", required=True, help="The reviewer's name.")
@click.option("--role", required=True, help="In which role, such as 'physiotherapist of the club'.")
@click.option("--note", help="What readers should know.")
@click.option("--date", "on", type=click.DateTime(["%Y-%m-%d"]), help="The day of the review; today where not given.")
@program_folder
def sign(
    exercises: tuple[str, ...],
    all_due: bool,
    seen: str | None,
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
    due = _all_due(looked, found, seen) if all_due else []
    if seen is not None and not all_due:
        raise click.UsageError("--seen belongs to --all-due")
    chosen = list(dict.fromkeys((*exercises, *due)))
    if not chosen and not all_due:
        raise click.UsageError("which exercise? name it, or write --all-due")
    day = on.date() if on is not None else date.today()
    if day > date.today():  # it would stand above every review that is still to come
        raise click.UsageError(f"--date: {day} is still to come")
    for line in reviewing.sign(program, chosen, who, role, day, note):
        click.echo(line)
    click.echo(clean(f"{len(chosen)} signed in {program / SIGN_OFFS}"), err=True)


def _all_due(looked: looking.Looked, found: Mapping[str, Review], seen: str | None) -> list[str]:
    """Return every exercise that is due, where whoever signs has seen the list as it is now, and nothing is wrong."""
    wrong = sum(one.severity == "error" and one.rule != sign_off_due.ID for one in looked.findings)
    if wrong:
        raise click.UsageError(
            f"--all-due: nothing is signed with {wrong} {'error' if wrong == 1 else 'errors'} in the programme; "
            "'setwright check' lists them"
        )
    due = [one for _, one in sorted(found.items()) if one.status != "reviewed"]
    code = seen_code(due)
    if due and seen != code:
        for one in due:
            click.echo(_line(one))
        what = "nobody says that this list was seen" if seen is None else f"'{seen}' is another list than this"
        raise click.UsageError(f"--all-due: {what}, and nothing is signed. Read each page, then write '--seen {code}'")
    return [one.exercise for one in due]


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
