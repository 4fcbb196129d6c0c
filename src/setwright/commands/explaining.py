"""How a dose came about, step by step."""

import sys
from fractions import Fraction
from pathlib import Path

import click

from setwright import looking
from setwright.commands.findings import print_findings
from setwright.commands.options import FOUND, known, program_folder
from setwright.dose.resolved import ResolvedItem, ResolvedPlan, ResolvedSession
from setwright.dose.rules import RULES
from setwright.model.units import parse_mass_kg
from setwright.model.vocabulary import WEEKDAYS
from setwright.source.suggest import did_you_mean
from setwright.wording.explain import derivation, history
from setwright.wording.language import ENGLISH


@click.command()
@click.argument("plan")
@click.argument("where", nargs=-1, required=True, metavar="week N DAY EXERCISE")
@click.option("--body-weight", help="In kg, or with a unit: 68, '150 lb'.")
@program_folder
def explain(plan: str, where: tuple[str, ...], body_weight: str | None, program: Path) -> None:
    """Print how a dose came about: explain relay week 7 friday goblet-squat --body-weight 68.

    Where the week's sessions are on any day, say which one instead of the day: session 2. The second one of a day is
    friday 2.
    """
    week, day, exercise = _where(where)
    base_kg = _body_weight(body_weight)
    looked = looking.look(program, str(program))
    if looked.programme is None:
        print_findings(looked.findings, looked.places, "text")
        sys.exit(FOUND)
    resolved = known(plan, {p.ident: p for p in looked.plans}, "plan")
    session = _session_on(resolved, week, day)
    for item in _items_of(session, exercise):
        name = looked.programme.exercises[exercise].name
        whom = f", for {' or '.join(item.choices)}" if item.choices else ""
        click.secho(f"{name}, {resolved.plan.name}, week {week}, {day}{whom}", bold=True)
        for number, step in enumerate(derivation(ENGLISH, looked.programme, session, item, base_kg), 1):
            click.echo(f"{number:>3}. {step.says}")
            if step.rule:
                click.echo(f"     {RULES[step.rule].title}. {RULES[step.rule].source_in_full}")
        click.echo("Week by week:")
        for number, said in history(ENGLISH, looked.programme, resolved, session, item, base_kg):
            click.echo(f"{number:>5}  {said}")


def _where(words: tuple[str, ...]) -> tuple[int, str, str]:
    rest = [word for word in words if word.lower() != "week"]
    if len(rest) not in (3, 4) or not rest[0].isdecimal():
        raise click.UsageError("say where, such as: explain relay week 7 friday push-up")
    day = rest[1].lower()
    if day not in (*WEEKDAYS, "session"):
        raise click.UsageError(f"'{rest[1]}' is not a day: {did_you_mean(day, WEEKDAYS)}")
    if len(rest) == 4 and not rest[2].isdecimal():
        raise click.UsageError(f"'{rest[2]}' is no number: write which session it is, such as '{day} 2'")
    if day == "session" and len(rest) == 3:
        raise click.UsageError("which session? write its number: explain starter week 7 session 2 push-up")
    number = "" if len(rest) == 3 or (day != "session" and rest[2] == "1") else f" {rest[2]}"
    return int(rest[0]), f"{day}{number}", rest[-1]


def _body_weight(written: str | None) -> Fraction | None:
    if written is None:
        return None
    text = written if any(unit in written for unit in ("kg", "lb")) else f"{written} kg"
    try:
        return parse_mass_kg(text)
    except ValueError as error:
        raise click.UsageError(f"--body-weight: {error}") from error


def _session_on(plan: ResolvedPlan, week: int, day: str) -> ResolvedSession:
    if not 1 <= week <= len(plan.weeks):
        raise click.UsageError(f"{plan.ident} has weeks 1 to {len(plan.weeks)}")
    days: dict[str, ResolvedSession] = {
        session.place.replace("-", " "): session for session in plan.weeks[week - 1].sessions
    }
    found: ResolvedSession = known(day, days, "day")
    return found


def _items_of(session: ResolvedSession, exercise: str) -> list[ResolvedItem]:
    inside = {item.exercise: item for item in session.all_items}
    known(exercise, inside, "exercise of that session")
    return [item for item in session.all_items if item.exercise == exercise]
