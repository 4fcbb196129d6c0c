"""A disk that refuses, or a run that is killed, at the n-th thing that it does to files."""

import builtins
import errno
import io
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, Final, Literal
from unittest.mock import patch

Kind = Literal["refuse", "kill"]

REASONS: Final = (errno.ENOSPC, errno.EACCES, errno.EROFS, errno.EIO, errno.ENOENT)
"""A full disk, no permission, a disk for reading only, a damaged one, a file that has gone."""

_ON_PATHS: Final = ("rename", "replace", "unlink", "remove", "mkdir", "rmdir", "link", "symlink", "chmod", "open")
_ON_OPEN_FILES: Final = ("fsync", "sendfile")


class Killed(BaseException):
    """What stands for the end of the process: nothing catches it, and nothing is done to a file after it."""


class Faults:
    """Counts what is done to files below a folder, and lets the n-th go wrong.

    Reading is counted too: a file may have gone when its turn comes.
    """

    def __init__(self, folder: Path, number: int, kind: Kind) -> None:
        self.folder, self.number, self.kind = os.path.realpath(folder), number, kind
        self.count = 0
        self.met: str | None = None

    def step(self, what: str, path: object, half: Callable[[], object] = lambda: None) -> None:
        """Count one thing done to a file; ``half`` does a part of it before it goes wrong."""
        if self.met is not None and self.kind == "kill":
            raise Killed(self.met)
        self.count += 1
        if self.count != self.number:
            return
        self.met = f"{what} {path}"
        half()
        if self.kind == "kill":
            raise Killed(self.met)
        reason = REASONS[self.number % len(REASONS)]
        raise OSError(reason, os.strerror(reason), *([path] if isinstance(path, str) else []))

    def minds(self, path: object, more: dict[str, Any]) -> str | None:
        """Return the path, if it is one of the project's."""
        if isinstance(path, int):
            return None
        text = os.fsdecode(os.fspath(path))  # type: ignore[arg-type]
        if more.get("dir_fd") is not None or os.path.realpath(Path(text).parent).startswith(self.folder):
            return text
        return None


class _Writing:
    """A file open for writing, each of whose writes counts; of one that goes wrong, the first half is written."""

    def __init__(self, stream: Any, path: str, faults: Faults) -> None:
        self.stream, self.path, self.faults = stream, path, faults

    def write(self, content: Any) -> Any:
        # A full disk names no file.
        self.faults.step("write", None, lambda: self.stream.write(content[: len(content) // 2]))
        return self.stream.write(content)

    def __enter__(self) -> Any:
        return self

    def __exit__(self, *_: object) -> None:
        self.stream.close()

    def __getattr__(self, name: str) -> Any:
        return getattr(self.stream, name)


@contextmanager
def faults(folder: Path, number: int, kind: Kind) -> Iterator[Faults]:
    """Let the n-th thing that is done to a file below a folder go wrong; 0 lets all of them go right."""
    watch = Faults(folder, number, kind)
    opened = io.open

    def open_(file: Any, mode: str = "r", *args: Any, **more: Any) -> Any:
        path = watch.minds(file, {})
        if path is None:
            return opened(file, mode, *args, **more)
        watch.step(f"open '{mode}'", path)
        stream = opened(file, mode, *args, **more)
        return stream if set(mode) <= {"r", "b", "t"} else _Writing(stream, path, watch)

    def on_path(name: str) -> Callable[..., Any]:
        real = getattr(os, name)

        def step(path: Any, *args: Any, **more: Any) -> Any:
            shown = watch.minds(path, more)
            if shown is not None:
                watch.step(name, shown)
            return real(path, *args, **more)

        return step

    def on_open_file(name: str) -> Callable[..., Any]:
        real = getattr(os, name)

        def step(*args: Any, **more: Any) -> Any:
            watch.step(name, None)
            return real(*args, **more)

        return step

    changed = {name: on_path(name) for name in _ON_PATHS} | {name: on_open_file(name) for name in _ON_OPEN_FILES}
    with (
        patch.multiple(os, **changed),
        patch.object(builtins, "open", open_),
        patch.object(io, "open", open_),
    ):
        yield watch
