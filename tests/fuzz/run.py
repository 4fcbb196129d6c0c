"""Fuzz the reader and the whole build, and report.

From the folder tests:

    python -m fuzz.run --seed 1 --reads 100000 --builds 300 --tally fuzz.json

A run is told by its number: ``--first 4711 --reads 1`` repeats run 4711 of the same seed. Exit status 1 says that there
were faults; the inputs that gave them are kept in the folder that ``--keep`` names. The same command with the same
``--tally`` goes on after a cut. It gives way to all else on the machine unless ``--nice 0`` says otherwise. CPU limits
are reported here and never asserted in the suite of tests.
"""

import argparse
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from fuzz import builds, reads
from fuzz.keeping import Kept, opened
from fuzz.reads import Tally

READER: Final = "reader"
BUILDS: Final = "whole builds"


def _followed(tallies: Iterator[Tally], kept: Kept, title: str, keep_each: int, say_each: int) -> Tally:
    """Return the last tally; keep it now and then, and say how far it is."""
    last = kept.tallies.get(title, Tally())
    for last in tallies:
        done = last.runs.total()
        if done % keep_each == 0:
            kept.keep(title, last)
        if done % say_each == 0:
            print(f"  {title}: {done} runs, {len(last.faults)} faults", flush=True)  # noqa: T201
    kept.keep(title, last)
    return last


def report(title: str, tally: Tally) -> str:
    """Return what runs came to, in words."""
    kinds = ", ".join(f"{count} {kind}" for kind, count in sorted(tally.runs.items()))
    rows = [
        f"{title}: {tally.runs.total()} runs ({kinds}); {tally.accepted} accepted; {len(tally.faults)} faults",
        f"  rules that spoke: {len(tally.rules)}",
        *(f"  slowest: {cpu_s:.2f} CPU s, run {run}" for cpu_s, run in tally.slowest),
        *(f"  FAULT in run {fault.run}, {fault.kind}: {fault.what}" for fault in tally.faults),
    ]
    return "\n".join(rows)


def main() -> int:
    """Run what the command line asks for."""
    parser = argparse.ArgumentParser(description="Fuzz the reader and the whole build.")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--first", type=int, default=0, help="number of the first run of the reader")
    parser.add_argument("--reads", type=int, default=1000, help="runs of the reader")
    parser.add_argument("--builds", type=int, default=3, help="whole builds")
    parser.add_argument(
        "--cpu-seconds", type=float, default=10, help="the most that a read may take; a build six times"
    )
    parser.add_argument("--keep", type=Path, help="folder for inputs that gave a fault")
    parser.add_argument("--tally", type=Path, help="file that keeps what runs came to, to go on after a cut")
    parser.add_argument("--nice", type=int, default=15, help="how far it gives way to others, 0 to 19")
    chosen = parser.parse_args()
    os.nice(chosen.nice)
    kept = opened(chosen.tally, seed=chosen.seed, first=chosen.first, builds=chosen.builds)
    numbers = range(chosen.first, chosen.first + chosen.reads)
    with tempfile.TemporaryDirectory() as folder:
        before = kept.tallies.get(READER)
        reading = reads.runs(Path(folder) / "reads", chosen.seed, numbers, chosen.cpu_seconds, chosen.keep, before)
        read = _followed(reading, kept, READER, keep_each=500, say_each=5000)
        print(report(READER, read), flush=True)  # noqa: T201
        (Path(folder) / "builds").mkdir()
        before, most_s = kept.tallies.get(BUILDS), chosen.cpu_seconds * 6
        building = builds.runs(Path(folder) / "builds", chosen.seed, chosen.builds, most_s, chosen.keep, before)
        whole = _followed(building if chosen.builds else iter(()), kept, BUILDS, keep_each=1, say_each=10)
        print(report(BUILDS, whole))  # noqa: T201
    return 1 if read.faults or whole.faults else 0


if __name__ == "__main__":
    raise SystemExit(main())
