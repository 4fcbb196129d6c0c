"""A project that is quick to publish: the small good programme, with pages, sheets and engine in miniature."""

import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Final

import pytest
from click.testing import CliRunner, Result
from mkdocs.config.defaults import MkDocsConfig

from setwright import publish
from setwright.cli import main
from setwright.handouts import tree as handouts
from setwright.outline.packaged import package_files
from setwright.pages import tree
from support.reading import GOOD
from support.site import ROOT

WORKER: Final = dict(package_files("phone", "root"))
PAGES: Final[dict[str, bytes]] = {
    "index.md": b"home",
    "plans/index.md": b"plans",
    "plans/regatta/index.md": b"regatta",
    "assets/setwright.css": b"p {}",
    ".theme/main.html": b"theme",
    **WORKER,
}
SHEET: Final[dict[str, bytes]] = {"handouts/regatta/index.pdf": b"%PDF-"}


def small_project(folder: Path) -> Path:
    """Make a project as a fresh clone has it, and return its folder."""
    folder.mkdir(parents=True, exist_ok=True)
    shutil.copytree(GOOD, folder / "program")
    shutil.copy(ROOT / "mkdocs.yml", folder)
    for name in tree.KEPT:
        (folder / "docs_build" / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / "docs_build" / name, folder / "docs_build" / name)
    return folder


def miniature(monkeypatch: pytest.MonkeyPatch, pages: Mapping[str, bytes] = PAGES) -> None:
    """Let every run publish these few pages, by an engine that copies and wraps."""
    monkeypatch.setattr(tree, "of", lambda _: dict(pages))
    monkeypatch.setattr(handouts, "render", lambda *_: handouts.Printed(dict(SHEET), 0, 0, ()))
    monkeypatch.setattr(publish, "run_engine", _engine)


def _engine(config: MkDocsConfig, site: Path) -> tuple[str, ...]:
    docs = Path(config.docs_dir)
    for path in sorted(docs.rglob("*")):
        name = path.relative_to(docs)
        if path.is_dir() or any(part.startswith(".") for part in name.parts) or name.name == "README.md":
            continue
        target = site / (name.with_suffix(".html") if name.suffix == ".md" else name)
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(b"<p>" + path.read_bytes() if name.suffix == ".md" else path.read_bytes())
    return ()


SETTINGS: Final = """site_name: A club
docs_dir: docs_build
site_dir: site
theme: {name: null, custom_dir: docs_build/.theme}
plugins: [setwright]
"""
"""What an engine in miniature needs of mkdocs.yml; it is read in a moment."""


def setting(project: Path, line: str, value: str | None) -> None:
    """Change a line of mkdocs.yml, or delete it."""
    rows = (project / "mkdocs.yml").read_text("utf-8").split("\n")
    new = [] if value is None else [f"{line}: {value}"]
    kept = [row for row in rows if not row.startswith(f"{line}:")]
    (project / "mkdocs.yml").write_text("\n".join([*new, *kept]), "utf-8")


def setwright(project: Path, command: str, *options: str) -> Result:
    """Run a command on a project; an exception that is no exit fails the test."""
    return CliRunner().invoke(main, [command, "-f", str(project / "mkdocs.yml"), *options], catch_exceptions=False)


def said(result: Result) -> str:
    """Return the one sentence that a command ends with when it cannot go on."""
    return result.stderr.strip().split("\n")[-1]
