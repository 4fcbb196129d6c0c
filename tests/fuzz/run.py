"""Fuzz the reader and the whole build, and report.

From the folder tests:

    python -m fuzz.run --seed 1 --reads 100000 --builds 300

A run is told by its number: ``--first 4711 --reads 1`` repeats run 4711 of the same seed. Exit status 1 says that there
were faults; the inputs that gave them are kept in the folder that ``--keep`` names. CPU limits are reported here and
never asserted in the suite of tests.
"""

import argparse
import tempfile
from collections.abc import Iterator
from pathlib import Path

from fuzz import builds, reads
from fuzz.reads import Tally


def _followed(tallies: Iterator[Tally], every: int) -> Tally:
    """Return the last tally, and say now and then how far it is."""
    last = Tally()
    for last in tallies:
        done = last.runs.total()
        if done % every == 0:
            print(f"  {done} runs, {len(last.faults)} faults", flush=True)  # noqa: T201
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
    chosen = parser.parse_args()
    numbers = range(chosen.first, chosen.first + chosen.reads)
    with tempfile.TemporaryDirectory() as folder:
        read = _followed(
            reads.runs(Path(folder) / "reads", chosen.seed, numbers, chosen.cpu_seconds, chosen.keep), every=5000
        )
        print(report("reader", read), flush=True)  # noqa: T201
        (Path(folder) / "builds").mkdir()
        built = builds.runs(Path(folder) / "builds", chosen.seed, chosen.builds, chosen.cpu_seconds * 6, chosen.keep)
        whole = _followed(built, every=1) if chosen.builds else Tally()
        print(report("whole builds", whole))  # noqa: T201
    return 1 if read.faults or whole.faults else 0


if __name__ == "__main__":
    raise SystemExit(main())
