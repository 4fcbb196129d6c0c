"""Where other disks are mounted: such a folder can be neither renamed nor deleted, and so no site is swapped for it."""

import os
import re
from pathlib import Path
from typing import Final

TABLE: Final = Path("/proc/self/mountinfo")
"""Where Linux lists what is mounted, folders of the same disk included: proc_pid_mountinfo(5)."""

_POINT: Final = 4
"""The place of the mount point among the fields of a line; spaces and the like in it are written as octal numbers."""


def mounted_in(folder: Path) -> Path | None:
    """Return a folder where a disk is mounted: this one or one below it; None where there is none."""
    folder = folder.resolve()
    try:
        rows = os.fsdecode(TABLE.read_bytes()).splitlines()
    except OSError:  # another system: it knows disks alone
        below = (Path(place) for place, _, _ in os.walk(folder))
        return next((place for place in below if os.path.ismount(place)), None)
    points = (Path(_octal(row.split(" ")[_POINT])) for row in rows)
    return next((point for point in points if point == folder or folder in point.parents), None)


def _octal(text: str) -> str:
    return re.sub(r"\\([0-7]{3})", lambda match: chr(int(match[1], 8)), text)
