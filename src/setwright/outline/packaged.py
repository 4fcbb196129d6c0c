"""Files that travel with the package, such as styles and scripts."""

from collections.abc import Iterator
from importlib.resources import files
from typing import Any


def package_files(room: str, folder: str) -> Iterator[tuple[str, bytes]]:
    """Yield the files below a folder of a room, by relative path, in order."""
    root = files(f"setwright.{room}") / folder
    waiting: list[tuple[str, Any]] = [("", root)]
    while waiting:
        prefix, place = waiting.pop()
        for child in sorted(place.iterdir(), key=lambda entry: entry.name):
            name = f"{prefix}{child.name}"
            if child.is_dir():
                waiting.append((f"{name}/", child))
            elif not child.name.startswith((".", "__")):
                yield name, child.read_bytes()
