"""What must hold of a project after a run in which something went wrong."""

from dataclasses import dataclass
from pathlib import Path

from setwright.disk import lock
from support.site import digests

OWN = ("docs_build/notes.md", "site/CNAME", "site/plans/map.png")
"""Files of the club's own that stand in the tool's folders."""


@dataclass(frozen=True)
class Before:
    """A project before the run: the club's files, and the site as it is and as it will be."""

    files: dict[str, str]
    old: dict[str, str]
    new: dict[str, str]


def put_own_files(project: Path) -> None:
    """Put the club's own files into the tool's folders."""
    for name in OWN:
        (project / name).parent.mkdir(parents=True, exist_ok=True)
        (project / name).write_text("the club's own", "utf-8")


def clubs_files(project: Path) -> dict[str, str]:
    """Return a digest of every file that is not the tool's, but for those that go with the site."""
    return {
        name: digest
        for name, digest in digests(project).items()
        if name.startswith(("program/", "mkdocs.yml")) or name == "docs_build/notes.md" or name.endswith("/README.md")
    }


def wrong(project: Path, before: Before, *, between: bool = False) -> str | None:
    """Say what does not hold: the site is the old one or the new one, and the club's files are as they were.

    Args:
        project: the project after the run.
        before: what it was.
        between: whether there may be no site at all, since the run was killed between two renames.
    """
    if clubs_files(project) != before.files:
        return "a file of the club's was touched"
    site = digests(project / "site")
    if site not in (before.old, before.new) and not (between and not (project / "site").exists()):
        return f"the site is neither the old nor the new one: {sorted(set(site) ^ set(before.old))[:5]}"
    with lock.held(project / "docs_build"):
        return None
