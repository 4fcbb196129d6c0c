"""A club's project in a folder of its own, built for tests, and what its pages hold."""

import hashlib
import shutil
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

from setwright import publish
from setwright.disk.written import LIST
from setwright.outline.addresses import folder_of

ROOT = Path(__file__).resolve().parents[2]

KINDS = {
    "home": "",
    "plans": "plans/",
    "plan": "plans/relay/",
    "week": "plans/relay/week-04/",
    "session": "plans/relay/week-07/friday/",
    "exercise": "exercises/goblet-squat/",
    "exercises": "exercises/",
    "find": "find/",
    "figures": "figures/",
    "warm-ups": "warm-ups/",
    "warm-up": "warm-ups/hips-and-ankles/",
    "cool-downs": "cool-downs/",
    "cool-down": "cool-downs/legs-down/",
    "numbers": "numbers/",
    "safety": "safety/",
    "sources": "sources/",
    "settings": "settings/",
    "log": "log/",
    "offline": "offline/",
    "more": "more/",
    "review": "review/",
    "checks": "checks/",
    "check": "checks/load-step-too-large/",
    "weekly load": "weekly-load/",
    "in front of the group": "group/",
    "coach's sheet": "group/relay/week-07/friday/",
    "hall's screen": "hall/",
    "data": "data/",
    "not-found": "404.html",
}
"""One address of every kind of page."""


def copy_project(folder: Path) -> Path:
    """Copy the example project, without anything that was built, and return its folder."""
    folder.mkdir(parents=True, exist_ok=True)
    shutil.copytree(ROOT / "program", folder / "program")
    shutil.copy(ROOT / "mkdocs.yml", folder)
    (folder / "docs_build" / ".theme").mkdir(parents=True)
    for name in ("README.md", ".gitignore", ".theme/.gitignore"):
        shutil.copy(ROOT / "docs_build" / name, folder / "docs_build" / name)
    return folder


def build(folder: Path, sheets: publish.Sheets = "printed") -> publish.Built:
    """Build a project as the command does."""
    config, program = publish.project(folder / "mkdocs.yml")
    return publish.build(config, program, "program", sheets=sheets)


def lend_sheets(printed: Path, project: Path) -> Path:
    """Let a project have sheets and solved figures of another, as an earlier run leaves them, and return its folder.

    A run takes those that are made from just the same, and makes the others.
    """
    for name in ("handouts", ".handouts", ".figures"):
        if (printed / "docs_build" / name).exists():  # a programme may have no figures
            shutil.copytree(printed / "docs_build" / name, project / "docs_build" / name)
    shutil.copy(printed / "docs_build" / LIST, project / "docs_build")  # what is not in it is somebody else's
    return project


def digests(folder: Path) -> dict[str, str]:
    """Return a digest of every file below a folder, by name."""
    return {
        path.relative_to(folder).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


class _Links(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self.ids: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found += [value for name, value in attrs if name == "href" and value]
        self.ids += [value for name, value in attrs if name == "id" and value]


def broken_in_tree(tree: dict[str, bytes]) -> Iterator[str]:
    """Yield the links of a rendered Markdown tree that lead to no page, to no anchor and to no other file of it."""
    import posixpath
    import re

    pages = {}
    for path, raw in tree.items():
        if path.endswith(".md"):
            links = _Links()
            links.feed(raw.decode())
            ids = {*links.ids, *re.findall(r"^#+ .*\{#([^}\s]+)[^}]*\}$", raw.decode(), re.MULTILINE)}
            pages["/" + folder_of(path)] = (links.found, ids)
    files = {f"/{path}/" for path in tree if not path.endswith(".md")}
    for address, (links_found, _) in pages.items():
        for link in links_found:
            if re.match(r"[a-z]+:", link):
                continue
            target, _, anchor = link.partition("#")
            target = target.partition("?")[0]
            leads = posixpath.normpath(posixpath.join(address, target)) if target else address
            leads = leads if leads.endswith("/") else leads + "/"
            if leads in files:
                continue
            if leads not in pages:
                yield f"{address}: {link}"
            elif anchor and anchor not in pages[leads][1]:
                yield f"{address}: {link} (no such anchor)"
