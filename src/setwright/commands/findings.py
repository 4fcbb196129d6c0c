"""Findings and progress on the terminal."""

import sys
from collections.abc import Callable, Iterable

import click

from setwright import printers
from setwright.source.finding import Finding
from setwright.source.read import Places


def print_findings(findings: Iterable[Finding], places: Places, form: str) -> None:
    """Print findings as a coach, an editor or a workflow reads them: errors first, since those stop publishing."""
    findings = sorted(findings, key=lambda finding: finding.severity != "error")
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


def _colour(name: str, text: str) -> str:
    return click.style(text, bold=True) if name == "bold" else click.style(text, fg=name, bold=True)


def progress() -> Callable[[str], None]:
    """Return what shows progress: a line on a terminal, nothing elsewhere."""
    if sys.stderr.isatty():
        return lambda step: click.echo(f"… {step}", err=True)
    return lambda _: None
