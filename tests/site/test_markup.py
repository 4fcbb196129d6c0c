"""Markup that machines can check: the Nu HTML checker and axe-core find nothing on any kind of page."""

import os
import shutil
import subprocess
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser

from support.browsing import missing
from support.site import KINDS

PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 800}


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
def test_axe_finds_no_violation(browser: Browser, address: str, kind: str, scheme: str) -> None:
    """One page of every kind passes axe-core's rules (WCAG 2.2 A and AA among them), light and dark, on a phone."""
    context = browser.new_context(viewport=PHONE, color_scheme=scheme)
    page = context.new_page()
    page.goto(address + KINDS[kind])
    page.wait_for_load_state("networkidle")
    found = Axe().run(page).response["violations"]
    context.close()

    assert [(v["id"], v["nodes"][0]["html"]) for v in found] == []


@pytest.mark.parametrize("kind", KINDS)
def test_axe_finds_no_violation_on_a_desk(browser: Browser, address: str, kind: str) -> None:
    """The wide layout passes the same rules."""
    context = browser.new_context(viewport=DESK)
    page = context.new_page()
    page.goto(address + KINDS[kind])
    page.wait_for_load_state("networkidle")
    found = Axe().run(page).response["violations"]
    context.close()

    assert [(v["id"], v["nodes"][0]["html"]) for v in found] == []
