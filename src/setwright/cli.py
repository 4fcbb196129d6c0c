"""The command line: which commands there are, and how this package's errors end one."""

import errno
from typing import Any

import click

from setwright import __version__
from setwright.commands import checking, explaining, publishing, reviewing, starting
from setwright.disk.files import stopped
from setwright.errors import SetwrightError, StoppedError
from setwright.printers import clean
from setwright.source.suggest import did_you_mean


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


for _command in (
    starting.new,
    starting.exercises,
    starting.take,
    starting.import_table,
    checking.check,
    checking.schemas,
    publishing.build,
    publishing.render,
    publishing.preview,
    explaining.explain,
    reviewing.review,
    reviewing.sign,
    reviewing.compare,
    reviewing.resolve,
):
    main.add_command(_command)
