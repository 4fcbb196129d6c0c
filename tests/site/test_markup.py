"""Markup that machines can check: the Nu HTML checker and axe-core find nothing on any kind of page."""

import os
import shutil
import subprocess
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from support.amount import TIMES, some
from support.browsing import missing
from support.site import KINDS

from .conftest import Look

PHONE, DESK = (390, 844), (1280, 800)


def violations(page: Page, rules: list[str] | None = None) -> list[tuple[str, str]]:
    """Return the rules of axe-core that a page breaks, each with the first place; of all rules or of some."""
    page.wait_for_load_state("networkidle")
    return [
        (v["id"], v["nodes"][0]["html"])
        for v in Axe().run(page, options={"runOnly": rules} if rules else None).response["violations"]
    ]


def test_the_nu_html_checker_finds_no_error(site: Path) -> None:
    """One page of every kind is valid HTML (WHATWG HTML standard, checked by the Nu HTML checker)."""
    jar, java = os.environ.get("SETWRIGHT_VNU_JAR"), shutil.which("java")
    if not jar or not Path(jar).is_file() or java is None:
        missing("the Nu HTML checker (SETWRIGHT_VNU_JAR, and java)")
    pages = [site / a / "index.html" if a.endswith("/") or not a else site / a for a in KINDS.values()]
    done = subprocess.run(
        [str(java), "-jar", str(jar), "--errors-only", "--format", "gnu", *map(str, pages)],
        capture_output=True,
        text=True,
    )

    assert done.stderr == ""
    assert done.returncode == 0


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("kind", KINDS)
def test_axe_finds_no_violation(look: Look, kind: str, scheme: str) -> None:
    """One page of every kind passes axe-core's rules (WCAG 2.2 A and AA among them), light and dark, on a phone."""
    rules = ["color-contrast"] if scheme == "dark" and TIMES <= 1 else None  # nothing else changes by night
    assert violations(look(KINDS[kind], PHONE, scheme), rules) == []


@pytest.mark.parametrize("kind", some(KINDS, 5))
def test_axe_finds_no_violation_on_a_desk(look: Look, kind: str) -> None:
    """The wide layout passes the same rules."""
    assert violations(look(KINDS[kind], DESK)) == []
