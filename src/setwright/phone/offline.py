"""The list of files that the service worker keeps for places without signal.

It can only be known after the build, since engines name their files differently. An engine that runs no plugin leaves
the list empty: then the worker keeps what a member has opened.
"""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final

WORKER: Final = "service-worker.js"
"""The worker's file, at the site's root: a worker serves what lies beside and below it."""

BUDGET_BYTES: Final = 26_000_000
"""What a copy may weigh on a phone, unpacked. A plan of 52 weeks with four sessions a week stays inside, with what a
physiotherapist says of each exercise in every session."""

_EMPTY: Final = "\nconst KEPT = /** @type {Kept | null} */ (null);\n"
_KEPT_KINDS: Final = (".html", ".css", ".js", ".json", ".svg", ".png", ".jpg", ".webp", ".webmanifest")
_LEFT_OUT: Final = ("404.html", WORKER)
_LEFT_OUT_FOLDERS: Final = ("assets/javascripts/lunr/", "handouts/", "feeds/", "group/")
"""Search in other languages; sheets and feeds, which are for printers and calendars; the coach's sheets, but not the
hall's screen, which is one small page over the members' own."""


def is_kept(name: str) -> bool:
    """Say whether a file of the built site belongs into the copy: what pages show and run, no sheets or feeds."""
    return name.endswith(_KEPT_KINDS) and name not in _LEFT_OUT and not name.startswith(_LEFT_OUT_FOLDERS)


@dataclass(frozen=True)
class _Weighed:
    """What the list says of a kept file: the first half of its SHA-256, and how many bytes it has."""

    digest: str
    size: int

    @staticmethod
    def of(raw: bytes) -> "_Weighed":
        return _Weighed(_digest(raw), len(raw))


def worker(source: str, files: Mapping[str, bytes]) -> str:
    """Return the service worker with its list: each kept file with the first half of its SHA-256.

    The build's own digest is that of the list, so that a worker changes if, and only if, a kept file does.

    Raises:
        ValueError: where the source has no empty list to fill.
    """
    return _filled(source, {name: _Weighed.of(raw) for name, raw in files.items() if is_kept(name)})


def _filled(source: str, files: Mapping[str, _Weighed]) -> str:
    if source.count(_EMPTY) != 1:
        raise ValueError(f"{WORKER} has no empty list of files")
    listed = {name: file.digest for name, file in sorted(files.items())}
    kept = {
        "build": _digest(json.dumps(listed).encode())[:12],
        "bytes": sum(file.size for file in files.values()),
        "files": listed,
    }
    return source.replace(_EMPTY, f"\nconst KEPT = {json.dumps(kept, separators=(',', ':'))};\n")


def finish(site: Path) -> tuple[str, ...]:
    """Fill the list in a built site's service worker; return a warning where the copy is too heavy for a phone."""
    if not (site / WORKER).is_file():
        return (f"{WORKER} is missing from the built site: nothing is kept for places without signal",)
    names = {path.relative_to(site).as_posix(): path for path in site.rglob("*") if path.is_file()}
    files = {name: _Weighed.of(path.read_bytes()) for name, path in names.items() if is_kept(name)}
    source = (site / WORKER).read_bytes().decode()
    (site / WORKER).write_text(_filled(source, files), "utf-8")
    weight = sum(file.size for file in files.values())
    if weight <= BUDGET_BYTES:
        return ()
    heavy = f"more than {BUDGET_BYTES / 1e6:.0f} MB is much for a phone"
    return (f"the copy for places without signal weighs {weight / 1e6:.0f} MB; {heavy}",)


def _digest(raw: bytes) -> str:
    return hashlib.sha256(raw).hexdigest()[:32]
