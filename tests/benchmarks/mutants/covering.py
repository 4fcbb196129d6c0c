"""Which test executes which lines of the rooms, and how long each takes: recorded once, before any mutant."""

import ast
import builtins
import functools
import gc
import sys
import time
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from types import CodeType, FrameType
from typing import Any, Final

import pytest
from _pytest.runner import runtestprotocol

from benchmarks.mutants.swapping import Swap, functions_of, put_in, swap_of

Line = tuple[str, int]

_Cache: Final = type(functools.cache(lambda: None))
_NOTE: Final = "_note_of_a_line"
_OURS: Final = ("setwright", "support", "test_")


@dataclass
class Record:
    """What the tests execute: their lines and CPU seconds by name, the lines of every import, and who failed."""

    lines: dict[str, set[Line]] = field(default_factory=dict)
    cpu_s: dict[str, float] = field(default_factory=dict)
    at_import: set[Line] = field(default_factory=set)
    failed: list[str] = field(default_factory=list)


@contextmanager
def watched(files: frozenset[str]) -> Iterator[set[Line]]:
    """Write down the lines of some files that are executed meanwhile."""
    seen: set[Line] = set()

    def line(frame: FrameType, event: str, arg: object) -> Callable[..., Any]:
        seen.add((frame.f_code.co_filename, frame.f_lineno))
        return line

    def call(frame: FrameType, event: str, arg: object) -> Callable[..., Any] | None:
        return line(frame, event, arg) if frame.f_code.co_filename in files else None

    sys.settrace(call)
    try:
        yield seen
    finally:
        sys.settrace(None)


class Recorder:
    """Runs every test once. What a fixture of several tests executes counts for each test that asks for it.

    The functions of the modules live already: each gets the same code with a note at every statement, which costs far
    less than tracing all else that a test does.
    """

    def __init__(self, files: Iterable[Path]) -> None:
        """Watch these modules."""
        self._seen: set[Line] = set()
        self._fixtures: dict[str, set[Line]] = {}
        noted = frozenset(map(str, files))
        setattr(builtins, _NOTE, self._seen.add)
        pairs: list[tuple[CodeType, CodeType]] = []
        for name in noted:
            source = Path(name).read_text("utf-8")
            pairs += swap_of(compile(source, name, "exec"), _with_notes(source, name)).functions
        put_in(Swap(tuple(pairs), at_import=False), functions_of(noted))

    @pytest.hookimpl(hookwrapper=True)
    def pytest_fixture_setup(
        self, fixturedef: pytest.FixtureDef[Any], request: pytest.FixtureRequest
    ) -> Iterator[None]:
        """Write down what a shared fixture executes."""
        before = set(self._seen)
        self._seen.clear()
        yield
        if fixturedef.scope != "function":
            self._fixtures.setdefault(fixturedef.argname, set()).update(self._seen)
        self._seen.update(before)

    def record(self, session: pytest.Session, at_import: set[Line]) -> Record:
        """Run the tests of a session, and return what they executed."""
        session.config.pluginmanager.register(self)
        caches = [thing for thing in gc.get_objects() if isinstance(thing, _Cache) and _is_ours(thing)]
        record = Record(at_import=at_import)
        for item, following in zip(session.items, [*session.items[1:], None], strict=True):
            for cache in caches:
                cache.cache_clear()
            self._seen.clear()
            start = time.process_time()
            reports = runtestprotocol(item, log=False, nextitem=following)
            record.cpu_s[item.nodeid] = time.process_time() - start
            shared = [self._fixtures.get(name, set()) for name in getattr(item, "fixturenames", ())]
            record.lines[item.nodeid] = self._seen.union(*shared)
            if any(report.failed for report in reports):
                record.failed.append(item.nodeid)
        return record


def _with_notes(source: str, name: str) -> CodeType:
    """Return a module's code in which every statement first notes its line."""
    tree = ast.parse(source)
    for node in list(ast.walk(tree)):
        for field_name in ("body", "orelse", "finalbody"):
            body = getattr(node, field_name, None)
            if isinstance(body, list):
                body[:] = [part for statement in body for part in _noted(statement, name)]
    return compile(tree, name, "exec")


def _noted(statement: ast.stmt, name: str) -> Iterator[ast.stmt]:
    if not isinstance(statement, ast.ImportFrom) and not (
        isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Constant)
    ):
        note = ast.parse(f"{_NOTE}(({name!r}, {statement.lineno}))").body[0]
        for part in ast.walk(note):
            if hasattr(part, "lineno"):
                ast.copy_location(part, statement)
        yield note
    yield statement


def _is_ours(cache: Any) -> bool:
    return str(getattr(cache, "__module__", "")).startswith(_OURS)


def covering(record: Record, file: Path, lines: frozenset[int] | None, near: tuple[str, ...]) -> list[str]:
    """Return the tests that execute lines of a file, or any of its lines: those of the folders near first, fast first.

    Args:
        record: what was recorded.
        file: the module.
        lines: the lines in question; None for every line.
        near: folders of tests that are about the room, such as ``dose``.
    """
    wanted = {(str(file), number) for number in lines or ()}
    ok = set(record.lines) - set(record.failed)

    def touches(test: str) -> bool:
        return bool(record.lines[test] & wanted) if lines else any(name == str(file) for name, _ in record.lines[test])

    found = [test for test in ok if touches(test)]
    return sorted(found, key=lambda test: (not is_near(test, near), record.cpu_s[test], test))


def is_near(test: str, near: tuple[str, ...]) -> bool:
    """Say whether a test stands in a folder that is about a room."""
    return test.removeprefix("tests/").startswith(near)


def affordable(tests: list[str], cpu_s: Mapping[str, float], most_s: float) -> list[str]:
    """Return the first tests that together take no longer than that; one at least."""
    chosen, sum_s = tests[:1], sum(cpu_s[test] for test in tests[:1])
    for test in tests[1:]:
        sum_s += cpu_s[test]
        if sum_s > most_s:
            break
        chosen.append(test)
    return chosen
