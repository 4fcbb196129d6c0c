"""The command line: which commands there are, and how this package's errors end one."""

import errno
from importlib import import_module
from typing import Any, Final

import click

from setwright import __version__
from setwright.disk.files import stopped
from setwright.errors import SetwrightError, StoppedError
from setwright.printers import clean
from setwright.source.suggest import did_you_mean

COMMANDS: Final = {
    "new": "starting.new",
    "exercises": "starting.exercises",
    "take": "starting.take",
    "import": "starting.import_table",
    "check": "checking.check",
    "schemas": "checking.schemas",
    "build": "publishing.build",
    "render": "publishing.render",
    "preview": "publishing.preview",
    "explain": "explaining.explain",
    "review": "reviewing.review",
    "sign": "reviewing.sign",
    "compare": "reviewing.compare",
    "resolve": "reviewing.resolve",
}
"""The commands, each with its function in a module of ``commands``. One that is not called is not read, so that a check
need not wait for the site engine and the typesetter."""


class _Commands(click.Group):
    """Suggests the command that was meant, and turns this package's errors into usage errors."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        return sorted(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        if cmd_name not in COMMANDS:
            return None
        module, _, function = COMMANDS[cmd_name].partition(".")
        command: click.Command = getattr(import_module(f"setwright.commands.{module}"), function)
        return command

    def resolve_command(self, ctx: click.Context, args: list[str]) -> Any:
        if args and args[0] not in COMMANDS and not args[0].startswith("-"):
            raise click.UsageError(f"No such command '{args[0]}': {did_you_mean(args[0], COMMANDS)}")
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
