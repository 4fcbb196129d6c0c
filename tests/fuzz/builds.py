"""Whole random programmes, written as a coach would write them, through the whole build: a sound site, or a fault."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

import yaml
from hypothesis import HealthCheck, Phase, given, seed, settings

from fuzz.faults import Fault, of_findings, tried
from fuzz.reads import Tally
from setwright import publish
from setwright.handouts import tree as handouts
from setwright.handouts.press import Press
from setwright.handouts.writing import Desk
from setwright.publish import Built
from support.any_programme import written
from support.site import build as built_by_command
from support.site import copy_project

ALL_SHEETS_IN: Final = 10
"""One build of so many prints every sheet, as a club does; the others one of each kind, since sheets cost most."""
PRESS: Final = Press()


def write(program: Path, files: dict[str, Any]) -> None:
    """Write a programme's files as YAML."""
    for name, data in files.items():
        path = program / f"{name}.yml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), "utf-8")


def build(project: Path, files: dict[str, Any], all_sheets: bool) -> Built:
    """Build the example project with another programme in it, as the command does, or with a few sheets beside it."""
    copy_project(project)
    shutil.rmtree(project / "program")
    write(project / "program", files)
    if all_sheets:
        return built_by_command(project)
    built = built_by_command(project, sheets="left out")
    if built.looked.publishable:
        desk = Desk(publish.site_of(built.looked))
        for sheet in {sheet.template: sheet for sheet in handouts.sheets(desk)}.values():
            PRESS.print(sheet)
    return built


def drawn(chosen: int, count: int) -> list[dict[str, Any]]:
    """Return so many programmes, the same for the same seed."""
    programmes: list[dict[str, Any]] = []

    @seed(chosen)
    @settings(
        max_examples=count,
        database=None,
        deadline=None,
        phases=(Phase.generate,),
        suppress_health_check=list(HealthCheck),
    )
    @given(written())
    def each(files: dict[str, Any]) -> None:
        programmes.append(files)

    each()
    return programmes


def runs(
    folder: Path, chosen: int, count: int, most_s: float, keep: Path | None = None, before: Tally | None = None
) -> Iterator[Tally]:
    """Yield the tally after each build.

    Args:
        folder: an empty folder to work in.
        chosen: the seed.
        count: how many programmes.
        most_s: the CPU seconds that one build may take.
        keep: where programmes with a fault are written.
        before: what the first of these builds came to in a run that was cut; it goes on behind them.
    """
    tally = before or Tally()
    for number, files in enumerate(drawn(chosen, count)):
        if number < tally.runs.total():
            continue
        project = folder / str(number)
        faults = _one(project, files, number, most_s, tally)
        if faults and keep is not None:
            write(keep / f"{chosen}-build-{number}", files)
        tally.faults += faults
        tally.runs["build"] += 1
        shutil.rmtree(project)
        yield tally


def _one(project: Path, files: dict[str, Any], number: int, most_s: float, tally: Tally) -> list[Fault]:
    run, all_sheets = f"build {number}", number % ALL_SHEETS_IN == 0
    built, used_s, faults = tried(run, "build", most_s, lambda: build(project, files, all_sheets))
    tally.count_time(used_s, run)
    if built is None:
        return faults
    tally.rules.update({finding.rule for finding in built.looked.findings})
    tally.accepted += built.site is not None
    errors = [str(finding) for finding in built.looked.findings if finding.severity == "error"]
    sentences = of_findings(built.looked.findings, built.looked.places)
    wrong = [*sentences, *errors, *built.broken, *built.warnings, *_in_pages(built)]
    return [*faults, *(Fault(run, "build", what) for what in wrong)]


def _in_pages(built: Built) -> Iterator[str]:
    """Yield what no page may hold."""
    for page in sorted(built.site.rglob("*.html")) if built.site else ():
        text = page.read_text("utf-8")
        yield from (f"{page.name} holds {word!r}" for word in ("Traceback", "Undefined", "None</") if word in text)
