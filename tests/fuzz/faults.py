"""What counts as a fault: a crash, a hang, a finding without a place, a text that is not one clear sentence."""

import re
import resource
import signal
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from types import FrameType
from typing import Final, TypeVar

from setwright import printers
from setwright.source.finding import Finding
from setwright.source.read import MAX_FILES, Places

T = TypeVar("T")

LONGEST_MESSAGE: Final = 300
LONGEST_HINT: Final = 400
_QUOTED = re.compile(r"'[^']*'")
_OF_THE_MACHINERY = re.compile(
    r"pydantic|validation|NoneType|\b(?:dict|int|str|object|ctx)\b|Traceback|Input should|Exception"
)


@dataclass(frozen=True)
class Fault:
    """One fault: which run, what kind of input, and what went wrong."""

    run: str
    kind: str
    what: str


class HangError(BaseException):
    """Raised inside an input that takes more than its share; no handler for said may swallow it."""


@contextmanager
def limited(cpu_s: float) -> Iterator[None]:
    """Stop what takes more CPU seconds of this process than allowed."""

    def stop(_signal: int, _frame: FrameType | None) -> None:
        raise HangError

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, cpu_s)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def cpu_s() -> float:
    """Return the CPU seconds of this process so far."""
    used = resource.getrusage(resource.RUSAGE_SELF)
    return used.ru_utime + used.ru_stime


def tried(run: str, kind: str, most_s: float, call: Callable[[], T]) -> tuple[T | None, float, list[Fault]]:
    """Call something; return its answer, its CPU seconds, and a fault where it crashed or hung."""
    start = cpu_s()
    try:
        with limited(most_s):
            return call(), cpu_s() - start, []
    except HangError:
        return None, cpu_s() - start, [Fault(run, kind, f"hang: more than {most_s:g} CPU seconds")]
    except (Exception, SystemExit):  # the engine's own way to stop is one too
        last = traceback.format_exc().strip().split("\n")
        return None, cpu_s() - start, [Fault(run, kind, "crash: " + " | ".join(row.strip() for row in last[-5:]))]


def of_findings(findings: tuple[Finding, ...], places: Places) -> Iterator[str]:
    """Yield what is wrong with findings themselves: their places and their words."""
    lines: dict[str, list[str]] = {}
    said: set[tuple[object, str, str]] = set()
    for finding in findings:
        place = finding.position
        name = place.file.removeprefix(f"{places.label}/")
        if name not in lines:
            tree = places.trees.get(name)
            lines[name] = tree.text.split("\n") if tree and tree.text else []
        rows = lines[name]
        if rows and not (place.line <= len(rows) and place.column <= len(rows[place.line - 1]) + 1):
            yield f"outside its file: {printers.plain(finding)}"
        if not place.file or place.line < 1 or place.column < 1:
            yield f"without a place: {printers.plain(finding)}"
        yield from (f"{what}: {printers.plain(finding)!r}" for what in _wrong_words(finding))
        if (place, finding.rule, finding.message) in said:
            yield f"said twice: {printers.plain(finding)}"
        said.add((place, finding.rule, finding.message))
        printers.terminal(finding, rows[place.line - 1] if place.line <= len(rows) else None, lambda _, text: text)
        if "\n" in printers.annotation(finding):
            yield f"an annotation on two lines: {printers.annotation(finding)!r}"
    printers.as_json(findings)
    printers.as_sarif(findings, (), (), "0")


def _wrong_words(finding: Finding) -> Iterator[str]:
    if not re.fullmatch("[a-z0-9]+(-[a-z0-9]+)*", finding.rule) or finding.rule == "not-valid":
        yield "an unknown rule"
    if not finding.message.strip():
        yield "no message"
    if not (finding.message + finding.hint).isprintable():
        yield "signs that do not print"
    if len(finding.message) > LONGEST_MESSAGE or len(finding.hint) > LONGEST_HINT:
        yield "a text that is too long"
    if _OF_THE_MACHINERY.search(_QUOTED.sub("", f"{finding.message} {finding.hint}")):
        yield "words of the machinery"


def files_of(program: Path) -> dict[str, bytes]:
    """Return the files of a programme that a mutation may take, by name."""
    found = {p.relative_to(program).as_posix(): p.read_bytes() for p in sorted(program.rglob("*.yml"))}
    if not 0 < len(found) <= MAX_FILES:
        raise ValueError(f"{program} is no programme")
    return found
