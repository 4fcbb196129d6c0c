"""Mutants put to the tests: swapped into a process that has everything loaded, or imported by a fresh one."""

import gc
import os
import pickle
import sys
import tempfile
from collections import defaultdict
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import partial
from importlib.machinery import ModuleSpec, SourceFileLoader
from importlib.util import spec_from_file_location
from pathlib import Path
from types import CodeType, FunctionType
from typing import IO, Final

import pytest
from _pytest.runner import runtestprotocol
from hypothesis import Phase, settings

from benchmarks.mutants.children import Ended, Verdict, in_a_child, patience
from benchmarks.mutants.covering import Line, Record, Recorder, affordable, covering, is_near, watched
from benchmarks.mutants.mutating import Mutant
from benchmarks.mutants.swapping import Swap, functions_of, put_in, swap_of

OPTIONS: Final = ("--numprocesses=0", "-q", "--capture=sys", "-p", "no:cacheprovider", "-W", "ignore")
_FEW_S, _LONGER = 10, 20
"""A test may take so many CPU seconds, and so many times what it took, before its loop counts as endless."""
_ONCE_MORE: Final = 3
"""So many of the tests that killed the last mutants of a function are tried first."""


@dataclass(frozen=True)
class Module:
    """A module of a room, the folders of tests that are about it, and its mutants."""

    file: Path
    name: str
    near: tuple[str, ...]
    mutants: tuple[Mutant, ...]

    def only(self, wanted: Callable[[Mutant], bool]) -> "Module":
        """Return it with some of its mutants."""
        return replace(self, mutants=tuple(filter(wanted, self.mutants)))


@dataclass(frozen=True)
class Judged:
    """What became of a mutant. ``fresh_tests`` are still to be run in a process that imports it."""

    module: Module
    mutant: Mutant
    verdict: Verdict
    by: str = ""
    fresh_tests: tuple[str, ...] = ()


@dataclass
class Warm:
    """A pytest plugin: collects the tests, records them in a child, then judges each mutant in a child of its own."""

    modules: Sequence[Module]
    most_s: float
    pipe: IO[bytes]
    _imports: set[Line] = field(default_factory=set)
    _record: Record = field(default_factory=Record)
    _functions: list[FunctionType] = field(default_factory=list)

    def pytest_sessionstart(self, session: pytest.Session) -> None:
        """Let no property be shrunk: that it fails is enough."""
        settings.register_profile(
            "mutants", settings.get_profile("steady"), phases=(Phase.explicit, Phase.generate), max_examples=60
        )
        settings.load_profile("mutants")

    @pytest.hookimpl(hookwrapper=True)
    def pytest_collection(self, session: pytest.Session) -> Iterator[None]:
        """Write down what is executed by importing the tests and what they are about."""
        with watched(self._files()) as self._imports:
            yield

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Record, then judge."""
        self._record = recorded(session, self._files(), self._imports)
        _note(f"{len(self._record.lines)} tests, {sum(self._record.cpu_s.values()):.0f} CPU s")
        for test in self._record.failed:
            _note(f"left out, since it fails without a mutant: {test}")
        items = {item.nodeid: item for item in session.items}
        self._functions = functions_of(self._files())
        gc.freeze()  # what a child never collects, it need not copy
        for number, module in enumerate(self.modules):
            for which, (ended, fresh_tests) in enumerate(self._judged(module, items)):
                pickle.dump((number, which, ended.verdict, ended.said, fresh_tests), self.pipe)
                self.pipe.flush()
        return True

    def _files(self) -> frozenset[str]:
        return frozenset(str(module.file) for module in self.modules)

    def _judged(self, module: Module, items: dict[str, pytest.Item]) -> Iterator[tuple[Ended, tuple[str, ...]]]:
        """Yield how each mutant of a module ended, and the tests that a process that imports it has to run."""
        original = compile(module.file.read_text("utf-8"), str(module.file), "exec")
        whole = self._whole(module, items)
        killers: dict[str, list[str]] = defaultdict(list)
        for mutant in module.mutants:
            swap = swap_of(original, mutant.code)
            if swap.at_import:
                yield Ended("survived", ""), whole
                continue
            tests = self._tests(module, mutant.lines)
            first = [test for test in killers[mutant.inside][-_ONCE_MORE:] if test in tests]
            order = [items[test] for test in dict.fromkeys([*reversed(first), *tests])]
            ended = in_a_child(partial(self._run, swap, order), _FEW_S)
            killers[mutant.inside].append(ended.said)
            imported = any((str(module.file), line) in self._record.at_import for line in mutant.lines)
            yield ended, (tests or whole) if imported and ended.verdict == "survived" else ()

    def _whole(self, module: Module, items: dict[str, pytest.Item]) -> tuple[str, ...]:
        """Return the tests for what an import does: those whose file names the module first, then all that are near."""
        cpu_s = self._record.cpu_s
        files = {item.path for item in items.values()}
        naming = {file for file in files if f"from {module.name} import" in file.read_text("utf-8")}
        near = [test for test in items if is_near(test, module.near) and test not in self._record.failed]
        near.sort(key=lambda test: (items[test].path not in naming, cpu_s[test], test))
        return tuple(affordable(near, cpu_s, self.most_s))

    def _tests(self, module: Module, lines: frozenset[int] | None) -> tuple[str, ...]:
        tests = covering(self._record, module.file, lines, module.near)
        return tuple(affordable(tests, self._record.cpu_s, self.most_s))

    def _run(self, swap: Swap, order: list[pytest.Item]) -> str:
        put_in(swap, self._functions)
        return first_failure(order, self._record.cpu_s)


def _note(words: str) -> None:
    os.write(2, f"{words}\n".encode())


def recorded(session: pytest.Session, files: frozenset[str], imports: set[Line]) -> Record:
    """Return the record of all tests, made in a child, so that this process has run none of them."""
    with tempfile.TemporaryDirectory() as folder:
        kept = Path(folder) / "record"

        def work() -> str:
            patience(36_000)
            kept.write_bytes(pickle.dumps(Recorder(map(Path, files)).record(session, imports)))
            return ""

        ended = in_a_child(work, 36_000)
        if ended.verdict != "survived":
            raise pytest.UsageError(f"the tests could not be recorded: {ended.said}")
        return pickle.loads(kept.read_bytes())  # noqa: S301 - written by our own child


def first_failure(items: Sequence[pytest.Item], cpu_s: dict[str, float]) -> str:
    """Run tests until one fails, and return its name; an empty string where all pass."""
    for item, following in zip(items, [*items[1:], None], strict=True):
        patience(_FEW_S + _LONGER * cpu_s.get(item.nodeid, 0))
        if any(report.failed for report in runtestprotocol(item, log=False, nextitem=following)):
            return item.nodeid
    return ""


class Fresh(SourceFileLoader):
    """Imports one module from the code of a mutant, and every other as ever."""

    def __init__(self, module: Module, code: CodeType) -> None:
        """Keep the code until the module is imported."""
        super().__init__(module.name, str(module.file))
        self._code = code

    def get_code(self, fullname: str) -> CodeType:
        """Return the mutant."""
        return self._code

    def find_spec(self, fullname: str, path: object = None, target: object = None) -> ModuleSpec | None:
        """Find the mutant in place of its module."""
        return spec_from_file_location(fullname, self.path, loader=self) if fullname == self.name else None


class Once:
    """A pytest plugin: runs the chosen tests, in their order, until one fails."""

    def __init__(self, tests: Sequence[str]) -> None:
        """Run these."""
        self._tests = tests
        self.failed = "an import"

    pytest_sessionstart = Warm.pytest_sessionstart

    @pytest.hookimpl(tryfirst=True)
    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run them."""
        if session.testsfailed:
            return True  # a file could not be imported
        items = {item.nodeid: item for item in session.items}
        gone = [test for test in self._tests if test not in items]
        self.failed = gone[0] if gone else first_failure([items[test] for test in self._tests], {})
        return True


def judged_fresh(judged: Judged, root: Path) -> Judged:
    """Judge a mutant in a child that imports it, as this process must not have done with its module."""
    files = dict.fromkeys(str(root / test.split("::")[0]) for test in judged.fresh_tests)

    def work() -> str:
        sys.meta_path.insert(0, Fresh(judged.module, judged.mutant.code))  # type: ignore[arg-type]
        plugin = Once(judged.fresh_tests)
        pytest.main([*OPTIONS, *files], plugins=[plugin])
        return plugin.failed

    ended = in_a_child(work, 60)
    return Judged(judged.module, judged.mutant, ended.verdict, ended.said)
