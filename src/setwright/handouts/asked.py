"""Sheets in a preview: one is printed when somebody asks for it, so that no edit waits for sheets."""

from collections.abc import Callable, Iterable
from pathlib import Path
from threading import Lock
from typing import Any

from setwright.handouts import tree
from setwright.handouts.writing import Desk
from setwright.outline import paper

Answering = Callable[[dict[str, Any], Callable[..., Any]], Iterable[bytes]]
"""A server by the interface of PEP 3333."""


def sheets(otherwise: Answering, folder: Path, desk: Callable[[], Desk | None]) -> Answering:
    """Return a server that answers for sheets, and leaves everything else to another.

    Args:
        otherwise: what answers for pages.
        folder: the tree, which may hold sheets that still fit.
        desk: gives what the newest pages were made from.
    """
    one_at_a_time = Lock()

    def answer(environ: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes]:
        path = str(environ["PATH_INFO"]).encode("latin-1").decode("utf-8", "replace")  # PEP 3333 has bytes as Latin-1
        _, inside, name = path.rpartition(f"/{paper.FOLDER}/")
        pdf = None
        if inside:
            with one_at_a_time:
                newest = desk()
                pdf = tree.one(newest, folder, f"{paper.FOLDER}/{name}") if newest is not None else None
        if pdf is None:
            return otherwise(environ, start_response)
        start_response("200 OK", [("Content-Type", "application/pdf"), ("Content-Length", str(len(pdf)))])
        return [pdf]

    return answer
