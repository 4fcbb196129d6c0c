"""Time a build of the example and of a generated large programme, as shares of one run. Not a test: run it by hand.

    .venv/bin/python tests/benchmarks/large_programme.py

The large programme has 52 weeks, three sessions a week and 200 exercises, copied from the example's files under new
names. Times are CPU seconds of this process, so that a busy machine changes them little. Ours against the engine's own
work on the same pages is the number to compare. Printing all PDF sheets, and asking for them again unchanged, stand
apart, and so do what a check costs whose figures are known ('known', in shares of the first one), what one changed
sentence costs in a preview before the engine begins ('edit', in shares of the engine's whole build), and the size of
the search's index.
"""

import re
import shutil
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from setwright import publish
from setwright.checks.registry import run
from setwright.checks.rule import Subject
from setwright.dose.resolve import resolve
from setwright.figure import motion
from setwright.handouts import tree as handouts
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from setwright.pages import tree, verify
from setwright.source.read import read
from support.site import copy_project

T = TypeVar("T")
WEEKS, EXERCISES = 52, 200


def timed(call: Callable[[], T]) -> tuple[float, T]:
    """Return the CPU seconds of a call, and its answer."""
    start = time.process_time()
    answer = call()
    return time.process_time() - start, answer


def enlarge(project: Path) -> None:
    """Turn a copy of the example into the large programme."""
    exercises = project / "program" / "exercises"
    first = sorted(exercises.glob("*.yml"))
    for number in range(EXERCISES - len(first)):
        source = first[number % len(first)]
        text = re.sub(r"^name: (.*)$", rf"name: \1, form {number}", source.read_text("utf-8"), flags=re.MULTILINE)
        (exercises / f"{source.stem}-{number}.yml").write_text(text, "utf-8")
    shutil.rmtree(project / "program" / "plans")
    (project / "program" / "plans").mkdir()
    phases = "".join(
        f"  - {{name: Phase {n + 1}, aim: Work., weeks: 4, lighter: {{weeks: [4], sets: 60 %}}, "
        f"sessions: {{monday: foundation-a, wednesday: foundation-b, friday: starter-a}}}}\n"
        for n in range(WEEKS // 4)
    )
    (project / "program" / "plans" / "long.yml").write_text(
        f"name: A long year\nfor: Members.\nstarts: 2027-01-04\nphases:\n{phases}", "utf-8"
    )


def measure(name: str, project: Path) -> None:
    """Print one row: pages, seconds of each step, our share, bytes a page."""
    program = project / "program"
    reading_s, reading = timed(lambda: read(program))
    if reading.programme is None:
        raise SystemExit("\n".join(map(str, reading.errors)))
    programme = reading.programme
    resolving_s, plans = timed(lambda: resolve(programme))
    checking_s, _ = timed(lambda: run(Subject(programme, plans, reading.places)))
    rendering_s, rendered = timed(lambda: tree.render(programme, plans))
    docs = project / "docs_build"
    desk = Desk(Site(programme, plans))
    printing_s, printed = timed(lambda: handouts.render(desk, docs))
    writing_s, _ = timed(lambda: tree.write(rendered | printed.files, docs))
    again_s, again = timed(lambda: handouts.render(desk, docs))
    if again.printed:
        raise SystemExit(f"{again.printed} sheets were printed again for nothing")
    config, _ = publish.project(project / "mkdocs.yml")
    site = project / "site"
    engine_s, _ = timed(lambda: publish.run_engine(config, site))
    verifying_s, broken = timed(lambda: list(verify.broken(site)))
    if broken:
        raise SystemExit("\n".join(broken[:5]))
    ours_s = reading_s + resolving_s + checking_s + rendering_s + writing_s + verifying_s
    pages = list(site.rglob("*.html"))
    size = sum(page.stat().st_size for page in pages) / len(pages)
    steps = (reading_s, resolving_s, checking_s, rendering_s, writing_s, engine_s, verifying_s, printing_s, again_s)
    motion._solved.cache_clear()
    shutil.rmtree(docs / ".figures", ignore_errors=True)
    check = timed(lambda: publish.look(program, None, None, docs))[0], _known(program, docs)
    edit_s = _edit(program, docs)
    index = (site / "search" / "search_index.json").stat().st_size
    sheets = [pdf for path, pdf in printed.files.items() if path.endswith(".pdf")]
    print(  # noqa: T201
        f"{name:<8}{len(pages):>6}" + "".join(f"{s:>9.2f}" for s in steps) + f"{ours_s / engine_s:>8.2f}{size:>10.0f}"
        f"{len(sheets):>8}{sum(map(len, sheets)) / len(sheets):>10.0f}"
        f"{check[1] / check[0]:>8.2f}{edit_s / engine_s:>8.2f}{index:>10}"
    )


def _known(program: Path, docs: Path) -> float:
    """Return the CPU seconds of a look in a process that has the figures from the disk alone."""
    motion._solved.cache_clear()
    return timed(lambda: publish.look(program, None, None, docs))[0]


def _edit(program: Path, docs: Path) -> float:
    """Return the CPU seconds from a changed sentence to the tree, sheets left as they are; the second time counts."""
    file, cache, spent_s = program / "exercises" / "goblet-squat.yml", {}, 0.0
    text = file.read_text("utf-8")
    for word in ("first", "second"):
        file.write_text(text.replace("Sit down", f"Sit down {word}", 1), "utf-8")
        spent_s, _ = timed(lambda: publish.write(publish.look(program, None, cache, docs), docs, sheets="as they are"))
    return spent_s


def main() -> None:
    """Measure both programmes."""
    columns = ("read", "resolve", "check", "render", "write", "engine", "verify", "print", "again")
    ends = f"{'ours/e':>8}{'bytes/p':>10}{'sheets':>8}{'bytes/s':>10}{'known':>8}{'edit/e':>8}{'index':>10}"
    print(f"{'':<8}{'pages':>6}" + "".join(f"{c:>9}" for c in columns) + ends)  # noqa: T201
    with tempfile.TemporaryDirectory() as folder:
        measure("example", copy_project(Path(folder) / "example"))
        large = copy_project(Path(folder) / "large")
        enlarge(large)
        measure("large", large)


if __name__ == "__main__":
    main()
