"""Whole random programmes, written as a coach would write them, through the whole build: a sound site, or a fault."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml
from hypothesis import HealthCheck, Phase, given, seed, settings

from fuzz.faults import Fault, of_findings, tried
from fuzz.reads import Tally
from setwright.publish import Built
from support.any_programme import written
from support.site import build as built_by_command
from support.site import copy_project


def write(program: Path, files: dict[str, Any]) -> None:
    """Write a programme's files as YAML."""
    for name, data in files.items():
        path = program / f"{name}.yml"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), "utf-8")


def build(project: Path, files: dict[str, Any]) -> Built:
    """Build the example project with another programme in it, as the command does."""
    copy_project(project)
    shutil.rmtree(project / "program")
    write(project / "program", files)
    return built_by_command(project)


def runs(folder: Path, chosen: int, count: int, most_s: float, keep: Path | None = None) -> Iterator[Tally]:
    """Yield the tally after all builds; hypothesis draws the programmes, one after the other.

    Args:
        folder: an empty folder to work in.
        chosen: the seed.
        count: how many programmes.
        most_s: the CPU seconds that one build may take.
        keep: where programmes with a fault are written.
    """
    tally = Tally()

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
        number = tally.runs.total()
        project = folder / str(number)
        faults = _one(project, files, f"build {number}", most_s, tally)
        if faults and keep is not None:
            write(keep / f"{chosen}-build-{number}", files)
        tally.faults += faults
        tally.runs["build"] += 1
        shutil.rmtree(project)

    each()
    yield tally


def _one(project: Path, files: dict[str, Any], run: str, most_s: float, tally: Tally) -> list[Fault]:
    built, used_s, faults = tried(run, "build", most_s, lambda: build(project, files))
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
