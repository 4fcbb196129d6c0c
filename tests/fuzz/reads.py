"""Runs of the reader: one file of a programme mutated, and all of it read, and resolved and checked where it can be."""

import shutil
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Final

from fuzz.faults import Fault, files_of, of_findings, tried
from fuzz.mutations import mutated
from setwright import publish
from setwright.publish import Looked
from setwright.source.read import Cache, read
from support.reading import EXAMPLE, GOOD, LABEL

ONE_IN: Final = 20
"""One run of so many takes the example programme, which is large; the others the small good one."""
SLOWEST: Final = 5


@dataclass
class Tally:
    """What the runs came to."""

    runs: Counter[str] = field(default_factory=Counter)
    accepted: int = 0
    rules: Counter[str] = field(default_factory=Counter)
    faults: list[Fault] = field(default_factory=list)
    slowest: list[tuple[float, str]] = field(default_factory=list)

    def count_time(self, cpu_s: float, run: str) -> None:
        """Keep the slowest runs."""
        self.slowest = sorted([*self.slowest, (cpu_s, run)], reverse=True)[:SLOWEST]


class _Desk:
    """A copy of a programme, of which one file after the other is rewritten and put back."""

    def __init__(self, program: Path, folder: Path) -> None:
        self.program = folder / LABEL
        shutil.copytree(program, self.program)
        self.files = files_of(self.program)
        self.cache: Cache = {}
        self.look(checks=False)

    def look(self, checks: bool) -> Looked:
        """Read the programme, and resolve and check it where that is asked for and possible."""
        if checks:
            return publish.look(self.program, LABEL, self.cache)
        reading = read(self.program, LABEL, self.cache)
        return Looked(reading.programme, (), reading.findings, (), reading.places, self.program)


def runs(
    folder: Path, seed: int, numbers: range, most_s: float, keep: Path | None = None, before: Tally | None = None
) -> Iterator[Tally]:
    """Yield the tally after each run of the reader.

    Args:
        folder: an empty folder to work in.
        seed: of all runs; a run depends on it and on its own number alone.
        numbers: which runs.
        most_s: the CPU seconds that one run may take.
        keep: where inputs with a fault are written.
        before: what the first of these numbers came to in a run that was cut; it goes on behind them.
    """
    desks = {"good": _Desk(GOOD, folder / "good"), "example": _Desk(EXAMPLE, folder / "example")}
    tally = before or Tally()
    for number in numbers[tally.runs.total() :]:
        rng = Random(f"{seed}:{number}")  # noqa: S311 - nothing secret
        which = "good" if rng.randrange(ONE_IN) else "example"
        desk = desks[which]
        name = rng.choice(list(desk.files))
        kind, raw = mutated(rng, desk.files[name])
        run = f"{number} ({which}/{name})"
        (desk.program / name).write_bytes(raw)
        faults = _one(desk, which, run, kind, most_s, tally)
        (desk.program / name).write_bytes(desk.files[name])
        if faults and keep is not None:
            keep.mkdir(parents=True, exist_ok=True)
            (keep / f"{seed}-{number}-{Path(name).name}").write_bytes(raw)
        tally.faults += faults
        tally.runs[kind] += 1
        yield tally


def _one(desk: _Desk, which: str, run: str, kind: str, most_s: float, tally: Tally) -> list[Fault]:
    looked, used_s, faults = tried(run, kind, most_s, lambda: desk.look(checks=which == "good"))
    tally.count_time(used_s, run)
    if looked is None:
        return faults
    tally.accepted += looked.programme is not None
    tally.rules.update({finding.rule for finding in looked.findings})
    if looked.programme is None and not any(finding.severity == "error" for finding in looked.findings):
        faults.append(Fault(run, kind, "refused without an error"))
    words, _, crashed = tried(run, kind, most_s, lambda: list(of_findings(looked.findings, looked.places)))
    return [*faults, *crashed, *(Fault(run, kind, what) for what in words or ())]
