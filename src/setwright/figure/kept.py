"""What the solver found, kept from one run to the next, since finding it takes longer than all else that a check does.

A file holds, by a digest of what a figure says, the states that were found for it, each with a digest of its own bytes.
It is as good as nothing where it was made by another solver, on another machine or by another numpy, and so is an entry
that is damaged. Only states are taken from it: contacts, frames and all that does not fit are worked out from them as
from fresh ones.
"""

import hashlib
import json
import platform
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from contextvars import ContextVar
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any, Final

import numpy as np

from setwright.disk.files import replace
from setwright.figure.body import STATE, Floats

FILE: Final = ".figures/solved.json"
"""The file in the tree. Site engines skip folders whose name begins with a dot."""


@dataclass
class _Shelf:
    """What an earlier run found, by digest, and what this one asked for, by what the figure says."""

    before: Mapping[str, Floats]
    asked: dict[str, Floats] = field(default_factory=dict)


_OPEN: ContextVar[_Shelf | None] = ContextVar("shelf", default=None)


@contextmanager
def beside(tree: Path | None) -> Iterator[None]:
    """Take what earlier runs solved from a tree's folder, and keep there what was solved meanwhile.

    Whatever the system refuses is no more than time lost. Without an existing folder nothing is read or kept.
    """
    if tree is None or not tree.is_dir() or (tree / FILE).parent.is_symlink():
        yield
        return
    shelf = _Shelf(_read(tree / FILE))
    token = _OPEN.set(shelf)
    try:
        yield
    finally:
        _OPEN.reset(token)
    asked = {_digest(written): states for written, states in shelf.asked.items()}
    if not asked.keys() <= shelf.before.keys():
        with suppress(OSError):
            (tree / FILE).parent.mkdir(exist_ok=True)
            replace(tree / FILE, as_bytes(asked))


def before(written: str) -> Floats | None:
    """Return the states, one a row, that an earlier run found for what a figure says, if they are known here."""
    shelf = _OPEN.get()
    return None if shelf is None else shelf.before.get(_digest(written))


def keep(written: str, states: Floats) -> None:
    """Keep the states of a figure for later runs, if there is a place for them."""
    shelf = _OPEN.get()
    if shelf is not None:
        shelf.asked[written] = states


def as_bytes(states: Mapping[str, Floats]) -> bytes:
    """Return solved states by digest as the bytes of a file; a number is written so that it comes back exactly."""
    entries = {digest: {"states": rows.tolist(), "digest": _digest_of(rows)} for digest, rows in states.items()}
    return json.dumps({"solved by": _mark(), "figures": entries}, sort_keys=True, separators=(",", ":")).encode()


def from_bytes(raw: bytes) -> dict[str, Floats]:
    """Return the solved states by digest that a file holds, without all that this solver did not write just so."""
    try:
        found = json.loads(raw)
    except (ValueError, RecursionError):
        return {}
    if not isinstance(found, dict) or found.get("solved by") != _mark():
        return {}
    entries = found.get("figures")
    read = {digest: _states(entry) for digest, entry in entries.items()} if isinstance(entries, dict) else {}
    return {digest: states for digest, states in read.items() if states is not None}


def _states(entry: Any) -> Floats | None:
    try:
        states: Floats = np.array(entry["states"], dtype=float)
        whole = states.ndim == 2 and states.shape[1] == len(STATE) and bool(np.isfinite(states).all())
        return states if whole and entry["digest"] == _digest_of(states) else None
    except (KeyError, TypeError, ValueError, OverflowError):
        return None


def _read(path: Path) -> dict[str, Floats]:
    try:
        return {} if path.is_symlink() else from_bytes(path.read_bytes())
    except OSError:
        return {}


def _digest(written: str) -> str:
    return hashlib.sha256(written.encode()).hexdigest()


def _digest_of(states: Floats) -> str:
    return hashlib.sha256(states.astype("<f8").tobytes()).hexdigest()


@cache
def _mark() -> str:
    """Return what stands for the body, the solver and the machine that they run on."""
    here = Path(__file__).parent
    whole = hashlib.sha256(f"{np.__version__} {platform.system()} {platform.machine()}".encode())
    for path in (*sorted(here.glob("*.py")), here.parent / "model" / "figure.py"):
        whole.update(hashlib.sha256(path.read_bytes()).digest())
    return whole.hexdigest()
