"""Put small mistakes into the code, one at a time, and see whether the tests notice.

From the folder tests:

    python -m benchmarks.mutants --room dose --share 0.1 --seed 1

Prints the score by room, and each mutant that survived: its line, and what became of what. Without options it takes
every mutant of dose, review, checks and source. Mutants that do the same as the code stand in ``equivalents.yml`` with
the reason, and count for nothing. An endless loop counts as noticed. The tests are those that need no browser and no
build, each tried only where it executes the line, nearest and fastest first; ``--most`` bounds their CPU seconds for
one mutant. ``--survivors FILE`` keeps what survived, and ``--again FILE`` tries only that, after tests were written.
``--results FILE`` keeps every verdict as it comes: the same command goes on after a cut. It gives way to all else on
the machine unless ``--nice 0`` says otherwise.
"""

import argparse
import json
import os
import pickle
import random
import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Final

import pytest

from benchmarks.mutants import judging
from benchmarks.mutants.equivalents import Equivalent, equivalents
from benchmarks.mutants.judging import Judged, Module, Warm, judged_fresh
from benchmarks.mutants.keeping import Kept
from benchmarks.mutants.mutating import Mutant, mutants

ROOT: Final = Path(__file__).resolve().parents[3]
TESTS: Final = ROOT / "tests"
ROOMS: Final = {
    "dose": ("dose",),
    "review": ("review",),
    "checks": ("checks",),
    "source": ("source", "language", "test_schemas.py"),
}
"""Each room, and where the tests are that are about it."""
FAST: Final = (
    *("dose", "review", "checks", "source", "language", "model"),
    *("wording/test_language.py", "wording/test_limits_in_words.py"),
    *("test_commands.py", "test_printers.py", "test_schemas.py"),
)
SLOW: Final = (
    *("review/test_review_page.py", "checks/test_planted.py", "checks/test_example_programme.py"),
    *("checks/test_limits_hold.py", "checks/test_sarif.py"),
)
"""Tests of those folders that need a browser, or read a whole programme again and again."""


def modules(rooms: Sequence[str], names: Sequence[str], share: float, seed: int) -> Iterator[Module]:
    """Yield the modules of rooms with a share of their mutants, the same for the same seed."""
    for room in rooms:
        for file in sorted((ROOT / "src" / "setwright" / room).glob("*.py")):
            made = tuple(mutants(file.read_text("utf-8"), str(file)))
            chance = random.Random(f"{seed} {room}/{file.name}")  # noqa: S311 - a sample, no secret
            taken = tuple(mutant for mutant in made if chance.random() < share)
            if taken and (not names or file.name in names):
                yield Module(file, f"setwright.{room}.{file.stem}", ROOMS[room], taken)


def outdated(known: Sequence[Equivalent]) -> list[Equivalent]:
    """Return what is listed as doing the same and is no mutant any more."""
    names = set()
    for name in {one.file for one in known}:
        file = ROOT / "src" / "setwright" / name
        made = tuple(mutants(file.read_text("utf-8"), str(file))) if file.exists() else ()
        names |= {words_for(Module(file, "", (), made), mutant) for mutant in made}
    return [one for one in known if (one.file, one.at, one.change) not in names]


def room_of(module: Module) -> str:
    """Return the room in which a module stands."""
    return module.file.parent.name


def words_for(module: Module, mutant: Mutant) -> tuple[str, str, str]:
    """Return what names a mutant for good, although lines move: its file, its line's text, what became of what."""
    line = module.file.read_text("utf-8").splitlines()[mutant.line - 1].strip()
    return f"{room_of(module)}/{module.file.name}", line, mutant.change


def judged(chosen: Sequence[Module], tests: Sequence[str], most_s: float) -> Iterator[Judged]:
    """Yield what became of each mutant."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        os.dup2(os.open(os.devnull, os.O_RDWR), 1)
        with os.fdopen(writing, "wb") as pipe:
            status = pytest.main([*judging.OPTIONS, *tests], plugins=[Warm(chosen, most_s, pipe)])
        os._exit(int(status))
    os.close(writing)
    later = []
    with os.fdopen(reading, "rb") as pipe:
        while pipe.peek(1):
            module, mutant, verdict, by, fresh_tests = pickle.load(pipe)  # noqa: S301 - our own child's
            one = Judged(chosen[module], chosen[module].mutants[mutant], verdict, by, fresh_tests)
            if fresh_tests:
                later.append(one)
            else:
                yield one
    _, status = os.waitpid(child, 0)
    if status:
        raise SystemExit("the tests did not run to their end")
    yield from (judged_fresh(one, ROOT) for one in later)


def fast_tests(folders: Iterable[str]) -> list[str]:
    """Return what names the fast tests of some folders to pytest."""
    return [*(str(TESTS / name) for name in folders), *(f"--ignore={TESTS / name}" for name in SLOW)]


def scores(results: Sequence[Judged], known: Sequence[Equivalent]) -> str:
    """Return the score of each room, in words."""
    rows = []
    for room in dict.fromkeys(room_of(one.module) for one in results):
        mine = [one for one in results if room_of(one.module) == room]
        counted = [one for one in mine if not does_the_same(one, known)]
        killed = sum(one.verdict != "survived" for one in counted)
        endless = sum(one.verdict == "timed out" for one in counted)
        rows.append(
            f"{room:<8}{killed:>5} of {len(counted):>5} killed, {100 * killed / max(len(counted), 1):5.1f} %"
            f"  ({endless} as endless; {len(mine) - len(counted)} do the same as the code)"
        )
    return "\n".join(rows)


def does_the_same(one: Judged, known: Sequence[Equivalent]) -> bool:
    """Say whether a mutant survived because it does the same as the code."""
    names = {(known_one.file, known_one.at, known_one.change) for known_one in known}
    return one.verdict == "survived" and words_for(one.module, one.mutant) in names


def _followed(results: Iterator[Judged], of: int, known: Sequence[Equivalent], kept: Kept) -> Iterator[Judged]:
    """Keep each verdict, print each survivor as it is found, and say now and then how far it is."""
    for number, one in enumerate(results, 1):
        if one.verdict == "survived" and not does_the_same(one, known):
            place = f"{room_of(one.module)}/{one.module.file.name}:{one.mutant.line}"
            print(f"{place}  {one.mutant.change}", flush=True)  # noqa: T201
        kept.keep(one)
        if number % 10 == 0:
            print(f"  {number} of {of}", file=sys.stderr, flush=True)  # noqa: T201
        yield one


def main() -> int:
    """Judge what the command line asks for."""
    parser = argparse.ArgumentParser(description="Put small mistakes into the code and see whether the tests notice.")
    parser.add_argument("--room", action="append", choices=ROOMS, help="one room alone; may be repeated")
    parser.add_argument("--file", action="append", default=[], help="a module of it, such as bands.py")
    parser.add_argument("--share", type=float, default=1.0, help="the share of the mutants to take")
    parser.add_argument("--seed", type=int, default=1, help="which ones, where the share is less than 1")
    parser.add_argument("--most", type=float, default=10, help="CPU seconds of tests for one mutant")
    parser.add_argument("--near", action="store_true", help="only the tests that are about the room")
    parser.add_argument("--survivors", type=Path, help="file that keeps the survivors")
    parser.add_argument("--again", type=Path, help="take only the survivors that such a file kept")
    parser.add_argument("--results", type=Path, help="file that keeps every verdict, to go on after a cut")
    parser.add_argument("--nice", type=int, default=15, help="how far it gives way to others, 0 to 19")
    options = parser.parse_args()
    os.nice(options.nice)
    chosen = list(modules(options.room or list(ROOMS), options.file, options.share, options.seed))
    known = equivalents()
    for one in outdated(known):
        print(f"equivalents.yml lists what is there no more: {one.file}, {one.at}, {one.change}")  # noqa: T201
    if options.again:
        kept = {tuple(words) for words in json.loads(options.again.read_text("utf-8"))}
        chosen = [module.only(lambda one, m=module: words_for(m, one) in kept) for module in chosen]
        chosen = [module for module in chosen if module.mutants]
    which = {key: str(getattr(options, key)) for key in ("share", "seed", "most", "near", "again")}
    kept = Kept(options.results, chosen, which)
    results, left = list(kept.known(chosen)), kept.unknown(chosen)
    near = dict.fromkeys(name for module in chosen for name in module.near)
    tests = fast_tests(near if options.near else FAST)
    count = sum(len(module.mutants) for module in left)
    print(f"{len(results)} judged before, {count} to go", file=sys.stderr, flush=True)  # noqa: T201
    results += _followed(judged(left, tests, options.most), count, known, kept) if left else ()
    print(scores(results, known))  # noqa: T201
    if options.survivors:
        words = [words_for(one.module, one.mutant) for one in results if one.verdict == "survived"]
        options.survivors.write_text(json.dumps(words, indent=1), "utf-8")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
