"""One run at a time in a folder.

The folder itself is locked, so that nothing is left behind and the system lets go of it when a run is killed. Where a
system cannot do that, a file with the number of the process stands for the lock.
"""

import errno
import os
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Final

from setwright.errors import StoppedError

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None  # type: ignore[assignment]

FILE: Final = ".lock"
_CANNOT: Final = {errno.EBADF, errno.EINVAL, errno.ENOLCK, errno.ENOSYS, errno.ENOTSUP, errno.EOPNOTSUPP}
_PAUSE_S: Final = 0.1


@contextmanager
def held(folder: Path, waiting: Callable[[], None] | None = None) -> Iterator[None]:
    """Hold a folder while a run writes into it.

    Args:
        folder: an existing folder.
        waiting: where given, a run waits for another to end, after saying so by calling this once.

    Raises:
        StoppedError: where another run holds the folder, and this one does not wait.
    """
    release = _take(folder)
    if release is None and waiting is not None:
        waiting()
    while release is None:
        if waiting is None:
            stale = f" (if there is none, delete {folder / FILE})" if (folder / FILE).exists() else ""
            raise StoppedError(
                f"another run is at work in {folder}: wait until it has ended{stale}, then run this again"
            )
        time.sleep(_PAUSE_S)
        release = _take(folder)
    try:
        yield
    finally:
        release()


def _take(folder: Path) -> Callable[[], None] | None:
    """Take the lock, and return what gives it back; None where another run has it."""
    if fcntl is None:
        return _take_by_file(folder)
    descriptor = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        os.close(descriptor)
        if isinstance(error, BlockingIOError):
            return None
        if error.errno in _CANNOT:  # folders on some network drives
            return _take_by_file(folder)
        raise
    return lambda: os.close(descriptor)


def _take_by_file(folder: Path) -> Callable[[], None] | None:
    path = folder / FILE
    for _ in range(2):  # a lock whose run was killed is cleared away once
        try:
            descriptor = os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY)
        except FileExistsError:
            if _is_held(path):
                return None
            continue

        def release(descriptor: int = descriptor) -> None:
            os.close(descriptor)
            path.unlink(missing_ok=True)

        try:
            os.write(descriptor, str(os.getpid()).encode())
        except OSError:
            release()
            raise
        return release
    return None


def _is_held(path: Path) -> bool:
    """Say whether the run of a lock's file is alive; clear the file away where it is not."""
    if os.name == "nt":
        try:
            path.unlink()  # refused while a run has it open
        except FileNotFoundError:
            return False
        except OSError:
            return True
        return False
    try:
        os.kill(int(path.read_bytes()), 0)
    except (FileNotFoundError, ProcessLookupError, OverflowError):
        with suppress(FileNotFoundError):
            path.unlink()
        return False
    except ValueError:
        return True  # made a moment ago, and not filled in yet
    except PermissionError:
        return True  # another person's
    return True
