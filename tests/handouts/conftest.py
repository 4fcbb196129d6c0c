"""The example's sheets as its project holds them, and single ones as a published site has them."""

from collections.abc import Callable
from pathlib import Path

import pytest
from pypdf import PdfReader

from setwright import publish
from setwright.handouts import tree
from setwright.handouts.press import Press
from setwright.handouts.writing import Desk
from setwright.outline.site import Site
from support.sheets import opened

SITE_URL = "https://strength.example.org/club/"


@pytest.fixture(scope="session")
def looked(project: Path) -> publish.Looked:
    """The example programme, resolved."""
    return publish.look(project / "program")


@pytest.fixture(scope="session")
def desk(looked: publish.Looked) -> Desk:
    """The example's content, published at an address."""
    assert looked.programme is not None
    return Desk(Site(looked.programme, looked.plans), SITE_URL)


@pytest.fixture(scope="session")
def sheet(project: Path) -> Callable[[str], PdfReader]:
    """Opens a sheet of the example's project by its path; that site has no address yet."""
    kept: dict[str, PdfReader] = {}

    def get(path: str) -> PdfReader:
        return kept.setdefault(path, opened((project / "docs_build" / path).read_bytes()))

    return get


@pytest.fixture(scope="session")
def published(desk: Desk) -> Callable[[str], PdfReader]:
    """Opens a sheet by its path as a published site has it, with its links and its square code."""
    sheets = {sheet.path: sheet for sheet in tree.sheets(desk)}
    press, kept = Press(), dict[str, PdfReader]()

    def get(path: str) -> PdfReader:
        return kept.setdefault(path, opened(press.print(sheets[path])))

    return get
