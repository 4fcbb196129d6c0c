"""What is costly to make is made once in a run, however many processes share the tests."""

import fcntl
import os
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest


def made_once(factory: pytest.TempPathFactory, name: str, make: Callable[[Path], object]) -> Path:
    """Return a folder of this run that ``make`` has filled, and that no test may change.

    The first process that asks makes it; others wait. Where making fails, each that asks tries anew and fails alike.
    """
    base = factory.getbasetemp()
    run = base.parent if "PYTEST_XDIST_WORKER" in os.environ else base
    folder, unfinished = run / name, run / f"{name}-unfinished"
    with (run / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.exists():
            shutil.rmtree(unfinished, ignore_errors=True)
            make(unfinished)
            unfinished.rename(folder)
    return folder
