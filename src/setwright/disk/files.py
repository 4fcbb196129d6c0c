"""A file written whole or not at all, and what went wrong with one in a sentence."""

import os
from contextlib import suppress
from pathlib import Path
from typing import Final

from setwright.errors import StoppedError

PART: Final = ".setwright-part"
"""A file while it is being written, beside the one that it will be. A run that was killed may leave one behind."""


def replace(target: Path, content: bytes, *, lasting: bool = False) -> None:
    """Put a file in the place of another, which is the old one until it is the new one.

    Args:
        target: the file; it keeps its permissions, if it is there.
        content: its bytes.
        lasting: whether it is on the disk itself before the old one goes, for what nothing could make again.

    Raises:
        OSError: naming the target; then it is as it was, and nothing is left beside it.
    """
    part = target.parent / PART
    try:
        part.unlink(missing_ok=True)
        with part.open("xb") as stream:
            stream.write(content)
            if lasting:
                stream.flush()
                os.fsync(stream.fileno())
        if target.is_file() and not target.is_symlink():
            part.chmod(target.stat().st_mode & 0o777)
        part.replace(target)
    except BaseException as error:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        if isinstance(error, OSError):
            error.filename, error.filename2 = str(target), None
        raise
    if lasting:
        flush(target.parent)


def flush(path: Path) -> None:
    """Have the system write a file, or a folder's list of names, to the disk itself, where it can."""
    if path.is_dir() and os.name == "nt":
        return  # no folder can be opened there
    descriptor = os.open(path, os.O_RDONLY)
    try:
        os.fsync(descriptor)
    except OSError as error:
        error.filename = str(path)
        raise
    finally:
        os.close(descriptor)


def flush_all(folder: Path) -> None:
    """Have the system write a folder with everything below it to the disk itself."""
    for place, _, names in os.walk(folder):
        for name in names:
            path = Path(place) / name
            if not path.is_symlink():
                flush(path)
        flush(Path(place))


def stopped(error: OSError, otherwise: str = "") -> StoppedError:
    """Return what the system said about a file, as one sentence with the file and the reason.

    Args:
        error: the system's error.
        otherwise: what to name where the error names no file.
    """
    where = error.filename if error.filename is not None else otherwise
    reason = error.strerror or str(error) or type(error).__name__
    return StoppedError(f"{os.fsdecode(where)}: {reason}" if isinstance(where, str | bytes) and where else reason)
