"""What several commands take and ask: where things lie, how findings are printed, which things there are."""

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any, Final, TypeVar

import click

from setwright.source.suggest import did_you_mean

Thing = TypeVar("Thing")

CLEAN: Final = 0
FOUND: Final = 1
"""What a command ends with where there is something to mend."""

program_folder = click.option(
    "--program",
    default="program",
    show_default=True,
    type=click.Path(path_type=Path),
    help="The folder with the programme.",
)
site_settings = click.option(
    "-f",
    "--config-file",
    default="mkdocs.yml",
    show_default=True,
    type=click.Path(path_type=Path),
    help="The site's settings.",
)


def printed_as(*forms: str) -> Callable[[Any], Any]:
    """Return the option for how findings are printed."""
    choice = click.Choice(["text", "plain", "json", "annotations", *forms])
    return click.option(
        "--format", "form", type=choice, default="text", show_default=True, help="How findings are printed."
    )


def label(program: Path) -> str:
    """Return how messages name the programme's folder: as seen from here, where it lies below."""
    try:
        return program.resolve().relative_to(Path.cwd()).as_posix()
    except ValueError:
        return str(program)


def known(ident: str, things: Mapping[str, Thing], kind: str) -> Thing:
    """Return a thing by its id; a usage error that suggests another where there is none."""
    if ident not in things:
        raise click.UsageError(f"unknown {kind} '{ident}': {did_you_mean(ident, things)}")
    return things[ident]
