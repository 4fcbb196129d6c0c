"""Building the site, writing its tree, and looking at it on this machine."""

import logging
import sys
from pathlib import Path

import click

from setwright import publish
from setwright.commands.findings import print_findings, progress
from setwright.commands.options import FOUND, label, printed_as, site_settings
from setwright.printers import clean


@click.command()
@site_settings
@printed_as()
@click.option("--no-sheets", is_flag=True, help="Leave the PDF sheets out, for a quick look at the pages.")
def build(config_file: Path, form: str, no_sheets: bool) -> None:
    """Check, render, build the site and follow every link; then swap it in for the published one."""
    config, program = publish.project(config_file)
    built = publish.build(config, program, label(program), progress(), "left out" if no_sheets else "printed")
    print_findings(built.looked.findings, built.looked.places, form)
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


@click.command()
@site_settings
@printed_as()
def render(config_file: Path, form: str) -> None:
    """Check, and write the Markdown tree alone, for any engine that reads mkdocs.yml."""
    config, program = publish.project(config_file)
    looked = publish.look(program, label(program))
    print_findings(looked.findings, looked.places, form)
    if not looked.publishable:
        sys.exit(FOUND)
    written = publish.render(looked, config)
    for line in written.remarks:
        click.echo(clean(line), err=True)
    counts = f"{written.changed} files written, {written.same} as they were, {written.deleted} deleted"
    click.echo(clean(f"{config.docs_dir}: {counts}"))


@click.command()
@site_settings
@click.option("--address", default="127.0.0.1:8000", show_default=True, help="Where to serve, as host:port.")
@click.option("--port", type=click.IntRange(1, 65535), help="The port, where another one is free.")
@click.option("--open", "opens", is_flag=True, help="Open the site in a browser.")
def preview(config_file: Path, address: str, port: int | None, opens: bool) -> None:
    """Serve the site on this machine and rebuild it whenever a file of the programme changes."""
    from mkdocs.commands.serve import serve  # here: the other commands do not wait for it

    publish.project(config_file)
    at = address if port is None else f"{address.rpartition(':')[0] or address}:{port}"
    # Only pages that changed are built. The engine warns that menus and links may be wrong then; the plugin has all of
    # them built where that could be.
    logging.getLogger("mkdocs.commands.build").addFilter(lambda record: "'dirty' build" not in record.getMessage())
    serve(config_file=str(config_file), livereload=True, build_type="dirty", dev_addr=at, open_in_browser=opens)
