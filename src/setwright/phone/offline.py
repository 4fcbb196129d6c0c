"""The list of files that the service worker keeps for places without signal.

It can only be known after the build, since engines name their files differently. An engine that runs no plugin leaves
the list empty: then the worker keeps what a member has opened.
"""

import hashlib
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Final

WORKER: Final = "service-worker.js"
"""The worker's file, at the site's root: a worker serves what lies beside and below it."""

BUDGET_BYTES: Final = 24_000_000
"""What a copy may weigh on a phone, unpacked. A plan of 52 weeks with four sessions a week stays inside, with what a
physiotherapist says of each exercise in every session."""

_EMPTY: Final = "\nconst KEPT = /** @type {Kept | null} */ (null);\n"
_KEPT_KINDS: Final = (".html", ".css", ".js", ".json", ".svg", ".png", ".jpg", ".webp", ".webmanifest")
_LEFT_OUT: Final = ("404.html", WORKER)
_LEFT_OUT_FOLDERS: Final = ("assets/javascripts/lunr/", "handouts/", "feeds/")
"""Search in other languages; sheets and feeds, which are for printers and calendars."""


def is_kept(name: str) -> bool:
    """Say whether a file of the built site belongs into the copy: what pages show and run, no sheets or feeds."""
    return name.endswith(_KEPT_KINDS) and name not in _LEFT_OUT and not name.startswith(_LEFT_OUT_FOLDERS)


def worker(source: str, files: Mapping[str, bytes]) -> str:
    """Return the service worker with its list: each kept file with the first half of its SHA-256.

    The build's own digest is that of the list, so that a worker changes if, and only if, a kept file does.

    Raises:
        ValueError: where the source has no empty list to fill.
    """
    if source.count(_EMPTY) != 1:
        raise ValueError(f"{WORKER} has no empty list of files")
    listed = {name: _digest(raw) for name, raw in sorted(files.items()) if is_kept(name)}
    kept = {
        "build": _digest(json.dumps(listed).encode())[:12],
        "bytes": sum(len(files[name]) for name in listed),
        "files": listed,
    }
    return source.replace(_EMPTY, f"\nconst KEPT = {json.dumps(kept, separators=(',', ':'))};\n")


def finish(site: Path) -> tuple[str, ...]:
    """Fill the list in a built site's service worker; return a warning where the copy is too heavy for a phone."""
    files = {path.relative_to(site).as_posix(): path.read_bytes() for path in site.rglob("*") if path.is_file()}
    if WORKER not in files:
        return (f"{WORKER} is missing from the built site: nothing is kept for places without signal",)
    (site / WORKER).write_text(worker(files[WORKER].decode(), files), "utf-8")
    weight = sum(len(raw) for name, raw in files.items() if is_kept(name))
    if weight <= BUDGET_BYTES:
        return ()
    heavy = f"more than {BUDGET_BYTES / 1e6:.0f} MB is much for a phone"
    return (f"the copy for places without signal weighs {weight / 1e6:.0f} MB; {heavy}",)


def _digest(raw: bytes) -> str:
    return hashlib.sha256(raw).hexdigest()[:32]
