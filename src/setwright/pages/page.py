"""A page before it is rendered."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Crumb:
    """One step of the way from the home page to here: a label and the source path of its page."""

    label: str
    path: str


@dataclass(frozen=True)
class Page:
    """A page of the tree.

    ``path`` is its Markdown file below docs_build; ``crumbs`` lead to it from the home page; ``before`` and ``after``
    are its neighbours in time; ``written_in`` is the file below the programme that its words come from.
    """

    path: str
    title: str
    description: str
    template: str
    context: Mapping[str, Any]
    crumbs: tuple[Crumb, ...] = ()
    before: Crumb | None = None
    after: Crumb | None = None
    kind: str = ""
    written_in: str | None = None
