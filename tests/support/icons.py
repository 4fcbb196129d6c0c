"""Draws the home-screen icons from the site's own icon: `python tests/support/icons.py` with Chromium on the machine.

The PNG files are kept with the package, since a phone wants them ready. Draw them again when assets/icon.svg changes.
"""

import os
import shutil
from pathlib import Path

from playwright.sync_api import sync_playwright

ASSETS = Path(__file__).resolve().parents[2] / "src" / "setwright" / "phone" / "assets"
BACKGROUND = "#26354a"

ICONS = {
    "icon-192.png": (192, 1.0, False),
    "icon-512.png": (512, 1.0, False),
    # A launcher cuts a maskable icon to a circle of 80 % (W3C Web Application Manifest, safe zone); a phone that
    # rounds the corners itself wants none of ours.
    "mask-512.png": (512, 0.72, True),
    "touch-180.png": (180, 0.9, True),
}
"""By file: its width in pixels, the drawing's share of it, and whether the background fills it to the edge."""


def draw() -> None:
    """Write every icon."""
    drawing = (ASSETS / "icon.svg").read_text("utf-8")
    chromium = os.environ.get("SETWRIGHT_CHROMIUM") or shutil.which("chromium")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=["--headless", "--no-sandbox"])
        for name, (width, share, full) in ICONS.items():
            page = browser.new_page(viewport={"width": width, "height": width})
            ground = BACKGROUND if full else "transparent"
            page.set_content(
                f"<style>html{{background:{ground}}}body{{margin:0;display:grid;place-items:center;height:100vh}}"
                f"svg{{width:{share * 100}vw}}</style>{drawing}"
            )
            page.screenshot(path=ASSETS / "icons" / name, omit_background=True)
        browser.close()


if __name__ == "__main__":
    draw()
