"""Let every step of a whole publishing run go wrong, one at a time, and kill a run at every step.

    python tests/benchmarks/faults.py [--every 25] [--kind refuse] [--kind kill]

The small good programme is published, changed, and published again with its real pages, sheets and engine; in that
second run the n-th thing that is done to a file is refused, or ends the process. Afterwards the site must be the old
one or the new one, and every file of the club's as it was. Each run is a process of its own, so that a kill is one.

Every step takes hours; `--every N` takes each N-th. `tests/disk/test_faults.py` takes every step of a run in miniature.
"""

import argparse
import os
import shutil
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from setwright.disk import swap
from support.faults import Killed, Kind, faults
from support.site import digests
from support.small import said, setwright, small_project
from support.sweep import Before, clubs_files, put_own_files, wrong

CUE = ("Chest up", "Chest high")


def main() -> None:
    """Run the sweep and print what was found."""
    parser = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    parser.add_argument("--every", type=int, default=1, help="take each N-th step (1: all)")
    parser.add_argument("--first", type=int, default=1, help="the first step to take")
    parser.add_argument("--kind", action="append", choices=["refuse", "kill"], help="one kind alone")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        before, count = _prepare(Path(folder))
        print(f"{count} steps, {len(before.new)} files in the new site")  # noqa: T201
        bad = 0
        for kind in options.kind or ["refuse", "kill"]:
            numbers = range(options.first, count + 1, options.every)
            found = [line for number in numbers for line in _one(Path(folder), before, number, kind)]
            print(f"{kind}: {len(numbers)} runs, {len(found)} wrong")  # noqa: T201
            print(*found, sep="\n")  # noqa: T201
            bad += len(found)
    sys.exit(bad > 0)


def _prepare(folder: Path) -> tuple[Before, int]:
    """Publish a project, change it, and count the steps of publishing it again in a copy."""
    club, ahead = small_project(folder / "club"), folder / "ahead"
    _publish(club)
    put_own_files(club)
    squat = club / "program" / "exercises" / "squat.yml"
    squat.write_text(squat.read_text("utf-8").replace(*CUE), "utf-8")
    (club / "program" / "plans" / "second.yml").write_bytes((club / "program/plans/regatta.yml").read_bytes())
    shutil.copytree(club, ahead)
    with faults(ahead, 0, "refuse") as watch:
        _publish(ahead)
    return Before(clubs_files(club), digests(club / "site"), digests(ahead / "site")), watch.count


def _publish(project: Path) -> None:
    result = setwright(project, "build")
    if result.exit_code:
        sys.exit(result.stderr)


def _one(folder: Path, before: Before, number: int, kind: Kind) -> list[str]:
    """Run with one fault and return what is wrong afterwards, as lines."""
    project = Path(shutil.copytree(folder / "club", folder / "run", symlinks=True))
    told = folder / "told"
    child = os.fork()
    if child == 0:
        _child(project, number, kind, told)
    os.waitpid(child, 0)
    met, _, rest = told.read_text("utf-8").partition("\n")
    found = [rest] if rest else []
    found += filter(None, [wrong(project, before, between=kind == "kill")])
    swap.recover(project / "site")
    found += filter(None, [wrong(project, before)])
    shutil.rmtree(project)
    return [f"  step {number} ({met}): {line}" for line in found]


def _child(project: Path, number: int, kind: Kind, told: Path) -> None:
    """Run with one fault; leave the process as a kill would, saying what was met and what was wrong with the answer."""
    answer, met = "", None
    try:
        with faults(project, number, kind) as watch:
            result = setwright(project, "build")
        met = watch.met
        sentence = said(result).startswith("Error: ") and str(project) in said(result)
        if result.exit_code not in (0, 1) or (result.exit_code == 1 and not sentence):
            answer = f"exit {result.exit_code}: {result.stderr[-300:]}"
    except Killed as killed:
        met = str(killed)
    except BaseException as error:
        answer = f"{type(error).__name__}: {error}"
    told.write_text(f"{met}\n{answer}", "utf-8")
    os._exit(0)


if __name__ == "__main__":
    main()
