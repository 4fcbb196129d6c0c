"""A child process for each mutant: it cannot spoil the next one, and an endless loop ends with it."""

import os
import resource
import shutil
import signal
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

Verdict = Literal["killed", "timed out", "survived"]

_WALL_S: Final = 600
_MOST_MEMORY_BYTES: Final = 6 * 2**30


@dataclass(frozen=True)
class Ended:
    """How a child ended, and what it said: the test that failed."""

    verdict: Verdict
    said: str


def in_a_child(work: Callable[[], str], cpu_s: float) -> Ended:
    """Do something in a fork of this process; what it returns is the test that failed, or an empty string.

    Args:
        work: what to do. Leaving the process in any other way counts as a failure.
        cpu_s: the seconds after which the child is ended, unless it calls ``patience`` again.
    """
    reading, writing = os.pipe()
    folder = tempfile.mkdtemp()
    child = os.fork()
    if child == 0:
        os.close(reading)
        _settle(Path(folder), cpu_s)
        said = "a crash"
        try:
            said = work()
        except BaseException as error:
            said = f"{type(error).__name__}: {error}"[:200]
        finally:
            os.write(writing, f"={said}".encode())
            os._exit(0)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        said = pipe.read().decode()
    _, status = os.waitpid(child, 0)
    shutil.rmtree(folder, ignore_errors=True)
    if os.WIFSIGNALED(status) and os.WTERMSIG(status) in (signal.SIGPROF, signal.SIGALRM):
        return Ended("timed out", "")
    return Ended("survived" if said == "=" else "killed", said[1:] or "a crash")


def patience(cpu_s: float) -> None:
    """End this process after so many seconds of its own work, or much later where it only waits."""
    signal.setitimer(signal.ITIMER_PROF, cpu_s)
    signal.alarm(max(_WALL_S, int(cpu_s)))


def _settle(folder: Path, cpu_s: float) -> None:
    """Keep a child quiet, to a folder of its own, and within bounds."""
    nowhere = os.open(os.devnull, os.O_RDWR)
    os.dup2(nowhere, 1)
    os.dup2(nowhere, 2)
    os.environ["PYTEST_DEBUG_TEMPROOT"] = tempfile.tempdir = str(folder)
    resource.setrlimit(resource.RLIMIT_AS, (_MOST_MEMORY_BYTES, _MOST_MEMORY_BYTES))
    patience(cpu_s)
